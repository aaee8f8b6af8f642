//! `animals.diggers`: animals that dig against the cap.

use super::declaration::{About, Judge, Rule};
use crate::design::{Design, Stock};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::Length;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::AnimalsDiggers,
    about: About::Bed,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::MoveAnimals],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Do the animals dig through the cap?",
        limits: || {
            format!(
                "act for animals that stir {DIGGER_MM} mm and more, whatever the cap; a note for burrowing snails and for others that reach below it"
            )
        },
        formula: || "depth that the animal stirs against the cap at its thinnest place".to_owned(),
        symbols: &[],
        range: || {
            "depths from lake and worm studies, carried over to tanks by judgement".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::Huser2016, Source::Matisoff1982],
    },
};

/// Animals that stir this deep are left out, whatever the cap.
const DIGGER_MM: f64 = 50.0;

/// Animals that stir this deep are worth a note: burrowing snails.
const BURROWER_MM: f64 = 20.0;

/// Animals that dig against the cap.
fn judged(design: &Design) -> Finding {
    let stock = &design.draft().animals;
    let cap = design.bed().cap.thinnest.depth;
    let deepest_mm = stock
        .iter()
        .filter(|stock| stock.count > 0)
        .map(|stock| stock.animal.digs_mm.typical)
        .fold(0.0, f64::max);
    let named = |least_mm: f64| -> Vec<&str> {
        stock
            .iter()
            .filter(|stock| stock.count > 0 && digs(stock) >= least_mm)
            .map(|stock| stock.animal.label.as_str())
            .collect()
    };
    let units = design.draft().units;
    let depth = units.depth(Length::from_mm(deepest_mm));
    let (status, says, remedy) = if deepest_mm >= DIGGER_MM {
        let who = words::listed(&named(DIGGER_MM));
        (
            Status::Act,
            format!("{who} would stir about {depth} of the bed: no cap stands up to that"),
            Some(Remedy {
                says: format!("leave {who} out of this tank"),
                quantity: None,
                unit: "",
            }),
        )
    } else if deepest_mm >= BURROWER_MM || deepest_mm > cap.mm() {
        let who = words::listed(&named(BURROWER_MM.min(deepest_mm)));
        (
            Status::Note,
            format!(
                "{who}: about {depth} of the bed may be stirred, the cap is at least {}",
                units.depth(cap)
            ),
            None,
        )
    } else {
        (
            Status::Ok,
            "no animal digs through the cap".to_owned(),
            None,
        )
    };
    Finding {
        code: Code::AnimalsDiggers,
        status,
        subject: "animals".to_owned(),
        value: Some(deepest_mm),
        unit: "mm",
        low: None,
        high: Some(DIGGER_MM),
        says,
        remedy,
        basis: Basis::Judgement,
        source: Some(Source::Huser2016),
    }
}

const fn digs(stock: &Stock) -> f64 {
    stock.animal.digs_mm.typical
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let mut steps = vec![step(
        "thinnest cap",
        design.bed().cap.thinnest.depth.mm(),
        "mm",
    )];
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} stirs", stock.animal.label);
        step(&name, stock.animal.digs_mm.typical, "mm")
    }));
    steps
}
