//! The start-up model: its rates, and whole runs against an independent program.
//!
//! Expected values of whole runs: a prototype of the same equations in scipy
//! (LSODA), for a cube with 25 mm of soil, 25 mm of sand and 16 cm of water.

use lentic::numerics::rodas::IntegrationError;
use lentic::plants::index::{
    Floaters, Stems, floating_capacity_g_m2, planting_index, stem_capacity_g_m2,
};
use lentic::plants::shade;
use lentic::source::Band;
use lentic::startup::{
    Feed, Inputs, Parameters, Peak, Planting, Trajectory, floating, nitrification, planned_growth,
    run, supply,
};
use lentic::units::{Length, Mass, PhotonFlux, Share, Temperature};

use crate::compare::{Within, check};

const FLOOR_M2: f64 = 0.0493;

fn percent(value: f64) -> Share {
    Share::from_percent(value)
}

/// Plants in g dry/m2 and per cent of the surface.
fn planting(cover_pct: f64, fast_g_m2: f64, slow_g_m2: f64) -> Planting {
    Planting {
        cover: percent(cover_pct),
        fast: Mass::from_g(fast_g_m2 * FLOOR_M2),
        slow: Mass::from_g(slow_g_m2 * FLOOR_M2),
        ..Planting::default()
    }
}

fn cube(light_umol_m2_s: f64, planting: Planting) -> Inputs {
    Inputs {
        planting,
        light: PhotonFlux::from_umol_m2_s(light_umol_m2_s),
        ..Inputs::reference()
    }
}

fn central() -> Parameters<f64> {
    Parameters::<Band>::reference().central()
}

fn follow(inputs: &Inputs) -> Result<Trajectory, IntegrationError> {
    run(inputs, &central(), 90)
}

fn dark() -> Inputs {
    cube(0.0, planting(0.0, 0.0, 0.0))
}

fn heavily_planted() -> Inputs {
    Inputs {
        floaters_above: Some(percent(50.0)),
        ..cube(100.0, planting(40.0, 100.0, 25.0))
    }
}

/// A peak to 1 % and half a day.
#[track_caller]
fn check_peak(what: &str, peak: Peak, value: f64, day: f64) {
    check(what, peak.value, value, Within::Relative(0.01));
    check(
        &format!("day of {what}"),
        peak.day,
        day,
        Within::Absolute(0.5),
    );
}

/// Ammonia, nitrite and nitrate of a day, to half the last printed digit and a
/// thousandth for the interpolation to the day.
#[track_caller]
fn check_day(trajectory: &Trajectory, day: u32, expected: [(f64, f64); 3]) {
    let Some(sample) = trajectory.at_day(day) else {
        panic!("the run ends before day {day}");
    };
    let state = sample.state;
    let values = [state.ammonia, state.nitrite, state.nitrate];
    for (value, (expected, half_digit)) in values.into_iter().zip(expected) {
        let limit = half_digit + 0.001 * expected;
        check(
            &format!("day {day}"),
            value,
            expected,
            Within::Absolute(limit),
        );
    }
}

/// Two decimals.
fn two(values: [f64; 3]) -> [(f64, f64); 3] {
    values.map(|value| (value, 0.005))
}

#[test]
fn diffusion_through_the_reference_bed() {
    use lentic::substrate::release::{Bed, Passage, Pools, release};
    let bed = Bed {
        soil_depth_m: 0.025,
        soil_porosity: 0.70,
        soil_dry_bulk_density_kg_m3: 700.0,
        ammonium_kd_l_kg: 2.0,
        cap_depth_m: 0.025,
        cap_porosity: 0.40,
        cap_retardation: 1.2,
        ammonium_diffusivity_m2_d: 1.71e-4,
        enhancement: 1.5,
        mineralisation_25_c_per_d: 0.048,
        temperature_c: 25.0,
    };
    let passage = Passage::new(&bed);
    let digits = Within::Relative(3e-4);
    check("soil", 0.0125 / passage.soil_d_m, 6.986e-5, digits);
    check("cap", 0.025 / passage.cap_d_m, 2.415e-5, digits);
    check("conductance", passage.conductance_m_d, 1.2294e-3, digits);
    check(
        "unenhanced",
        passage.conductance_m_d / 1.5,
        8.196e-4,
        digits,
    );
    check("rise", passage.rise_d, 2.485, digits);
    let pools = Pools::fresh(&bed, 5.0, 0.052, 0.10);
    check("labile", pools.labile_g_m2, 4.55, digits);
    check("mineral", pools.mineral_g_m2, 1.75, digits);
    let stirred = Pools {
        mineral_g_m2: pools.mineral_g_m2 * 0.97,
        ..pools
    };
    let first = release(&passage, &stirred, 0.328, passage.rise(0.0));
    check("pore water", first.pore_water_mg_l, 32.33, digits);
    check(
        "first flux",
        first.flux_g_m2_d,
        0.0,
        Within::Absolute(1e-12),
    );
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
fn nitrifiers_grow_and_stand_still() {
    let (ammonia, nitrite) = nitrification::oxidisers(&dark(), &central());
    check(
        "standstill",
        ammonia.standstill_mg_l(),
        0.0893,
        Within::Absolute(5e-5),
    );
    check(
        "standstill",
        nitrite.standstill_mg_l(),
        0.191,
        Within::Absolute(5e-4),
    );
    check(
        "growth",
        ammonia.net_growth_per_d(2.0),
        0.5245,
        Within::Absolute(5e-5),
    );
    check(
        "growth",
        nitrite.net_growth_per_d(2.0),
        0.3314,
        Within::Absolute(5e-5),
    );
}

#[test]
fn light_below_floaters() {
    for (cover, expected) in [(0.33, 0.73), (0.5, 0.59), (0.66, 0.46), (1.0, 0.18)] {
        let value = shade::transmission(cover, 0.82);
        check("transmission", value, expected, Within::Absolute(5e-3));
    }
}

#[test]
fn duckweed_by_light() {
    for (umol, expected) in [(100.0, 0.202), (50.0, 0.123), (30.0, 0.072)] {
        let growth = planned_growth(&cube(umol, planting(20.0, 0.0, 0.0)), &central());
        check(
            "growth",
            growth.floating_per_d,
            expected,
            Within::Absolute(5e-4),
        );
    }
}

#[test]
fn the_dark_case_without_plants() {
    let trajectory = follow(&dark()).unwrap();
    let peaks = trajectory.peaks();
    check_peak("ammonia", peaks.ammonia, 3.55, 12.8);
    check_peak("nitrite", peaks.nitrite, 8.00, 27.5);
    check_peak("nitrate", peaks.nitrate, 11.1, 53.0);
    check_peak("release", peaks.release, 0.078, 21.5);
    let clear = trajectory.clear_after(0.25, 0.25).unwrap();
    check("clear", clear, 34.8, Within::Absolute(0.5));
    check(
        "window",
        trajectory.algae_window_days(),
        0.0,
        Within::Absolute(0.0),
    );
    check_day(&trajectory, 7, two([1.90, 0.03, 0.80]));
    check_day(&trajectory, 14, two([3.35, 1.37, 0.65]));
    check_day(&trajectory, 21, two([0.08, 6.85, 0.54]));
    check_day(&trajectory, 28, two([0.08, 7.99, 0.99]));
    check_day(&trajectory, 35, two([0.08, 0.18, 9.96]));
    check_day(
        &trajectory,
        56,
        [(0.08, 0.005), (0.15, 0.005), (11.1, 0.05)],
    );
}

#[test]
fn the_lit_case_without_plants() {
    let trajectory = follow(&cube(100.0, planting(0.0, 0.0, 0.0))).unwrap();
    let peaks = trajectory.peaks();
    check_peak("ammonia", peaks.ammonia, 3.04, 12.0);
    check_peak("nitrite", peaks.nitrite, 3.49, 16.5);
    check_peak("nitrate", peaks.nitrate, 2.67, 53.0);
    check_peak("release", peaks.release, 0.078, 21.0);
    check("algae", peaks.algae.value, 11.1, Within::Relative(0.01));
    let clear = trajectory.clear_after(0.25, 0.25).unwrap();
    check("clear", clear, 39.2, Within::Absolute(0.5));
    check(
        "window",
        trajectory.algae_window_days(),
        21.0,
        Within::Absolute(0.75),
    );
    check_day(&trajectory, 7, two([1.83, 0.02, 0.80]));
    check_day(&trajectory, 14, two([2.54, 1.24, 0.63]));
    check_day(&trajectory, 21, two([0.07, 1.85, 0.22]));
    check_day(&trajectory, 28, two([0.10, 2.11, 0.20]));
    check_day(&trajectory, 35, two([0.09, 1.31, 1.28]));
    check_day(&trajectory, 42, two([0.09, 0.20, 2.56]));
}

#[test]
fn slow_growers_alone_change_little() {
    let trajectory = follow(&cube(100.0, planting(0.0, 0.0, 25.0))).unwrap();
    let peaks = trajectory.peaks();
    check_peak("ammonia", peaks.ammonia, 3.00, 12.0);
    check_peak("nitrite", peaks.nitrite, 3.72, 16.8);
    check_peak("nitrate", peaks.nitrate, 2.50, 52.0);
    check_peak("release", peaks.release, 0.077, 21.0);
    check("algae", peaks.algae.value, 11.4, Within::Relative(0.01));
    let clear = trajectory.clear_after(0.25, 0.25).unwrap();
    check("clear", clear, 39.2, Within::Absolute(0.5));
    check(
        "window",
        trajectory.algae_window_days(),
        23.0,
        Within::Absolute(0.75),
    );
}

#[test]
fn a_heavily_planted_tank_stays_clear() {
    let trajectory = follow(&heavily_planted()).unwrap();
    let peaks = trajectory.peaks();
    check_peak("ammonia", peaks.ammonia, 0.328, 0.0);
    let later = trajectory.peak_from(3.0, |sample| sample.state.ammonia);
    check("ammonia later", later.value, 0.046, Within::Absolute(1e-3));
    check("nitrite", peaks.nitrite.value, 3e-5, Within::Absolute(5e-6));
    check_peak("nitrate", peaks.nitrate, 1.00, 0.0);
    check_peak("release", peaks.release, 0.062, 15.0);
    check("algae", peaks.algae.value, 0.02, Within::Absolute(5e-3));
    check(
        "clear",
        trajectory.clear_after(0.35, 0.25).unwrap(),
        0.0,
        Within::Absolute(0.0),
    );
    check(
        "window",
        trajectory.algae_window_days(),
        0.75,
        Within::Absolute(0.25),
    );
    for (day, ammonia) in [
        (3, 0.013),
        (7, 0.019),
        (14, 0.033),
        (21, 0.045),
        (35, 0.036),
        (56, 0.009),
    ] {
        let value = trajectory.at_day(day).unwrap().state.ammonia;
        check(
            &format!("day {day}"),
            value,
            ammonia,
            Within::Absolute(6e-4),
        );
    }
    for (day, floating, fast, slow) in [
        (7, 13.0, 91.0, 23.0),
        (28, 12.7, 119.0, 23.0),
        (56, 9.1, 209.0, 24.0),
        (90, 3.1, 326.0, 25.0),
    ] {
        let state = trajectory.at_day(day).unwrap().state;
        check(
            &format!("floaters, day {day}"),
            state.floating,
            floating,
            Within::Absolute(0.06),
        );
        check(
            &format!("stems, day {day}"),
            state.fast,
            fast,
            Within::Absolute(0.6),
        );
        check(
            &format!("slow growers, day {day}"),
            state.slow,
            slow,
            Within::Absolute(0.6),
        );
    }
}

/// Fed, the floaters do not starve of phosphorus.
#[test]
fn feed_keeps_the_floaters() {
    let fed = Inputs {
        feed: Feed {
            mass_per_day: Mass::from_g(FLOOR_M2),
            protein: percent(45.0),
        },
        ..heavily_planted()
    };
    let state = follow(&fed).unwrap().at_day(90).unwrap().state;
    check("floaters", state.floating, 12.6, Within::Absolute(0.06));
}

#[test]
fn stems_alone_start_late() {
    let trajectory = follow(&cube(100.0, planting(0.0, 25.0, 0.0))).unwrap();
    let peaks = trajectory.peaks();
    check_peak("ammonia", peaks.ammonia, 1.864, 14.0);
    check_peak("nitrite", peaks.nitrite, 1.105, 34.5);
    check("algae", peaks.algae.value, 7.22, Within::Relative(0.01));
    let clear = trajectory.clear_after(0.25, 0.25).unwrap();
    check("clear", clear, 51.0, Within::Absolute(0.5));
    let last = trajectory.at_day(90).unwrap().state;
    check("stems", last.fast, 245.9, Within::Relative(1e-3));
    let week = trajectory.at_day(7).unwrap().state;
    check("day 7", week.ammonia, 0.654, Within::Absolute(1e-3));
}

/// Peak of ammonia and of nitrite and largest algae, lit, without plants.
#[test]
fn a_thicker_cap_lets_less_through() {
    for (cap_mm, release, ammonia, nitrite) in [
        (5.0, 151.0, 7.61, 9.97),
        (12.5, 110.0, 5.06, 6.44),
        (25.0, 78.0, 3.04, 3.49),
        (50.0, 51.0, 1.15, 1.59),
    ] {
        let inputs = Inputs {
            cap_depth: Length::from_mm(cap_mm),
            ..cube(100.0, planting(0.0, 0.0, 0.0))
        };
        let peaks = follow(&inputs).unwrap().peaks();
        let limit = Within::Relative(0.01);
        check(
            &format!("release, {cap_mm} mm"),
            peaks.release.value * 1e3,
            release,
            limit,
        );
        check(
            &format!("ammonia, {cap_mm} mm"),
            peaks.ammonia.value,
            ammonia,
            limit,
        );
        check(
            &format!("nitrite, {cap_mm} mm"),
            peaks.nitrite.value,
            nitrite,
            limit,
        );
    }
}

#[test]
fn twice_the_soil_lengthens_the_release() {
    let inputs = Inputs {
        soil_depth: Length::from_mm(50.0),
        ..cube(100.0, planting(0.0, 0.0, 0.0))
    };
    let release = follow(&inputs).unwrap().peaks().release;
    check("release", release.value, 0.086, Within::Relative(0.01));
    check("day", release.day, 34.0, Within::Absolute(1.0));
}

/// Slow growers 10 g/m2, floaters thinned at ten points over their first cover.
#[test]
fn more_plants_less_ammonia_until_they_shade_each_other() {
    // the stir-up of day 0, where nothing higher comes later
    const STIRRED: f64 = 0.33;
    for (fast, cover, ammonia, nitrite, algae, clear) in [
        (0.0, 0.0, 3.02, 3.59, 11.2, Some(39.0)),
        (0.0, 20.0, 0.70, 0.19, 5.5, Some(19.0)),
        (0.0, 40.0, STIRRED, 0.0, 1.4, Some(0.0)),
        (25.0, 0.0, 1.89, 1.11, 7.2, Some(51.0)),
        (25.0, 20.0, STIRRED, 0.0, 1.5, Some(0.0)),
        (25.0, 90.0, 0.53, 0.0, 0.0, None),
        (50.0, 0.0, 0.70, 0.02, 3.7, Some(20.0)),
        (50.0, 90.0, 0.58, 0.0, 0.0, None),
        (100.0, 0.0, STIRRED, 0.0, 0.0, Some(0.0)),
        (100.0, 90.0, 0.68, 0.65, 0.0, None),
    ] {
        let inputs = Inputs {
            floaters_above: Some(percent(cover + 10.0)),
            ..cube(100.0, planting(cover, fast, 10.0))
        };
        let trajectory = follow(&inputs).unwrap();
        let peaks = trajectory.peaks();
        let case = format!("{fast} g/m2, {cover} %");
        check(&case, peaks.ammonia.value, ammonia, Within::Absolute(6e-3));
        check(&case, peaks.nitrite.value, nitrite, Within::Absolute(1e-2));
        check(&case, peaks.algae.value, algae, Within::Absolute(6e-2));
        let found = trajectory.clear_after(0.25, 0.25);
        assert_eq!(found.is_some(), clear.is_some(), "{case}: {found:?}");
        if let (Some(found), Some(clear)) = (found, clear) {
            check(&case, found, clear, Within::Absolute(0.6));
        }
    }
}

/// At pH 6.6 the ammonia oxidisers are held back.
#[test]
fn acid_water_lets_ammonia_pile_up() {
    let inputs = Inputs { ph: 6.6, ..dark() };
    let ammonia = follow(&inputs).unwrap().peaks().ammonia;
    check("ammonia", ammonia.value, 9.9, Within::Absolute(0.05));
}

#[test]
fn supply_of_the_bare_bed() {
    for (days, expected) in [(7, 0.256), (14, 0.714), (21, 1.247), (28, 1.790)] {
        let supply = supply(&heavily_planted(), &central(), days).unwrap();
        check(
            &format!("{days} d"),
            supply.released_g_m2,
            expected,
            Within::Absolute(5e-4),
        );
        check(
            "stirred",
            supply.stirred_g_m2,
            0.0525,
            Within::Absolute(1e-6),
        );
    }
    let filled = supply(&dark(), &central(), 1).unwrap();
    check(
        "pore water",
        filled.first_pore_water_mg_l,
        32.33,
        Within::Absolute(5e-3),
    );
    let peak = supply(&dark(), &central(), 90).unwrap().peak_release;
    check_peak("release", peak, 0.078, 21.5);
}

#[test]
fn index_of_three_plantings() {
    let numbers = central();
    for (cover, fast, expected) in [(20.0, 0.0, 0.73), (20.0, 25.0, 1.58), (40.0, 50.0, 2.94)] {
        let inputs = cube(100.0, planting(cover, fast, 10.0));
        let growth = planned_growth(&inputs, &numbers);
        let floaters = Floaters {
            mass_g_m2: numbers.floating.closed_layer * cover / 100.0,
            start_nitrogen: numbers.floating.start_nitrogen,
            most_nitrogen: numbers.floating.most_nitrogen,
            growth_per_d: growth.floating_per_d,
        };
        let stems = Stems {
            mass_g_m2: fast,
            start_nitrogen: numbers.fast.start_nitrogen,
            most_nitrogen: numbers.fast.most_nitrogen,
            growth_per_d: growth.fast_per_d,
            lag_d: numbers.submerged.lag,
        };
        let capacity = floating_capacity_g_m2(&floaters, 21.0) + stem_capacity_g_m2(&stems, 21.0);
        let supply = supply(&inputs, &numbers, 21).unwrap().total_g_m2();
        let index = planting_index(capacity, supply);
        check(
            &format!("{cover} %, {fast} g/m2"),
            index,
            expected,
            Within::Absolute(5e-3),
        );
    }
}

/// Nothing is made or lost: what is in the tank and what left it add up.
#[test]
fn nitrogen_is_kept() {
    for inputs in [
        dark(),
        heavily_planted(),
        cube(100.0, planting(90.0, 25.0, 10.0)),
    ] {
        let trajectory = follow(&inputs).unwrap();
        let start = trajectory.samples[0].nitrogen_g_m2;
        for sample in &trajectory.samples {
            let off = sample.nitrogen_g_m2 / start - 1.0;
            assert!(off.abs() < 1e-9, "{off:e} on day {}", sample.day);
        }
    }
}
