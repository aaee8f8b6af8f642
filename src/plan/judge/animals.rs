//! `animals.diggers`.

use crate::design::{Design, Stock};
use crate::finding::{Code, Finding, Remedy, Status};
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::Length;

/// Animals that stir this deep are left out, whatever the cap.
const DIGGER_MM: f64 = 50.0;
/// Animals that stir this deep are worth a note: burrowing snails.
const BURROWER_MM: f64 = 20.0;

/// Animals that dig against the cap.
pub(super) fn diggers(design: &Design) -> Finding {
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
