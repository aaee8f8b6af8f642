//! `animals.load`: animals against what oxygen and plants carry.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::verdict::{Verdict, finding};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::night::stock::Carried;
use crate::plan::outcome::Plan;
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::Mass;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::AnimalsLoad,
    about: About::Tank,
    judge: Judge::Night(|case| vec![judged(case)]),
    orders: &[Action::MoveAnimals],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "How many animals does the tank carry?",
        limits: || {
            "fresh mass over the smaller of two: what keeps dawn oxygen at its limit, and what gives off no more nitrogen than the plants' growth takes; watch over it, act over twice".to_owned()
        },
        formula: || {
            "R = exp(15.7 - 5020 / T) (M / 50)^0.80 32 mg/h, 2 to 3 times that fed; by nitrogen = taken / (feed share x protein x 0.092)".to_owned()
        },
        symbols: &[
            "R: oxygen used by one animal at rest",
            "M: its mass, g",
            "T: kelvin",
        ],
        range: || {
            "measured on fish of 1 to 1,000 g: a factor of two for smaller ones; the rule itself is judgement; examples stop at common practice, without source: 2 L to the gram of fish at the mass of large adults, 1 L to a small shrimp, 4 L to a surface snail, one labyrinth fish, no fish in tanks under 20 L".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::ClarkeJohnston1999, Source::TimmonsEbeling],
    },
};

/// How far the animals may be over what is carried before it is time to act (judgement).
const OVERSTOCKED: f64 = 2.0;

/// `animals.load`: their mass against what dawn oxygen and the plants' uptake of
/// nitrogen carry, whichever is less (judgement). Where oxygen is short without any
/// animal it is for `air.dawn` to say: then nitrogen is judged, and animals are a note.
///
/// # Example
/// ```
/// use lentic::finding::Status;
/// use lentic::{night::stock::Carried, plan::rule::animals_load::verdict};
/// use lentic::{source::Band, units::Mass};
/// let carried = Carried { by_oxygen_g: Band::exact(10.0), by_nitrogen: Mass::from_g(20.0) };
/// let status = |g| verdict(Mass::from_g(g), &carried).status;
/// assert_eq!([status(10.0), status(15.0), status(25.0)], [Status::Ok, Status::Watch, Status::Act]);
/// ```
pub fn verdict(animals: Mass, carried: &Carried) -> Verdict {
    let short_anyway = carried.by_oxygen_g.typical <= 0.0;
    let (most, least_status) = if short_anyway && animals > Mass::ZERO {
        (carried.by_nitrogen, Status::Note)
    } else {
        (carried.least(), Status::Ok)
    };
    let found = if animals <= most {
        Status::Ok
    } else if animals <= most * OVERSTOCKED {
        Status::Watch
    } else {
        Status::Act
    };
    Verdict {
        status: found.max(least_status),
        value: animals.g(),
        unit: "g",
        low: None,
        high: Some(most.g()),
        basis: Basis::Judgement,
        source: None,
    }
}

/// Animals against what is carried.
fn judged(case: &NightCase<'_>) -> Finding {
    let carried = &case.night.carried;
    let verdict = verdict(case.night.inputs.animal_mass(), carried);
    let oxygen_g = carried.by_oxygen_g.typical;
    let which = if oxygen_g > 0.0 && oxygen_g <= carried.by_nitrogen.g() {
        "oxygen at dawn"
    } else {
        "nitrogen that the plants take"
    };
    let carries = match examples(case) {
        Some(examples) => format!("{which} carries {examples}"),
        None => format!("{which} carries not one of any kind"),
    };
    let animals = kept(case);
    let says = match (verdict.value > 0.0, oxygen_g > 0.0) {
        (true, true) => format!("{animals}: {carries}"),
        (true, false) => format!(
            "{animals}: at dawn oxygen is short even without them (see air.dawn); {carries}"
        ),
        (false, true) => carries,
        (false, false) => {
            "at dawn oxygen is short before any animal is in (see air.dawn)".to_owned()
        }
    };
    let remedy = (verdict.status >= Status::Watch).then(|| Remedy {
        says: examples(case).map_or_else(
            || "keep no animals in it".to_owned(),
            |_| "keep no more than that".to_owned(),
        ),
        quantity: verdict.high,
        unit: "g",
    });
    finding(Code::AnimalsLoad, verdict, "animals", says, remedy)
}

/// "9 small shoaling fish and 5 surface snails", those that are in.
fn kept(case: &NightCase<'_>) -> String {
    let (inputs, planned) = (&case.night.inputs, &case.design().draft().animals);
    let all = inputs.animals.len() == planned.len();
    let stocks = planned
        .iter()
        .filter(|stock| all || stock.from_day <= inputs.state.day);
    let counted: Vec<String> = stocks
        .map(|stock| stock.animal.counted(stock.count))
        .collect();
    words::listed(&counted)
}

/// "of one kind alone 5 small fish or 40 small shrimp"; none where
/// not even one is carried.
fn examples(case: &NightCase<'_>) -> Option<String> {
    let found = case.night.examples();
    let some = found.iter().filter(|example| example.count > 0);
    let named: Vec<String> = some
        .map(|example| example.animal.counted(example.count))
        .collect();
    (!named.is_empty()).then(|| format!("of one kind alone {}", words::either(&named)))
}

fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let animals = &plan.animals;
    vec![
        step(
            "carried by oxygen at dawn",
            animals.carried_by_oxygen_g.typical(),
            "g",
        ),
        step(
            "carried by the plants' uptake of nitrogen",
            animals.carried_by_nitrogen_g,
            "g",
        ),
        step("animals", animals.mass_g, "g"),
    ]
}
