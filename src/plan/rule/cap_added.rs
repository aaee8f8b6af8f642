//! `cap.added`: sand added later that takes the room of much of the water.

use super::declaration::{About, Judge, Rule};
use crate::design::{Design, EventKind};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::source::Basis;
use crate::units::show::significant;
use crate::units::{Length, Volume};

/// Share of the water that sand added later displaces unasked, %.
const DISPLACED_PCT: f64 = 25.0;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapAdded,
    about: About::Bed,
    judge: Judge::Design(|design| Vec::from_iter(judged(design))),
    orders: &[Action::AddSand],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Does sand that is added later take the room of much of the water?",
        limits: || format!("watch over {DISPLACED_PCT} % of the water"),
        formula: || "area of the bed x all depths added / free water".to_owned(),
        symbols: &[],
        range: || "sand that fills the water is refused with the spec".to_owned(),
        basis: Basis::Judgement,
        sources: &[],
    },
};

/// All sand that is added, as depth.
fn added(design: &Design) -> Length {
    let depths = design.draft().events.iter().map(|event| match event.kind {
        EventKind::CapAdded(depth) => depth,
        _ => Length::ZERO,
    });
    depths.fold(Length::ZERO, |sum, depth| sum + depth)
}

/// The share of the water that some depth of sand takes the room of, %.
fn displaced_pct(design: &Design, depth: Length) -> f64 {
    let displaced: Volume = design.bed().area() * depth;
    displaced / design.water() * 100.0
}

/// Sand that takes the room of much of the water.
fn judged(design: &Design) -> Option<Finding> {
    let units = design.draft().units;
    let depth = added(design);
    let displaced = displaced_pct(design, depth);
    let borne = depth * (DISPLACED_PCT / displaced);
    (displaced > DISPLACED_PCT).then(|| Finding {
        code: Code::CapAdded,
        status: Status::Watch,
        subject: "sand added later".to_owned(),
        value: Some(displaced),
        unit: "%",
        low: None,
        high: Some(DISPLACED_PCT),
        says: format!(
            "{} of sand added later takes the room of {} % of the water",
            units.depth(depth),
            significant(displaced, 2)
        ),
        remedy: Some(Remedy {
            says: format!("check the unit; add {} in all at most", units.depth(borne)),
            quantity: Some(borne.mm()),
            unit: "mm",
        }),
        basis: Basis::Judgement,
        source: None,
    })
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let depth = added(design);
    vec![
        step("sand added later", depth.mm(), "mm"),
        step("free water", design.water().litres(), "L"),
        step("share taken", displaced_pct(design, depth), "%"),
    ]
}
