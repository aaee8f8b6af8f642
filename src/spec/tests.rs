//! The tables that readers share, and places in a text.

use super::fault::TextPosition;
use super::*;
use crate::design::Violation;
use crate::design::key::nearest;

const MINIMAL: &str = r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
"#;

#[test]
fn a_place_counts_lines_and_characters_from_one() {
    let text = "a\n\u{fc}b\n";
    assert_eq!(
        TextPosition::of(0, text),
        TextPosition { line: 1, column: 1 }
    );
    assert_eq!(
        TextPosition::of(4, text),
        TextPosition { line: 2, column: 2 }
    );
    assert_eq!(
        TextPosition::of(5, text),
        TextPosition { line: 2, column: 3 }
    );
    assert_eq!(
        TextPosition::of(99, text),
        TextPosition { line: 3, column: 1 }
    );
    // Within a character: its first byte.
    assert_eq!(
        TextPosition::of(3, text),
        TextPosition { line: 2, column: 1 }
    );
}

#[test]
fn a_slip_of_the_hand_is_recognised_and_another_word_is_not() {
    let choices = ["height", "width", "wall"];
    assert_eq!(nearest("heigth", choices), Some("height"));
    assert_eq!(nearest("Wall", choices), Some("wall"));
    assert_eq!(nearest("temperature", choices), None);
    assert_eq!(nearest(&"w".repeat(1000), choices), None);
}

#[test]
fn each_path_stands_once_in_the_table_below_a_section_of_it() {
    for key in KEYS {
        assert_eq!(
            KEYS.iter().filter(|other| other.path == key.path).count(),
            1,
            "{}",
            key.path
        );
        let section = key.section().trim_end_matches("[]");
        let above = key::find(section).map(|above| above.kind);
        let holds = matches!(
            above,
            Some(KeyKind::Section | KeyKind::Sections | KeyKind::Depth)
        );
        assert!(
            section.is_empty() || holds,
            "{} stands in no section",
            key.path
        );
    }
}

#[test]
fn a_plain_key_may_be_left_out_and_has_its_place_in_every_draft() {
    for key in KEYS.iter().filter(|key| key.is_plain) {
        assert!(!key.needed, "{}", key.path);
        let mut draft = parse_draft(MINIMAL, UNNAMED).unwrap();
        let varied = knob(key.path).and_then(|knob| setting(knob, key.example));
        let applied = varied.and_then(|setting| setting.apply(&mut draft));
        assert_eq!(applied, Ok(()), "{}", key.path);
    }
}

#[test]
fn a_path_in_a_file_leads_to_its_key() {
    assert_eq!(key::pattern("plants[12].name"), "plants[].name");
    assert_eq!(
        key::pattern("events[3].plants_added[0].amount"),
        "events[].plants_added[].amount"
    );
    assert_eq!(key::pattern("tank"), "tank");
}

#[test]
fn a_broken_rule_shows_both_places_or_the_default_that_breaks_it() {
    let violation = |key: &str, other: &str| Violation {
        key: key.to_owned(),
        other: Some(other.to_owned()),
        found: "found".to_owned(),
        rule: "rule".to_owned(),
        help: "help".to_owned(),
    };
    let draft = parse_draft(MINIMAL, UNNAMED).unwrap();
    let broken = vec![
        violation("cap.depth", "tank.height"),
        violation("soil.depth", "tank.freeboard"),
        violation("air.depth", "cap.depth"),
    ];
    let Faults(faults) = violation::faults(broken, &draft.assumed, MINIMAL);
    let at = |key: &str| faults.iter().find(|fault| fault.key == key).unwrap();
    let text = |span: &std::ops::Range<usize>| &MINIMAL[span.clone()];

    assert_eq!(text(&at("cap.depth").span), "\"40 mm\"");
    let (place, says) = at("cap.depth").related.clone().unwrap();
    assert_eq!(text(&place), "\"60 x 30 x 36 cm\"");
    assert_eq!(says, "tank.size is \"60 x 30 x 36 cm\"");

    assert_eq!(at("soil.depth").related, None);
    assert_eq!(
        at("soil.depth").help,
        "help; tank.freeboard was left out and is taken as 25 mm"
    );
    assert_eq!(at("air.depth").span, 0..0);
}

#[test]
fn the_usual_wall_follows_the_height() {
    let wall_mm = |height_cm| {
        let height = crate::units::Length::from_cm(height_cm);
        let diameter = crate::units::Length::from_cm(30.0);
        crate::design::usual::wall(&crate::geometry::Shape::Cylinder { diameter, height }).mm()
    };
    let walls = [30.0, 30.5, 40.0, 45.0, 50.0, 60.0].map(wall_mm);
    assert!(
        walls
            .iter()
            .zip([5.0, 6.0, 6.0, 8.0, 8.0, 10.0])
            .all(|(a, b)| (a - b).abs() < 1e-9),
        "{walls:?}"
    );
}
