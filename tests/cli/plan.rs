//! What a plan tells people, and how often.

use crate::command::lentic;

const SLOW: &str = "demo-tanks/slow-growers-only.toml";

#[test]
fn a_remedy_is_told_once_in_text_and_each_time_in_json() {
    let few = [
        "plan",
        "demo-tanks/third-week-nitrite.toml",
        "--members",
        "64",
    ];
    let text = lentic(&few, "").stdout;
    assert!(
        text.contains("flush.ammonia: as for flush.nitrite"),
        "{text}"
    );
    let ran = lentic(&[&few[..], &["--format", "json"]].concat(), "");
    let plan: serde_json::Value = serde_json::from_str(&ran.stdout).unwrap();
    let remedy = |code: &str| {
        let findings = plan["findings"].as_array().unwrap();
        let of = findings.iter().find(|finding| finding["code"] == code);
        of.unwrap()["remedy"]["says"].as_str().unwrap().to_owned()
    };
    assert_eq!(remedy("flush.ammonia"), remedy("flush.nitrite"));
    assert!(!remedy("flush.nitrite").is_empty(), "{text}");
}

#[test]
fn what_is_assumed_takes_one_paragraph_in_text_and_has_its_reasons_on_the_page() {
    let reason = "fairly soft tap water";
    let text = lentic(&["plan", SLOW, "assumed", "--members", "0"], "").stdout;
    let (_, assumed) = text.split_once("\nAssumed\n").unwrap();
    let shown: String = assumed.replace('\n', " ");
    assert!(shown.contains("water.alkalinity 4 dKH"), "{assumed}");
    assert!(!text.contains(reason), "{text}");
    let page = lentic(&["plan", SLOW, "--members", "0", "--format", "html"], "").stdout;
    assert!(page.contains(reason) && !page.contains("What the spec does not say"));
}

#[test]
fn a_plan_is_short_unless_more_is_asked_for() {
    for name in [
        "reading-room-cube",
        "gravel-cap-high-nitrate",
        "dense-and-quiet",
    ] {
        let path = format!("demo-tanks/{name}.toml");
        let of = |more: &[&str]| {
            let ran = lentic(&[&["plan", &path, "--members", "8"], more].concat(), "");
            assert_eq!(ran.code, 0, "{}", ran.stderr);
            ran.stdout
        };
        let (short, full) = (of(&[]), of(&["--full"]));
        assert!(full.lines().count() > short.lines().count() + 20, "{full}");
        assert_eq!(
            short.lines().nth(1),
            full.lines().nth(1),
            "the same verdict"
        );
        let night = of(&["night", "weight"]);
        assert!(
            night.contains("\nNight\n") && night.contains("\nWeight\n"),
            "{night}"
        );
        assert!(!night.contains("\nBuy\n"), "{night}");
    }
}

#[test]
fn every_section_has_its_place_and_no_other_is_taken() {
    let sections = lentic::report::compose::SECTIONS;
    let names: Vec<&str> = sections.iter().map(|(name, _)| *name).collect();
    let ran = lentic(
        &[&["plan", SLOW, "--members", "0"][..], &names].concat(),
        "",
    );
    for (_, heading) in sections {
        let shown = ran.stdout.contains(&format!("\n{heading}\n"));
        assert!(shown, "{heading}: {}", ran.stdout);
    }
    let unknown = lentic(&["plan", SLOW, "nigth"], "");
    assert_eq!((unknown.code, unknown.stdout.as_str()), (2, ""));
    assert!(unknown.stderr.contains("night"), "{}", unknown.stderr);
    let both = lentic(&["plan", SLOW, "night", "--full"], "");
    assert_eq!((both.code, both.stdout.as_str()), (2, ""));
}

#[test]
fn nobody_sees_progress_where_no_terminal_is() {
    let grid = ["compare", SLOW, "--vary", "cap.depth=20..60mm/8"];
    assert_eq!(
        lentic(&[&grid[..], &["--members", "32"]].concat(), "").stderr,
        ""
    );
}

/// A plan's text without its line breaks.
fn told(spec: &str) -> String {
    let ran = lentic(&["plan", "-", "--full", "--members", "32"], spec);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A well planted 60 cm tank with what else is given.
fn planted(more: &str) -> String {
    format!(
        r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "50 mm"
[[plants]]
name = "limnobium_laevigatum"
amount = "40 %"
[[plants]]
name = "hygrophila_difformis"
amount = "16 bunches"
[light]
par = "90 umol/m2/s"
hours = 10
{more}
"#
    )
}

#[test]
fn a_tank_that_misses_what_is_asked_of_it_is_not_told_to_change_nothing() {
    let easy = told(&planted("[goal]\nprobability = \"50 %\"\n"));
    assert!(easy.contains("sound: "), "{easy}");
    assert!(easy.contains(" of 100 starts hold"), "{easy}");
    let hard = "[goal]\nprobability = \"95 %\"\nnitrite = \"0.1 mg/L\"\n";
    let hard = told(&planted(hard));
    assert!(hard.contains(" of 100 starts hold"), "{hard}");
    assert!(hard.contains(", where 95 are asked for"), "{hard}");
    assert!(!hard.contains("sound: "), "{hard}");
}

#[test]
fn air_is_due_before_the_first_animals_where_none_are_planned() {
    let before = "do: before animals go in: ";
    let empty = told(&planted(""));
    assert!(empty.contains(before), "{empty}");
    let stocked = told(&planted("[[animals]]\nname = \"small_fish\"\ncount = 3\n"));
    assert!(
        stocked.contains("air.dawn") && !stocked.contains(before),
        "{stocked}"
    );
}

#[test]
fn a_kind_that_comes_too_early_is_named_and_an_assumed_day_is_not_blamed() {
    let snails = "[[animals]]\nname = \"surface_snail\"\ncount = 5\n";
    let shrimp = "[[animals]]\nname = \"small_shrimp\"\ncount = 9\nfrom_day = 3\n";
    let text = told(&planted(&format!("{snails}{shrimp}")));
    assert!(
        text.contains("small shrimp on day 3 come too early"),
        "{text}"
    );
    assert!(text.contains("surface snails from day"), "{text}");
    assert!(!text.contains("surface snails on day"), "{text}");
}

#[test]
fn a_limit_that_counts_as_passed_when_met_reads_under() {
    let half = planted("").replace("40 %", "50 %");
    let text = told(&half);
    assert!(
        text.contains("floaters cover 50 %: plants below grow poorly"),
        "{text}"
    );
    assert!(
        text.contains("ok under 50 %; ") && !text.contains("ok up to 50 %"),
        "{text}"
    );
}

#[test]
fn the_air_to_set_is_told_to_have_some_to_spare() {
    let text = told(&planted("[[animals]]\nname = \"small_fish\"\ncount = 9\n"));
    assert!(text.contains("air needed"), "{text}");
    assert!(text.contains("kPa (both with some to spare)"), "{text}");
}

#[test]
fn animals_that_are_not_fed_set_no_limit_by_nitrogen() {
    let unfed = "[[animals]]\nname = \"small_fish\"\ncount = 3\n[feed]\nmass_per_day = \"0 g\"\n";
    let text = told(&planted(unfed));
    assert!(
        text.contains("plants set no limit, as nothing is fed"),
        "{text}"
    );
}
