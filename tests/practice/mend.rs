//! Bad plans, and what mending makes of them. What is asked of a change is common practice,
//! no source.

use std::sync::OnceLock;

use lentic::mend::{Keep, KeyChange, MendRequest, Mended, mend};
use lentic::plan::{Options, plan};
use lentic::spec;
use lentic::{Design, Status};
use rayon::prelude::*;

/// Members that a mended plan is proved with, and planned again with.
const PROVED: Options = Options {
    members: 32,
    seed: 1,
    days: 90,
};

/// A bad plan with what became of it.
struct Tried {
    name: &'static str,
    text: &'static str,
    mended: Mended,
    new: String,
}

/// The plans that every run mends; with `LENTIC_LAWS` set all are.
const QUICK: [&str; 2] = ["bowl", "dim-lamp"];
/// Members of a plan that is mended once more.
const AGAIN: Options = Options {
    members: 8,
    ..PROVED
};

macro_rules! bad {
    ($($name:literal),+) => {
        [$(($name, include_str!(concat!("mend/", $name, ".toml")))),+]
    };
}

fn tried() -> &'static [Tried] {
    static TRIED: OnceLock<Vec<Tried>> = OnceLock::new();
    TRIED.get_or_init(|| {
        let bad = bad![
            "gravel-cap",
            "compost",
            "slow-plants",
            "bowl",
            "dim-lamp",
            "deep-sand",
            "overstocked",
            "us-55-gallon"
        ];
        let all = std::env::var_os("LENTIC_LAWS").is_some();
        let asked = bad.into_par_iter();
        let asked = asked.filter(|(name, _)| all || QUICK.contains(name));
        let tried = asked.map(|(name, text)| {
            let (mended, new) = mended(text, &[], PROVED);
            Tried {
                name,
                text,
                mended,
                new,
            }
        });
        tried.collect()
    })
}

fn mended(text: &str, keep: &[&str], options: Options) -> (Mended, String) {
    let request = MendRequest {
        text,
        design: &design(text),
        keep: &Keep::of(keep.iter().copied(), text).expect("known keys"),
        options,
    };
    mend(&request, &|| ()).expect("a run")
}

fn design(text: &str) -> Design {
    spec::parse(text).expect("a spec")
}

#[test]
fn every_bad_plan_is_bad_and_holds_once_mended() {
    for Tried { name, mended, .. } in tried() {
        assert!(mended.status_before >= Status::Watch, "{name}");
        assert!(mended.holds, "{name}: {:?}", mended.unmet);
        assert!(mended.unmet.is_empty(), "{name}: {:?}", mended.unmet);
        assert!(mended.odds_after >= 0.8, "{name}: {}", mended.odds_after);
        assert!(mended.odds_after >= mended.odds_before, "{name}");
    }
}

#[test]
fn a_mended_spec_planned_again_has_nothing_to_mend_or_watch() {
    tried().par_iter().for_each(|Tried { name, new, .. }| {
        let plan = plan(&design(new), PROVED).expect("a run");
        let standing: Vec<_> = plan
            .findings
            .iter()
            .filter(|finding| finding.status >= Status::Watch)
            .map(|finding| (finding.code.text(), finding.says.as_str()))
            .collect();
        assert!(standing.is_empty(), "{name}: {standing:?}");
        assert!(plan.startup.odds_with_changes >= Some(0.8), "{name}");
    });
}

#[test]
fn a_mended_spec_keeps_its_comments_and_what_is_not_changed() {
    for Tried {
        name,
        text,
        mended,
        new,
    } in tried()
    {
        for line in text.lines() {
            let comment = line.split_once('#').map(|(_, comment)| comment);
            let kept = comment.is_none_or(|comment| new.contains(comment));
            assert!(kept, "{name}: {line}");
        }
        let lines = text.lines().filter(|line| !new.contains(*line)).count();
        assert!(lines <= mended.changes.len(), "{name}: {lines} lines gone");
    }
}

#[test]
fn what_is_asked_stays_within_what_keepers_do() {
    for Tried { name, mended, .. } in tried() {
        let to = |key: &str| {
            let mut changes = mended.changes.iter();
            let change: Option<&KeyChange> = changes.find(|change| change.key == key);
            change.and_then(|change| change.to.clone())
        };
        let hours = to("light.hours").map(|hours| hours.parse::<f64>().unwrap());
        assert!(hours.is_none_or(|hours| hours <= 10.0), "{name}: {hours:?}");
        let rounds = to("soil.soaked").map(|rounds| rounds.parse::<u32>().unwrap());
        assert!(
            rounds.is_none_or(|rounds| rounds <= 3),
            "{name}: {rounds:?}"
        );
        for change in &mended.changes {
            assert!(!change.why.is_empty(), "{name}: {change:?}");
            assert_ne!(change.from, change.to, "{name}: {change:?}");
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_plan() {
    let dim = tried().iter().find(|one| one.name == "dim-lamp").unwrap();
    assert_eq!(mended(dim.text, &[], AGAIN), mended(dim.text, &[], AGAIN));
}

#[test]
fn what_is_kept_is_not_changed() {
    let bowl = tried().iter().find(|one| one.name == "bowl").unwrap();
    let kept = ["soil", "plants[0].amount", "cap.material"];
    let (mended, new) = mended(bowl.text, &kept, AGAIN);
    let touched = |change: &&KeyChange| {
        ["soil", "plants[0]", "cap.material"]
            .iter()
            .any(|kept| change.key.starts_with(kept))
    };
    assert_eq!(mended.changes.iter().find(touched), None);
    assert!(new.contains("depth = \"30 mm\"") && new.contains("amount = \"3 stems\""));
}

/// What names no amount of a design is not tried: a slope, alkalinity, animals that dig; nor
/// are changes by reading, which the odds of every plan have in them.
#[test]
fn every_remedy_with_an_amount_says_what_stands_then_and_none_adds_to_it() {
    tried().par_iter().for_each(|Tried { name, text, .. }| {
        let plan = plan(&design(text), PROVED).expect("a run");
        let count = |status| {
            let findings = plan.findings.iter();
            findings.filter(|finding| finding.status == status).count()
        };
        let standing = plan.findings.iter();
        let standing = standing.filter(|finding| finding.status >= Status::Watch);
        for (finding, remedy) in
            standing.filter_map(|finding| Some((finding, finding.remedy.as_ref()?)))
        {
            let untried = ["cap.slope", "water.soft", "animals.diggers"];
            let is_by_reading = finding.code.text().starts_with("flush.");
            if is_by_reading || remedy.quantity.is_none() || untried.contains(&finding.code.text())
            {
                continue;
            }
            let then = remedy.says.split_once("; then: ").map(|(_, then)| then);
            let then = then.unwrap_or_else(|| panic!("{name}: {}", remedy.says));
            let left = then.split(", ").find_map(|left| left.strip_prefix("act "));
            let left = left.map_or(0, |left| left.split(';').next().unwrap().parse().unwrap());
            assert!(left <= count(Status::Act), "{name}: {}", remedy.says);
        }
    });
}

#[test]
fn light_is_named_where_it_does_most() {
    let dim = tried().iter().find(|one| one.name == "dim-lamp").unwrap();
    let plan = plan(&design(dim.text), PROVED).expect("a run");
    let mut findings = plan.findings.iter();
    let load = findings.find(|finding| finding.code.text() == "plants.load");
    let says = &load.and_then(|load| load.remedy.as_ref()).unwrap().says;
    assert!(says.contains("lamp") || says.contains("light it"), "{says}");
}
