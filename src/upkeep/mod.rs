//! A tank that runs: what a week asks for, what the years bring, and what happens if.
//!
//! Figures are read off the last weeks of a run; formulas that need no run stand by
//! themselves, for whoever knows their numbers.

mod absence;
mod answers;
mod breath;
mod crowd;
mod feeding;
mod harvest;
mod member;
mod routine;
mod section;
mod setting;
mod stirring;
mod verdict;
mod weekly;
mod working;

pub use absence::{FISH_D, GRAZERS_D, LAMP_H, MISSING, Shortfall, shortfall};
pub use breath::{
    BUCKET_LEAST_MG_L, FRESH, HANDLED, POURED_FROM, gained_by_falling, lasts_in_bucket, pouring,
};
pub use feeding::HUNGRY_PCT;
pub use harvest::{CUT, measured_per_week, trim_interval, weekly_take};
pub use routine::{Routine, share_to_hold};
pub use section::{
    AgeingSection, AwaySection, BucketSection, MoveSection, PowerSection, RemovedSection,
    StirSection, SupplySection, Upkeep, WeekRow, WeeklySection, YearRow,
};
pub use setting::{FIRST_DAY, LAST_DAY};
pub use stirring::{
    AT_ONCE, AT_ONCE_BLACK, DRAWN_OFF, SESSION_EVERY_D, ammonia_rise, borne_share, change_to_reach,
    clears_in,
};
pub use verdict::LEAST_DKH;
pub use working::working_of;

use rayon::prelude::*;

use crate::design::Design;
use crate::finding::Action;
use crate::numerics::rodas::IntegrationError;
use crate::plan::{Options, cautions_for, watch_limit_mg_l};
use crate::source::Band;
use crate::startup::ensemble::{central, member};
use crate::startup::{Member, Parameters};
use crate::units::{Analyte, Duration, Share, Volume};
use crowd::Crowd;
use member::MemberFigures;
use setting::KeptTank;

/// Members of the ensemble unless said otherwise: the years are long, and bands of what is
/// read off weeks are steady from a few dozen on.
pub const MEMBERS: u32 = 64;

/// What is asked of a running tank.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct UpkeepQuestions {
    /// The day after filling; by itself a year after it, or the last day that the spec names.
    pub day: Option<u32>,
    /// What a stirred share of the bed does.
    pub stir: Option<Share>,
    /// What days without a keeper do.
    pub away: Option<Duration>,
    /// What carrying the tank elsewhere takes.
    pub moved: bool,
    /// How long the animals live in a bucket of so much water.
    pub bucket: Option<Volume>,
}

/// A running tank on a day: the door from a checked tank to its [`Upkeep`].
///
/// `advance` is called with the number of members done, from any thread. Of
/// [`Options::days`] nothing is taken.
///
/// # Errors
/// [`IntegrationError`], when the numbers of the run leave the finite ones.
///
/// # Example
/// ```
/// use lentic::upkeep::{UpkeepQuestions, upkeep};
/// let text = r#"
/// [tank]
/// size = "30 x 30 x 30 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "25 mm"
/// [cap]
/// material = "filter_sand"
/// depth = "40 mm"
/// [[plants]]
/// name = "salvinia_natans"
/// amount = "30 %"
/// "#;
/// let design = lentic::spec::parse(text)?;
/// let options = lentic::Options { members: 0, ..lentic::Options::default() };
/// let found = upkeep(&design, options, &UpkeepQuestions::default(), &|_| {})?;
/// assert!(found.upkeep.balance_residual_mg_per_week.typical().abs() < 0.01);
/// // no changes of water: hardness climbs by what topping up brings, and is steady never
/// assert!(found.upkeep.hardness_rise_dgh_per_month > 0.0);
/// assert_eq!(found.upkeep.hardness_steady_dgh, None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn upkeep(
    design: &Design,
    options: Options,
    asked: &UpkeepQuestions,
    advance: &(dyn Fn(u32) + Sync),
) -> Result<Upkeep, IntegrationError> {
    let setting = KeptTank::of(design, asked.day);
    let bands = Parameters::<Band>::of(design);
    let run = Runs {
        setting: &setting,
        bands: &bands,
        options,
        advance,
    };
    let seen = run.each(&setting.inputs, setting.day, |member| {
        MemberFigures::of(&setting, &bands, member)
    })?;
    let crowd = Crowd {
        seen: &seen,
        members: options.members,
    };
    let fed = feeding::given(&setting, &crowd);
    let (given, dosing_waits_for) = match fed {
        Some(Ok(given)) => (Some(given), None),
        Some(Err(refusal)) => (None, Some(refusal.to_string())),
        None => (None, None),
    };
    let doses = given.is_some();
    let (week, weeks) = (
        weekly::week(&setting, &crowd),
        weekly::weeks(&setting, &crowd),
    );
    let nitrate_limit = watch_limit_mg_l(design, Analyte::Nitrate).unwrap_or(f64::INFINITY);
    Ok(Upkeep {
        name: design.draft().name.clone(),
        day: setting.day,
        members: options.members,
        seed: options.seed,
        status: verdict::status(&week, &weeks, nitrate_limit),
        upkeep: week,
        ageing: weekly::ageing(&setting, &crowd),
        given,
        dosing_waits_for,
        power: answers::power(&run)?,
        stir: asked
            .stir
            .map(|share| answers::stir(&setting, &crowd, share)),
        away: asked.away.map(|days| answers::away(&setting, days)),
        moved: asked.moved.then(|| answers::moved(&run)).transpose()?,
        bucket: asked.bucket.map(|water| answers::bucket(&setting, water)),
        weeks,
        cautions: cautions_for(design, actions(asked, doses)),
    })
}

/// The work that the answers order.
fn actions(asked: &UpkeepQuestions, doses: bool) -> Vec<Action> {
    let mut actions = vec![Action::ChangeWater, Action::ReachIn, Action::Plant];
    if doses {
        actions.push(Action::DoseNitrate);
    }
    if asked.stir.is_some() || asked.moved {
        actions.extend([Action::OpenBed, Action::AddSand]);
    }
    if asked.moved {
        actions.extend([Action::Fill, Action::LayBed]);
    }
    if asked.moved || asked.bucket.is_some() {
        actions.push(Action::MoveAnimals);
    }
    actions
}

/// How the members of an ensemble are run.
struct Runs<'a> {
    setting: &'a KeptTank<'a>,
    bands: &'a Parameters<Band>,
    options: Options,
    advance: &'a (dyn Fn(u32) + Sync),
}

impl Runs<'_> {
    /// What is read off each member, or off the typical one alone; one that cannot be
    /// integrated is left out.
    fn each<T: Send>(
        &self,
        inputs: &crate::startup::Inputs,
        days: u32,
        read: impl Fn(&Member) -> Option<T> + Sync,
    ) -> Result<Vec<T>, IntegrationError> {
        if self.options.members == 0 {
            let typical = central(inputs, self.bands, days)?;
            return Ok(Vec::from_iter(read(&typical)));
        }
        let members = (0..self.options.members).into_par_iter();
        let found = members.filter_map(|index| {
            let member = member(inputs, self.bands, days, self.options.seed, index);
            (self.advance)(1);
            read(&member.ok()?)
        });
        Ok(found.collect())
    }
}
