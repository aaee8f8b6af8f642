//! Which bags to buy for an amount.

use thiserror::Error;

/// Most sizes that are compared.
pub const MOST_SIZES: usize = 12;

/// Most steps that are searched exactly, each as long as the largest common divisor of the
/// sizes; what is needed beyond is bought in one size.
pub const MOST_STEPS: u32 = 2_000_000;

/// A size of bag on sale, in whole millilitres or grams.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PackSize {
    /// What it holds.
    pub size: u32,
    /// Price in hundredths of the currency, where known.
    pub price: Option<u32>,
}

/// Bags to buy.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Purchase {
    /// Number of each size, in the order in which the sizes were given.
    pub counts: Vec<u32>,
    /// What all bags hold together.
    pub total: u64,
    /// What is left over.
    pub surplus: u64,
    /// Price of all, in hundredths, where every size has a price.
    pub cost: Option<u64>,
    /// How much dearer than the cheapest set they may be, in hundredths, where more is
    /// needed than is searched exactly and every size has a price.
    pub dearer_at_most: Option<u64>,
}

/// Why no bags could be chosen.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum BagError {
    /// Something is needed and nothing is on sale.
    #[error("{need} is needed and no bag size is given")]
    NoSize {
        /// Amount needed.
        need: u32,
    },
    /// A bag holds nothing.
    #[error("bag size {place} holds nothing")]
    EmptyBag {
        /// Place in the list, from 0.
        place: usize,
    },
    /// More sizes than are compared.
    #[error("{given} bag sizes are given, at most {MOST_SIZES} are compared")]
    TooManySizes {
        /// Sizes given.
        given: usize,
    },
    /// An amount that no whole number of units can hold.
    #[error("{amount} is no amount that can be counted in whole units")]
    NotCountable {
        /// Amount given.
        amount: f64,
    },
}

/// The nearest whole number of units, nothing for a negative amount.
///
/// Needs and sizes rounded alike keep an exact fit exact: a need of one dry
/// quart bag is still met by that bag.
///
/// # Errors
/// [`BagError::NotCountable`] for what is not finite or above four thousand
/// million.
pub fn whole_units(amount: f64) -> Result<u32, BagError> {
    let rounded = amount.round().max(0.0);
    if amount.is_finite() && rounded <= f64::from(u32::MAX) {
        Ok(rounded as u32)
    } else {
        Err(BagError::NotCountable { amount })
    }
}

/// The bags that cover a need, each size as often as wanted.
///
/// With a price on every size: the lowest cost, then the fewest bags, then the
/// least surplus. With any price missing: the least surplus, then the fewest
/// bags. What still ties is settled in favour of the sizes listed first.
///
/// ```text
/// minimise  sum c_i n_i   subject to   sum s_i n_i >= need,   n_i whole and >= 0
/// best(t) = min over i of c_i + best(t - s_i),   best(t <= 0) = 0
/// ```
///
/// The recursion is exact, because adding a bag to two ways of covering the
/// rest never changes which of them ranks first. It runs over multiples of the
/// sizes' largest common divisor, so its work is bounded by [`MOST_SIZES`]
/// times [`MOST_STEPS`]; bags in whole litres take a few dozen steps.
///
/// What is needed beyond those steps is bought in the size that is cheapest for what it
/// holds, or the largest where a price is missing. All bags then cost at most two of that
/// size more than `need x min(c_i / s_i)`, which no purchase undercuts; without prices the
/// surplus stays under the smallest bag.
///
/// # Source
/// Martello and Toth 1990 (`martello_toth_1990`), unbounded knapsack in its
/// covering form.
///
/// # Errors
/// [`BagError`], when the sizes or the need are out of bounds.
///
/// # Example
/// ```
/// use lentic::numerics::bags::{PackSize, cheapest};
/// let sizes = [(10, 500), (25, 1100)].map(|(size, price)| PackSize { size, price: Some(price) });
/// let purchase = cheapest(30, &sizes).unwrap();
/// assert_eq!((purchase.counts, purchase.cost), (vec![3, 0], Some(1500)));
/// ```
pub fn cheapest(need: u32, sizes: &[PackSize]) -> Result<Purchase, BagError> {
    check(need, sizes)?;
    let step = sizes.iter().fold(0, |step, bag| divisor(step, bag.size));
    let (bulk, rest) = beyond_search(need, step, sizes);
    let steps = if rest == 0 { 0 } else { rest.div_ceil(step) };
    let mut counts = cover(steps, step, sizes);
    if let Some((place, count)) = bulk
        && let Some(own) = counts.get_mut(place)
    {
        *own += count;
    }
    let total = weighted(&counts, sizes.iter().map(|bag| bag.size));
    let prices: Option<Vec<u32>> = sizes.iter().map(|bag| bag.price).collect();
    let cost = prices.map(|prices| weighted(&counts, prices));
    let in_bulk = bulk.and_then(|(place, _)| sizes.get(place));
    Ok(Purchase {
        total,
        surplus: total - u64::from(need),
        cost,
        dearer_at_most: in_bulk
            .zip(cost)
            .map(|(bag, cost)| cost.saturating_sub(undercut_by_none(need, bag))),
        counts,
    })
}

/// What no purchase undercuts, in whole hundredths: the need at the price of the bag that is
/// cheapest for what it holds.
fn undercut_by_none(need: u32, bag: &PackSize) -> u64 {
    u64::from(need) * u64::from(bag.price.unwrap_or(0)) / u64::from(bag.size)
}

/// Bags of one size, by its place, for what is needed beyond the exact search, and what is
/// left to that.
fn beyond_search(need: u32, step: u32, sizes: &[PackSize]) -> (Option<(usize, u32)>, u32) {
    let searched = step.saturating_mul(MOST_STEPS);
    let beyond = need.saturating_sub(searched);
    let bulk = sizes.iter().enumerate().min_by(|(_, one), (_, other)| {
        let cost = |bag: &PackSize| f64::from(bag.price.unwrap_or(0)) / f64::from(bag.size);
        let by_cost = cost(one).total_cmp(&cost(other));
        let by_size = other.size.cmp(&one.size);
        if sizes.iter().all(|bag| bag.price.is_some()) {
            by_cost.then(by_size)
        } else {
            by_size
        }
    });
    match bulk {
        Some((place, bag)) if beyond > 0 => {
            let count = beyond.div_ceil(bag.size);
            let rest = need.saturating_sub(count.saturating_mul(bag.size));
            (Some((place, count)), rest)
        }
        _ => (None, need),
    }
}

fn check(need: u32, sizes: &[PackSize]) -> Result<(), BagError> {
    if let Some(place) = sizes.iter().position(|bag| bag.size == 0) {
        return Err(BagError::EmptyBag { place });
    }
    if sizes.len() > MOST_SIZES {
        return Err(BagError::TooManySizes { given: sizes.len() });
    }
    if sizes.is_empty() && need > 0 {
        return Err(BagError::NoSize { need });
    }
    Ok(())
}

/// The best way to cover what is left: what it takes, and the bag to take next.
#[derive(Debug, Clone, Copy)]
struct Cover {
    cost: u64,
    bags: u32,
    surplus: u32,
    next: usize,
}

impl Cover {
    /// What is compared, first things first.
    fn rank(&self, priced: bool) -> (u64, u64, u64) {
        let (bags, surplus) = (u64::from(self.bags), u64::from(self.surplus));
        if priced {
            (self.cost, bags, surplus)
        } else {
            (surplus, bags, 0)
        }
    }
}

/// Number of each size that covers a need given in steps.
fn cover(steps: u32, step: u32, sizes: &[PackSize]) -> Vec<u32> {
    let priced = sizes.iter().all(|bag| bag.price.is_some());
    let mut best: Vec<Cover> = Vec::with_capacity(steps as usize);
    for left in 1..=steps {
        let choices = sizes.iter().enumerate().map(|(next, bag)| {
            let held = bag.size / step;
            let rest = left.checked_sub(held).filter(|&rest| rest > 0);
            let (cost, bags, surplus) = rest.map_or((0, 0, held.saturating_sub(left)), |rest| {
                let rest = best[rest as usize - 1];
                (rest.cost, rest.bags, rest.surplus)
            });
            Cover {
                cost: cost + u64::from(bag.price.unwrap_or(0)),
                bags: bags + 1,
                surplus,
                next,
            }
        });
        // of equal choices the first listed is kept
        best.extend(choices.min_by_key(|choice| choice.rank(priced)));
    }
    collect(steps, step, sizes, &best)
}

/// Follows the choices from the whole need down to nothing.
fn collect(steps: u32, step: u32, sizes: &[PackSize], best: &[Cover]) -> Vec<u32> {
    let mut counts = vec![0; sizes.len()];
    let mut left = steps;
    while left > 0 {
        let next = best[left as usize - 1].next;
        counts[next] += 1;
        left = left.saturating_sub(sizes[next].size / step);
    }
    counts
}

fn weighted(counts: &[u32], weights: impl IntoIterator<Item = u32>) -> u64 {
    let products = counts.iter().zip(weights);
    products
        .map(|(&count, weight)| u64::from(count) * u64::from(weight))
        .sum()
}

/// Largest common divisor.
fn divisor(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { divisor(b, a % b) }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn priced(sizes: &[(u32, u32)]) -> Vec<PackSize> {
        sizes
            .iter()
            .map(|&(size, price)| PackSize {
                size,
                price: Some(price),
            })
            .collect()
    }

    fn unpriced(sizes: &[u32]) -> Vec<PackSize> {
        sizes
            .iter()
            .map(|&size| PackSize { size, price: None })
            .collect()
    }

    /// Every set of counts up to what one size alone would need, ranked by the
    /// stated rule word for word.
    fn brute_force(need: u32, sizes: &[PackSize]) -> Vec<u32> {
        let mut sets: Vec<Vec<u32>> = vec![vec![]];
        for bag in sizes {
            let most = need.div_ceil(bag.size);
            sets = sets
                .iter()
                .flat_map(|set| (0..=most).map(|count| [set.as_slice(), &[count]].concat()))
                .collect();
        }
        let total = |set: &[u32]| weighted(set, sizes.iter().map(|bag| bag.size));
        let all_priced = sizes.iter().all(|bag| bag.price.is_some());
        let rank = |set: &Vec<u32>| {
            let cost = weighted(set, sizes.iter().map(|bag| bag.price.unwrap_or(0)));
            let bags = u64::from(set.iter().sum::<u32>());
            let surplus = total(set) - u64::from(need);
            let numbers = if all_priced {
                [cost, bags, surplus]
            } else {
                [surplus, bags, 0]
            };
            let listed_first: Vec<_> = set.iter().map(|&count| std::cmp::Reverse(count)).collect();
            (numbers, listed_first)
        };
        sets.into_iter()
            .filter(|set| total(set) >= u64::from(need))
            .min_by_key(rank)
            .unwrap()
    }

    proptest! {
        #[test]
        fn no_set_of_bags_ranks_before_the_one_chosen(
            need in 0_u32..60,
            sizes in prop::collection::vec((4_u32..30, prop::option::weighted(0.9, 1_u32..12)), 1..4),
        ) {
            let sizes: Vec<PackSize> = sizes.into_iter().map(|(size, price)| PackSize { size, price }).collect();
            prop_assert_eq!(cheapest(need, &sizes).unwrap().counts, brute_force(need, &sizes));
        }
    }

    #[test]
    fn an_exact_fit_is_not_pushed_up_a_bag() {
        let size = whole_units(8.0 * 1_101.220_942_715).unwrap();
        let need = whole_units(3.0 * 8.0 * 1_101.220_942_715 * (1.0 + 1e-12)).unwrap();
        assert_eq!(cheapest(need, &unpriced(&[size])).unwrap().counts, [3]);
    }

    #[test]
    fn one_missing_price_makes_the_least_surplus_decide() {
        let mut sizes = priced(&[(20, 1), (7, 900)]);
        sizes[1].price = None;
        let purchase = cheapest(21, &sizes).unwrap();
        assert_eq!((purchase.counts, purchase.cost), (vec![0, 3], None));
    }

    #[test]
    fn of_two_equal_bags_the_first_listed_is_bought() {
        assert_eq!(
            cheapest(9, &priced(&[(5, 3), (5, 3)])).unwrap().counts,
            [2, 0]
        );
        assert_eq!(
            cheapest(9, &unpriced(&[4, 5, 4])).unwrap().counts,
            [1, 1, 0]
        );
    }

    #[test]
    fn many_near_equal_sizes_end_quickly_and_right() {
        // consecutive sizes from 4000 upwards, same price per unit: 25 x 4000
        let sizes: Vec<PackSize> = (4000..4012)
            .map(|size| PackSize {
                size,
                price: Some(size),
            })
            .collect();
        let purchase = cheapest(100_000, &sizes).unwrap();
        assert_eq!((purchase.surplus, purchase.cost), (0, Some(100_000)));
        assert_eq!(purchase.counts.iter().sum::<u32>(), 25);
    }

    /// The larger size is the cheaper by what it holds; no set undercuts what that comes to.
    #[test]
    fn needs_beyond_the_search_are_covered_within_two_bags_of_the_least_cost() {
        let need = 3_000_001;
        let sizes = priced(&[(700, 710), (9001, 9000)]);
        let bought = cheapest(need, &sizes).unwrap();
        assert!(bought.total >= u64::from(need));
        assert_eq!(bought.total - bought.surplus, u64::from(need));
        let least = f64::from(need) * 9000.0 / 9001.0;
        let cost = bought.cost.unwrap() as f64;
        assert!(cost >= least && cost <= least + 18_000.0, "{cost} {least}");
        let dearer = bought.dearer_at_most.unwrap() as f64;
        assert!((dearer - (cost - least)).abs() <= 1.0, "{dearer}");
        let searched = cheapest(30, &priced(&[(10, 500)])).unwrap();
        assert_eq!(searched.dearer_at_most, None);
        let unpriced = cheapest(4_000_001, &unpriced(&[2, 4])).unwrap();
        assert_eq!((unpriced.total, unpriced.surplus), (4_000_002, 1));
        // the search alone would take four million steps of one
        let huge = cheapest(u32::MAX, &priced(&[(7, 7), (9, 8)])).unwrap();
        assert!(huge.total >= u64::from(u32::MAX) && huge.surplus < 9);
    }

    #[test]
    fn what_cannot_be_chosen_is_told_with_its_numbers() {
        assert_eq!(cheapest(3, &[]), Err(BagError::NoSize { need: 3 }));
        assert!(cheapest(0, &[]).unwrap().counts.is_empty());
        assert_eq!(
            cheapest(3, &unpriced(&[4, 0])),
            Err(BagError::EmptyBag { place: 1 })
        );
        assert_eq!(
            cheapest(3, &unpriced(&[4; 13])),
            Err(BagError::TooManySizes { given: 13 })
        );
        assert!(whole_units(f64::NAN).is_err() && whole_units(5e9).is_err());
        assert_eq!(whole_units(-2.0), Ok(0));
    }
}
