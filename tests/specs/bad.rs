//! Files that are wrong in ways that take more than one key, or no key at all.

use lentic::spec::{self, MAX_BYTES};

use crate::base;

/// Each file of `bad/` with the number of its faults.
const COUNTS: &[(&str, usize)] = &[
    ("bags.toml", 5),
    ("cap-deeper-than-tank.toml", 1),
    ("date-before-start.toml", 1),
    ("date-without-start.toml", 2),
    ("decimal-comma.toml", 1),
    ("dosed.toml", 5),
    ("edges.toml", 3),
    ("edges-twisted.toml", 1),
    ("empty.toml", 3),
    ("event.toml", 3),
    ("five.toml", 5),
    ("flow-without-device.toml", 2),
    ("foreign-dimension.toml", 2),
    ("freeboard-over-height.toml", 1),
    ("impossible-amounts.toml", 5),
    ("key-of-another-section.toml", 3),
    ("light-two-ways.toml", 2),
    ("outside-without-wall.toml", 1),
    ("portion-without-mass.toml", 1),
    ("section-twice.toml", 1),
    ("shape-unsaid.toml", 1),
    ("single-and-double-brackets.toml", 2),
    ("size-beside-length.toml", 1),
    ("trade-words.toml", 14),
    ("unclosed.toml", 1),
    ("unknown-names.toml", 6),
    ("unquoted.toml", 5),
    ("waters.toml", 5),
];

#[test]
fn every_bad_file_is_drawn_with_each_of_its_faults() {
    let files = base::files("bad");
    let names: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
    let listed: Vec<&str> = COUNTS.iter().map(|(name, _)| *name).collect();
    let mut sorted = listed.clone();
    sorted.sort_unstable();
    assert_eq!(names, sorted);
    for file in &files {
        let faults = base::faults(&file.text);
        let drawn = spec::draw(&faults, &file.text, &file.name, false);
        let (_, count) = COUNTS
            .iter()
            .find(|(name, _)| *name == file.name)
            .expect("a count");
        assert_eq!(faults.0.len(), *count, "{}\n{drawn}", file.name);
        insta::assert_snapshot!(
            format!("bad_{}", file.name.trim_end_matches(".toml")),
            drawn
        );
    }
}

#[test]
fn a_drawn_fault_names_file_line_and_column() {
    let text = base::good("minimal.toml").replace("60 x 30 x 36 cm", "60 x 30 cm");
    let drawn = spec::draw(&base::faults(&text), &text, "shelf/tank.toml", false);
    assert!(drawn.contains("shelf/tank.toml:3:8"), "{drawn}");
    assert!(!drawn.contains('\u{1b}'));
    let coloured = spec::draw(&base::faults(&text), &text, "shelf/tank.toml", true);
    assert!(coloured.contains('\u{1b}'));
}

#[test]
fn escape_codes_of_a_file_do_not_reach_the_terminal() {
    let text = "[tank]\nshape = \"\\u001b[31mred\"\n\"\\u001b[2J\" = 1\n";
    let drawn = spec::draw(&base::faults(text), text, "tank.toml", false);
    assert!(!drawn.contains('\u{1b}'), "{drawn}");
}

#[test]
fn a_text_beyond_the_limit_is_refused_unread() {
    let limit = usize::try_from(MAX_BYTES).expect("a size");
    let padded = |bytes: usize| {
        let minimal = base::good("minimal.toml");
        let comment = "#".repeat(bytes - minimal.len());
        minimal + &comment
    };
    assert!(spec::parse(&padded(limit)).is_ok());
    let faults = base::faults(&padded(limit + 1));
    assert_eq!(faults.0.len(), 1);
    assert!(faults.0[0].rule.contains("1048576 bytes"), "{faults}");
}

#[test]
fn a_thousand_faults_are_counted_and_fifty_drawn() {
    let lines: Vec<String> = (0..1000).map(|i| format!("key{i} = 1")).collect();
    let text = lines.join("\n");
    let faults = base::faults(&text);
    assert_eq!(faults.0.len(), 1003);
    let drawn = spec::draw(&faults, &text, "tank.toml", false);
    assert_eq!(drawn.matches("error: ").count(), 50);
    assert!(
        drawn.ends_with("and 953 more faults in tank.toml\n"),
        "{drawn}"
    );
}

#[test]
fn faults_come_in_order_of_position() {
    for file in base::files("bad") {
        let faults = base::faults(&file.text);
        let starts: Vec<usize> = faults.0.iter().map(|fault| fault.span.start).collect();
        assert!(starts.is_sorted(), "{}", file.name);
    }
}
