//! A plan of which only what is asked for is computed.

use serde::Serialize;

use super::flush::StartupSection;
use super::night::{
    AnimalsSection, FlowSection, HeatSection, LightSection, NightSection, Remedies,
};
use super::options::Options;
use super::outcome::Plan;
use super::quantity;
use super::rule::{self, Judge};
use super::section::{
    BedSection, CapSection, CostSection, NeededPlanting, PanesSection, PlantingSection,
    SoilSection, TankSection, WeightSection,
};
use super::stages::{Stages, standing};
use crate::design::Design;
use crate::finding::{Code, Status};
use crate::numerics::rodas::IntegrationError;

/// What a result takes to compute, cheapest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlanPart {
    /// Quantities, weight, cost, and the rules on the design alone.
    Measures,
    /// What the bed gives off in a run without plants.
    Load,
    /// The ensemble of starts.
    Start,
    /// How the findings on bed, planting and start stand.
    Standing,
    /// The leanest night and what it carries.
    Night,
    /// How every finding stands.
    Status,
    /// The air that a night takes and the power cut it bears: searches over nights.
    Air,
    /// The water changes by reading with their odds, and the days of the animals: more
    /// ensembles.
    Changes,
    /// The smallest addition to the planting: a search, and an ensemble.
    Needed,
    /// Anything else: the whole plan.
    Whole,
}

impl PlanPart {
    /// What the result at a JSON path takes; `findings.` and a code stand for its status.
    ///
    /// # Example
    /// ```
    /// use lentic::plan::PlanPart;
    /// assert_eq!(PlanPart::of("weight.total_kg"), PlanPart::Measures);
    /// assert_eq!(PlanPart::of("startup.ammonia_peak_mg_l.high"), PlanPart::Start);
    /// assert_eq!(PlanPart::of("findings.cap.coarse"), PlanPart::Measures);
    /// ```
    pub fn of(path: &str) -> Self {
        let (section, rest) = path.split_once('.').unwrap_or((path, ""));
        match (section, rest) {
            ("cap", "verdict") => Self::Standing,
            ("status", "") => Self::Status,
            ("night", "air_needed_l_min" | "air_needed_night_l_min" | "power_cut_h") => Self::Air,
            ("night", rest) if rest.starts_with("pump_pressure_kpa") => Self::Air,
            ("night" | "flow" | "light" | "animals" | "heat", _) => Self::Night,
            ("bed", _) | ("planting", "index" | "shortfall_pct") => Self::Load,
            ("planting", "probability_under_limits") => Self::Start,
            ("planting", rest) if rest.starts_with("needed") => Self::Needed,
            ("startup", "odds_with_changes" | "probability_with_changes") => Self::Changes,
            ("startup", rest)
                if ["changes_by_reading", "ready_day_advised", "animals_from"]
                    .iter()
                    .any(|name| rest.starts_with(name)) =>
            {
                Self::Changes
            }
            ("startup", _) => Self::Start,
            ("planting" | "tank" | "soil" | "cap" | "weight" | "panes" | "cost", _) => {
                Self::Measures
            }
            ("findings", code) => match Code::find(code).and_then(rule::judge) {
                Some(Judge::Design(_)) => Self::Measures,
                Some(Judge::Night(_)) => Self::Status,
                Some(Judge::Start(_) | Judge::Flush(_)) | None => Self::Standing,
            },
            _ => Self::Whole,
        }
    }
}

/// A plan in part; what was not asked for is absent.
#[derive(Debug, Clone, PartialEq, Serialize, Default)]
pub struct Partial {
    /// The vessel and its water.
    pub tank: Option<TankSection>,
    /// Soil to buy.
    pub soil: Option<SoilSection>,
    /// Cap to buy; without its verdict unless the findings are asked for.
    pub cap: Option<CapSection>,
    /// What the bed gives off.
    pub bed: Option<BedSection>,
    /// What it weighs.
    pub weight: Option<WeightSection>,
    /// Stress in flat panes.
    pub panes: Option<PanesSection>,
    /// The planting of day one.
    pub planting: Option<PartialPlanting>,
    /// How the first weeks go; without water changes, the animals' days and calendar unless these are asked for.
    pub startup: Option<StartupSection>,
    /// A day and a night.
    pub night: Option<NightSection>,
    /// How the water moves.
    pub flow: Option<FlowSection>,
    /// What light reaches the plants.
    pub light: Option<LightSection>,
    /// What animals the tank carries.
    pub animals: Option<AnimalsSection>,
    /// What keeping it warm takes.
    pub heat: Option<HeatSection>,
    /// What it costs.
    pub cost: Option<CostSection>,
    /// The worst status of all findings.
    pub status: Option<Status>,
    /// How each finding stands.
    #[serde(skip)]
    pub standing: Vec<(Code, Status)>,
    /// All of it, where a part was asked for that is not computed alone.
    #[serde(skip)]
    pub whole: Option<Box<Plan>>,
}

/// The planting section in part.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PartialPlanting {
    /// Share of the surface under floaters.
    pub floating_cover_pct: f64,
    /// Fresh floaters.
    pub floating_g: f64,
    /// Fresh fast growers.
    pub fast_g: f64,
    /// Fresh slow growers.
    pub slow_g: f64,
    /// What the planting can take over what the bed gives off.
    pub index: Option<f64>,
    /// Share of the ensemble under the limits.
    pub probability_under_limits: Option<f64>,
    /// The smallest addition that meets the load.
    pub needed: Option<NeededPlanting>,
    /// By how much the index misses its limit.
    pub shortfall_pct: Option<f64>,
}

/// Computes some parts of a plan; each number is that of the whole plan.
///
/// # Errors
/// As for [`plan`](super::plan).
///
/// # Example
/// ```
/// use lentic::plan::{Options, PlanPart, partial};
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"";
/// let design = lentic::spec::parse(text)?;
/// let part = partial(&design, Options::default(), &[PlanPart::Measures])?;
/// assert!(part.weight.is_some() && part.startup.is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn partial(
    design: &Design,
    options: Options,
    parts: &[PlanPart],
) -> Result<Partial, IntegrationError> {
    let seeks_air = parts
        .iter()
        .any(|part| matches!(part, PlanPart::Air | PlanPart::Whole));
    let remedies = if seeks_air {
        Remedies::Sought
    } else {
        Remedies::Omitted
    };
    let stages = Stages::of(design, options, remedies);
    if parts.contains(&PlanPart::Whole) {
        return Ok(Partial::of_whole(stages.plan()?));
    }
    let measures = stages.measures();
    let mut planting = as_planted(design);
    let mut partial = Partial {
        tank: Some(quantity::tank(design)),
        standing: standing(&rule::of_design(design)),
        ..Partial::default()
    };
    if parts.contains(&PlanPart::Load) {
        let (load, planted) = (stages.load()?, design.planted());
        partial.bed = Some(stages.bed()?);
        planting.index = Some(load.index(planted));
        planting.shortfall_pct = Some(load.shortfall_pct(planted));
    }
    if parts.contains(&PlanPart::Start) {
        partial.startup = Some(stages.flush()?.figures());
        planting.probability_under_limits = Some(stages.flush()?.probability);
    }
    if parts.contains(&PlanPart::Changes) {
        partial.startup = Some(stages.flush()?.section());
    }
    if parts.contains(&PlanPart::Needed) {
        planting = PartialPlanting::of_whole(stages.needed()?.section);
    }
    if parts.contains(&PlanPart::Night) || parts.contains(&PlanPart::Air) {
        let night = stages.night()?;
        partial.night = Some(night.night());
        partial.flow = Some(night.flow());
        partial.light = Some(night.light());
        partial.animals = Some(night.animals());
        partial.heat = Some(night.heat());
    }
    let mut verdict = String::new();
    if parts.contains(&PlanPart::Standing) || parts.contains(&PlanPart::Status) {
        let mut findings = stages.findings_of_start(&measures)?;
        verdict = rule::cap_verdict(&findings);
        if parts.contains(&PlanPart::Status) {
            findings.extend(stages.findings_of_night()?);
            partial.status = findings.iter().map(|finding| finding.status).max();
        }
        partial.standing = standing(&findings);
    }
    Ok(Partial {
        soil: Some(measures.soil),
        cap: Some(CapSection {
            verdict,
            ..measures.cap
        }),
        weight: Some(measures.weight),
        panes: measures.panes,
        cost: measures.cost,
        planting: Some(planting),
        ..partial
    })
}

/// The planting as it is, nothing computed.
fn as_planted(design: &Design) -> PartialPlanting {
    let planted = design.planted();
    PartialPlanting {
        floating_cover_pct: planted.cover.percent(),
        floating_g: planted.floating.fresh.g(),
        fast_g: planted.fast.fresh.g(),
        slow_g: planted.slow.fresh.g(),
        index: None,
        probability_under_limits: None,
        needed: None,
        shortfall_pct: None,
    }
}

impl Partial {
    fn of_whole(plan: Plan) -> Self {
        Self {
            status: Some(plan.status()),
            standing: standing(&plan.findings),
            whole: Some(Box::new(plan)),
            ..Self::default()
        }
    }
}

impl PartialPlanting {
    fn of_whole(section: PlantingSection) -> Self {
        Self {
            floating_cover_pct: section.floating_cover_pct,
            floating_g: section.floating_g,
            fast_g: section.fast_g,
            slow_g: section.slow_g,
            index: Some(section.index),
            probability_under_limits: Some(section.probability_under_limits),
            needed: Some(section.needed),
            shortfall_pct: Some(section.shortfall_pct),
        }
    }
}
