//! No nitrogen and no phosphorus is made or lost in any tank, no amount falls below nothing
//! or over what there is: the demo tanks and designs drawn at random.

use lentic::catalogue::{caps, plants, soils};
use lentic::design::Design;
use lentic::numerics::sobol::Sobol;
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, run};
use proptest::prelude::*;

use crate::states::{depth_m, impossible, is_possible};
use crate::{command, demo};

const DAYS: u32 = 90;
/// Allowed over the run, of what was there at filling.
const DRIFT: f64 = 1e-9;

/// The largest relative departure from the nitrogen and the phosphorus at filling.
fn drift(design: &Design, numbers: &Parameters<f64>) -> f64 {
    let trajectory = run(&Inputs::of(design), numbers, DAYS).expect("a run");
    let first = &trajectory.samples[0];
    let off = trajectory.samples.iter().flat_map(|sample| {
        [
            sample.nitrogen_g_m2 / first.nitrogen_g_m2 - 1.0,
            sample.phosphorus_g_m2 / first.phosphorus_g_m2 - 1.0,
        ]
    });
    // not a number would be lost in a maximum, so it has to count as large
    off.map(f64::abs).fold(
        0.0,
        |largest, off| if off <= largest { largest } else { off },
    )
}

/// Members followed of each design.
const MEMBERS: u32 = 4;
#[test]
fn members_of_demo_tanks_hold_what_there_is() {
    for path in demo::tanks() {
        let text = std::fs::read_to_string(command::root().join(&path)).expect("a file");
        let design = lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{path}: {faults}"));
        assert_eq!(impossible(&design, 16, DAYS), None, "{path}");
    }
}

/// Tanks in which members once grew on less than no nitrate or phosphate.
#[test]
fn members_of_tanks_that_went_below_nothing_no_longer_do() {
    for tank in [
        "[tank]\nshape = \"quarter_cylinder\"\nradius = \"24.8 cm\"\nheight = \"16 cm\"\n\
         [soil]\nmaterial = \"sandy_loam\"\ndepth = \"40 mm\"\n\
         [cap]\nmaterial = \"coal_slag_grit_20_40\"\ndepth = \"30.2 mm\"\n\
         [water]\ntemperature = \"30 C\"\n",
        "[tank]\nshape = \"box\"\nsize = \"40 x 40 x 12 cm\"\n\
         [soil]\nmaterial = \"organic_potting_mix\"\ndepth = \"25 mm\"\n\
         [cap]\nmaterial = \"filter_sand\"\ndepth = \"35 mm\"\n",
        "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n\
         [soil]\nmaterial = \"organic_potting_mix\"\ndepth = \"25 mm\"\n\
         [cap]\nmaterial = \"filter_sand\"\ndepth = \"35 mm\"\n\
         [[animals]]\nname = \"goldfish\"\ncount = 45\n",
    ] {
        let design = lentic::spec::parse(tank).unwrap_or_else(|faults| panic!("{tank}: {faults}"));
        assert_eq!(impossible(&design, 200, DAYS), None, "{tank}");
    }
}

/// Five years are followed and stay within what there is.
#[test]
fn five_years_of_every_demo_tank_are_finite_and_bounded() {
    const YEARS_D: u32 = 1825;
    for path in demo::tanks() {
        let text = std::fs::read_to_string(command::root().join(&path)).expect("a file");
        let design = lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{path}: {faults}"));
        let inputs = Inputs::of(&design);
        let numbers = Parameters::<Band>::of(&design).central();
        let course =
            run(&inputs, &numbers, YEARS_D).unwrap_or_else(|error| panic!("{path}: {error}"));
        let depth_m = depth_m(&inputs);
        for sample in course.days() {
            assert!(is_possible(sample, depth_m), "{path}: {sample:?}");
        }
    }
}

#[test]
fn demo_tanks_keep_their_nitrogen() {
    for path in demo::tanks() {
        let text = std::fs::read_to_string(command::root().join(&path)).expect("a file");
        let design = lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{path}: {faults}"));
        let drift = drift(&design, &Parameters::<Band>::of(&design).central());
        assert!(drift < DRIFT, "{path}: {drift:e}");
    }
}

/// A tank of random size, bed, planting, light, warmth and events.
fn any_spec() -> impl Strategy<Value = String> {
    let size = (20.0..150.0, 15.0..60.0, 25.0..70.0)
        .prop_map(|(length, width, height)| format!("{length:.1} x {width:.1} x {height:.1} cm"));
    let bed = (
        0..soils().len(),
        5.0..60.0,
        0..caps().len(),
        5.0..80.0_f64,
        0..3_u8,
    )
        .prop_map(|(soil, soil_mm, cap, cap_mm, soaked)| {
            let (soil, cap) = (&soils()[soil].name, &caps()[cap].name);
            format!(
                "[soil]\nmaterial = \"{soil}\"\ndepth = \"{soil_mm:.1} mm\"\nsoaked = {soaked}\n\
                 [cap]\nmaterial = \"{cap}\"\ndepth = \"{cap_mm:.1} mm\"\n"
            )
        });
    let plant = (0..plants().len(), 1.0..300.0)
        .prop_map(|(plant, grams)| (plants()[plant].name.clone(), grams));
    let list = |key: &'static str, most: usize| {
        proptest::collection::vec(plant.clone(), 0..=most).prop_map(move |stands| {
            let one = |(name, grams)| {
                format!("[[{key}]]\nname = \"{name}\"\namount = \"{grams:.1} g\"\n")
            };
            stands.into_iter().map(one).collect::<String>()
        })
    };
    let surroundings = (5.0..35.0, 5.5..9.0, 1.0..300.0, 0.0..16.0, 0.0..50.0).prop_map(
        |(celsius, ph, par, hours, nitrate)| {
            format!(
                "[water]\ntemperature = \"{celsius:.1} C\"\nph = {ph:.2}\nnitrate = \"{nitrate:.1} mg/L\"\n\
                 [light]\npar = \"{par:.1} umol/m2/s\"\nhours = {hours:.1}\n"
            )
        },
    );
    let action = prop_oneof![
        (0.0..100.0).prop_map(|share| format!("water_change = \"{share:.1} %\"\n")),
        (0.0..50.0).prop_map(|share| format!("disturbed = \"{share:.1} %\"\n")),
        (1.0..20.0).prop_map(|depth| format!("cap_added = \"{depth:.1} mm\"\n")),
        list("events.plants_added", 2).prop_filter("some plants", |text| !text.is_empty()),
        // taken out is what was put in
        list("events.plants_added", 2)
            .prop_filter("some plants", |text| !text.is_empty())
            .prop_map(|added| {
                let removed = added.replace("plants_added", "plants_removed");
                format!("{added}[[events]]\nday = 89\n{removed}")
            }),
    ];
    let events = proptest::collection::vec((0.0..90.0, action), 0..5).prop_map(|events| {
        let one = |(day, action)| format!("[[events]]\nday = {day:.2}\n{action}");
        events.into_iter().map(one).collect::<String>()
    });
    (size, bed, list("plants", 4), surroundings, events).prop_map(
        |(size, bed, plants, surroundings, events)| {
            format!(
                "[tank]\nshape = \"box\"\nsize = \"{size}\"\n{bed}{plants}{surroundings}{events}"
            )
        },
    )
}

proptest! {
    #![proptest_config(crate::random::config(100))]

    /// With the typical numbers, and with one draw of all of them.
    #[test]
    fn any_design_keeps_its_nitrogen_and_phosphorus(spec in any_spec(), member in 0_u32..4096) {
        let design = lentic::spec::parse(&spec);
        prop_assume!(design.is_ok());
        let design = design.expect("a design");
        let bands = Parameters::<Band>::of(&design);
        let points = Sobol::new(1);
        let drawn = bands.draw(|dimension| points.coordinate(member, dimension));
        for numbers in [bands.central(), drawn] {
            let drift = drift(&design, &numbers);
            prop_assert!(drift < DRIFT, "{drift:e}\n{spec}");
        }
        let wrong = impossible(&design, MEMBERS, DAYS);
        prop_assert!(wrong.is_none(), "{wrong:?}\n{spec}");
    }
}
