//! A check of an existing tank as a document.

use super::plan::drawing;
use super::{finding, night, reason};
use crate::design::{Design, Looked};
use crate::diagnosis::forecast::ForecastDay;
use crate::diagnosis::{CauseResult, Diagnosis, DoneDay, Evidence, NextResult};
use crate::plan::watch_limit_mg_l;
use crate::report::bars::{Bar, Bars, Weight};
use crate::report::chart::{Across, Chart, LimitLine, Series};
use crate::report::document::{Block, Document, Fact, Table, TableColumn};
use crate::source::Band;
use crate::units::show::{fixed, significant};
use crate::units::{Analyte, Length};

/// Said of a tank of which no reading and no sign is known.
pub(super) const NOTHING_KNOWN: &str = "No readings and no signs are given, so the bed alone is judged: add [[readings]] and [signs] to the spec, or --readings FILE, to have causes weighed.";
/// Causes shown in full, and those named at all.
const SHOWN: usize = 5;
const LEAST_NAMED: f64 = 0.02;
/// A forecast whose middle moves by less of its limit, and whose high end stays under it, is
/// not drawn.
const LEAST_MOVE: f64 = 0.1;
/// Evidence shown for each.
const EVIDENCE_SHOWN: usize = 4;

/// What a chart follows, and where it finds it in a day.
type Followed = (
    &'static str,
    Analyte,
    fn(&ForecastDay) -> Band,
    fn(&DoneDay) -> f64,
);

/// A check, next step first.
pub fn check(design: &Design, found: &Diagnosis) -> Document {
    let mut blocks = vec![
        Block::Verdict(found.status(), headline(&found.next_step)),
        Block::Facts(steps(&found.next_step)),
    ];
    if let Some(aired) = &found.aired {
        let chart = night::aired(design, aired);
        blocks.push(Block::OnPage(Box::new(Block::Chart(chart))));
    }
    let known = !found.is_blind;
    if known {
        blocks.extend(causes(design, found));
    } else {
        blocks.push(Block::Text(NOTHING_KNOWN.to_owned()));
    }
    blocks.extend(bed(design, found));
    blocks.extend(drawing(design));
    if known {
        blocks.extend(ahead(design, found));
    }
    blocks.extend(finding::findings(&found.findings, design.draft().units));
    blocks.extend(finding::cautions(&found.cautions));
    Document {
        title: found.name.clone(),
        reasons: reason::of(&blocks, &found.findings),
        blocks,
    }
}

/// What the next step is about, or the step itself where it is about nothing.
pub(super) fn headline(next: &NextResult) -> String {
    if next.about.is_empty() {
        next.now.join("; ")
    } else {
        next.about.clone()
    }
}

/// The next step, one thing a line.
pub(super) fn steps(next: &NextResult) -> Vec<Fact> {
    let said = usize::from(next.about.is_empty()) * next.now.len();
    let now = next.now.iter().skip(said).map(|step| ("now", step.clone()));
    let then = next.then.iter().map(|step| ("then", step.clone()));
    let again = next
        .test_again_day
        .map(|day| ("test again", format!("on day {}", fixed(day, 0))));
    now.chain(then)
        .chain(again)
        .zip(1..)
        .map(|((when, step), number)| Fact::new(format!("{number}"), when, step))
        .collect()
}

fn percent(probability: f64) -> String {
    format!("{:.0} %", probability * 100.0)
}

fn causes(design: &Design, found: &Diagnosis) -> Vec<Block> {
    let named: Vec<&CauseResult> = found
        .causes
        .iter()
        .take(SHOWN)
        .filter(|result| result.probability >= LEAST_NAMED)
        .collect();
    let mut blocks = vec![
        Block::Heading("Causes".to_owned()),
        Block::InText(Box::new(Block::Table(Table {
            columns: vec![
                TableColumn::numbers("likely"),
                TableColumn::words("cause"),
                TableColumn::words("what it means"),
            ],
            rows: named.iter().map(|result| row(result)).collect(),
        }))),
        Block::OnPage(Box::new(Block::Bars(bars(&named)))),
        Block::Text(weighed(design, found)),
    ];
    for result in named.iter().take(2) {
        blocks.push(Block::Heading(format!(
            "What speaks for and against {}",
            result.cause.label()
        )));
        let evidence = result.evidence.iter().take(EVIDENCE_SHOWN);
        blocks.push(Block::Balance(evidence.map(weight).collect()));
    }
    for result in named
        .iter()
        .skip(usize::from(found.alike.is_empty() && !found.urgent))
    {
        if let Some(remedy) = &result.remedy {
            blocks.push(Block::Text(format!(
                "If it is {}: {}.",
                result.cause.label(),
                remedy.main
            )));
        }
    }
    if let Some(look) = &found.measure_next {
        blocks.push(Block::Text(format!("What would tell most: {}.", look.why)));
    }
    blocks
}

/// Evidence with how many times as likely it makes a cause.
fn weight(evidence: &Evidence) -> Weight {
    let factor = significant(10_f64.powf(evidence.weight.abs()), 2);
    let way = if evidence.weight > 0.0 {
        "for"
    } else {
        "against"
    };
    Weight {
        says: match evidence.because {
            Some(why) => format!("{}: {why}", evidence.says),
            None => evidence.says.clone(),
        },
        weight: evidence.weight,
        words: format!("{factor} times {way}"),
    }
}

fn row(result: &CauseResult) -> Vec<String> {
    vec![
        percent(result.probability),
        result.cause.label().to_owned(),
        result.says.to_owned(),
    ]
}

/// How likely each cause is, with what it means.
fn bars(named: &[&CauseResult]) -> Bars {
    let bars = named.iter().map(|result| Bar {
        label: result.cause.label().to_owned(),
        share: result.probability,
        says: result.says.to_owned(),
    });
    Bars {
        title: "how likely each cause is".to_owned(),
        bars: bars.collect(),
    }
}

/// What the probabilities were made of.
fn weighed(design: &Design, found: &Diagnosis) -> String {
    let alike = match found.alike.as_slice() {
        [] => String::new(),
        alike => {
            let labels: Vec<&str> = alike.iter().map(|cause| cause.label()).collect();
            format!(
                " What is known does not tell these apart: {}.",
                labels.join(", ")
            )
        }
    };
    format!(
        "All {} causes start at {}; {} members each (seed {}); {}.{alike}",
        found.causes.len(),
        format_args!("{:.1} %", found.prior * 100.0),
        found.members.max(1),
        found.seed,
        match design.draft().signs.looked {
            Looked::All => "a common sign that is not listed counts as not there",
            Looked::Some => "of signs that are not listed nothing is known",
        }
    )
}

fn bed(design: &Design, found: &Diagnosis) -> Vec<Block> {
    let units = design.draft().units;
    let cm = |value| units.depth(Length::from_cm(value));
    let layer = |key: &str, thinnest: f64, deepest: f64, mean: f64| {
        if !design.draft().says(key) {
            "of unknown depth".to_owned()
        } else if cm(thinnest) == cm(deepest) {
            format!("{} everywhere", cm(mean))
        } else {
            format!(
                "{} to {}, {} on the mean",
                cm(thinnest),
                cm(deepest),
                cm(mean)
            )
        }
    };
    let (soil, cap) = (&found.soil, &found.cap);
    vec![
        Block::Heading("Bed".to_owned()),
        Block::Facts(vec![
            Fact::new(
                "soil",
                &design.draft().soil.material.label,
                layer(
                    "soil.depth",
                    soil.thinnest_cm,
                    soil.deepest_cm,
                    soil.depth_cm,
                ),
            )
            .by("soil.deep"),
            Fact::new(
                "cap",
                &design.draft().cap.material.label,
                layer("cap.depth", cap.thinnest_cm, cap.deepest_cm, cap.depth_cm),
            )
            .by("cap.thin"),
        ]),
    ]
}

/// What the second line of a chart is.
const DONE_KEY: &str = "Line and shade: the middle and 10 to 90 % of what fits the readings, if nothing is done. Done: the tank as it most likely stands, with the remedy of its likeliest cause.";

/// The lines that there are; one alone has its name in the title.
fn lines(named: [(&str, Vec<(f64, Band)>); 2]) -> Vec<Series> {
    let drawn = named.into_iter().filter(|(_, line)| !line.is_empty());
    let mut series: Vec<Series> = drawn
        .map(|(name, line)| Series {
            name: name.to_owned(),
            line,
        })
        .collect();
    if let [alone] = series.as_mut_slice() {
        alone.name.clear();
    }
    series
}

/// The weeks ahead if nothing is done.
fn ahead(design: &Design, found: &Diagnosis) -> Vec<Block> {
    let (Some(first), Some(last)) = (found.forecast.first(), found.forecast.last()) else {
        return Vec::new();
    };
    let ready = match found.ready_day {
        Some(day) if day.high <= found.day => "ammonia and nitrite are low by the model".to_owned(),
        Some(day) => format!(
            "ammonia and nitrite stay low from day {} ({} to {})",
            fixed(day.typical, 0),
            fixed(day.low, 0),
            fixed(day.high, 0)
        ),
        None => format!(
            "ammonia or nitrite is still up on day {}",
            fixed(last.day, 0)
        ),
    };
    let anew = if found.resampled {
        ", drawn anew around those that fit"
    } else {
        ""
    };
    let mut blocks = vec![
        Block::Heading(format!(
            "If nothing is done: day {} to {}",
            fixed(first.day, 0),
            fixed(last.day, 0)
        )),
        Block::Text(format!(
            "{ready}. {} of the members fit the readings{anew}.",
            fixed(found.effective_members, 0)
        )),
    ];
    let followed: [Followed; 3] = [
        (
            "ammonia, mg N/L",
            Analyte::Ammonia,
            |day| day.ammonia_mg_l,
            |day| day.ammonia_mg_l,
        ),
        (
            "nitrite, mg NO2/L",
            Analyte::Nitrite,
            |day| day.nitrite_mg_l,
            |day| day.nitrite_mg_l,
        ),
        (
            "nitrate, mg NO3/L",
            Analyte::Nitrate,
            |day| day.nitrate_mg_l,
            |day| day.nitrate_mg_l,
        ),
    ];
    let moves = |analyte, of: fn(&ForecastDay) -> Band| {
        let limit = watch_limit_mg_l(design, analyte).unwrap_or(1.0);
        let middle = found.forecast.iter().map(|day| of(day).typical);
        let (low, high) = middle.fold((f64::INFINITY, 0.0_f64), |(low, high), typical| {
            (low.min(typical), high.max(typical))
        });
        high - low > LEAST_MOVE * limit || found.forecast.iter().any(|day| of(day).high > limit)
    };
    if !found.done.is_empty() {
        blocks.push(Block::OnPage(Box::new(Block::Text(DONE_KEY.to_owned()))));
    }
    let moving = followed
        .into_iter()
        .filter(|(_, analyte, of, _)| moves(*analyte, *of));
    blocks.extend(moving.map(|(title, analyte, of, done)| {
        let past = found.past.iter().filter(|day| day.day < found.day);
        let line = past.chain(&found.forecast).map(|day| (day.day, of(day)));
        let done = found
            .done
            .iter()
            .map(|day| (day.day, Band::exact(done(day))));
        let series = [("nothing done", line.collect()), ("done", done.collect())];
        let limit = watch_limit_mg_l(design, analyte);
        Block::Chart(Chart {
            title: title.to_owned(),
            across: Across::Days,
            series: lines(series),
            limits: limit
                .map(|value| LimitLine {
                    name: "limit".to_owned(),
                    value,
                })
                .into_iter()
                .collect(),
            points: found
                .read
                .iter()
                .filter(|read| read.analyte == analyte)
                .map(|read| (read.day, read.mg_l))
                .collect(),
            start: design.draft().start,
            now: Some(found.day),
            ..Chart::default()
        })
    }));
    blocks
}
