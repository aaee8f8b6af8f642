//! `animals.early`: animals that move in too early.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use super::peak;
use crate::catalogue::{Animal, animals};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::plan::words;
use crate::source::Basis;
use crate::startup::limits::{HARDY_AMMONIA_MG_N_L, NITRITE, READY_AMMONIA_MG_N_L};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::AnimalsEarly,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::MoveAnimals],
    steps,
    explanation: Explanation {
        asks: "Do the animals move in too early?",
        limits: || {
            format!(
                "watch where a kind moves in on a day given in the spec before the advised one: that on which nine in ten starts are ready for it, not before practice floors ({}) and two clean tests a week apart; act where half of the starts are not ready yet; snails bear up to {HARDY_AMMONIA_MG_N_L} mg N/L of ammonia and {} mg NO2/L (judgement, from memory)",
                floors_in_words(),
                NITRITE.act
            )
        },
        formula: || {
            format!(
                "ready: the first day after which ammonia stays under {READY_AMMONIA_MG_N_L} mg N/L and nitrite under {} mg NO2/L, before animals are fed; with changes by reading where these hold more starts; followed for up to a year",
                NITRITE.watch
            )
        },
        symbols: &[],
        range: || "a run, not a test: test before animals move in".to_owned(),
        basis: Basis::Practice,
        sources: &[],
    },
};

/// The kinds that stand for the first days of all, with the word for them.
const FLOORS: [(&str, &str); 3] = [
    ("snails", "surface_snail"),
    ("fish", "small_fish"),
    ("shrimp", "small_shrimp"),
];

/// "snails 14, fish 28, shrimp 35 days".
fn floors_in_words() -> String {
    let floors = FLOORS.into_iter().filter_map(|(word, name)| {
        let mut kinds = animals().iter();
        let kind = kinds.find(|kind| kind.name == name)?;
        Some(format!("{word} {}", kind.first_day))
    });
    format!("{} days", floors.collect::<Vec<_>>().join(", "))
}

/// A kind of animal with the day that the spec gives for it.
struct Planned {
    animal: &'static Animal,
    /// None where the day was assumed: then the advised one holds.
    from: Option<f64>,
}

fn planned(design: &Design) -> Vec<Planned> {
    let draft = design.draft();
    let there = draft.animals.iter().enumerate();
    let there = there.filter(|(_, stock)| stock.count > 0);
    let kinds = there.map(|(item, stock)| {
        let key = format!("animals[{item}].from_day");
        let is_assumed = draft.assumed.iter().any(|assumed| assumed.key == key);
        Planned {
            animal: stock.animal,
            from: (!is_assumed).then_some(stock.from_day),
        }
    });
    kinds.collect()
}

/// A kind that moves in on a day before the advised one.
struct TooEarly {
    animal: &'static Animal,
    from: f64,
    advised: Option<f64>,
}

fn too_early(case: &FlushCase<'_>, planned: &[Planned]) -> Vec<TooEarly> {
    let early = planned.iter().filter_map(|kind| {
        let (from, advised) = (kind.from?, case.readiness.advised(kind.animal));
        advised.is_none_or(|day| from < day).then_some(TooEarly {
            animal: kind.animal,
            from,
            advised,
        })
    });
    early.collect()
}

/// "small shrimp on day 14 and surface snails on day 10 come too early".
fn early_in_words(early: &[TooEarly]) -> String {
    let kinds: Vec<String> = early
        .iter()
        .map(|kind| format!("{} on day {:.0}", kind.animal.plural, kind.from))
        .collect();
    format!("{} come too early", words::listed(&kinds))
}

/// "small shrimp from day 44", or why there is no day.
fn advised_in_words(case: &FlushCase<'_>, planned: &[Planned]) -> String {
    let mut days: Vec<String> = planned
        .iter()
        .filter_map(|kind| {
            let day = case.readiness.advised(kind.animal)?;
            Some(format!("{} from day {day:.0}", kind.animal.plural))
        })
        .collect();
    days.dedup();
    match case.readiness.reason() {
        Some(reason) if days.is_empty() => format!("no day for animals: {reason}"),
        Some(reason) => format!("{}; none for others: {reason}", words::listed(&days)),
        None => words::listed(&days),
    }
}

/// Animals that move in before the advised day.
fn judged(case: &FlushCase<'_>) -> Finding {
    let planned = planned(case.design);
    let early = too_early(case, &planned);
    let first = early.iter().min_by(|a, b| a.from.total_cmp(&b.from));
    let is_before_clean = |kind: &TooEarly| {
        let typical = case.readiness.typical(kind.animal);
        typical.is_none_or(|ready| kind.from < ready)
    };
    let (status, says) = match (early.as_slice(), planned.as_slice()) {
        ([], []) => (Status::Ok, "no animals are planned".to_owned()),
        ([], planned) => (Status::Ok, advised_in_words(case, planned)),
        (early, _) if early.iter().any(is_before_clean) => (Status::Act, early_in_words(early)),
        (early, _) => (Status::Watch, early_in_words(early)),
    };
    let latest = early
        .iter()
        .filter_map(|kind| kind.advised)
        .reduce(f64::max);
    let remedy = first.map(|_| Remedy {
        says: format!(
            "wait, {}, and for two clean tests a week apart",
            advised_in_words(case, &planned)
        ),
        quantity: latest,
        unit: "d",
    });
    Finding {
        code: Code::AnimalsEarly,
        status,
        subject: "animals".to_owned(),
        value: first.map(|kind| kind.from),
        unit: "d",
        low: first.and_then(|kind| kind.advised),
        high: None,
        says,
        remedy,
        basis: Basis::Practice,
        source: None,
    }
}

fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let mut steps = peak::steps(plan);
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} from day", stock.animal.label);
        step(&name, stock.from_day, "d")
    }));
    steps
}
