//! Stress and deflection of panes.
//!
//! Source: Roark's Formulas for Stress and Strain, 7th ed., table 11.4, cases 1a, 1d and 1e
//! (1d and 1e partly from memory). Water 1000 kg/m3, glass 70 kN/mm2, Poisson's ratio 0.3.
//! Agreement to 0.5 %, or half the last digit where that is coarser.

use crate::compare::{Within, check};
use crate::panes::{figures, pane};
use lentic::geometry::plate::Support;

#[test]
fn wide_panes_follow_roark_case_1e() {
    // Length over height, both factors; two digits printed, one in memory.
    let rows = [
        (1.0, 0.16, 0.022),
        (2.0, 0.32, 0.056),
        (3.0, 0.37, 0.067),
        (4.0, 0.38, 0.070),
    ];
    for (ratio, stress, deflection) in rows {
        let bending = figures(&pane(0.4 * ratio, 0.4, 8.0), Support::FourEdges);
        let name = format!("case 1e at {ratio}");
        check(&name, bending.stress_factor, stress, Within::Absolute(5e-3));
        check(
            &name,
            bending.deflection_factor,
            deflection,
            Within::Absolute(1e-3),
        );
    }
}

#[test]
fn tall_panes_follow_roark_case_1d() {
    // Height over length; Roark's factors are of the length, ours of the height.
    for (ratio, stress, deflection) in [(2.0, 0.34, 0.060), (4.0, 0.49, 0.091)] {
        let bending = figures(&pane(0.4 / ratio, 0.4, 8.0), Support::FourEdges);
        let name = format!("case 1d at {ratio}");
        let found = bending.stress_factor * f64::powi(ratio, 2);
        check(&name, found, stress, Within::Relative(0.02));
        let found = bending.deflection_factor * f64::powi(ratio, 4);
        check(&name, found, deflection, Within::Relative(0.2));
    }
}

#[test]
fn a_long_braced_pane_bends_as_a_strip() {
    // A hinged beam under a triangular load: M = q l2 / (9 sqrt 3).
    let strip = 6.0 / (9.0 * 3.0_f64.sqrt());
    let bending = figures(&pane(3.0, 0.3, 8.0), Support::FourEdges);
    check(
        "strip",
        bending.stress_factor,
        strip,
        Within::Relative(1e-3),
    );
}
