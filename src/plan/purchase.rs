//! Which bags to buy.

use super::section::BagCount;
use crate::design::{BagSize, PricedBag};
use crate::numerics::bags::{self, BagError, Purchase};
use crate::units::{Density, Mass, Volume};

/// The bags for an amount, in one measure: millilitres or grams.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Bought {
    pub(super) bags: Vec<BagCount>,
    /// Litres or kilograms in them.
    pub(super) total: f64,
    /// Litres or kilograms too many.
    pub(super) surplus: f64,
    pub(super) cost: Option<f64>,
    /// How much dearer than the cheapest set they may be, beyond the exact search.
    pub(super) dearer_at_most: Option<f64>,
}

/// Millilitres in a litre, grams in a kilogram.
const SMALL_PER_LARGE: f64 = 1000.0;
/// Hundredths in a unit of money.
const HUNDREDTHS: f64 = 100.0;

/// The cheapest bags of soil for a loose volume; bags by mass count by the loose density.
pub(super) fn by_volume(need: Volume, sizes: &[PricedBag], loose: Density) -> Option<Bought> {
    let litres = |size| match size {
        BagSize::Volume(volume) => volume,
        BagSize::Mass(mass) => mass / loose,
    };
    chosen(need.ml(), sizes, |bag| litres(bag.size).ml())
}

/// The cheapest bags of sand for a dry mass; bags by volume count by the bulk density.
pub(super) fn by_mass(need: Mass, sizes: &[PricedBag], bulk: Density) -> Option<Bought> {
    let mass = |size| match size {
        BagSize::Mass(mass) => mass,
        BagSize::Volume(volume) => bulk * volume,
    };
    chosen(need.g(), sizes, |bag| mass(bag.size).g())
}

/// None where no size is given, or more than can be counted is needed.
fn chosen(need: f64, sizes: &[PricedBag], content: impl Fn(&PricedBag) -> f64) -> Option<Bought> {
    if sizes.is_empty() {
        return None;
    }
    let purchase = cheapest(need, sizes, content).ok()?;
    let bags = sizes
        .iter()
        .zip(&purchase.counts)
        .filter(|(_, count)| **count > 0)
        .map(|(bag, count)| BagCount {
            size: bag.label.clone(),
            count: *count,
            price: bag.price,
        })
        .collect();
    let money = |hundredths: u64| hundredths as f64 / HUNDREDTHS;
    Some(Bought {
        bags,
        total: purchase.total as f64 / SMALL_PER_LARGE,
        surplus: purchase.surplus as f64 / SMALL_PER_LARGE,
        cost: purchase.cost.map(money),
        dearer_at_most: purchase.dearer_at_most.map(money),
    })
}

fn cheapest(
    need: f64,
    sizes: &[PricedBag],
    content: impl Fn(&PricedBag) -> f64,
) -> Result<Purchase, BagError> {
    let sizes = sizes
        .iter()
        .map(|bag| {
            Ok(bags::PackSize {
                size: bags::whole_units(content(bag))?,
                price: bag
                    .price
                    .map(|price| bags::whole_units(price * HUNDREDTHS))
                    .transpose()?,
            })
        })
        .collect::<Result<Vec<_>, BagError>>()?;
    bags::cheapest(bags::whole_units(need)?, &sizes)
}

/// "1 x 5 kg bag, 2 x 20 kg bags".
pub fn bags_in_words(bags: &[BagCount]) -> String {
    let counted: Vec<String> = bags
        .iter()
        .map(|bag| {
            let plural = if bag.count == 1 { "" } else { "s" };
            format!("{} x {} bag{plural}", bag.count, bag.size)
        })
        .collect();
    counted.join(", ")
}
