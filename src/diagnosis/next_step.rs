//! The one thing to do next: what saves animals now, what removes the cause, and when to
//! test again.

use serde::Serialize;

use super::CauseResult;
use super::case::CaseHistory;
use super::cause::Cause;
use super::emergency::{self, Emergency, emergency};
use super::fact::{GASPING, ILL, is_over_limit};
use super::look::NextReading;
use super::remedy::{Immediate, without_cause};
use crate::finding::{Action, Status};
use crate::plan::Check;
use crate::result::results;

/// A cause from this probability on is named beside an emergency, and beside another that
/// leads (judgement).
const BESIDE: f64 = 0.30;
/// Chlorine is from this on, for its remedy harms nothing and cannot wait (judgement).
const CHLORINE_BESIDE: f64 = 0.20;
/// A cause from this probability on explains what is seen (judgement).
const EXPLAINS: f64 = 0.5;
/// Causes looked at beside the one that leads.
const LOOKED_AT: usize = 3;
/// Days after which a tank in danger, one under treatment and one left alone are tested
/// again (common practice, no source).
const URGENT_D: u32 = 1;
const TREATED_D: u32 = 7;
const LEFT_D: u32 = 14;
/// Signs that what lies under the cap comes out.
const BED_SHOWS: [&str; 8] = [
    "soil_plume",
    "soil_visible",
    "muddy_water",
    "craters",
    "black_bed",
    "sulfide_smell",
    "bubbles_from_bed",
    "thin_sand_at_glass",
];
/// Work that opens or rebuilds a bed.
const BED_WORK: [Action; 3] = [Action::AddSand, Action::OpenBed, Action::LayBed];

results! {
    /// The one thing to do next, named as in JSON.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct NextResult {
        /// the one thing to do next
        pub says: String => "check.cause",
        /// how much of it, in the unit beside it
        pub quantity: Option<f64> => "check.cause",
        /// unit of that quantity
        pub unit: &'static str => "check.cause",
        /// what it is about: the danger, the causes and how likely they are
        pub about: String => "check.cause",
        /// what to do now, in this order
        pub now: Vec<String> => "check.cause" each "one thing to do",
        /// what removes the cause after that
        pub then: Vec<String> => "check.cause" each "one thing to do",
        /// the day to test again
        pub test_again_day: Option<f64> => "check.cause",
    }
}

/// The next step with the work that it orders beside that of the causes and of the bed.
#[derive(Debug, Clone, PartialEq)]
pub struct NextStep {
    /// The step.
    pub result: NextResult,
    /// Whether it cannot wait.
    pub is_urgent: bool,
    /// The work that it orders.
    pub actions: Vec<Action>,
}

/// A step in the making.
#[derive(Default)]
struct Steps {
    about: String,
    now: Vec<String>,
    then: Vec<String>,
    again_in_d: Option<u32>,
    quantity: Option<f64>,
    unit: &'static str,
    is_urgent: bool,
    actions: Vec<Action>,
}

impl Steps {
    /// One step that is said whole.
    fn one(about: String, step: String) -> Self {
        Self {
            about,
            now: vec![step],
            ..Self::default()
        }
    }

    fn done(self, case: &CaseHistory<'_>) -> NextStep {
        let test_again_day = self
            .again_in_d
            .map(|days| (case.age_d + f64::from(days)).floor());
        NextStep {
            result: NextResult {
                says: self.says(),
                quantity: self.quantity,
                unit: self.unit,
                about: self.about,
                now: self.now,
                then: self.then,
                test_again_day,
            },
            is_urgent: self.is_urgent,
            actions: self.actions,
        }
    }

    /// Everything in one sentence.
    fn says(&self) -> String {
        let now = match self.about.as_str() {
            "" => self.now.join("; "),
            about => format!("{about}. Next: {}", self.now.join("; ")),
        };
        let then = match self.then.as_slice() {
            [] => String::new(),
            then => format!(". Then: {}", then.join("; ")),
        };
        let again = match self.again_in_d {
            Some(1) => ". Test again tomorrow".to_owned(),
            Some(days) => format!(". Test again in {days} days"),
            None => String::new(),
        };
        format!("{now}{then}{again}")
    }
}

/// The next step.
///
/// Danger to animals comes first, with the causes that stand beside it; then, where
/// nothing was read or seen, what the bed alone asks for; then the look that parts causes
/// alike, or the remedy of the cause that leads.
pub fn of(
    case: &CaseHistory<'_>,
    causes: &[CauseResult],
    alike: &[Cause],
    look: Option<&NextReading>,
    bed: &Check,
) -> NextStep {
    let is_explained = causes.first().is_some_and(explains);
    let steps = if let Some(emergency) = emergency(case, is_explained) {
        saved(emergency, causes)
    } else if case.is_blind() {
        of_bed(bed)
    } else {
        match (causes.first(), look) {
            (Some(_), Some(look)) if !alike.is_empty() => undecided(case, causes, alike, look),
            (Some(first), _) if first.cause == Cause::AsExpected => sound(case, bed),
            (Some(_), _) => mended(case, causes, bed),
            (None, _) => of_bed(bed),
        }
    };
    steps.done(case)
}

fn of_bed(bed: &Check) -> Steps {
    let remedy = bed.next_step.clone();
    Steps {
        quantity: remedy.quantity,
        unit: remedy.unit,
        ..Steps::one(String::new(), remedy.says)
    }
}

fn named(result: &CauseResult) -> String {
    format!(
        "{} ({:.0} %)",
        result.cause.label(),
        result.probability * 100.0
    )
}

/// Whether a cause is to be named beside an emergency or another cause.
fn stands_beside(result: &CauseResult) -> bool {
    let least = match result.cause {
        Cause::AsExpected | Cause::KitError => return false,
        Cause::Chlorine => CHLORINE_BESIDE,
        _ => BESIDE,
    };
    result.probability >= least
}

/// Whether a cause of the list explains by itself what animals suffer from.
fn explains(result: &CauseResult) -> bool {
    result.probability >= EXPLAINS && stands_beside(result) && result.cause != Cause::NoneOfThese
}

/// Whether what removes a cause saves animals as well, and comes before all else.
const fn saves(cause: Cause) -> bool {
    matches!(cause, Cause::Chlorine | Cause::NoneOfThese)
}

/// What saves the animals, then what removes the causes that stand beside the danger.
fn saved(emergency: Emergency, causes: &[CauseResult]) -> Steps {
    let beside: Vec<&CauseResult> = causes
        .iter()
        .take(LOOKED_AT)
        .filter(|result| stands_beside(result))
        .collect();
    let mut about = vec![emergency.danger];
    about.extend(beside.iter().map(|result| named(result)));
    let (first, after): (Vec<&CauseResult>, Vec<&CauseResult>) =
        beside.into_iter().partition(|result| saves(result.cause));
    let main = |result: &&CauseResult| Some(result.remedy.as_ref()?.main.clone());
    let mut now: Vec<String> = first.iter().filter_map(main).collect();
    now.extend(emergency.steps);
    Steps {
        about: about.join("; "),
        now,
        then: after
            .iter()
            .filter_map(|result| Some((result.cause, main(result)?)))
            .map(|(cause, main)| match cause {
                Cause::NightExchange => format!("once they breathe calmly: {main}"),
                _ => main,
            })
            .collect(),
        again_in_d: Some(URGENT_D),
        quantity: emergency.water_l,
        unit: if emergency.water_l.is_some() { "L" } else { "" },
        is_urgent: true,
        actions: emergency::ORDERS.to_vec(),
    }
}

/// "it cannot be told whether ...: test ... first".
fn undecided(
    case: &CaseHistory<'_>,
    causes: &[CauseResult],
    alike: &[Cause],
    look: &NextReading,
) -> Steps {
    let open: Vec<String> = causes
        .iter()
        .filter(|result| alike.contains(&result.cause))
        .take(LOOKED_AT)
        .map(named)
        .collect();
    let changes = Immediate::of(case);
    let mut now = Vec::new();
    if case.has_one_of(&ILL) {
        now.push(without_cause(case));
    }
    now.push(look.asks.clone());
    now.extend(changes.map(|changes| format!("meanwhile {}", changes.says(case))));
    Steps {
        about: format!(
            "it cannot be told yet which of these it is: {}",
            open.join(", ")
        ),
        now,
        actions: Vec::from_iter(changes.map(|_| Action::ChangeWater)),
        ..Steps::default()
    }
}

/// Nothing is wrong with the tank; what the bed asks for is said beside it, and a tank in
/// which animals are ill is not left alone.
fn sound(case: &CaseHistory<'_>, bed: &Check) -> Steps {
    if case.has_one_of(&ILL) || case.has_one_of(&GASPING) {
        let about = "the tank is as it should be at its age, but its animals are not";
        return Steps::one(about.to_owned(), without_cause(case));
    }
    let aside = (bed.status() >= Status::Act)
        .then(|| format!("; of the bed by itself: {}", bed.next_step.says));
    Steps {
        again_in_d: Some(LEFT_D),
        ..Steps::one(
            String::new(),
            format!(
                "leave it alone: the tank is as it should be at its age{}",
                aside.unwrap_or_default()
            ),
        )
    }
}

/// What removes the cause that leads, then what removes another that stands beside it.
fn mended(case: &CaseHistory<'_>, causes: &[CauseResult], bed: &Check) -> Steps {
    let Some((first, others)) = causes.split_first() else {
        return of_bed(bed);
    };
    let Some(remedy) = &first.remedy else {
        return Steps::one(String::new(), named(first));
    };
    if opens_bed(&remedy.actions) && !may_open(case, bed) {
        return left_closed(first);
    }
    let beside = others.iter().take(LOOKED_AT - 1).filter(|result| {
        let opens = result
            .remedy
            .as_ref()
            .is_some_and(|remedy| opens_bed(&remedy.actions));
        stands_beside(result) && (!opens || may_open(case, bed))
    });
    let then = beside.filter_map(|result| {
        let main = &result.remedy.as_ref()?.main;
        Some(format!("{}: {main}", named(result)))
    });
    let is_ill = case.has_one_of(&ILL);
    Steps {
        about: named(first),
        now: remedy.now.clone(),
        then: remedy.then.iter().cloned().chain(then).collect(),
        again_in_d: Some(if is_ill { URGENT_D } else { TREATED_D }),
        quantity: remedy.quantity,
        unit: remedy.unit,
        ..Steps::default()
    }
}

fn opens_bed(actions: &[Action]) -> bool {
    actions.iter().any(|action| BED_WORK.contains(action))
}

/// Whether there is reason to work on the bed: by itself, by a reading or by a sign.
fn may_open(case: &CaseHistory<'_>, bed: &Check) -> bool {
    bed.status() >= Status::Act || is_over_limit(case) || case.has_one_of(&BED_SHOWS)
}

/// A bed that may be amiss but under which nothing suffers is not worked on.
fn left_closed(first: &CauseResult) -> Steps {
    Steps {
        again_in_d: Some(LEFT_D),
        ..Steps::one(
            named(first),
            "leave the bed alone while no reading passes its limit and no soil shows: work on it would stir up more than it mends".to_owned(),
        )
    }
}
