//! `animals.load`: animals against what oxygen and plants carry.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::verdict::{Verdict, finding};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, Step, step};
use crate::night::stock::Carried;
use crate::plan::outcome::Plan;
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::Mass;
use crate::units::show::significant;

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
            "measured on fish of 1 to 1,000 g: a factor of two for smaller ones; the rule itself is judgement; examples stop at common practice, without source: 2 L to the gram of fish at the mass of large adults, 1 L to a small shrimp, 4 L to a surface snail, one labyrinth fish".to_owned()
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
    let grams = |grams: f64| significant(grams, 2);
    let most = grams(verdict.high.unwrap_or_default());
    let animals = grams(verdict.value);
    let oxygen_g = carried.by_oxygen_g.typical;
    let which = if oxygen_g > 0.0 && oxygen_g <= carried.by_nitrogen.g() {
        "oxygen at dawn carries"
    } else {
        "nitrogen that the plants take carries"
    };
    let says = match (verdict.value > 0.0, oxygen_g > 0.0) {
        (true, true) => format!("{animals} g of animals; the {which} about {most} g"),
        (true, false) => format!(
            "{animals} g of animals, and at dawn oxygen is short even without them (see air.dawn); the {which} about {most} g"
        ),
        (false, true) => format!("the {which} about {most} g of animals"),
        (false, false) => {
            "at dawn oxygen is short before any animal is in (see air.dawn)".to_owned()
        }
    };
    let remedy = (verdict.status >= Status::Watch).then(|| Remedy {
        says: format!("keep {most} g at most{}", examples(case)),
        quantity: verdict.high,
        unit: "g",
    });
    finding(Code::AnimalsLoad, verdict, "animals", says, remedy)
}

/// ", of one kind alone ... 5 small fish or 40 small shrimp", empty where not even one is carried.
fn examples(case: &NightCase<'_>) -> String {
    let found = case.night.carried.examples(case.night.inputs.water);
    let some = found.iter().filter(|example| example.count > 0);
    let named: Vec<String> = some
        .map(|example| example.animal.counted(example.count))
        .collect();
    if named.is_empty() {
        String::new()
    } else {
        format!(
            ", of one kind alone and by stocking practice {}",
            words::either(&named)
        )
    }
}

fn steps(plan: &Plan) -> Vec<Step> {
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
