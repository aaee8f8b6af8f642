//! What a plan tells people, and how often.

use crate::command::lentic;

const SLOW: &str = "demo-tanks/slow-growers-only.toml";

#[test]
fn a_remedy_is_told_once_in_text_and_each_time_in_json() {
    let ran = lentic(&["plan", SLOW, "--members", "8"], "");
    assert!(
        ran.stdout.contains("do: as for flush.ammonia"),
        "{}",
        ran.stdout
    );
    let ran = lentic(&["plan", SLOW, "--members", "8", "--format", "json"], "");
    let plan: serde_json::Value = serde_json::from_str(&ran.stdout).unwrap();
    let remedy = |code: &str| {
        let findings = plan["findings"].as_array().unwrap();
        let of = findings.iter().find(|finding| finding["code"] == code);
        of.unwrap()["remedy"]["says"].as_str().unwrap().to_owned()
    };
    assert_eq!(remedy("flush.ammonia"), remedy("flush.nitrite"));
    assert!(remedy("flush.nitrite").starts_with("change "));
}

#[test]
fn what_is_assumed_takes_one_paragraph_in_text_and_has_its_reasons_on_the_page() {
    let reason = "fairly soft tap water";
    let text = lentic(&["plan", SLOW, "--members", "0"], "").stdout;
    let (_, assumed) = text.split_once("\nAssumed\n").unwrap();
    let shown: String = assumed.replace('\n', " ");
    assert!(shown.contains("water.alkalinity 4 dKH"), "{assumed}");
    assert!(!text.contains(reason), "{text}");
    let page = lentic(&["plan", SLOW, "--members", "0", "--format", "html"], "").stdout;
    assert!(page.contains(reason) && !page.contains("What the spec does not say"));
}

#[test]
fn nobody_sees_progress_where_no_terminal_is() {
    let grid = ["compare", SLOW, "--vary", "cap.depth=20..60mm/24"];
    assert_eq!(lentic(&grid, "").stderr, "");
}
