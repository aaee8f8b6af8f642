//! Everything computed for a design: quantities, weight, planting, findings, cautions.

mod bed;
mod drawing;
mod estimate;
mod excess;
mod flush;
mod hazard;
mod judge;
pub mod lifting;
mod load;
mod night;
mod partial;
mod planting;
mod purchase;
mod quantity;
pub mod range;
mod section;
mod stages;
mod standing;
mod weight;
mod words;
mod working;

use serde::Serialize;

pub use drawing::{Drawing, drawing};
pub use estimate::Estimate;
pub use flush::{
    CHANGE_PACES, CalendarEntry, ChangePlan, DayRow, Driver, ReadingRow, ShareOverLimit, Startup,
    StartupSection, act_limit_mg_l, watch_limit_mg_l,
};
pub use hazard::cautions_for;
pub use night::{
    AnimalCount, AnimalsSection, FlowSection, HeatSection, HourRow, LightSection, Night,
    NightSection, OnDay,
};
pub use partial::{Part, Partial, PartialPlanting, partial};
pub use planting::{needed_in_words, portions_in_words, price};
pub use purchase::bags_in_words;
pub use section::{
    BagCount, BedSection, CapSection, CostSection, NeededPlanting, PanesSection, PlantingSection,
    PortionCount, SoilSection, TankSection, WeightSection,
};
pub use standing::{Standing, sand_over, sand_to, standing};
pub use working::{worked, working};

use crate::design::{Assumption, Design};
use crate::finding::{Caution, Finding, Remedy, Status, ordered};
use crate::numerics::rodas::IntegrationError;
use flush::Flush;
use load::Load;
use night::{Nocturne, Remedies};
use stages::Stages;

/// A plan; its fields are named as in JSON.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plan {
    /// What the keeper calls the tank.
    pub name: String,
    /// Defaults that stand for what was not said.
    pub assumed: Vec<Assumption>,
    /// The vessel and its water.
    pub tank: TankSection,
    /// Soil to buy.
    pub soil: SoilSection,
    /// Cap to buy.
    pub cap: CapSection,
    /// What the bed gives off.
    pub bed: BedSection,
    /// What it weighs.
    pub weight: WeightSection,
    /// Stress in flat panes, where there are any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub panes: Option<PanesSection>,
    /// The planting of day one.
    pub planting: PlantingSection,
    /// How the first weeks go.
    pub startup: StartupSection,
    /// The first weeks day by day, for charts; `startup` gives them to scripts.
    #[serde(skip)]
    pub days: Vec<DayRow>,
    /// A day and a night, on the leanest day.
    pub night: NightSection,
    /// That day hour by hour, for charts; `night` gives it to scripts.
    #[serde(skip)]
    pub hours: Vec<HourRow>,
    /// How the water moves.
    pub flow: FlowSection,
    /// Light below the floaters.
    pub light: LightSection,
    /// Animals against what is carried.
    pub animals: AnimalsSection,
    /// Heat, water and electricity.
    pub heat: HeatSection,
    /// What it costs, where prices are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<CostSection>,
    /// Judged results.
    pub findings: Vec<Finding>,
    /// Hazards and limits.
    pub cautions: Vec<Caution>,
}

/// Every path of a plan's JSON with its type over all demo tanks, one a line; `[]` stands
/// for any item of a list.
pub const PATHS: &str = include_str!("paths.txt");

/// A check of the bed of an existing tank.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// What the keeper calls the tank.
    pub name: String,
    /// The one thing to do next.
    pub next_step: Remedy,
    /// The soil as it lies.
    pub soil: SoilSection,
    /// The cap as it lies.
    pub cap: CapSection,
    /// What the bed gives off.
    pub bed: BedSection,
    /// Judged results on the bed.
    pub findings: Vec<Finding>,
    /// Hazards and limits.
    pub cautions: Vec<Caution>,
}

/// How a start is followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// Members of the ensemble; 0 for the central numbers alone.
    pub members: u32,
    /// What the ensemble is drawn with.
    pub seed: u64,
    /// Days followed.
    pub days: u32,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            members: 200,
            seed: 1,
            days: 90,
        }
    }
}

/// Computes and judges everything for a design: the door from a checked tank to a [`Plan`].
///
/// # Errors
/// When the numbers of the start-up run leave the finite ones.
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
/// material = "filter_sand"
/// depth = "100 mm"
/// "#;
/// let design = lentic::spec::parse(text)?;
/// let plan = lentic::plan::plan(&design, lentic::plan::Options::default())?;
/// let deep = plan.findings.iter().find(|finding| finding.code.text() == "cap.deep");
/// assert_eq!(deep.map(|finding| finding.status), Some(lentic::finding::Status::Act));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan(design: &Design, options: Options) -> Result<Plan, IntegrationError> {
    Stages::of(design, options, Remedies::Sought).plan()
}

/// Computes and judges a whole design, with every day of its start and every hour of its
/// night beside it, each as it has by itself.
///
/// # Errors
/// As for [`plan`].
pub fn followed(
    design: &Design,
    options: Options,
) -> Result<(Plan, Startup, Night), IntegrationError> {
    let stages = Stages::of(design, options, Remedies::Sought);
    Ok((
        stages.plan()?,
        stages.flush()?.whole(),
        stages.night()?.whole(),
    ))
}

/// Judges the bed of an existing tank and names one next step.
///
/// # Errors
/// As for [`plan`].
pub fn check(design: &Design, options: Options) -> Result<Check, IntegrationError> {
    let plan = Stages::of(design, options, Remedies::Sought)
        .running()
        .plan()?;
    let findings: Vec<Finding> = plan
        .findings
        .into_iter()
        .filter(|finding| judge::is_about_bed(finding.code))
        .collect();
    Ok(Check {
        name: plan.name,
        next_step: next_step(&findings),
        cautions: plan.cautions,
        soil: plan.soil,
        cap: plan.cap,
        bed: plan.bed,
        findings,
    })
}

/// Follows the first weeks of a design day by day, with the findings on them; `advance` is called with the number of
/// members done, from any thread.
///
/// # Errors
/// As for [`plan`].
pub fn startup(
    design: &Design,
    options: Options,
    advance: &(dyn Fn(u32) + Sync),
) -> Result<(Startup, Vec<Finding>), IntegrationError> {
    let load = Load::of(design)?;
    let ph_dusk = night::ph_at_dusk(design, options)?;
    let flush = Flush::of(design, &load, options, ph_dusk, advance)?;
    let findings = judge::flush::all(&judge::flush::Case::of(design, &flush, &flush.section()));
    Ok((flush.whole(), findings))
}

/// The cautions that go with the calendar of a start-up run and with the remedies of the
/// findings on it.
pub fn startup_cautions(design: &Design, startup: &Startup, findings: &[Finding]) -> Vec<Caution> {
    let calendar = startup.section.calendar.iter();
    let actions = calendar.flat_map(|entry| entry.actions.iter().copied());
    hazard::cautions_of_start(design, actions.chain(ordered(findings)))
}

/// A day and a night of a design by themselves, with the findings on them.
///
/// # Errors
/// As for [`plan`].
pub fn night(
    design: &Design,
    options: Options,
    on_day: OnDay,
) -> Result<(Night, Vec<Finding>, Vec<Caution>), IntegrationError> {
    let load = Load::of(design)?;
    let load_is_met = load.met_by(design.planted())?.is_met();
    let night = Nocturne::of(design, options, on_day, Remedies::Sought)?;
    let findings = judge::night::all(&judge::night::Case::of(&night, load_is_met));
    let mut cautions = hazard::cautions_at_night(design, ordered(&findings));
    cautions.extend(night.ph_outside().map(excess::ph_outside));
    Ok((night.whole(), findings, cautions))
}

impl Plan {
    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        worst(&self.findings)
    }

    /// The plan in one sentence.
    pub fn verdict(&self) -> String {
        let count = |status| {
            self.findings
                .iter()
                .filter(|finding| finding.status == status)
                .count()
        };
        match (count(Status::Act), count(Status::Watch)) {
            (0, 0) => self.sound(),
            (0, watch) => format!("{} to watch", things(watch)),
            (act, 0) => format!("{} to mend before it is filled", things(act)),
            (act, watch) => format!(
                "{} to mend before it is filled, {} to watch",
                things(act),
                things(watch)
            ),
        }
    }

    /// Sound as it is, or once the water is changed as often as the probability asked for
    /// takes.
    fn sound(&self) -> String {
        let means = if self.startup.water_change_plan.is_empty() {
            "sound: nothing to change"
        } else {
            "sound with the water changes of the calendar"
        };
        means.to_owned()
    }
}

impl Check {
    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        worst(&self.findings)
    }
}

fn things(count: usize) -> String {
    if count == 1 {
        "1 thing".to_owned()
    } else {
        format!("{count} things")
    }
}

fn worst(findings: &[Finding]) -> Status {
    let statuses = findings.iter().map(|finding| finding.status);
    statuses.max().unwrap_or(Status::Ok)
}

/// The remedy of the worst finding; of equals, the first in the order of the codes.
fn next_step(findings: &[Finding]) -> Remedy {
    let worst = findings
        .iter()
        .filter(|finding| finding.status >= Status::Watch)
        .rev()
        .max_by_key(|finding| finding.status);
    match worst {
        Some(finding) => {
            let says = &finding.says;
            match finding.remedy.clone() {
                Some(remedy) => Remedy {
                    says: format!("{says}. Next: {}", remedy.says),
                    ..remedy
                },
                None => nothing_to_do(says),
            }
        }
        None => nothing_to_do(
            "the bed is sound: leave it alone; plants and animals are not looked at here",
        ),
    }
}

fn nothing_to_do(says: &str) -> Remedy {
    Remedy {
        says: says.to_owned(),
        quantity: None,
        unit: "",
    }
}

/// "sound", or the worst finding on the cap.
fn cap_verdict(findings: &[Finding]) -> String {
    let worst = findings
        .iter()
        .filter(|finding| finding.code.text().starts_with("cap."))
        .filter(|finding| finding.status >= Status::Watch)
        .rev()
        .max_by_key(|finding| finding.status);
    worst.map_or_else(
        || "sound".to_owned(),
        |finding| format!("{} {}", finding.status.word(), finding.code.text()),
    )
}
