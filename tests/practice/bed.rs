//! Beds that the trade calls sound, too deep, too coarse, too fine, too thin.

use lentic::Status;
use lentic::diagnosis::diagnose;
use lentic::geometry::LayerDepth;
use lentic::plan::{Options, PlanPart, partial, plan};
use lentic::units::Length;

use crate::diagnosis::demo;
use crate::spec::{checked, finding, sixty, status};

/// Members that are enough to see how a start goes.
const FEW: Options = Options {
    members: 32,
    seed: 1,
    days: 90,
};

/// The sixty with an inch of topsoil under some filter sand.
fn sand(depth: &str, more: &str) -> lentic::Design {
    sixty("loam_topsoil", "\"25 mm\"", "filter_sand", depth, more)
}

#[test]
fn a_soil_under_twice_its_depth_of_grit_or_filter_sand_is_sound() {
    for cap in ["grit_20_40", "filter_sand"] {
        let design = sixty("loam_topsoil", "\"22 mm\"", cap, "\"46 mm\"", "");
        let plan = partial(&design, FEW, &[PlanPart::Status, PlanPart::Needed]).expect("a plan");
        let standing = plan.standing.iter();
        let troubles: Vec<_> = standing
            .filter(|(_, status)| *status > Status::Note)
            .collect();
        assert!(troubles.is_empty(), "{cap}: {troubles:?}");
        let needed = plan.planting.and_then(|planting| planting.needed);
        let added = needed.expect("an addition").portions;
        assert!(added.is_empty(), "{cap}: {added:?}");
        assert_eq!(plan.cap.expect("a cap").verdict, "sound");
    }
}

#[test]
fn sand_that_roots_do_not_cross_is_too_deep() {
    let design = sixty("loam_topsoil", "\"30 mm\"", "filter_sand", "\"112 mm\"", "");
    let bed = checked(&design);
    let deep = finding(&bed.findings, "cap.deep");
    assert_eq!(deep.status, Status::Act);
    let remedy = deep.remedy.as_ref().expect("a remedy");
    assert!(remedy.quantity > Some(0.0));
}

#[test]
fn gravel_is_too_coarse_by_its_size() {
    for (cap, expected) in [
        ("pea_gravel", Status::Act),
        ("gravel_4_8", Status::Act),
        ("fine_gravel", Status::Watch),
        ("grit_12_20", Status::Ok),
        ("coarse_sand", Status::Ok),
        ("grit_20_40", Status::Ok),
        ("filter_sand", Status::Ok),
    ] {
        let design = sixty("organic_potting_mix", "\"25 mm\"", cap, "\"40 mm\"", "");
        assert_eq!(status(&design, "cap.coarse"), expected, "{cap}");
    }
}

#[test]
fn silt_seals_and_play_sand_packs() {
    for (cap, expected) in [
        ("silt", Status::Act),
        ("play_sand", Status::Watch),
        ("masonry_sand", Status::Watch),
        ("filter_sand", Status::Ok),
    ] {
        let design = sixty("loam_topsoil", "\"25 mm\"", cap, "\"40 mm\"", "");
        assert_eq!(status(&design, "cap.fine"), expected, "{cap}");
    }
}

#[test]
fn a_centimetre_of_sand_is_too_thin() {
    assert_eq!(status(&sand("\"10 mm\"", ""), "cap.thin"), Status::Act);
}

#[test]
fn a_cap_raked_to_the_back_is_too_thin_in_front_and_not_too_deep() {
    let bed = checked(&sand("{ back = \"40 mm\", front = \"8 mm\" }", ""));
    let thin = finding(&bed.findings, "cap.thin");
    assert_eq!(thin.status, Status::Act);
    assert!(thin.subject.contains("front"), "{}", thin.subject);
    assert_eq!(finding(&bed.findings, "cap.deep").status, Status::Ok);
}

#[test]
fn burrowing_snails_in_35_mm_of_sand_are_no_emergency() {
    let snails = "[[animals]]\nname = \"burrowing_snail\"\ncount = 10\n";
    let found = status(&sand("\"35 mm\"", snails), "animals.diggers");
    assert!(found <= Status::Note, "{found:?}");
}

#[test]
fn digging_fish_are_left_out_whatever_the_cap() {
    let fish = "[[animals]]\nname = \"digging_fish\"\ncount = 2\n";
    let found = status(&sand("\"50 mm\"", fish), "animals.diggers");
    assert_eq!(found, Status::Act);
}

#[test]
fn slow_growers_alone_never_meet_the_load() {
    let mut draft = sand("\"40 mm\"", "").into_draft();
    let slow = "[[plants]]\nname = \"anubias_barteri\"\namount = \"40 %\"\n\
        [[plants]]\nname = \"java_moss\"\namount = \"40 handfuls\"\n";
    draft.plants = sand("\"40 mm\"", slow).into_draft().plants.split_off(2);
    let design = draft.check().expect("a sound tank");
    assert_eq!(status(&design, "plants.load"), Status::Act);
    assert_eq!(status(&design, "plants.mix"), Status::Watch);
}

#[test]
fn an_existing_tank_gets_one_step_with_bags() {
    let design = sand("{ back = \"40 mm\", front = \"11 mm\" }", "");
    let central = Options { members: 1, ..FEW };
    let step = diagnose(&design, &[], central)
        .expect("a diagnosis")
        .next_step
        .says;
    for word in ["front", "25 mm", "L", "kg", "5 kg bag"] {
        assert!(step.contains(word), "no \"{word}\" in: {step}");
    }
}

#[test]
fn plants_that_would_come_too_late_are_not_added_where_the_index_is_met() {
    // with half of this soil its stems still catch up
    let mut draft = demo("under-a-green-roof").into_draft();
    draft.soil.depth = LayerDepth::Uniform(Length::from_mm(50.0));
    let design = draft.check().expect("a sound tank");
    let plan = plan(&design, FEW).expect("a plan");
    let load = finding(&plan.findings, "plants.load");
    assert_eq!(load.status, Status::Watch);
    assert!(load.value > load.low);
    let added = &plan.planting.needed.portions;
    assert!(added.is_empty(), "{added:?}");
    let says = |code| {
        let remedy = finding(&plan.findings, code).remedy.as_ref();
        remedy.expect("a remedy").says.as_str()
    };
    assert!(!says("plants.load").contains("on day one"));
    assert!(says("plants.load").contains("more plants come too late"));
    assert_eq!(says("cap.leak"), "as for plants.load");
}
