//! Single rates of the start-up model, by hand or from an independent prototype. Whole runs
//! stand in `tests/models/checks.rs`.

use lentic::plants::shade;
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, floating, nitrification, planned_growth};
use lentic::units::{PhotonFlux, Share, Temperature};

use crate::compare::{Within, check};

fn percent(value: f64) -> Share {
    Share::from_percent(value)
}

fn central() -> Parameters<f64> {
    Parameters::<Band>::reference().central()
}

/// Diffusion coefficients of the prototype; resistances by hand from them.
#[test]
fn ammonium_through_the_reference_bed() {
    use lentic::substrate::release::{CappedSoil, Passage, Substance};
    let bed = CappedSoil {
        soil_depth_m: 0.025,
        soil_porosity: 0.70,
        soil_dry_bulk_density_kg_m3: 700.0,
        cap_depth_m: 0.025,
        cap_porosity: 0.40,
        effective_grain_mm: 0.5,
        pore_exchange_per_d: 6e3,
        enhancement: 1.5,
    };
    let ammonium = Substance {
        diffusivity_m2_d: 1.71e-4,
        soil_kd_l_kg: 2.0,
        cap_retardation: 1.2,
    };
    let passage = Passage::new(&bed, &ammonium);
    let digits = Within::Relative(3e-4);
    check("soil", 0.025 / 3.0 / passage.soil_d_m, 6.986e-5, digits);
    check("cap", 0.025 / passage.still_cap_d_m, 2.415e-5, digits);
    // 6000 x 2.469e-10 m2/d by currents beside it
    check("currents", 0.025 / passage.cap_d_m, 2.563e-5, digits);
    check("store", passage.store_m, 0.0525, digits);
    // 0.1388 x 0.4 x 1.2 x 0.025^2 / 2.563e-5
    check("rise", passage.half_rise_d(0.025), 1.6245, digits);
}

/// By hand from the rates given: 0.35 x 1.5966 x 7/7.6 and 0.40 x 1.3536 x 7/7.8 a day on
/// plenty, decay 0.05 x 1.2763.
#[test]
fn nitrifiers_grow_and_stand_still() {
    let (ammonia, nitrite) = nitrification::oxidisers(&Inputs::reference(), &central());
    let digits = Within::Relative(2e-4);
    let (decay, grown) = (0.063_815, (0.514_69, 0.485_91));
    check(
        "ammonia",
        ammonia.standstill_mg_l(),
        0.2 * decay / (grown.0 - decay),
        digits,
    );
    check(
        "nitrite",
        nitrite.standstill_mg_l(),
        0.08 * decay / (grown.1 - decay),
        digits,
    );
    let half = ammonia.net_growth_per_d(0.2);
    check("half", half, grown.0 / 2.0 - decay, digits);
}

/// By hand: 0.14 (DLI/(3 + DLI)) 5/2 less 0.05 a day, for floaters.
#[test]
fn floaters_by_light() {
    for (umol, expected) in [(100.0, 0.140_909), (50.0, 0.081_250), (30.0, 0.042_647)] {
        let inputs = Inputs {
            light: PhotonFlux::from_umol_m2_s(umol),
            ..Inputs::reference()
        };
        let growth = planned_growth(&inputs, &central());
        check(
            "growth",
            growth.floating_per_d,
            expected,
            Within::Absolute(5e-5),
        );
    }
}

/// Boudreau 1996 at the two pore shares.
#[test]
fn tortuosity_of_soil_and_sand() {
    use lentic::substrate::diffusion::tortuosity_squared;
    for (porosity, expected) in [
        (70.0, 1.7133),
        (40.0, 2.8326),
        (80.0, 1.4463),
        (90.0, 1.2107),
    ] {
        let value = tortuosity_squared(percent(porosity));
        check("tortuosity", value, expected, Within::Absolute(5e-5));
    }
}

#[test]
fn temperature_factors() {
    let warm = Temperature::from_celsius(25.0);
    let digits = Within::Absolute(5e-5);
    check(
        "ammonia oxidisers",
        nitrification::ammonia_warmth(warm),
        1.5966,
        digits,
    );
    check(
        "nitrite oxidisers",
        nitrification::nitrite_warmth(warm),
        1.3536,
        digits,
    );
    check("decay", nitrification::decay_warmth(warm), 1.2763, digits);
    check("duckweed", floating::warmth(warm), 0.9812, digits);
    let cooler = floating::warmth(Temperature::from_celsius(24.0));
    check("duckweed at 24 C", cooler, 0.953, Within::Absolute(5e-4));
    let cold = floating::warmth(Temperature::from_celsius(20.0));
    check("duckweed at 20 C", cold, 0.744, Within::Absolute(5e-4));
}

#[test]
fn light_below_floaters() {
    for (cover, expected) in [(0.33, 0.73), (0.5, 0.59), (0.66, 0.46), (1.0, 0.18)] {
        let value = shade::transmission(cover, 0.82);
        check("transmission", value, expected, Within::Absolute(5e-3));
    }
}
