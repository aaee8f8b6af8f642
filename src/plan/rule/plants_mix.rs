//! `plants.mix`: whether anything in the planting grows fast.

use super::declaration::{About, Judge, Rule};
use super::plants_load;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::source::{Basis, Source};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::PlantsMix,
    about: About::Tank,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::Plant],
    steps: |_, plan| plants_load::steps(plan),
    explanation: Explanation {
        asks: "Does anything in the planting grow fast?",
        limits: || "watch where neither floaters nor fast growers are planted".to_owned(),
        formula: || "dry mass by group".to_owned(),
        symbols: &[],
        range: || "slow growers alone move the ammonia peak by a few per cent".to_owned(),
        basis: Basis::Judgement,
        sources: &[Source::NielsenSandJensen1991],
    },
};

/// Whether anything in the mix grows fast.
fn judged(design: &Design) -> Finding {
    let planted = design.planted();
    let fast_g = planted.feeding_floaters.dry.g() + planted.fast.dry.g();
    let slow_g = planted.slow.dry.g();
    let only_slow = slow_g > 0.0 && fast_g <= 0.0;
    Finding {
        code: Code::PlantsMix,
        status: if only_slow { Status::Watch } else { Status::Ok },
        subject: "planting".to_owned(),
        value: (fast_g + slow_g > 0.0).then(|| fast_g / (fast_g + slow_g) * 100.0),
        unit: "% by dry mass",
        low: None,
        high: None,
        says: if only_slow {
            "only slow growers: they hardly take anything in the first month".to_owned()
        } else if fast_g > 0.0 {
            "floaters or fast growers are in the mix".to_owned()
        } else {
            "nothing is planted".to_owned()
        },
        remedy: only_slow.then(|| Remedy {
            says: "add floaters and fast growers; take them out again once the slow ones fill in"
                .to_owned(),
            quantity: None,
            unit: "",
        }),
        basis: Basis::Judgement,
        source: Some(Source::NielsenSandJensen1991),
    }
}
