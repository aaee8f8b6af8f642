//! How a design stands, as far as is asked, without its remedies and its words on them.

use super::flush::{AnimalDay, StartupSection, asked_odds};
use super::night::Remedies;
use super::options::Options;
use super::rule;
use super::stages::Stages;
use crate::design::Design;
use crate::finding::{Finding, Status};
use crate::numerics::rodas::IntegrationError;

/// What a finding to be mended and one to be watched count, beside odds that are missed by
/// a whole: judgement; one to be mended outweighs several to be watched.
const ACT: f64 = 3.0;
const WATCH: f64 = 1.0;
/// A finding counts no more than this many times over its limit.
const MOST_EXCESS: f64 = 8.0;

/// How far a design is judged, cheapest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reach {
    /// By the rules on the design alone.
    Design,
    /// By the first weeks too.
    Start,
    /// By the night too: all of it.
    Night,
}

/// A design's findings, and how often its start holds.
#[derive(Debug, Clone, PartialEq)]
pub struct JudgedPlan {
    /// In the order of the codes.
    pub findings: Vec<Finding>,
    /// Share of the starts that hold what is asked; none where no start was followed.
    pub odds: Option<f64>,
    /// The share that is asked for.
    pub asked: f64,
    /// The days from which animals are advised, of the kinds for which the start gives one.
    pub animals_from: Vec<AnimalDay>,
    /// What the animals may weigh, g, where a night was looked at.
    pub carried_g: Option<f64>,
    /// What it costs, where prices are given.
    pub cost: Option<f64>,
}

impl JudgedPlan {
    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        let statuses = self.findings.iter().map(|finding| finding.status);
        statuses.max().unwrap_or(Status::Ok)
    }

    /// How many findings have a status.
    pub fn count(&self, status: Status) -> usize {
        let findings = self.findings.iter();
        findings.filter(|finding| finding.status == status).count()
    }

    /// By how much the odds miss what is asked.
    pub fn shortfall(&self) -> f64 {
        self.odds.map_or(0.0, |odds| (self.asked - odds).max(0.0))
    }

    /// How far it is from holding: what is to be mended and watched, by how much limits are
    /// passed, and by how much the odds miss what is asked; nothing where it holds.
    pub fn missed(&self) -> f64 {
        let findings = self.findings.iter().map(missed);
        self.shortfall() + findings.sum::<f64>()
    }

    /// Whether nothing is to be watched or mended and the odds are as asked.
    pub fn holds(&self) -> bool {
        self.missed() <= 0.0
    }
}

/// What a finding counts: its status, and by how much it passes its limit.
fn missed(finding: &Finding) -> f64 {
    match finding.status {
        Status::Act => ACT + excess(finding),
        Status::Watch => WATCH + excess(finding),
        Status::Note | Status::Ok => 0.0,
    }
}

/// How far a number passes its limit, from 0 to 1, by orders of magnitude.
fn excess(finding: &Finding) -> f64 {
    let over = finding.value.zip(finding.high);
    let under = finding.value.zip(finding.low);
    let times = [
        over.map(|(value, high)| value / high),
        under.map(|(value, low)| low / value),
    ];
    let times = times.into_iter().flatten().fold(1.0, f64::max);
    times.min(MOST_EXCESS).ln() / MOST_EXCESS.ln()
}

/// Judges a design; every figure is that of its whole plan.
///
/// # Errors
/// As for [`plan`](super::plan()).
///
/// # Example
/// ```
/// use lentic::plan::{Options, Reach, judged};
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"100 mm\"";
/// let design = lentic::spec::parse(text)?;
/// let judged = judged(&design, Options::default(), Reach::Design)?;
/// assert_eq!(judged.status(), lentic::Status::Act);
/// assert_eq!(judged.odds, None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn judged(
    design: &Design,
    options: Options,
    reach: Reach,
) -> Result<JudgedPlan, IntegrationError> {
    judge(&Stages::of(design, options, Remedies::Omitted), reach)
}

/// The same at less cost, for plans that are tried: a start that is not ready for animals
/// within the days followed has no day for them, and is not followed for longer.
///
/// # Errors
/// As for [`plan`](super::plan()).
pub fn screened(
    design: &Design,
    options: Options,
    reach: Reach,
) -> Result<JudgedPlan, IntegrationError> {
    let stages = Stages::of(design, options, Remedies::Omitted);
    judge(&stages.screened(), reach)
}

fn judge(stages: &Stages<'_>, reach: Reach) -> Result<JudgedPlan, IntegrationError> {
    let design = stages.design;
    let measures = stages.measures();
    let mut judged = JudgedPlan {
        findings: Vec::new(),
        odds: None,
        asked: asked_odds(design),
        animals_from: Vec::new(),
        carried_g: None,
        cost: measures.cost.as_ref().map(|cost| cost.total),
    };
    if reach == Reach::Design {
        judged.findings = rule::of_design(design);
        return Ok(judged);
    }
    judged.findings = stages.findings_of_start(&measures)?;
    let startup = stages.flush()?.section();
    judged.odds = Some(odds(&startup));
    judged.animals_from = startup.animals_from;
    if reach == Reach::Night {
        judged.findings.extend(stages.findings_of_night()?);
        judged.findings.sort_by_key(|finding| finding.code);
        judged.carried_g = Some(stages.night()?.carried.least().g());
    }
    Ok(judged)
}

/// The share of the starts that `goal.probability` asks for: as advised.
fn odds(startup: &StartupSection) -> f64 {
    startup.odds_with_changes.unwrap_or(startup.odds_as_written)
}
