//! Plans and checks for a terminal, as far as one looks at them first: what holds, what to
//! do, what to buy, what to look out for. The rest is asked for.

use super::check::{headline, steps};
use super::estimate::ranged;
use super::plan::sheet;
use super::{finding, shopping};
use crate::design::Design;
use crate::diagnosis::{CauseResult, Diagnosis};
use crate::finding::{Action, Caution, Code, Finding, Status};
use crate::plan::{CalendarEntry, Estimate, Plan, dawn_limit, watch_limit_mg_l};
use crate::report::document::{Block, Document, FindingEntry, Sheet, Table, TableColumn};
use crate::units::show::{counted, fixed, significant};
use crate::units::{Analyte, Mass, Volume};

/// Dates shown at most, and how many of them from the end.
const DATES: usize = 5;
const LAST_DATES: usize = 2;
/// Weight from which the caution on the floor is said in full, kg (judgement).
const HEAVY_KG: f64 = 200.0;
/// Causes named, and how likely the least of them is.
const CAUSES: usize = 4;
const LEAST_NAMED: f64 = 0.05;
/// Evidence shown for the leading cause.
const EVIDENCE: usize = 3;
/// Cautions that go with every tank of the kind.
const GENERAL: [&str; 11] = [
    "hazard.floor",
    "hazard.panes",
    "hazard.electricity",
    "hazard.silica_dust",
    "hazard.hydrogen_sulfide",
    "hazard.infection",
    "hazard.lifting",
    "hazard.water_change",
    "hazard.conditioner",
    "hazard.restricted_plants",
    // the mass of nearly every animal kept lies outside what its formula was made from
    "range.night",
];

/// A plan in about forty lines.
pub fn plan_in_short(design: &Design, plan: &Plan) -> Document {
    let mut blocks = vec![Block::Verdict(plan.status(), plan.verdict())];
    blocks.extend(to_do(design, &plan.findings));
    blocks.push(Block::Gap);
    blocks.push(Block::Drawing(Box::new(Sheet {
        beside: measures(design, plan),
        ..sheet(design)
    })));
    blocks.push(Block::Gap);
    blocks.push(Block::Checklist(shopping::checklist(design, plan, "buy")));
    blocks.push(Block::Gap);
    blocks.push(Block::Table(peaks(design, plan)));
    blocks.push(Block::Gap);
    blocks.push(Block::Table(dates(&plan.startup.calendar)));
    let is_heavy = plan.weight.total_kg > HEAVY_KG;
    let (mut own, general) = parted(&plan.cautions, is_heavy);
    own.splice(0..0, listed(&plan.findings));
    blocks.extend(cautions(own, &general, "plan FILE cautions"));
    let assumed = match plan.assumed.len() {
        0 => String::new(),
        count => format!(
            "Assumed: {} (lentic plan FILE assumed). ",
            counted(count as f64, "key")
        ),
    };
    blocks.push(Block::Text(format!(
        "{assumed}More: --full, night, weeks ..."
    )));
    Document {
        title: plan.name.clone(),
        reasons: Vec::new(),
        blocks,
    }
}

/// A check: the next step, what is behind it, and what to watch.
pub fn check_in_short(design: &Design, found: &Diagnosis) -> Document {
    let mut blocks = vec![
        Block::Verdict(found.status(), headline(&found.next_step)),
        Block::Facts(steps(&found.next_step)),
    ];
    if found.is_blind {
        blocks.push(Block::Text(super::check::NOTHING_KNOWN.to_owned()));
    } else {
        blocks.push(Block::Heading("Causes".to_owned()));
        blocks.push(Block::Table(causes(&found.causes)));
        if let Some(look) = &found.measure_next {
            blocks.push(Block::Text(format!("What would tell most: {}.", look.why)));
        }
    }
    let bed: Vec<Finding> = found
        .findings
        .iter()
        .filter(|finding| finding.code != Code::CheckCause)
        .cloned()
        .collect();
    let bed = finding::to_mend(&bed, design.draft().units);
    if !bed.is_empty() {
        blocks.push(Block::Heading("Beside it".to_owned()));
        // what to do about a tank that stands is its next step, and no other
        blocks.push(Block::Findings(
            bed.into_iter().map(without_remedy).collect(),
        ));
    }
    let (own, general) = parted(&found.cautions, false);
    blocks.extend(cautions(own, &general, "check FILE --full"));
    Document {
        title: found.name.clone(),
        reasons: Vec::new(),
        blocks,
    }
}

fn without_remedy(judged: FindingEntry) -> FindingEntry {
    FindingEntry {
        remedy: String::new(),
        ..judged
    }
}

/// What is to be watched or mended; nothing where nothing is. What is mended with another
/// takes one line with its like.
fn to_do(design: &Design, findings: &[Finding]) -> Vec<Block> {
    let mut lines: Vec<FindingEntry> = Vec::new();
    for entry in finding::to_mend(findings, design.draft().units) {
        if !entry.remedy.starts_with(finding::AS_FOR) {
            lines.push(entry);
            continue;
        }
        let is_like =
            |line: &&mut FindingEntry| line.says == entry.remedy && line.status == entry.status;
        match lines.iter_mut().find(is_like) {
            Some(line) => line.code = format!("{}, {}", line.code, entry.code),
            None => lines.push(FindingEntry {
                says: entry.remedy,
                remedy: String::new(),
                ..entry
            }),
        }
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![Block::Heading("Do".to_owned()), Block::Findings(lines)]
}

/// "43 L of water in 59.9 L", "77.2 kg in all".
fn measures(design: &Design, plan: &Plan) -> Vec<String> {
    let units = design.draft().units;
    let litres = |value| units.volume(Volume::from_litres(value));
    let [water, inside] = [plan.tank.water_l, plan.tank.brimful_l].map(litres);
    vec![
        format!("{water} of water in {inside}"),
        format!("{} in all", units.mass(Mass::from_kg(plan.weight.total_kg))),
    ]
}

/// The peaks of the start and the lowest oxygen against their limits.
fn peaks(design: &Design, plan: &Plan) -> Table {
    let start = &plan.startup;
    let row = |name: &str, value: Estimate, limit: Option<f64>, when: String| {
        vec![
            name.to_owned(),
            ranged(value),
            limit.map_or_else(String::new, |limit| significant(limit, 2)),
            when,
        ]
    };
    let limit = |analyte| watch_limit_mg_l(design, analyte);
    let about = |day: Estimate| format!("about day {}", fixed(day.typical(), 0));
    Table {
        columns: vec![
            TableColumn::words("peaks, mg/L"),
            TableColumn::words("typical (range)"),
            TableColumn::numbers("limit"),
            TableColumn::words("when"),
        ],
        rows: vec![
            row(
                "ammonia, as nitrogen",
                start.ammonia_peak_mg_l,
                limit(Analyte::Ammonia),
                about(start.ammonia_peak_day),
            ),
            row(
                "nitrite",
                start.nitrite_peak_mg_l,
                limit(Analyte::Nitrite),
                about(start.nitrite_peak_day),
            ),
            row(
                "nitrate",
                start.nitrate_peak_mg_l,
                limit(Analyte::Nitrate),
                String::new(),
            ),
            row(
                "lowest oxygen",
                plan.night.dawn_oxygen_mg_l,
                Some(dawn_limit(design).mg_l()),
                format!("before dawn, day {}", fixed(plan.night.day, 0)),
            ),
        ],
    }
}

/// The next dates: the first and the last of everything but the rounds of soaking after the
/// first and the tests that come every week, of which the first is told where water is not
/// changed by readings.
fn dates(entries: &[CalendarEntry]) -> Table {
    let weekly = entries.iter().filter(|one| {
        entries
            .iter()
            .filter(|other| other.what == one.what)
            .count()
            > 1
    });
    let is_by_reading = |entry: &CalendarEntry| entry.actions.contains(&Action::ChangeWater);
    let first_weekly = weekly.map(|entry| entry.day).min();
    let first_weekly = first_weekly.filter(|_| !entries.iter().any(is_by_reading));
    let first_day = entries.first().map(|entry| entry.day);
    let is_shown = |one: &&CalendarEntry| {
        let times = entries.iter().filter(|other| other.what == one.what);
        let is_first = Some(one.day) == first_day;
        (times.count() == 1 && (one.day >= 0 || is_first)) || Some(one.day) == first_weekly
    };
    let mut shown: Vec<CalendarEntry> = entries.iter().filter(is_shown).cloned().collect();
    if shown.len() > DATES {
        shown.drain(DATES - LAST_DATES..shown.len() - LAST_DATES);
    }
    super::startup::entries(&shown)
}

/// That a plant is on lists of restricted ones, and on which.
fn listed(findings: &[Finding]) -> Vec<String> {
    let listed = findings
        .iter()
        .filter(|finding| finding.code == Code::PlantsListed && finding.status >= Status::Note);
    let named = |says: &str| says.split("; ").next().unwrap_or_default().to_owned();
    listed.map(|finding| named(&finding.says)).collect()
}

/// The cautions that are this tank's own, and the subjects of those that go with every tank.
pub(super) fn parted(cautions: &[Caution], is_heavy: bool) -> (Vec<String>, Vec<String>) {
    let is_own = |caution: &&Caution| {
        let is_heavy_floor = is_heavy && caution.code == "hazard.floor";
        is_heavy_floor || !GENERAL.contains(&caution.code)
    };
    let (own, general): (Vec<&Caution>, Vec<&Caution>) = cautions.iter().partition(is_own);
    let mut subjects: Vec<String> = general
        .iter()
        .filter_map(|caution| caution.says.split_once(':'))
        .map(|(subject, _)| subject.to_lowercase())
        .collect();
    subjects.dedup();
    let own = own.iter().map(|caution| caution.says.clone());
    (own.collect(), subjects)
}

/// The tank's own cautions in full, the others by their subjects.
pub(super) fn cautions(own: Vec<String>, general: &[String], more: &str) -> Vec<Block> {
    let mut blocks = vec![Block::Heading("Cautions".to_owned())];
    if !own.is_empty() {
        blocks.push(Block::Items(own));
    }
    blocks.push(Block::Text(format!(
        "Mind local codes, {} (lentic {more}).",
        general.join(", ")
    )));
    blocks
}

/// Each cause with how likely it is and what speaks most for it.
fn causes(causes: &[CauseResult]) -> Table {
    let named = causes
        .iter()
        .take(CAUSES)
        .enumerate()
        .filter(|(place, result)| *place == 0 || result.probability >= LEAST_NAMED);
    let speaks = |result: &CauseResult, most: usize| {
        let for_it = result
            .evidence
            .iter()
            .filter(|evidence| evidence.weight > 0.0);
        let says: Vec<&str> = for_it
            .take(most)
            .map(|evidence| evidence.says.as_str())
            .collect();
        says.join("; ")
    };
    Table {
        columns: vec![
            TableColumn::numbers("likely"),
            TableColumn::words("cause"),
            TableColumn::words("what speaks for it"),
        ],
        rows: named
            .map(|(place, result)| {
                vec![
                    format!("{:.0} %", result.probability * 100.0),
                    result.cause.label().to_owned(),
                    speaks(result, if place == 0 { EVIDENCE } else { 1 }),
                ]
            })
            .collect(),
    }
}
