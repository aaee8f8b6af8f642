//! What stands where nothing is said.

use lentic::design::Assumption;
use lentic::spec::{self, KEYS};

use crate::base;

fn assumed(text: &str) -> Vec<Assumption> {
    spec::parse(text).expect("a design").into_draft().assumed
}

#[test]
fn the_beginners_file_lists_every_default_it_rests_on() {
    let listed: Vec<String> = assumed(&base::good("minimal.toml"))
        .iter()
        .map(|default| format!("{} = {}", default.key, default.value))
        .collect();
    // Typed in from the documentation of the defaults.
    let expected = [
        "tank.wall = 6 mm",
        "tank.bottom = 6 mm",
        "tank.material = glass",
        "tank.freeboard = 25 mm",
        "tank.lid = false",
        "tank.rim = free",
        "soil.soaked = 0",
        "water.temperature = 24 C",
        "water.ph = 7.2",
        "water.alkalinity = 4 dKH",
        "water.hardness = 6 dGH",
        "water.nitrate = 5 mg/L",
        "water.phosphate = 0.09 mg/L",
        "light.class = medium",
        "light.hours = 8",
        "air.device = none",
        "room.temperature = 20 C",
        "room.humidity = 50 %",
        "room.altitude = 0 m",
        "harvest.floaters_above = 50 %",
        "harvest.stems_above = 200 g/m2",
        "goal.probability = 80 %",
    ];
    assert_eq!(listed, expected);
}

#[test]
fn a_file_that_says_everything_assumes_nothing() {
    assert_eq!(assumed(&base::good("full.toml")), []);
}

#[test]
fn animals_without_feed_are_fed_by_their_mass_from_their_usual_day() {
    let text = base::good("minimal.toml") + "[[animals]]\nname = \"small_fish\"\ncount = 6\n";
    let draft = spec::parse(&text).expect("a design").into_draft();
    let fish = draft.animals[0].animal;
    let expected_mg = 6.0 * fish.mass_g.typical * 1000.0 * fish.feed_pct_per_d.typical / 100.0;
    assert!((draft.feed.mass_per_day.mg() - expected_mg).abs() < 1e-9);
    assert!((draft.animals[0].from_day - f64::from(fish.first_day)).abs() < 1e-9);
    for key in ["feed.mass_per_day", "feed.protein", "animals[0].from_day"] {
        assert!(
            draft.assumed.iter().any(|default| default.key == key),
            "{key}"
        );
    }
}

#[test]
fn every_default_is_read_as_a_keeper_would_write_it() {
    let more = "[water.change]\nshare = \"25 %\"\nevery = \"7 d\"\n[air]\ndevice = \"pump\"\nflow = \"2 L/min\"\n[[animals]]\nname = \"small_fish\"\ncount = 6\n";
    let minimal = base::good("minimal.toml");
    let listed = [assumed(&minimal), assumed(&(minimal.clone() + more))].concat();
    for key in KEYS {
        let Some(default) = key.default else {
            continue;
        };
        let written = default.written.trim_matches('"');
        let used = listed.iter().find(|used| used.key == key.path);
        assert_eq!(
            used.map(|used| used.value.as_str()),
            Some(written),
            "{}",
            key.path
        );
        assert_eq!(used.map(|used| used.why.as_str()), Some(default.why));
        let basis = default.why.split_once(": ").map(|(basis, _)| basis);
        assert!(
            matches!(basis, Some("practice" | "judgement" | "memory")),
            "{}",
            default.why
        );
    }
}

#[test]
fn a_wall_stands_for_the_height_where_the_size_is_inside() {
    let text = base::good("cylinder.toml");
    let wall = assumed(&text)
        .into_iter()
        .find(|default| default.key == "tank.wall");
    assert_eq!(wall.expect("a default").value, "8 mm");
}

#[test]
fn names_and_units_may_be_given_from_outside() {
    use lentic::units::UnitSystem;
    let minimal = base::good("minimal.toml");
    let draft = |text: &str, units| {
        spec::parse_named(text, "shelf", units)
            .expect("a design")
            .into_draft()
    };
    assert_eq!(draft(&minimal, None).name, "shelf");
    assert_eq!(draft(&minimal, None).units, UnitSystem::Metric);
    let full = base::good("full.toml");
    assert_eq!(draft(&full, None).name, "Every key");
    assert_eq!(draft(&full, None).units, UnitSystem::Us);
    assert_eq!(
        draft(&full, Some(UnitSystem::Metric)).units,
        UnitSystem::Metric
    );
}
