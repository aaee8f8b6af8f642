//! Findings, cautions and assumptions as blocks.

use crate::design::Assumption;
use crate::finding::{Caution, Finding, Status};
use crate::report::document::{Block, Fact, Judged};
use crate::source;
use crate::units::show::significant;
use crate::units::{Length, UnitSystem};

/// The findings worth reading, worst first, and the codes of those that are in order.
pub(super) fn findings(findings: &[Finding], units: UnitSystem) -> Vec<Block> {
    let mut worth: Vec<&Finding> = findings
        .iter()
        .filter(|finding| finding.status > Status::Ok)
        .collect();
    worth.sort_by_key(|finding| std::cmp::Reverse(finding.status));
    let mut blocks = vec![Block::Heading("Findings".to_owned())];
    blocks.push(Block::Findings(
        worth
            .into_iter()
            .map(|finding| judged(finding, units))
            .collect(),
    ));
    let mut in_order: Vec<&str> = findings
        .iter()
        .filter(|finding| finding.status == Status::Ok)
        .map(|finding| finding.code.text())
        .collect();
    in_order.dedup();
    if !in_order.is_empty() {
        blocks.push(Block::Findings(vec![Judged {
            status: Status::Ok,
            code: in_order.join(", "),
            says: String::new(),
            remedy: String::new(),
            basis: String::new(),
        }]));
    }
    blocks
}

/// A finding as people read it.
pub(super) fn judged(finding: &Finding, units: UnitSystem) -> Judged {
    Judged {
        status: finding.status,
        code: finding.code.text().to_owned(),
        says: finding.says.clone(),
        remedy: finding
            .remedy
            .as_ref()
            .map(|remedy| remedy.says.clone())
            .unwrap_or_default(),
        basis: if finding.status >= Status::Watch {
            basis(finding, units)
        } else {
            String::new()
        },
    }
}

/// "ok from 25 mm; common practice, no source".
pub(super) fn basis(finding: &Finding, units: UnitSystem) -> String {
    let shown = |value: f64| match finding.unit {
        "mm" => units.depth(Length::from_mm(value)),
        unit => format!("{} {unit}", significant(value, 3)),
    };
    let limit = match (finding.low, finding.high) {
        (Some(low), Some(high)) => format!("ok from {} to {}; ", shown(low), shown(high)),
        (Some(low), None) => format!("ok from {}; ", shown(low)),
        (None, Some(high)) => format!("ok up to {}; ", shown(high)),
        (None, None) => String::new(),
    };
    let source = finding
        .source
        .and_then(source::find)
        .map(|source| format!(" ({})", source.short()))
        .unwrap_or_default();
    format!("{limit}{}{source}", finding.basis.words())
}

/// The cautions, each with the key of its source.
pub(super) fn cautions(cautions: &[Caution]) -> Vec<Block> {
    let items = cautions.iter().map(|caution| {
        let source = caution
            .source
            .map_or_else(String::new, |key| format!(" [{key}]"));
        format!("{}{source}", caution.says)
    });
    vec![
        Block::Heading("Cautions".to_owned()),
        Block::Items(items.collect()),
    ]
}

/// The defaults that were taken.
pub(super) fn assumed(assumed: &[Assumption]) -> Vec<Block> {
    if assumed.is_empty() {
        return Vec::new();
    }
    let facts = assumed
        .iter()
        .map(|assumption| Fact::new(&assumption.key, &assumption.value, &assumption.why));
    vec![
        Block::Heading("Assumed".to_owned()),
        Block::Facts(facts.collect()),
    ]
}
