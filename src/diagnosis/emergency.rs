//! What cannot wait: poison or want of oxygen in a tank with animals.

use super::case::CaseHistory;
use super::fact::{GASPING, reads_clean};
use super::measurement::{Measurand, Reported};
use super::remedy::Immediate;
use crate::design::{FlowDevice, Incident};
use crate::finding::{Action, Caution};
use crate::night::limits::DAWN_ACT_MG_L;
use crate::source::Source;
use crate::startup::limits;
use crate::units::show::significant;

/// A reading no older than this is about now, d.
const NOW_D: f64 = 4.0;

/// The work that an emergency may order: water, clean water elsewhere, air.
pub(super) const ORDERS: [Action; 4] = [
    Action::ChangeWater,
    Action::Condition,
    Action::MoveAnimals,
    Action::RunDevice,
];

/// What comes before anything else, where animals are in danger.
pub(super) struct Emergency {
    /// What is wrong, in words.
    pub(super) danger: String,
    /// The steps, in their order; their work is in `ORDERS`.
    pub(super) steps: Vec<String>,
    /// Water to change in all, L.
    pub(super) water_l: Option<f64>,
}

/// The emergency of a tank, where animals are in danger.
///
/// `is_explained` says that a cause of the list explains it.
pub(super) fn emergency(case: &CaseHistory<'_>, is_explained: bool) -> Option<Emergency> {
    if !case.is_stocked() {
        return None;
    }
    let gasps = GASPING.iter().any(|sign| case.has_sign(sign));
    let short = fresh(case, Measurand::Oxygen).is_some_and(|read| read.at_least() < DAWN_ACT_MG_L);
    let poisons = poisons(case);
    if poisons.is_empty() && !gasps && !short {
        return None;
    }
    let mut dangers = poisons;
    let (mut steps, mut water_l) = (Vec::new(), None);
    if !dangers.is_empty() {
        let changes = Immediate::of(case).or_else(|| Immediate::reaching(0.5))?;
        water_l = Some(
            f64::from(changes.rounds) * changes.share_pct / 100.0 * case.design.water().litres(),
        );
        steps.push(changes.says(case));
        steps.push(if poisonous_ammonia(case).is_some() {
            "feed nothing, and do not raise pH".to_owned()
        } else {
            "feed nothing".to_owned()
        });
    }
    if short {
        dangers.push("oxygen is short".to_owned());
    } else if gasps {
        dangers.push("animals gasp".to_owned());
    }
    steps.extend(breath(case, gasps, short, is_explained));
    Some(Emergency {
        danger: dangers.join(" and "),
        steps,
        water_l,
    })
}

/// What helps animals that cannot get their breath: out of nitrite where that keeps it
/// from them, else more air (common practice, no source).
fn breath(case: &CaseHistory<'_>, gasps: bool, short: bool, is_explained: bool) -> Vec<String> {
    let nitrite = gasps && poisonous_nitrite(case).is_some();
    let mut parts = Vec::new();
    if nitrite {
        parts.push("nitrite keeps the blood of animals from carrying oxygen, so that they gasp in water full of air too: move them today to clean water, treated against chlorine and as warm as the tank".to_owned());
    }
    let air = more_air(case, is_explained);
    match (nitrite, short || gasps) {
        (true, _) if short => parts.push(air),
        (true, _) => parts.push(format!("{air}: that helps, but does not cure")),
        (false, true) => parts.push(air),
        (false, false) => {}
    }
    parts
}

/// More air, by what runs and lies over the tank already; not with what was sprayed in it.
fn more_air(case: &CaseHistory<'_>, is_explained: bool) -> String {
    if case.incidents().any(|one| *one == Incident::Sprayed) {
        return "run no air before the room is aired: the pump brings what was sprayed into the water".to_owned();
    }
    let unless = match reads_clean(case) {
        Some(true) if !is_explained => {
            "if anything was sprayed, painted or polished in the room, stop the pump and air the room first; else "
        }
        _ => "",
    };
    let draft = case.design.draft();
    let runs = draft.air.flow.l_min() > 0.0
        && matches!(
            draft.air.device,
            FlowDevice::AirStone | FlowDevice::SpongeFilter
        );
    let stone = if runs {
        "turn the air up and leave it on day and night"
    } else {
        "run an air stone now, day and night"
    };
    let lid = if draft.tank.lid {
        ", and lift the lid"
    } else {
        ""
    };
    format!("{unless}{stone}{lid}")
}

fn fresh(case: &CaseHistory<'_>, of: Measurand) -> Option<Reported> {
    let last = case.latest(of)?;
    (last.day >= case.age_d - NOW_D).then_some(last.value)
}

/// Nitrite that is beyond its outer limit.
fn poisonous_nitrite(case: &CaseHistory<'_>) -> Option<Reported> {
    fresh(case, Measurand::Nitrite).filter(|read| read.at_least() >= limits::NITRITE.act)
}

/// Ammonia that is beyond an outer limit, with its un-ionised part, mg N/L.
fn poisonous_ammonia(case: &CaseHistory<'_>) -> Option<(Reported, f64)> {
    let ammonia = fresh(case, Measurand::Ammonia)?;
    let un_ionised = case.un_ionised_mg_l().unwrap_or_default();
    let beyond = ammonia.at_least() >= limits::AMMONIA.act || un_ionised >= limits::UN_IONISED.act;
    beyond.then_some((ammonia, un_ionised))
}

/// What stands beyond its outer limit, in words.
fn poisons(case: &CaseHistory<'_>) -> Vec<String> {
    let mut found = Vec::new();
    if let Some((ammonia, un_ionised)) = poisonous_ammonia(case) {
        found.push(format!(
            "ammonia stands at {} mg N/L ({} of it un-ionised)",
            ammonia.shown(2),
            significant(un_ionised, 1)
        ));
    }
    if let Some(nitrite) = poisonous_nitrite(case) {
        found.push(format!("nitrite stands at {} mg/L", nitrite.shown(2)));
    }
    found
}

/// The warning that goes with any ammonia: more of it turns poisonous as pH rises.
pub fn rising_ph(case: &CaseHistory<'_>) -> Option<Caution> {
    let ammonia = fresh(case, Measurand::Ammonia)?;
    (ammonia.at_least() >= limits::NO_RISE_MG_N_L).then(|| Caution {
        code: "hazard.rising_ph",
        says: format!(
            "pH: do not raise it while ammonia stands at {} mg N/L. From pH 7 to 8 the poisonous part grows tenfold; harden or lime the water only once ammonia reads nothing.",
            ammonia.shown(2)
        ),
        source: Some(Source::Emerson1975),
    })
}
