//! Laws of the plan of any tank: it is computed, finite, and its parts add up.

use lentic::design::Design;
use lentic::plan::{Options, Plan, plan};
use proptest::prelude::*;

use crate::extremes;
use crate::random_spec;

/// Few days: every rule sees them, and the run takes most of the time.
const OPTIONS: Options = Options {
    members: 0,
    seed: 1,
    days: 20,
};

/// Random designs; what some bytes stand for is at times no design.
fn design() -> impl Strategy<Value = Design> {
    prop::collection::vec(any::<u8>(), 20..120).prop_filter_map("no design", |bytes| {
        lentic::spec::parse(&random_spec::spec(&bytes)).ok()
    })
}

fn planned(design: &Design) -> Plan {
    plan(design, OPTIONS).expect("a plan")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_design_is_planned_with_finite_numbers(design in design()) {
        let plan = planned(&design);
        prop_assert_eq!(extremes::odd_in(&plan), Vec::<String>::new());
    }

    #[test]
    fn any_tank_is_filled_by_its_parts_and_weighs_their_sum(design in design()) {
        // A bed that rises out of the water is counted with what is above it.
        prop_assume!(design.bed().top.highest.depth <= design.water_level());
        let vessel = design.vessel();
        let above = vessel.brimful() - vessel.volume_below(design.water_level());
        let parts = design.bed().volume() + design.water() + design.hardscape() + above;
        prop_assert!((parts / vessel.brimful() - 1.0).abs() < 1e-9);
        let weight = planned(&design).weight;
        let sum = weight.shell_kg + weight.soil_kg + weight.cap_kg + weight.hardscape_kg
            + weight.water_kg + weight.stand_kg;
        prop_assert!((sum / weight.total_kg - 1.0).abs() < 1e-9);
    }

    #[test]
    fn what_is_bought_is_enough(design in design()) {
        let plan = planned(&design);
        prop_assert!(plan.soil.buy_l >= plan.soil.volume_l * (1.0 - 1e-9));
        prop_assert!(plan.soil.thinnest_cm <= plan.soil.depth_cm + 1e-9);
        prop_assert!(plan.cap.thinnest_cm <= plan.cap.deepest_cm + 1e-9);
        prop_assert!(plan.planting.index >= 0.0);
    }

    #[test]
    fn a_plan_is_the_same_every_time(design in design()) {
        prop_assert_eq!(planned(&design), planned(&design));
    }
}

/// Most bytes have to make a tank, or the laws are about few.
#[test]
fn most_bytes_are_a_design() {
    let designs = (0_u32..500)
        .filter(|i| {
            let bytes: Vec<u8> = (0_u32..90)
                .map(|j| (i.wrapping_mul(2_654_435_761).wrapping_add(j * 40_503) >> 7) as u8)
                .collect();
            lentic::spec::parse(&random_spec::spec(&bytes)).is_ok()
        })
        .count();
    assert!(designs > 150, "{designs} of 500");
}
