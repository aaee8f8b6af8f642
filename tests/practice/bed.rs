//! Beds that the trade calls sound, too deep, too coarse, too fine, too thin.

use crate::spec::{finding, planned, sixty, status, troubles};

#[test]
fn an_inch_of_soil_under_two_inches_of_grit_or_filter_sand_is_sound() {
    for cap in ["grit_20_40", "filter_sand"] {
        let plan = planned(
            "plan",
            &sixty("loam_topsoil", "\"25 mm\"", cap, "\"50 mm\"", ""),
        );
        assert_eq!(troubles(&plan), Vec::<String>::new(), "{cap}");
        let added = plan["planting"]["needed"]["portions"]
            .as_array()
            .expect("a list");
        assert!(added.is_empty(), "{cap}: {added:?}");
        assert_eq!(plan["cap"]["verdict"], "sound");
    }
}

#[test]
fn four_inches_of_sand_over_one_of_soil_are_too_deep() {
    let plan = planned(
        "plan",
        &sixty("loam_topsoil", "\"25 mm\"", "filter_sand", "\"100 mm\"", ""),
    );
    assert_eq!(status(&plan, "cap.deep"), "act");
    assert!(
        finding(&plan, "cap.deep")["remedy"]["quantity"]
            .as_f64()
            .expect("a quantity")
            > 0.0
    );
}

#[test]
fn gravel_is_too_coarse_by_its_size() {
    for (cap, expected) in [
        ("pea_gravel", "act"),
        ("gravel_4_8", "act"),
        ("fine_gravel", "watch"),
        ("grit_12_20", "ok"),
        ("coarse_sand", "ok"),
        ("grit_20_40", "ok"),
        ("filter_sand", "ok"),
    ] {
        let spec = sixty("organic_potting_mix", "\"25 mm\"", cap, "\"40 mm\"", "");
        assert_eq!(
            status(&planned("plan", &spec), "cap.coarse"),
            expected,
            "{cap}"
        );
    }
}

#[test]
fn silt_seals_and_play_sand_packs() {
    for (cap, expected) in [
        ("silt", "act"),
        ("play_sand", "watch"),
        ("masonry_sand", "watch"),
        ("filter_sand", "ok"),
    ] {
        let spec = sixty("loam_topsoil", "\"25 mm\"", cap, "\"40 mm\"", "");
        assert_eq!(
            status(&planned("plan", &spec), "cap.fine"),
            expected,
            "{cap}"
        );
    }
}

#[test]
fn a_centimetre_of_sand_is_too_thin() {
    let plan = planned(
        "plan",
        &sixty("loam_topsoil", "\"25 mm\"", "filter_sand", "\"10 mm\"", ""),
    );
    assert_eq!(status(&plan, "cap.thin"), "act");
}

#[test]
fn a_cap_raked_to_the_back_is_too_thin_in_front_and_not_too_deep() {
    let depth = "{ back = \"40 mm\", front = \"8 mm\" }";
    let plan = planned(
        "plan",
        &sixty("loam_topsoil", "\"25 mm\"", "filter_sand", depth, ""),
    );
    let thin = finding(&plan, "cap.thin");
    assert_eq!(thin["status"], "act");
    assert!(thin["subject"].as_str().expect("words").contains("front"));
    assert_eq!(status(&plan, "cap.deep"), "ok");
}

#[test]
fn burrowing_snails_in_35_mm_of_sand_are_no_emergency() {
    let snails = "[[animals]]\nname = \"burrowing_snail\"\ncount = 10\n";
    let plan = planned(
        "plan",
        &sixty(
            "loam_topsoil",
            "\"25 mm\"",
            "filter_sand",
            "\"35 mm\"",
            snails,
        ),
    );
    assert_ne!(status(&plan, "animals.diggers"), "act");
    assert_ne!(status(&plan, "animals.diggers"), "watch");
}

#[test]
fn digging_fish_are_left_out_whatever_the_cap() {
    let fish = "[[animals]]\nname = \"digging_fish\"\ncount = 2\n";
    let plan = planned(
        "plan",
        &sixty(
            "loam_topsoil",
            "\"25 mm\"",
            "filter_sand",
            "\"50 mm\"",
            fish,
        ),
    );
    assert_eq!(status(&plan, "animals.diggers"), "act");
}

#[test]
fn slow_growers_alone_never_meet_the_load() {
    let spec = sixty("loam_topsoil", "\"25 mm\"", "filter_sand", "\"40 mm\"", "")
        .replace("limnobium_laevigatum", "anubias_barteri")
        .replace(
            "hygrophila_difformis\"\namount = \"16 bunches",
            "java_moss\"\namount = \"40 handfuls",
        );
    let plan = planned("plan", &spec);
    assert_eq!(status(&plan, "plants.load"), "act");
    assert_eq!(status(&plan, "plants.mix"), "watch");
}

#[test]
fn an_existing_tank_gets_one_step_with_bags() {
    let depth = "{ back = \"40 mm\", front = \"11 mm\" }";
    let check = planned(
        "check",
        &sixty("loam_topsoil", "\"25 mm\"", "filter_sand", depth, ""),
    );
    let step = check["next_step"]["says"].as_str().expect("words");
    for word in ["front", "14 mm", "L", "kg", "5 kg bag"] {
        assert!(step.contains(word), "no \"{word}\" in: {step}");
    }
}

#[test]
fn plants_that_would_come_too_late_are_not_added_where_the_index_is_met() {
    let path = crate::command::root().join("demo-tanks/under-a-green-roof.toml");
    let plan = planned("plan", &std::fs::read_to_string(path).expect("a demo tank"));
    let load = finding(&plan, "plants.load");
    assert_eq!(load["status"], "watch");
    assert!(load["value"].as_f64() > load["low"].as_f64());
    let added = plan["planting"]["needed"]["portions"].as_array();
    assert!(added.expect("a list").is_empty(), "{added:?}");
    for code in ["plants.load", "cap.leak"] {
        let says = finding(&plan, code)["remedy"]["says"]
            .as_str()
            .expect("words");
        assert!(!says.contains("on day one"), "{says}");
        assert!(says.contains("% of the water every"), "{says}");
    }
}
