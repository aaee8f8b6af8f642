//! `water.change`: more water changed at once than animals bear.

use super::declaration::{About, Judge, Rule};
use crate::design::{Design, EventKind};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::source::Basis;
use crate::units::show::significant;

/// Share of the water that animals bear to have changed at once, %.
const BORNE_PCT: f64 = 50.0;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::WaterChange,
    about: About::Tank,
    judge: Judge::Design(|design| Vec::from_iter(judged(design))),
    orders: &[Action::ChangeWater, Action::MoveAnimals],
    steps: |_, _| Vec::new(),
    explanation: Explanation {
        asks: "Is more water changed at once than animals bear?",
        limits: || {
            format!("over {BORNE_PCT} % at once: watch where animals are in by then, else a note")
        },
        formula: || {
            "the largest share of the water that one change replaces, regular or planned for a day"
                .to_owned()
        },
        symbols: &[],
        range: || {
            "common practice; new water as warm and as hard as the old is borne better".to_owned()
        },
        basis: Basis::Practice,
        sources: &[],
    },
};

/// A change of water: its share, %, and the last day on which it is made.
#[derive(Debug, Clone, Copy)]
struct Change {
    share_pct: f64,
    last_day: f64,
}

/// The largest change of water, where it is more than animals bear.
fn judged(design: &Design) -> Option<Finding> {
    let draft = design.draft();
    let animals_from = draft
        .animals
        .iter()
        .filter(|stock| stock.count > 0)
        .map(|stock| stock.from_day)
        .reduce(f64::min);
    let meets_animals = |change: &Change| animals_from.is_some_and(|from| change.last_day >= from);
    let large = changes(design).filter(|change| change.share_pct > BORNE_PCT);
    let worst = large.max_by(|one, other| {
        let met = meets_animals(one).cmp(&meets_animals(other));
        met.then(one.share_pct.total_cmp(&other.share_pct))
    })?;
    let share = significant(worst.share_pct, 2);
    let is_borne = !meets_animals(&worst);
    Some(Finding {
        code: Code::WaterChange,
        status: if is_borne { Status::Note } else { Status::Watch },
        subject: "water change".to_owned(),
        value: Some(worst.share_pct),
        unit: "%",
        low: None,
        high: Some(BORNE_PCT),
        says: if is_borne {
            format!("{share} % of the water is changed at once, before there are animals; the bed and its bacteria are not to fall dry")
        } else {
            format!("{share} % of the water is changed at once with animals in it")
        },
        remedy: (!is_borne).then(|| Remedy {
            says: format!("change {BORNE_PCT} % at once at most; where more has to go, move the animals out before, and refill at once"),
            quantity: Some(BORNE_PCT),
            unit: "%",
        }),
        basis: Basis::Practice,
        source: None,
    })
}

/// Every change of water that is planned.
fn changes(design: &Design) -> impl Iterator<Item = Change> {
    let draft = design.draft();
    let regular = draft.water.change.map(|change| Change {
        share_pct: change.share.percent(),
        last_day: change.until,
    });
    let events = draft.events.iter().filter_map(|event| match event.kind {
        EventKind::WaterChange(share) | EventKind::Drained(share) => Some(Change {
            share_pct: share.percent(),
            last_day: event.day,
        }),
        _ => None,
    });
    regular.into_iter().chain(events)
}
