//! Sizes of the trade are what they say.

use super::*;

#[test]
fn nominal_sizes_have_the_printed_outer_volume() {
    // Outside volume of the printed dimensions over 231 in3 to the gallon.
    for (name, gallons) in [
        ("us_2_5_gal", 2.494),
        ("us_10_gal", 10.390),
        ("us_20_gal_long", 18.701),
        ("us_40_gal_breeder", 44.883),
        ("us_55_gal", 56.727),
        ("us_75_gal", 78.545),
    ] {
        let outside = find::<TankSize>(name).unwrap().outside.value;
        let in3 = [outside.length, outside.width, outside.height]
            .map(Length::inches)
            .iter()
            .product::<f64>();
        assert_relative_eq!(in3 / 231.0, gallons, max_relative = 5e-4);
    }
    assert_eq!(sizes().len(), 12);
}

#[test]
fn nominal_sizes_hold_less_than_they_say() {
    // (L - 2t)(W - 2t)(H - t), worked.
    for (name, gallons) in [
        ("us_10_gal", 9.423),
        ("us_20_gal_long", 17.256),
        ("us_40_gal_breeder", 42.358),
        ("us_55_gal", 53.335),
        ("us_75_gal", 72.773),
    ] {
        let inside = find::<TankSize>(name).unwrap().inside_volume();
        assert_relative_eq!(inside.us_gal(), gallons, max_relative = 1e-4);
    }
    let sixty = find::<TankSize>("60 cm").unwrap().inside_volume();
    assert_relative_eq!(sixty.litres(), 59.948, max_relative = 1e-5);
}
