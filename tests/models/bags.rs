//! Bags for the least money.
//!
//! Expected values: each instance was solved twice, by brute force over all
//! counts and as an integer programme by scipy's `milp`; the formulation is the
//! unbounded knapsack in covering form of Martello and Toth 1990, *Knapsack
//! Problems*.

use lentic::numerics::bags::{PackSize, cheapest};

fn priced(sizes: &[(u32, u32)]) -> Vec<PackSize> {
    sizes
        .iter()
        .map(|&(size, price)| PackSize {
            size,
            price: Some(price),
        })
        .collect()
}

#[test]
fn instances_solved_by_integer_programming_come_out_the_same() {
    type Instance<'a> = (u32, &'a [(u32, u32)], &'a [u32], u64);
    let instances: [Instance<'_>; 7] = [
        (
            23,
            &[(5, 400), (10, 700), (20, 1200), (40, 2000)],
            &[1, 0, 1, 0],
            1600,
        ),
        (
            51,
            &[(10, 650), (20, 1100), (40, 1900), (50, 2300)],
            &[1, 0, 0, 1],
            2950,
        ),
        (
            // 2.35 ft3 in mL; 8 and 16 dry quarts, 1, 1.5 and 2 ft3
            66_545,
            &[
                (8_810, 598),
                (17_620, 998),
                (28_317, 1350),
                (42_475, 1875),
                (56_634, 2200),
            ],
            &[0, 1, 0, 0, 1],
            3198,
        ),
        (
            37,
            &[(5, 620), (10, 1050), (20, 1790), (25, 2090)],
            &[0, 0, 2, 0],
            3580,
        ),
        (30, &[(10, 500), (25, 1100)], &[3, 0], 1500),
        (3, &[(5, 400), (20, 350)], &[0, 1], 350),
        (0, &[(5, 400), (20, 350)], &[0, 0], 0),
    ];
    for (need, sizes, counts, cost) in instances {
        let purchase = cheapest(need, &priced(sizes)).unwrap();
        assert_eq!(purchase.counts, counts, "need {need}");
        assert_eq!(purchase.cost, Some(cost), "need {need}");
        assert_eq!(purchase.total - purchase.surplus, u64::from(need));
    }
}
