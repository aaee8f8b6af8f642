//! What a night, its flow, light and animals are held against.

use super::flow::Movement;
use super::inputs::{Kept, NightInputs};
use super::lighting::Lighting;
use super::stock::Carried;
use crate::air::circulation::{
    FLOATER_BEST_CM_S, MOST_AT_FLOATERS_CM_S, MOST_AT_PLANTS_CM_S, OPEN_WATER_CM_S,
};
use crate::finding::Status;
use crate::source::{Band, Basis, Source};
use crate::units::{Concentration, Mass, Share};

/// Dawn oxygen under which a word is due, mg/L (common practice in fish culture, no
/// source).
pub const DAWN_NOTE_MG_L: f64 = 5.0;
/// Dawn oxygen under which to keep an eye on it, and which advised air is sized for, mg/L
/// (likewise).
pub const DAWN_WATCH_MG_L: f64 = 4.0;
/// Dawn oxygen under which to act, mg/L (likewise).
pub const DAWN_ACT_MG_L: f64 = 3.0;
/// Cover from which floaters are there to be swept about, %.
const FLOATERS_FROM_PCT: f64 = 1.0;
/// Hours of light from which a young tank turns to algae (common practice, no source).
pub const LONG_LIGHT_H: f64 = 10.0;
/// How far the animals may be over what is carried before it is time to act (judgement).
const OVERSTOCKED: f64 = 2.0;

/// A number held against its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Verdict {
    /// How it stands.
    pub status: Status,
    /// The number.
    pub value: f64,
    /// Its unit and that of the limits.
    pub unit: &'static str,
    /// Below this the status is worse than ok.
    pub low: Option<f64>,
    /// Above this the status is worse than ok.
    pub high: Option<f64>,
    /// What the limits rest on.
    pub basis: Basis,
    /// Their source, where there is one.
    pub source: Option<Source>,
}

/// Which animals breathe air.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirBreathers {
    /// There are no animals.
    NoAnimals,
    /// None of them.
    None,
    /// Some of them: the rest gasp.
    Some,
    /// All of them.
    All,
}

impl AirBreathers {
    /// Among the animals of a tank.
    pub fn of(inputs: &NightInputs) -> Self {
        let there: Vec<&Kept> = inputs
            .animals
            .iter()
            .filter(|kept| kept.count > 0.0)
            .collect();
        let breathing = there.iter().filter(|kept| kept.air_breathing).count();
        match (there.len(), breathing) {
            (0, _) => Self::NoAnimals,
            (_, 0) => Self::None,
            (all, some) if some < all => Self::Some,
            _ => Self::All,
        }
    }
}

/// `air.dawn`: typical dawn oxygen, with a note from 5 mg/L down and where only its low
/// end is under the limit to watch.
/// Where all animals breathe air, or none is planned, nothing gasps: the rest turns into
/// a note. `goal` replaces the limits to note and to watch; the one to act is never above
/// it.
///
/// # Source
/// Common practice in fish culture, no source.
///
/// # Example
/// ```
/// use lentic::finding::Status;
/// use lentic::night::verdict::{AirBreathers, dawn};
/// use lentic::source::Band;
/// let status = |mg_l| dawn(Band::exact(mg_l), AirBreathers::None, None).status;
/// assert_eq!([status(2.9), status(3.9)], [Status::Act, Status::Watch]);
/// assert_eq!([status(4.9), status(5.0)], [Status::Note, Status::Ok]);
/// ```
pub fn dawn(oxygen_mg_l: Band, breathers: AirBreathers, goal: Option<Concentration>) -> Verdict {
    let watch = goal.map_or(DAWN_WATCH_MG_L, Concentration::mg_l);
    let note = goal.map_or(DAWN_NOTE_MG_L, Concentration::mg_l);
    let found = if oxygen_mg_l.typical < DAWN_ACT_MG_L.min(watch) {
        Status::Act
    } else if oxygen_mg_l.typical < watch {
        Status::Watch
    } else if oxygen_mg_l.typical < note || oxygen_mg_l.low < watch {
        Status::Note
    } else {
        Status::Ok
    };
    let most = match breathers {
        AirBreathers::All | AirBreathers::NoAnimals => Status::Note,
        AirBreathers::None | AirBreathers::Some => Status::Act,
    };
    Verdict {
        status: found.min(most),
        value: oxygen_mg_l.typical,
        unit: "mg/L",
        low: Some(note),
        high: None,
        basis: Basis::Practice,
        source: None,
    }
}

/// Whether something else says that the water is too still.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Support {
    /// The tank is otherwise well.
    None,
    /// Dawn oxygen, the planting load or stalled plants do.
    Found,
}

/// `flow.slack`: the typical speed against what submerged plants gain from; nothing to
/// note where there are none.
///
/// # Source
/// Westlake 1967 (`westlake_1967`) for what still water costs; the limit is a judgement.
pub fn slack(movement: &Movement, submerged: Mass, support: Support) -> Verdict {
    let limit = OPEN_WATER_CM_S.low;
    let moves = movement.velocity_cm_s.typical >= limit || submerged <= Mass::ZERO;
    Verdict {
        status: match support {
            _ if moves => Status::Ok,
            Support::None => Status::Note,
            Support::Found => Status::Watch,
        },
        value: movement.velocity_cm_s.typical,
        unit: "cm/s",
        low: Some(limit),
        high: None,
        basis: Basis::Judgement,
        source: Some(Source::Westlake1967),
    }
}

/// `flow.strong`: the typical speed against what floaters bear, or submerged plants
/// where nothing floats. Duckweed grew best at 0.12 cm/s and worse at twice that: over
/// it a note, over a centimetre a second, which is practice, a watch.
///
/// # Source
/// Coughlan et al. 2022 (`coughlan_2022`) for floaters; for leaves under water, judgement.
pub fn strong(movement: &Movement, cover: Share) -> Verdict {
    let speed = movement.velocity_cm_s.typical;
    let floaters = cover.percent() >= FLOATERS_FROM_PCT;
    let (note, watch) = if floaters {
        (2.0 * FLOATER_BEST_CM_S, MOST_AT_FLOATERS_CM_S)
    } else {
        (MOST_AT_PLANTS_CM_S, MOST_AT_PLANTS_CM_S)
    };
    let status = if speed > watch {
        Status::Watch
    } else if speed > note {
        Status::Note
    } else {
        Status::Ok
    };
    Verdict {
        status,
        value: speed,
        unit: "cm/s",
        low: None,
        high: Some(note),
        basis: if floaters {
            Basis::Published
        } else {
            Basis::Judgement
        },
        source: floaters.then_some(Source::Coughlan2022),
    }
}

/// `light.short`: hours of light against those with which plants just live (judgement):
/// act where even the bright end of the lamp's band is too little, watch where the
/// typical is, note where the dim end is. Nothing to judge without submerged plants.
pub fn short(lighting: &Lighting) -> Option<Verdict> {
    let even = lighting.break_even?;
    let starves = |hours: Option<f64>| hours.is_none_or(|hours| lighting.hours < hours);
    let status = if starves(even.bright) {
        Status::Act
    } else if starves(even.typical) {
        Status::Watch
    } else if starves(even.dim) {
        Status::Note
    } else {
        Status::Ok
    };
    Some(Verdict {
        status,
        value: lighting.hours,
        unit: "h",
        low: even.typical,
        high: None,
        basis: Basis::Judgement,
        source: None,
    })
}

/// `light.long`: hours of light while nutrients and light favour algae.
///
/// # Source
/// Common practice, no source.
///
/// # Example
/// ```
/// use lentic::{finding::Status, night::verdict::long};
/// assert_eq!([long(12.0, 5.0).status, long(10.0, 5.0).status], [Status::Watch, Status::Ok]);
/// ```
pub fn long(hours: f64, algae_window_days: f64) -> Verdict {
    Verdict {
        status: if hours > LONG_LIGHT_H && algae_window_days > 0.0 {
            Status::Watch
        } else {
            Status::Ok
        },
        value: hours,
        unit: "h",
        low: None,
        high: Some(LONG_LIGHT_H),
        basis: Basis::Practice,
        source: None,
    }
}

/// `animals.load`: their mass against what dawn oxygen and the plants' uptake of
/// nitrogen carry, whichever is less (judgement). Where oxygen is short without any
/// animal it is for `air.dawn` to say: then nitrogen is judged, and animals are a note.
///
/// # Example
/// ```
/// use lentic::finding::Status;
/// use lentic::night::{stock::Carried, verdict::load};
/// use lentic::{source::Band, units::Mass};
/// let carried = Carried { by_oxygen_g: Band::exact(10.0), by_nitrogen: Mass::from_g(20.0) };
/// let status = |g| load(Mass::from_g(g), &carried).status;
/// assert_eq!([status(10.0), status(15.0), status(25.0)], [Status::Ok, Status::Watch, Status::Act]);
/// ```
pub fn load(animals: Mass, carried: &Carried) -> Verdict {
    let short_anyway = carried.by_oxygen_g.typical <= 0.0;
    let (most, least_status) = if short_anyway && animals > Mass::ZERO {
        (carried.by_nitrogen, Status::Note)
    } else {
        (carried.least(), Status::Ok)
    };
    let found = if animals <= most {
        Status::Ok
    } else if animals <= most * OVERSTOCKED {
        Status::Watch
    } else {
        Status::Act
    };
    Verdict {
        status: found.max(least_status),
        value: animals.g(),
        unit: "g",
        low: None,
        high: Some(most.g()),
        basis: Basis::Judgement,
        source: None,
    }
}
