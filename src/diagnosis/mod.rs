//! What is wrong with a tank: readings and signs weighed against a closed list of causes,
//! each followed with the start-up model, and what to do about the likeliest.
//!
//! [`diagnose`] does it all. Its steps: [`case`] gathers what is known, [`scenario`] says
//! what a cause changes, [`hypotheses`] follows the tank under each, [`weighing`] weighs
//! them by readings ([`kit`]), signs ([`sign`]) and circumstances, [`remedy`] finds
//! quantities, [`look`] the look that would tell most, [`forecast`] the weeks ahead.

mod aired;
pub mod case;
pub mod cause;
pub mod circumstance;
pub mod dawn;
mod done;
pub mod emergency;
pub mod estimate;
mod fact;
pub mod forecast;
pub mod hypotheses;
pub mod kit;
pub mod look;
pub mod measurement;
pub mod narrowing;
pub mod next_step;
pub mod remedy;
pub mod scenario;
pub mod sign;
pub mod weighing;

mod check_cause;
mod check_water;
mod working;

pub use aired::Aired;
pub use cause::Cause;
pub use done::DoneDay;
pub use forecast::ReadPoint;
pub use hypotheses::runs;
pub use measurement::{Measurand, Measurement, Reported};
pub use next_step::NextResult;
pub use weighing::Evidence;
pub use working::{working, working_of};

use serde::Serialize;

use crate::design::Design;
use crate::dosing::Dosing;
use crate::finding::{Action, Caution, Code, Explanation, Finding, Status};
use crate::numerics::rodas::IntegrationError;
use crate::plan::{BedSection, CapSection, Options, SoilSection, cautions_for, check};
use crate::result::results;
use crate::source::Band;
use case::CaseHistory;
use dawn::Dawn;
use estimate::TankEstimate;
use forecast::ForecastDay;
use hypotheses::Hypotheses;
use look::NextReading;
use narrowing::Narrowed;
use remedy::{CauseRemedy, treat};
use weighing::Weighing;

/// Members for each cause where nothing else is asked for.
pub const MEMBERS: u32 = 128;
/// The bed is judged by the central numbers alone.
const CENTRAL: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};
/// Remedies are worked out for so many causes at most, and for none less probable.
const MOST_TREATED: usize = 3;
const LEAST_TREATED: f64 = 0.05;
/// Causes are told apart where the first has at least this probability, or is this many
/// times as probable as the second (judgement).
const TOLD_APART: f64 = 0.5;
const TOLD_APART_RATIO: f64 = 2.0;

results! {
    /// What is wrong, or that nothing is; fields are named as in JSON.
    ///
    /// `alike` is empty where one cause leads.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Diagnosis {
        /// What the keeper calls the tank.
        pub name: String,
        /// day of the last reading, after flooding
        pub day: f64 => Spec,
        /// The one thing to do next.
        pub next_step: NextResult,
        /// whether it cannot wait
        pub urgent: bool => "check.water",
        /// whether nothing was read or seen, so that the bed alone is judged
        pub is_blind: bool => Count,
        /// probability of each cause before any evidence: all start even
        pub prior: f64 => "check.cause",
        /// every cause, the likeliest first
        pub causes: Vec<CauseResult> => "check.cause",
        /// what hungry plants are given, where they are among the causes that have a remedy; absent elsewhere
        #[serde(flatten)]
        pub given: Option<Dosing>,
        /// causes that cannot be told apart by what is known
        pub alike: Vec<Cause> => "check.cause" each "the name of one of them",
        /// What would tell most.
        pub measure_next: Option<NextReading>,
        /// members followed for each cause
        pub members: u32 => Option,
        /// what they were drawn with
        pub seed: u64 => Option,
        /// how many members the readings leave, of those of all causes
        pub effective_members: f64 => "check.fit",
        /// whether members were drawn anew around those that fit
        pub resampled: bool => "check.fit",
        /// day from which ammonia and nitrite stay low if nothing is done; null where that is
        /// beyond the days followed
        pub ready_day: Option<Band> => "animals.early" by Members,
        /// the weeks ahead if nothing is done
        pub forecast: Vec<ForecastDay> => "check.fit",
        /// The weeks before, by the same members, for charts.
        #[serde(skip)]
        pub past: Vec<ForecastDay>,
        /// What was read, for charts.
        #[serde(skip)]
        pub read: Vec<ReadPoint>,
        /// The weeks ahead with the remedy of the likeliest cause done, for charts.
        #[serde(skip)]
        pub done: Vec<DoneDay>,
        /// The night with and without the air advised, for charts.
        #[serde(skip)]
        pub aired: Option<Aired>,
        /// The soil as it lies.
        pub soil: SoilSection,
        /// The cap as it lies.
        pub cap: CapSection,
        /// What the bed gives off.
        pub bed: BedSection,
        /// Judged results on water, cause and bed.
        pub findings: Vec<Finding>,
        /// Hazards and limits.
        pub cautions: Vec<Caution>,
    }

    /// One cause, weighed.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct CauseResult {
        /// the cause's name
        pub cause: Cause => "check.cause",
        /// how likely it is after all evidence, 0 to 1
        pub probability: f64 => "check.cause",
        /// what the cause means
        pub says: &'static str => "check.cause",
        /// what moved it most, for and against
        pub evidence: Vec<Evidence> => "check.cause",
        /// what to do about it, or null for the less likely ones
        pub remedy: Option<CauseRemedy> => "check.cause",
    }
}

impl Diagnosis {
    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        let statuses = self.findings.iter().map(|finding| finding.status);
        statuses.max().unwrap_or(Status::Ok)
    }

    /// The likeliest cause.
    pub fn leading(&self) -> Option<&CauseResult> {
        self.causes.first()
    }
}

/// Weighs what is known of a design and the tank built to it; `log` holds measurements
/// beside those of the design.
///
/// # Errors
/// When the numbers of the tank leave the finite ones.
///
/// # Example
/// ```
/// let text = r#"
/// [tank]
/// shape = "box"
/// size = "60 x 30 x 36 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "25 mm"
/// [cap]
/// material = "pea_gravel"
/// depth = "40 mm"
/// [[readings]]
/// day = 60
/// nitrate = "80 mg/L"
/// [signs]
/// observed = ["soil_plume", "soil_visible"]
/// "#;
/// let design = lentic::spec::parse(text)?;
/// let options = lentic::plan::Options { members: 8, ..Default::default() };
/// let found = lentic::diagnosis::diagnose(&design, &[], options)?;
/// assert_eq!(found.causes[0].cause.name(), "cap_coarse");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn diagnose(
    design: &Design,
    log: &[Measurement],
    options: Options,
) -> Result<Diagnosis, IntegrationError> {
    diagnose_with_progress(design, log, options, &|_| {})
}

/// As [`diagnose`]; `advance` is told of [`runs`] that are done, from any thread.
///
/// # Errors
/// As for [`diagnose`].
pub fn diagnose_with_progress(
    design: &Design,
    log: &[Measurement],
    options: Options,
    advance: &(dyn Fn(u64) + Sync),
) -> Result<Diagnosis, IntegrationError> {
    let case = CaseHistory::of(design, log)?;
    let hypotheses = Hypotheses::with_progress(&case, options, advance)?;
    let dawn = Dawn::of(&case, options.seed).ok();
    let weighing = Weighing::of(&case, &hypotheses, dawn);
    let ranked = weighing.posterior.ranked();
    let alike = alike(&ranked);
    let measure_next = look::best(&case, &hypotheses, &weighing.posterior);
    let narrowed = Narrowed::of(&case, &hypotheses, &weighing.posterior, options.seed);
    let members_ahead = narrowing::from_measured(&case, &narrowed);
    let ready_day = forecast::ready_day(&case, &members_ahead);
    let (causes, done) = causes(&case, &hypotheses, &weighing, ready_day)?;
    let aired = Aired::of(&case, &causes);
    let bed = check(design, CENTRAL)?;
    let next = next_step::of(&case, &causes, &alike, measure_next.as_ref(), &bed);
    let mut findings = findings(&case, &causes, &alike);
    findings.extend(
        bed.findings
            .into_iter()
            .filter(|one| is_known(design, one.code)),
    );
    findings.sort_by_key(|finding| finding.code);
    let mut cautions = cautions(design, &next.actions, &causes, &bed.cautions);
    cautions.extend(emergency::rising_ph(&case));
    cautions.extend(case.too_old());
    cautions.extend(case.unknown_depths());
    cautions.extend(thinned(&case));
    Ok(Diagnosis {
        name: design.draft().name.clone(),
        day: case.age_d,
        next_step: next.result,
        urgent: next.is_urgent,
        is_blind: case.is_blind(),
        prior: 1.0 / Cause::ALL.len() as f64,
        given: causes
            .iter()
            .find_map(|cause| cause.remedy.as_ref()?.given.clone()),
        causes,
        alike,
        measure_next,
        members: options.members,
        seed: options.seed,
        effective_members: narrowed.effective,
        resampled: narrowed.resampled,
        ready_day,
        forecast: forecast::days(&case, &members_ahead),
        past: forecast::past(&case, &members_ahead),
        read: forecast::read(&case),
        done,
        aired,
        soil: bed.soil,
        cap: bed.cap,
        bed: bed.bed,
        findings,
        cautions,
    })
}

/// Whether a finding rests on depths that are known.
fn is_known(design: &Design, code: Code) -> bool {
    let says = |key| design.draft().says(key);
    match code {
        Code::CapThin | Code::CapDeep | Code::CapSlope => says("cap.depth"),
        Code::SoilThin | Code::SoilDeep => says("soil.depth"),
        _ => true,
    }
}

/// The cautions that go with the next step and the remedies, and those of the bed that
/// are not among them.
fn cautions(
    design: &Design,
    next: &[Action],
    causes: &[CauseResult],
    of_bed: &[Caution],
) -> Vec<Caution> {
    let remedies = causes.iter().filter_map(|result| result.remedy.as_ref());
    let remedies = remedies.flat_map(|remedy| &remedy.actions);
    let mut cautions = cautions_for(design, next.iter().chain(remedies).copied());
    for caution in of_bed {
        if cautions.iter().all(|other| other.code != caution.code) {
            cautions.push(caution.clone());
        }
    }
    cautions
}

/// Every cause with its remedy, and the weeks ahead with that of the first done.
fn causes(
    case: &CaseHistory<'_>,
    hypotheses: &Hypotheses,
    weighing: &Weighing,
    ready_day: Option<Band>,
) -> Result<(Vec<CauseResult>, Vec<DoneDay>), IntegrationError> {
    let mut done = Vec::new();
    let ranked = weighing.posterior.ranked().into_iter().enumerate();
    let causes = ranked.map(|(place, (cause, probability))| {
        let is_treated = place == 0 || (place < MOST_TREATED && probability >= LEAST_TREATED);
        let remedy = if is_treated {
            let estimate = TankEstimate::of(case, hypotheses, cause);
            let treatment = treat(case, &estimate, ready_day)?;
            if place == 0 && !case.is_blind() {
                done = done::days(case, &treatment);
            }
            Some(treatment.remedy)
        } else {
            None
        };
        Ok(CauseResult {
            cause,
            probability,
            says: cause.says(),
            evidence: weighing.evidence(case, hypotheses, cause),
            remedy,
        })
    });
    let causes = causes.collect::<Result<_, _>>()?;
    Ok((causes, done))
}

/// That not every reading of a long log is weighed.
fn thinned(case: &CaseHistory<'_>) -> Option<Caution> {
    let known = case
        .log
        .iter()
        .filter(|reading| case.kit(reading.of).is_some());
    let (all, weighed) = (known.count(), hypotheses::followed(case).len());
    (weighed < all).then(|| Caution {
        code: "log.spread",
        says: format!(
            "Log: of {all} readings {weighed}, evenly spread and with the last, are weighed: more of the same kit would not tell more."
        ),
        source: None,
    })
}

/// The leading causes that are not told apart.
fn alike(ranked: &[(Cause, f64)]) -> Vec<Cause> {
    let Some((_, first)) = ranked.first() else {
        return Vec::new();
    };
    let close: Vec<Cause> = ranked
        .iter()
        .take_while(|(_, probability)| probability * TOLD_APART_RATIO > *first)
        .map(|(cause, _)| *cause)
        .collect();
    if *first >= TOLD_APART || close.len() < 2 {
        Vec::new()
    } else {
        close
    }
}

/// The findings of a check beside those on the bed.
fn findings(case: &CaseHistory<'_>, causes: &[CauseResult], alike: &[Cause]) -> Vec<Finding> {
    let mut findings: Vec<Finding> = check_water::judged(case).collect();
    if !case.is_blind() {
        findings.extend(
            causes
                .first()
                .map(|first| check_cause::judged(first, alike)),
        );
    }
    findings
}

/// The code and the explanation of every rule that a check judges by.
pub fn explanations() -> impl Iterator<Item = (Code, &'static Explanation)> {
    [
        (Code::CheckWater, &check_water::EXPLANATION),
        (Code::CheckCause, &check_cause::EXPLANATION),
    ]
    .into_iter()
}
