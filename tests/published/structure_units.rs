//! Units of volume, mass, pressure and hardness.
//!
//! Sources: NIST Handbook 44, appendix C (US gallon 231 in3, US bushel 2150.42 in3,
//! both exact); UK Units of Measurement Regulations (imperial gallon 4.546 09 L, from
//! memory); international yard and pound of 1959; the German degree is 10 mg CaO/L by
//! definition. Exact factors agree to 1e-9, hardness to 1e-3 since it rests on atomic
//! weights.

use crate::compare::{Within, check};
use lentic::units::{Alkalinity, Mass, Pressure, Quantity, Temperature, Volume};

const EXACT: Within = Within::Relative(1e-9);

fn litres(text: &str) -> f64 {
    Volume::parse(text).unwrap().litres()
}

#[test]
fn volumes_follow_the_exact_inch() {
    check("10 US gal", litres("10 us_gal"), 37.854_117_84, EXACT);
    check("10 imp gal", litres("10 imp_gal"), 45.4609, EXACT);
    check("8 dry qt", litres("8 dry_qt"), 8.809_767_541_72, EXACT);
    check("8 liquid qt", litres("8 liq_qt"), 7.570_823_568, EXACT);
    check("1.5 ft3", litres("1.5 ft3"), 42.475_269_888, EXACT);
}

#[test]
fn mass_pressure_and_temperature_follow_their_definitions() {
    check(
        "50 lb",
        Mass::parse("50 lb").unwrap().kg(),
        22.679_618_5,
        EXACT,
    );
    let psf = Pressure::parse("40 psf").unwrap();
    check("40 psf", psf.kpa(), 1.915_210_359_21, EXACT);
    let warm = Temperature::parse("77 F").unwrap();
    check("77 F", warm.celsius(), 25.0, EXACT);
}

#[test]
fn a_degree_of_alkalinity_is_ten_mg_of_lime() {
    let four = Alkalinity::parse("4 dKH").unwrap();
    let close = Within::Relative(1e-3);
    check("4 dKH as CaCO3", four.caco3_mg_l(), 71.392, close);
    check("4 dKH in meq/L", four.meq_l(), 1.426_61, close);
}
