//! Amounts that a tank holds but a keeper seldom means: common practice and judgement, no
//! source.

use lentic::finding::Status;
use lentic::plan::{PlanPart, partial};

use crate::spec::{CENTRAL, sixty};

/// How a finding stands on a 60 cm tank of some 45 L, where it is made at all.
fn standing(code: &str, more: &str) -> Option<Status> {
    let design = sixty(
        "loam_topsoil",
        "\"25 mm\"",
        "filter_sand",
        "\"40 mm\"",
        more,
    );
    let part = PlanPart::of(&format!("findings.{code}"));
    let standing = partial(&design, CENTRAL, &[part]).expect("a plan").standing;
    let found = standing.iter().find(|(own, _)| own.text() == code);
    found.map(|(_, status)| *status)
}

const SHRIMP: &str = "[[animals]]\nname = \"cherry shrimp\"\ncount = 10\nfrom_day = 30\n";

#[test]
fn more_than_half_of_the_water_at_once_is_watched_once_there_are_animals() {
    let change = |share: u32, day: u32| {
        format!("{SHRIMP}[[events]]\nday = {day}\nwater_change = \"{share} %\"\n")
    };
    assert_eq!(
        standing("water.change", &change(80, 40)),
        Some(Status::Watch)
    );
    assert_eq!(standing("water.change", &change(80, 3)), Some(Status::Note));
    assert_eq!(standing("water.change", &change(50, 40)), None);
}

#[test]
fn sand_that_takes_the_room_of_a_quarter_of_the_water_is_watched() {
    let added = |mm: u32| format!("[[events]]\nday = 20\ncap_added = \"{mm} mm\"\n");
    assert_eq!(standing("cap.added", &added(90)), Some(Status::Watch));
    assert_eq!(standing("cap.added", &added(40)), None);
}

#[test]
fn many_times_the_food_of_a_stocked_tank_is_watched() {
    let fed = |mg: u32| format!("{SHRIMP}[feed]\nmass_per_day = \"{mg} mg\"\n");
    assert_eq!(standing("animals.feed", &fed(5000)), Some(Status::Watch));
    assert_eq!(standing("animals.feed", &fed(500)), None);
}
