//! The bed: bags.
//!
//! Tolerances are half the last digit printed.

use crate::compare::{Within, check};
use lentic::substrate::purchase::soil_to_buy;
use lentic::units::{Share, Volume};

/// Verhagen 2017: at 105 % of the labelled density 100 L fill 95.2 L.
#[test]
fn litres_on_the_bag_and_litres_in_place() {
    let bought = soil_to_buy(Volume::from_litres(95.2), Share::from_fraction(1.0 / 1.05));
    check(
        "labelled, L",
        bought.litres(),
        100.0,
        Within::Absolute(0.05),
    );
}
