//! Nominal tank sizes: what the dimensions that are common in the trade really hold.
//!
//! Dimensions are common practice, no source; the volumes were computed apart from them
//! by hand, 231 cubic inches to the gallon.

use lentic::catalogue::{self, TankSize};

use crate::compare::{Within, check};

#[test]
fn nominal_sizes_hold_what_their_dimensions_leave() {
    for (name, outer_us_gal, inner_us_gal) in [
        ("us_2_5_gal", 2.494, 2.122),
        ("us_5_5_gal", 5.541, 4.907),
        ("us_10_gal", 10.390, 9.423),
        ("us_15_gal", 14.961, 13.746),
        ("us_20_gal_high", 19.948, 18.426),
        ("us_20_gal_long", 18.701, 17.256),
        ("us_29_gal", 28.052, 26.068),
        ("us_40_gal_breeder", 44.883, 42.358),
        ("us_55_gal", 56.727, 53.335),
        ("us_75_gal", 78.545, 72.773),
    ] {
        let size = catalogue::find::<TankSize>(name).unwrap();
        let outside = size.outside.value;
        let outer_in3 = outside.length.inches() * outside.width.inches() * outside.height.inches();
        check(
            &format!("{name} outside"),
            outer_in3 / 231.0,
            outer_us_gal,
            Within::Absolute(5e-4),
        );
        let inner = size.inside_volume().us_gal();
        check(
            &format!("{name} inside"),
            inner,
            inner_us_gal,
            Within::Absolute(5e-4),
        );
    }
    for (name, litres) in [("cm_60", 59.948), ("cm_90", 169.576)] {
        let size = catalogue::find::<TankSize>(name).unwrap();
        check(
            name,
            size.inside_volume().litres(),
            litres,
            Within::Absolute(5e-4),
        );
    }
}
