//! Gas exchange, bubbles, airlift, oxygen use.

use lentic::air::{Airlift, airlift, bubble, demand};
use lentic::parameters::Aeration;
use lentic::units::{Flow, Length, Mass, Temperature};

use crate::compare::Within::{Absolute, Relative};
use crate::compare::check;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// Cole and Caraco 1998: 2.07 cm/h without wind, which is 0.4968 m/d. The
/// proposed band for a calm open surface has to hold it.
#[test]
fn transfer_velocity_without_wind() {
    assert!(Aeration::reference().open_k600.contains(0.4968));
}

/// Dry air holds 0.2786 kg/m3; the American standard air of 36 % humidity, 1.036
/// lb/h per standard cubic foot a minute, is 0.7 % lower (from memory).
#[test]
fn oxygen_in_air() {
    check(
        "oxygen in air",
        bubble::OXYGEN_IN_AIR_KG_M3,
        0.2786,
        Relative(0.002),
    );
    check(
        "oxygen in moist air",
        bubble::OXYGEN_IN_AIR_KG_M3,
        0.2766,
        Relative(0.008),
    );
}

/// Wurts, `McNeill` and Overhults 1994, *World Aquaculture* 25(4):51: a pump of 7.6
/// cm bore moved 111 L/min with 71 L/min of air let in 80 cm deep. The bore is
/// four times the model's largest and the lift near zero: order of magnitude only.
#[test]
fn water_lifted_by_a_pond_pump() {
    let tube = Airlift {
        air: Flow::from_l_min(71.0),
        bore: Length::from_cm(7.6),
        submerged: Length::from_cm(80.0),
        lift: Length::from_cm(2.0),
        temperature: celsius(25.0),
    };
    let sponge = tube.water_flow().l_min() * airlift::SPONGE_FACTOR.typical;
    check(
        "log10 of the flow",
        sponge.log10(),
        111_f64.log10(),
        Absolute(1.0),
    );
}

/// Clarke and Johnston 1999, abstract: about sixfold from 0 to 30 C, which is a
/// mean Q10 of 1.83.
#[test]
fn oxygen_use_of_fish_rises_with_warmth() {
    let at = |t| demand::fish_at_rest(Mass::from_g(50.0), celsius(t));
    let ratio = at(30.0) / at(0.0);
    check("ratio of 30 to 0 C", ratio, 6.16, Absolute(0.1));
    check("mean Q10", ratio.cbrt(), 1.83, Absolute(0.01));
}

/// The same paper's line through all species and temperatures, ln R = 0.80 ln M -
/// 5.43: 0.8849 mg/h at 10 g. It names no temperature; a factor of 2 at 10 C.
#[test]
fn oxygen_use_of_fish_by_the_line_of_all_data() {
    let value = demand::fish_at_rest(Mass::from_g(10.0), celsius(10.0)).mg_h();
    check(
        "log2 of the rate",
        value.log2(),
        0.8849_f64.log2(),
        Absolute(1.0),
    );
}
