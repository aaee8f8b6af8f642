//! Whole starts against an independent prototype of the same equations (scipy, LSODA),
//! whose printed values are typed in here.
//!
//! The prototype knows no stable rest of the soil, no ammonium that roots leave on its
//! exchanger and no trimming of stems; they are switched off. Values above 1e-3 are held to
//! 1 %, smaller ones to 1e-5.

use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, PlantedMass, Sample, Trajectory, run};
use lentic::units::{Area, Length, Mass, PhotonFlux, Share, Temperature};

/// What the prototype printed of a run of ninety days.
struct Printed {
    name: &'static str,
    /// From day 3 on, mg N/L, each with its day.
    ammonia: (f64, f64),
    nitrite: (f64, f64),
    /// From day 0 on.
    nitrate: f64,
    phosphate: f64,
    algae: f64,
    /// First day from which ammonia and nitrite stay under 0.25 mg N/L.
    clear: f64,
    end: End,
}

/// In the cube under pea gravel the prototype's slow growers root phosphorus, from about day
/// 75 on, out of a soil that holds none (its soil ends 1.2 mg P/m2 below nothing). Here roots
/// find none there, so that its figure is a bound, met to 4 %; every other one holds.
const OVERDRAWN: (&str, &str) = ("gravel cube", "slow");

/// Amounts on day 90 and what the bed gave off by then.
struct End {
    ammonia: f64,
    nitrite: f64,
    nitrate: f64,
    phosphate: f64,
    floating: f64,
    fast: f64,
    slow: f64,
    floating_n: f64,
    floating_p: f64,
    fast_n: f64,
    fast_p: f64,
    ammonia_oxidisers: f64,
    nitrite_oxidisers: f64,
    detritus_n: f64,
    released_n: f64,
    released_p: f64,
}

const FLOOR: f64 = 0.05;

/// The reference parameters as the prototype has them.
fn numbers() -> Parameters<f64> {
    let mut numbers = Parameters::<Band>::reference().central();
    numbers.soil.stable_mineralisation = 0.0;
    numbers.soil.stable_phosphorus_return = 0.0;
    numbers.soil.exchange_turnover = 0.0;
    numbers
}

/// Plants in g dry/m2 and per cent of the surface.
fn planting(cover_pct: f64, fast_g_m2: f64, slow_g_m2: f64) -> PlantedMass {
    PlantedMass {
        cover: Share::from_percent(cover_pct),
        fast: Mass::from_g(fast_g_m2 * FLOOR),
        slow: Mass::from_g(slow_g_m2 * FLOOR),
        ..PlantedMass::default()
    }
}

fn reference(light: f64, planting: PlantedMass) -> Inputs {
    let floor = Area::from_m2(FLOOR);
    Inputs {
        floor,
        water: floor * Length::from_cm(16.0),
        planting,
        light: PhotonFlux::from_umol_m2_s(light),
        floaters_above: Some(Share::from_percent(50.0)),
        ..Inputs::reference()
    }
}

/// The cube over potting mix, and the numbers of that mix.
fn cube(grain_mm: f64) -> (Inputs, Parameters<f64>) {
    let floor = Area::from_m2(FLOOR);
    let inputs = Inputs {
        water: floor * Length::from_cm(18.0),
        cap_depth: Length::from_mm(40.0),
        light_hours: 9.0,
        temperature: Temperature::from_celsius(24.0),
        ph: 7.4,
        ..reference(80.0, planting(35.0, 52.7, 27.4))
    };
    let mut numbers = numbers();
    let soil = &mut numbers.soil;
    (soil.dry_bulk_density, soil.porosity) = (150.0, 0.88);
    (soil.total_nitrogen, soil.mineral_nitrogen) = (9.0, 0.40);
    (soil.ammonium_kd, soil.pore_phosphate) = (8.0, 5.0);
    (soil.reducible_phosphorus, soil.fast_share, soil.slow_share) = (0.05, 0.015, 0.04);
    numbers.cap.effective_grain = grain_mm;
    numbers.floating.closed_layer = 50.0;
    numbers.tap.nitrate = 1.13;
    (inputs, numbers)
}

#[track_caller]
fn check(name: &str, what: &str, value: f64, printed: f64) {
    let limit = if printed > 1e-3 { 0.01 * printed } else { 1e-5 };
    let off = (value - printed).abs();
    assert!(off <= limit, "{name}, {what}: {value} for {printed}");
}

#[track_caller]
fn holds(inputs: &Inputs, numbers: &Parameters<f64>, printed: &Printed) {
    let course = run(inputs, numbers, 90).expect("a run");
    let name = printed.name;
    let late = |of: fn(&Sample) -> f64| course.peak_from(3.0, of);
    let whole = |of: fn(&Sample) -> f64| course.peak_from(0.0, of).value;
    for (what, peak, (value, day)) in [
        ("ammonia", late(|at| at.state.ammonia), printed.ammonia),
        ("nitrite", late(|at| at.state.nitrite), printed.nitrite),
    ] {
        check(name, what, peak.value, value);
        let off = (peak.day - day).abs();
        assert!(off <= 0.2, "{name}, day of {what}: {} for {day}", peak.day);
    }
    check(
        name,
        "nitrate",
        whole(|at| at.state.nitrate),
        printed.nitrate,
    );
    check(
        name,
        "phosphate",
        whole(|at| at.state.phosphate),
        printed.phosphate,
    );
    check(name, "algae", whole(|at| at.state.algae), printed.algae);
    let clear = course.clear_after(0.25, 0.25).expect("a day");
    assert!(
        (clear - printed.clear).abs() <= 0.2,
        "{name}: clear on {clear}"
    );
    at_the_end(name, &course, &printed.end);
}

#[track_caller]
fn at_the_end(name: &str, course: &Trajectory, end: &End) {
    let last = course.at_day(90).expect("day 90").state;
    for (what, value, printed) in [
        ("ammonia", last.ammonia, end.ammonia),
        ("nitrite", last.nitrite, end.nitrite),
        ("nitrate", last.nitrate, end.nitrate),
        ("phosphate", last.phosphate, end.phosphate),
        ("floating", last.floating, end.floating),
        ("fast", last.fast, end.fast),
        ("slow", last.slow, end.slow),
        ("floating_n", last.floating_n, end.floating_n),
        ("floating_p", last.floating_p, end.floating_p),
        ("fast_n", last.fast_n, end.fast_n),
        ("fast_p", last.fast_p, end.fast_p),
        (
            "ammonia_oxidisers",
            last.ammonia_oxidisers,
            end.ammonia_oxidisers,
        ),
        (
            "nitrite_oxidisers",
            last.nitrite_oxidisers,
            end.nitrite_oxidisers,
        ),
        ("detritus_n", last.detritus_n, end.detritus_n),
        ("released_n", last.released_n, end.released_n),
        ("released_p", last.released_p, end.released_p),
    ] {
        if (name, what) == OVERDRAWN {
            assert!(value < printed && value > 0.96 * printed, "{value}");
        } else {
            check(name, what, value, printed);
        }
    }
}

#[test]
fn dark_without_plants() {
    let printed = Printed {
        name: "dark",
        ammonia: (5.254, 15.8),
        nitrite: (8.54, 23.4),
        nitrate: 13.74,
        phosphate: 0.5769,
        algae: 0.02,
        clear: 30.0,
        end: End {
            ammonia: 0.014,
            nitrite: 0.009_109,
            nitrate: 11.48,
            phosphate: 0.5769,
            floating: 0.0,
            fast: 0.0,
            slow: 0.0,
            floating_n: 0.0,
            floating_p: 0.0,
            fast_n: 0.0,
            fast_p: 0.0,
            ammonia_oxidisers: 0.1487,
            nitrite_oxidisers: 0.049_92,
            detritus_n: 7.117e-5,
            released_n: 6.159,
            released_p: 0.086_93,
        },
    };
    holds(
        &reference(0.0, PlantedMass::default()),
        &numbers(),
        &printed,
    );
}

#[test]
fn lit_without_plants() {
    let printed = Printed {
        name: "lit bare",
        ammonia: (4.789, 15.4),
        nitrite: (7.603, 23.4),
        nitrate: 11.67,
        phosphate: 0.034_04,
        algae: 5.575,
        clear: 29.9,
        end: End {
            ammonia: 0.052_18,
            nitrite: 0.010_66,
            nitrate: 7.725,
            phosphate: 0.007_865,
            floating: 0.0,
            fast: 0.0,
            slow: 0.0,
            floating_n: 0.0,
            floating_p: 0.0,
            fast_n: 0.0,
            fast_p: 0.0,
            ammonia_oxidisers: 0.1971,
            nitrite_oxidisers: 0.065_88,
            detritus_n: 1.073,
            released_n: 6.16,
            released_p: 0.092_95,
        },
    };
    holds(
        &reference(100.0, PlantedMass::default()),
        &numbers(),
        &printed,
    );
}

#[test]
fn heavily_planted_over_loam() {
    let printed = Printed {
        name: "heavy ref",
        ammonia: (0.052_86, 17.8),
        nitrite: (0.086_77, 29.9),
        nitrate: 1.0,
        phosphate: 0.033_28,
        algae: 0.020_16,
        clear: 0.0,
        end: End {
            ammonia: 0.022_53,
            nitrite: 0.001_115,
            nitrate: 7.752e-5,
            phosphate: 0.002_367,
            floating: 12.65,
            fast: 309.9,
            slow: 23.83,
            floating_n: 0.2237,
            floating_p: 0.054_51,
            fast_n: 7.32,
            fast_p: 1.466,
            ammonia_oxidisers: 0.025_97,
            nitrite_oxidisers: 0.002_815,
            detritus_n: 0.9533,
            released_n: 2.8,
            released_p: 0.042_93,
        },
    };
    let inputs = reference(100.0, planting(40.0, 100.0, 25.0));
    holds(&inputs, &numbers(), &printed);
}

#[test]
fn a_starter_cube_over_potting_mix() {
    let printed = Printed {
        name: "cube starter",
        ammonia: (0.029_36, 6.5),
        nitrite: (0.001_004, 29.4),
        nitrate: 1.13,
        phosphate: 0.048_33,
        algae: 0.020_23,
        clear: 0.0,
        end: End {
            ammonia: 0.021_71,
            nitrite: 0.000_195_8,
            nitrate: 9.5e-7,
            phosphate: 0.000_621_2,
            floating: 25.1,
            fast: 121.2,
            slow: 23.12,
            floating_n: 0.4401,
            floating_p: 0.066_42,
            fast_n: 2.387,
            fast_p: 0.5763,
            ammonia_oxidisers: 0.002_91,
            nitrite_oxidisers: 0.000_181_1,
            detritus_n: 0.5556,
            released_n: 0.5362,
            released_p: 0.015_88,
        },
    };
    let (inputs, numbers) = cube(0.5);
    holds(&inputs, &numbers, &printed);
}

#[test]
fn the_same_cube_under_pea_gravel() {
    let printed = Printed {
        name: "gravel cube",
        ammonia: (0.086_88, 5.8),
        nitrite: (0.007_049, 9.9),
        nitrate: 1.13,
        phosphate: 0.048_33,
        algae: 0.020_23,
        clear: 0.0,
        end: End {
            ammonia: 0.021_57,
            nitrite: 0.000_3,
            nitrate: 1.487e-6,
            phosphate: 0.000_440_3,
            floating: 25.08,
            fast: 112.7,
            slow: 23.59,
            floating_n: 0.4347,
            floating_p: 0.096_64,
            fast_n: 2.08,
            fast_p: 0.3894,
            ammonia_oxidisers: 0.004_688,
            nitrite_oxidisers: 0.000_186_2,
            detritus_n: 0.5289,
            released_n: 1.289,
            released_p: 0.3804,
        },
    };
    let (inputs, numbers) = cube(5.2);
    holds(&inputs, &numbers, &printed);
}
