//! `animals.early`: animals that move in too early.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use super::peak;
use crate::catalogue::animals;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, Step, step};
use crate::plan::flush::calendar::advised_day;
use crate::plan::outcome::Plan;
use crate::plan::words;
use crate::source::Basis;
use crate::startup::limits::{NITRITE, READY_AMMONIA_MG_N_L};

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
                "watch where a kind moves in before the advised day: the late end of the band, not before practice floors ({}) and two clean tests a week apart; act where that is before ammonia or nitrite has fallen in the typical run",
                floors_in_words()
            )
        },
        formula: || {
            format!(
                "ready: the first day after which ammonia stays under {READY_AMMONIA_MG_N_L} mg N/L and nitrite under {} mg NO2/L",
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

/// A kind of animal that moves in too early.
struct TooEarly {
    label: &'static str,
    from: f64,
    /// Whether that day was assumed, not given.
    assumed: bool,
    advised: Option<f64>,
}

fn too_early(case: &FlushCase<'_>) -> Vec<TooEarly> {
    let draft = case.design.draft();
    let kinds = draft.animals.iter().enumerate().map(|(item, stock)| {
        let key = format!("animals[{item}].from_day");
        TooEarly {
            label: &stock.animal.plural,
            from: stock.from_day,
            assumed: draft.assumed.iter().any(|assumed| assumed.key == key),
            advised: advised_day(case.ready_late, f64::from(stock.animal.first_day)),
        }
    });
    kinds
        .filter(|kind| kind.advised.is_none_or(|day| kind.from < day))
        .collect()
}

/// "small shrimp on day 14 and surface snails on day 14 (assumed) come too early".
fn early_in_words(early: &[TooEarly]) -> String {
    let kinds: Vec<String> = early
        .iter()
        .map(|kind| {
            let assumed = if kind.assumed {
                " (assumed, no from_day is given)"
            } else {
                ""
            };
            format!("{} on day {:.0}{assumed}", kind.label, kind.from)
        })
        .collect();
    format!("{} come too early", words::listed(&kinds))
}

/// Animals that move in before the advised day.
fn judged(case: &FlushCase<'_>) -> Finding {
    let typical = case.ready_typical;
    let early = too_early(case);
    let worst = early
        .iter()
        .map(|kind| (kind.from, kind.advised))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    let (status, says, remedy) = match worst {
        None => (Status::Ok, "no animal moves in too early".to_owned(), None),
        Some((from, advised)) => {
            let before_clean = typical.is_none_or(|ready| from < ready);
            let advice = advised.map_or_else(
                || "wait for two clean tests a week apart".to_owned(),
                |day| format!("wait until day {day:.0} and two clean tests a week apart"),
            );
            (
                if before_clean {
                    Status::Act
                } else {
                    Status::Watch
                },
                early_in_words(&early),
                Some(Remedy {
                    says: advice,
                    quantity: advised,
                    unit: "d",
                }),
            )
        }
    };
    Finding {
        code: Code::AnimalsEarly,
        status,
        subject: "animals".to_owned(),
        value: worst.map(|(from, _)| from),
        unit: "d",
        low: worst.and_then(|(_, advised)| advised),
        high: None,
        says,
        remedy,
        basis: Basis::Practice,
        source: None,
    }
}

fn steps(design: &Design, plan: &Plan) -> Vec<Step> {
    let mut steps = peak::steps(plan);
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} from day", stock.animal.label);
        step(&name, stock.from_day, "d")
    }));
    steps
}
