//! Findings, cautions and assumptions as blocks.

use crate::design::Assumption;
use crate::finding::{Caution, Code, Finding, Status};
use crate::report::document::{Block, Fact, FindingEntry, Folded};
use crate::units::show::{counted, significant};
use crate::units::{Length, Temperature, UnitSystem};

/// The findings worth reading, worst first, and the codes of those that are in order; a page
/// folds notes under what is to be done.
pub(super) fn findings(findings: &[Finding], units: UnitSystem) -> Vec<Block> {
    let mut worth: Vec<&Finding> = findings
        .iter()
        .filter(|finding| finding.status > Status::Ok)
        .collect();
    worth.sort_by_key(|finding| std::cmp::Reverse(finding.status));
    let shown = worth.iter().map(|finding| FindingEntry {
        remedy: remedy_once(finding, &worth),
        ..judged(finding, units)
    });
    let (to_mend, notes): (Vec<FindingEntry>, Vec<FindingEntry>) =
        shown.partition(|judged| judged.status >= Status::Watch);
    let is_sound = to_mend.is_empty();
    let mut blocks = vec![
        Block::Heading("Findings".to_owned()),
        Block::Findings(to_mend),
    ];
    if !notes.is_empty() {
        let summary = counted(notes.len() as f64, "note");
        blocks.push(Folded::block(
            summary,
            is_sound,
            vec![Block::Findings(notes)],
        ));
    }
    let mut in_order: Vec<&str> = findings
        .iter()
        .filter(|finding| finding.status == Status::Ok)
        .map(|finding| finding.code.text())
        .collect();
    in_order.dedup();
    if !in_order.is_empty() {
        let summary = format!("{} in order", in_order.len());
        let ok = FindingEntry {
            status: Status::Ok,
            code: in_order.join(", "),
            says: String::new(),
            remedy: String::new(),
            basis: String::new(),
        };
        blocks.push(Folded::block(
            summary,
            false,
            vec![Block::Findings(vec![ok])],
        ));
    }
    blocks
}

/// What is to be watched or mended, worst first, with what to do about it.
pub(super) fn to_mend(findings: &[Finding], units: UnitSystem) -> Vec<FindingEntry> {
    let mut worth: Vec<&Finding> = findings
        .iter()
        .filter(|finding| finding.status >= Status::Watch)
        .collect();
    worth.sort_by_key(|finding| std::cmp::Reverse(finding.status));
    let shown = worth.iter().map(|finding| FindingEntry {
        remedy: remedy_once(finding, &worth),
        basis: String::new(),
        ..judged(finding, units)
    });
    shown.collect()
}

/// How a remedy that another finding tells begins.
pub(super) const AS_FOR: &str = "as for ";

/// A remedy in full where it is first told, and after that by the finding it was told at.
fn remedy_once(finding: &Finding, all: &[&Finding]) -> String {
    let Some(remedy) = &finding.remedy else {
        return String::new();
    };
    let first = all.iter().find(|other| {
        other
            .remedy
            .as_ref()
            .is_some_and(|told| told.says == remedy.says)
    });
    match first {
        Some(first) if first.code != finding.code && !remedy.says.starts_with(AS_FOR) => {
            format!("{AS_FOR}{}", first.code.text())
        }
        _ => remedy.says.clone(),
    }
}

/// A finding as people read it.
pub(super) fn judged(finding: &Finding, units: UnitSystem) -> FindingEntry {
    FindingEntry {
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
    let is_of_grains = matches!(finding.code, Code::CapCoarse | Code::CapFine);
    let shown = |value: f64| match finding.unit {
        "mm" if is_of_grains => format!("{} mm", significant(value, 2)),
        "mm" => units.depth(Length::from_mm(value)),
        unit => format!("{} {unit}", significant(value, 3)),
    };
    let limit = match (finding.low, finding.high) {
        // of animals the sentence counts what is carried
        _ if finding.code == Code::AnimalsLoad => String::new(),
        (Some(low), Some(high)) => format!("ok from {} to {}; ", shown(low), shown(high)),
        (Some(low), None) => format!("ok from {}; ", shown(low)),
        (None, Some(high)) if is_over_at_limit(finding.code) => {
            format!("ok under {}; ", shown(high))
        }
        (None, Some(high)) => format!("ok up to {}; ", shown(high)),
        (None, None) => String::new(),
    };
    match finding.source.map(|source| source.work().short()) {
        Some(work) => format!("{limit}{} ({work})", finding.basis.words_beside_sources()),
        None => format!("{limit}{}", finding.basis.words()),
    }
}

/// Whether a value at the high limit counts as over it.
const fn is_over_at_limit(code: Code) -> bool {
    matches!(
        code,
        Code::FlushAmmonia
            | Code::FlushNitrite
            | Code::FlushNitrate
            | Code::PlantsCover
            | Code::AnimalsDiggers
    )
}

/// The cautions, each with the key of its source.
pub(super) fn cautions(cautions: &[Caution]) -> Vec<Block> {
    let items = cautions.iter().map(|caution| {
        let source = caution
            .source
            .map_or_else(String::new, |key| format!(" [{key}]"));
        format!("{}{source}", caution.says)
    });
    let items: Vec<String> = items.collect();
    let summary = counted(items.len() as f64, "caution");
    vec![
        Block::Heading("Cautions".to_owned()),
        Folded::block(summary, true, vec![Block::Items(items)]),
    ]
}

/// The defaults that were taken; in a terminal in one breath, for a beginner's file takes
/// all of them.
pub(super) fn assumed(assumed: &[Assumption], units: UnitSystem) -> Vec<Block> {
    if assumed.is_empty() {
        return Vec::new();
    }
    let facts = assumed
        .iter()
        .map(|assumption| Fact::new(&assumption.key, shown(assumption, units), &assumption.why));
    let taken: Vec<String> = assumed
        .iter()
        .map(|assumption| format!("{} {}", assumption.key, shown(assumption, units)))
        .collect();
    let in_short = format!(
        "What the spec does not say was taken as: {}. --format html says why each.",
        taken.join(", ")
    );
    vec![
        Block::Heading("Assumed".to_owned()),
        Block::InText(Box::new(Block::Text(in_short))),
        Block::OnPage(Box::new(Folded::block(
            format!(
                "{} that the spec does not say",
                counted(assumed.len() as f64, "thing")
            ),
            false,
            vec![Block::Facts(facts.collect())],
        ))),
    ]
}

/// A default in the units of the results: those of length and warmth are written metric.
fn shown(assumption: &Assumption, units: UnitSystem) -> String {
    let value = &assumption.value;
    let length = value.strip_suffix(" mm").and_then(|mm| mm.parse().ok());
    let warmth = value.strip_suffix(" C").and_then(|c| c.parse().ok());
    match (units, length, warmth) {
        (UnitSystem::Us, Some(mm), _) => units.depth(Length::from_mm(mm)),
        (UnitSystem::Us, _, Some(c)) => units.temperature(Temperature::from_celsius(c)),
        _ => value.clone(),
    }
}
