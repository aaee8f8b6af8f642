//! Everything computed for a design: quantities, weight, planting, findings, cautions.

mod bed;
mod drawing;
mod estimate;
mod figure;
mod flush;
mod hazard;
mod judged;
pub mod lifting;
mod limits;
mod load;
mod night;
mod options;
mod outcome;
mod partial;
mod planting;
mod preparation;
mod purchase;
mod quantity;
pub mod range;
pub mod rule;
mod section;
mod shopping;
mod stages;
mod standing;
mod stocking;
mod tried;
mod weight;
mod whole;
mod words;

pub use drawing::{Build, Drawing, DrawnStand, Herd, drawing};
pub use estimate::Estimate;
pub use flush::{
    AnimalDay, BudgetRow, CalendarEntry, ChangePlan, Courses, DayRow, Driver, ReadingChanges,
    ReadingRow, ShareOverLimit, Startup, StartupSection,
};
pub use hazard::cautions_for;
pub use judged::{JudgedPlan, Reach, judged, screened};
pub use limits::{act_limit_mg_l, watch_limit_mg_l};
pub use night::{
    AnimalCount, AnimalsSection, FlowSection, HeatSection, HourRow, LightSection, Night,
    NightSection, OnDay, dawn_limit,
};
pub use options::Options;
pub use outcome::{Check, Plan};
pub use partial::{Partial, PartialPlanting, PlanPart, partial};
pub use planting::{
    MOST_COVER, MOST_STEMS_G_M2, is_added, needed_in_words, portions_in_words, price,
    smallest_portion, suggested,
};
pub use preparation::PreparationSection;
pub use purchase::bags_in_words;
pub use rule::air_setting::air_setting;
pub use rule::ordered;
pub use section::{
    BagCount, BedSection, CapSection, CostSection, NeededPlanting, PanesSection, PlantingSection,
    PortionCount, SoilSection, TankSection, WeightSection,
};
pub use shopping::ShoppingItem;
pub use standing::{Standing, sand_over, sand_to, standing};
pub use stocking::{StockingStep, StockingTest};
pub use tried::remedied;
pub use words::of_100;

use crate::design::Design;
use crate::finding::{Caution, Code, Finding, Remedy, Status, Working};
use crate::numerics::rodas::IntegrationError;
use flush::Flush;
use load::Load;
use night::{NightPlan, Remedies};
use rule::{FlushCase, NightCase};
use stages::Stages;

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
    let plan = stages.plan()?;
    let (flush, night) = (stages.flush()?, stages.night()?);
    let startup = flush.whole(startup_cautions(design, &plan.startup, &plan.findings));
    let night = night.whole(night_cautions(night, &plan.findings));
    Ok((plan, startup, night))
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
        .filter(|finding| rule::is_about_bed(finding.code))
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
    let section = flush.section();
    let findings = rule::of_flush(&FlushCase::of(design, &flush, &section));
    let cautions = startup_cautions(design, &section, &findings);
    Ok((flush.whole(cautions), findings))
}

/// The cautions that go with the calendar of a start-up run and with the remedies of the
/// findings on it.
fn startup_cautions(
    design: &Design,
    section: &StartupSection,
    findings: &[Finding],
) -> Vec<Caution> {
    let calendar = section.calendar.iter();
    let actions = calendar.flat_map(|entry| entry.actions.iter().copied());
    let on_start = findings
        .iter()
        .filter(|finding| rule::is_on_start(finding.code));
    hazard::cautions_of_start(design, actions.chain(ordered(on_start)))
}

/// A day and a night of a design by themselves, with the findings on them.
///
/// # Errors
/// As for [`plan`].
pub fn night(
    design: &Design,
    options: Options,
    on_day: OnDay,
) -> Result<(Night, Vec<Finding>), IntegrationError> {
    let load = Load::of(design)?;
    let load_is_met = load.met_by(design.planted())?.is_met();
    let night = NightPlan::of(design, options, on_day, Remedies::Sought)?;
    let findings = rule::of_night(&NightCase::of(&night, load_is_met));
    let cautions = night_cautions(&night, &findings);
    Ok((night.whole(cautions), findings))
}

/// The cautions that go with the remedies of the findings on a night.
fn night_cautions(night: &NightPlan<'_>, findings: &[Finding]) -> Vec<Caution> {
    let at_night = findings
        .iter()
        .filter(|finding| rule::is_on_night(finding.code));
    let mut cautions = hazard::cautions_at_night(night.design, ordered(at_night));
    cautions.extend(night.ph_outside().map(range::ph_outside));
    cautions
}

/// Masses of a filled tank and the pressure under its footprint.
pub fn weight(design: &Design) -> WeightSection {
    weight::weight(design, &quantity::soil(design), &quantity::cap(design))
}

/// The steps behind a topic: those of its finding, or of the figures that rest on it. None
/// where nothing stands between what goes in and what comes out.
pub fn working_of(design: &Design, plan: &Plan, code: &str) -> Working {
    match Code::find(code) {
        Some(code) => working(design, plan, code),
        None => Working {
            steps: figure::steps(design, plan, code),
        },
    }
}

/// The steps behind one finding of a plan.
pub fn working(design: &Design, plan: &Plan, code: Code) -> Working {
    Working {
        steps: rule::steps(design, plan, code),
    }
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
