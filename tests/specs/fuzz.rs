//! No text, however spoilt, panics or points outside itself.

use lentic::spec;
use proptest::prelude::*;

use crate::base;

/// Pieces that matter to TOML and to quantities.
const PIECES: &[&str] = &[
    "",
    "\n",
    "\"",
    "'",
    "[",
    "]",
    "[[",
    "{",
    "}",
    "=",
    "#",
    ",",
    ".",
    "-",
    "0",
    "1e999",
    "nan",
    "inf",
    "\"5 cm\"",
    "\"-3 %\"",
    "true",
    "2027-02-30",
    "2027-03-06",
    "\\u0000",
    "\u{fc}",
    "\u{1f41f}",
    "\r\n",
    "\"\"\"",
    "[tank]",
    "[[plants]]",
    "depth",
    "9999999999999999999999",
];

/// Reads and draws a text, and checks that what is found lies in it.
fn read_and_draw(text: &str) -> Result<(), TestCaseError> {
    if let Err(faults) = spec::parse(text) {
        prop_assert!(!faults.0.is_empty());
        for fault in &faults.0 {
            let others = fault.related.iter().map(|(span, _)| span);
            for span in others.chain([&fault.span]) {
                prop_assert!(
                    span.start <= span.end && span.end <= text.len(),
                    "{fault:?}"
                );
                prop_assert!(text.is_char_boundary(span.start), "{fault:?}");
            }
            prop_assert!(
                !fault.found.is_empty() && !fault.rule.is_empty() && !fault.help.is_empty()
            );
        }
        prop_assert!(!spec::draw(&faults, text, "tank.toml", true).is_empty());
    }
    Ok(())
}

/// A good spec with pieces put over parts of it.
fn spoilt() -> impl Strategy<Value = String> {
    let names = ["full.toml", "sloped.toml", "bowl.toml"];
    spoilt_text(names.map(base::good).to_vec())
}

/// A log, or what is varied, with pieces put over parts of it.
fn spoilt_line() -> impl Strategy<Value = String> {
    let texts = base::files("logs").into_iter().map(|file| file.text);
    spoilt_text(texts.collect())
}

/// One of some texts with pieces put over parts of it.
fn spoilt_text(texts: Vec<String>) -> impl Strategy<Value = String> {
    let edit = (
        any::<prop::sample::Index>(),
        0_usize..12,
        prop::sample::select(PIECES),
    );
    (
        prop::sample::select(texts),
        prop::collection::vec(edit, 1..5),
    )
        .prop_map(|(text, edits)| {
            let mut letters: Vec<char> = text.chars().collect();
            for (place, length, piece) in edits {
                let start = place.index(letters.len() + 1);
                let end = (start + length).min(letters.len());
                letters.splice(start..end, piece.chars());
            }
            letters.into_iter().collect()
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_spoilt_spec_is_read_or_refused(text in spoilt()) {
        read_and_draw(&text)?;
    }

    #[test]
    fn a_spoilt_log_is_read_and_its_faults_are_named(text in spoilt_line()) {
        let log = spec::log::parse(&text, None);
        for measured in &log.measurements {
            prop_assert!(measured.day.is_finite() && measured.value.number().is_finite());
        }
        for fault in &log.faults {
            prop_assert!(fault.line > 0 && !fault.says.is_empty(), "{fault:?}");
        }
    }

    #[test]
    fn what_is_varied_is_read_or_refused_with_a_way_out(text in spoilt_line()) {
        match spec::axis(text.lines().next().unwrap_or_default()) {
            Ok(axis) => prop_assert_ne!(axis.count(), Some(0)),
            Err(violation) => prop_assert!(!violation.help.is_empty() && !violation.rule.is_empty()),
        }
    }

    #[test]
    fn any_text_is_refused_with_its_place(text in any::<String>()) {
        prop_assert!(spec::parse(&text).is_err());
        read_and_draw(&text)?;
    }
}
