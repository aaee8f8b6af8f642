//! `air.dawn`: oxygen at the end of the night.

use super::air_setting::{self, air_setting, depth, units};
use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::verdict::{Verdict, finding};
use crate::design::FlowDevice;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::night::inputs::{Kept, NightInputs};
use crate::night::limits::{DAWN_ACT_MG_L, DAWN_NOTE_MG_L, DAWN_WATCH_MG_L};
use crate::night::sizing::{AirFlow, AirNeed};
use crate::plan::night::dawn_limit;
use crate::plan::outcome::Plan;
use crate::source::Band;
use crate::source::{Basis, Source};
use crate::units::show::significant;
use crate::units::{Concentration, Pressure};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::AirDawn,
    about: About::Tank,
    judge: Judge::Night(|case| vec![judged(case)]),
    orders: &[Action::RunDevice, Action::Plant, Action::MoveAnimals],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "Do animals gasp at dawn?",
        limits: || {
            format!(
                "typical dawn oxygen under {DAWN_NOTE_MG_L} mg/L note, under {DAWN_WATCH_MG_L} watch, under {DAWN_ACT_MG_L} act; its low end under {DAWN_WATCH_MG_L} note; a note at most where all animals breathe air or none is planned; [goal] replaces the {DAWN_NOTE_MG_L} and the {DAWN_WATCH_MG_L}; advised air keeps {DAWN_WATCH_MG_L}, or the goal, in nine of ten"
            )
        },
        formula: || {
            "dO2/dt = photosynthesis - breathing of plants, animals, dead matter and bed - nitrification + k A (Cs - O2) / V + bubbles, followed until the days repeat; k = k600 (Sc / 600)^-n; photosynthesis = p/kz ln((p/a + I0) / (p/a + I0 e^-kz)), p = P (CO2 + w HCO3 - G) / (CO2 + w HCO3 + KC); plants breathe as their store s of sugar lasts, dS/dt = (1 - y) photosynthesis - R s / (s + s0)".to_owned()
        },
        symbols: &[
            "Cs: oxygen in balance with the air at this temperature and pressure",
            "k600: 0.4 m/d over an open calm surface (0.15 to 0.75), 0.3 under a lid (0.1 to 0.55), half of it under an oily film",
            "P: photosynthesis in full light with all carbon",
            "a: oxygen per light, 0.065 mol/mol",
            "I0, kz: light below the floaters and how it fades",
            "w: bicarbonate, for species that use it and in enough light",
            "y: share of what is fixed that becomes tissue",
            "Sc: Schmidt number",
            "n: 1/2 rippled, 2/3 calm",
            "A, V: water surface and volume",
        ],
        range: || {
            "no exchange at a small indoor tank's surface was ever measured, and plants' breathing is known to a factor of three: the band shows it. Held against two ponds and a lake that were known when the numbers were set, typical dawn oxygen lay 1.4 to 3.1 mg/L too high and pH within half a unit. The limits are common practice in fish culture".to_owned()
        },
        basis: Basis::Practice,
        sources: &[
            Source::BensonKrause1984,
            Source::Wanninkhof2014,
            Source::ColeCaraco1998,
            Source::CrusiusWanninkhof2003,
            Source::Cole2010,
            Source::ClarkeJohnston1999,
            Source::AsceEwri2_06,
            Source::Apha4500O,
            Source::Iso5814,
            Source::Iso2533,
            Source::Jahne1987Exchange,
            Source::OwensMaris1964,
            Source::McdonnellWeeter1971,
            Source::Sorrell1989,
            Source::Rong2016,
            Source::Thomann1972,
            Source::Emerson1975Lakes,
            Source::Kragh2017,
            Source::Martinsen2022,
            Source::VanHallerBowes1976,
            Source::WollenbergPeters2009,
        ],
    },
};

/// Floaters may cover this much where animals want oxygen at night (judgement), %.
const LESS_COVER_PCT: f64 = 30.0;

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
/// use lentic::plan::rule::air_dawn::{AirBreathers, verdict};
/// use lentic::source::Band;
/// let status = |mg_l| verdict(Band::exact(mg_l), AirBreathers::None, None).status;
/// assert_eq!([status(2.9), status(3.9)], [Status::Act, Status::Watch]);
/// assert_eq!([status(4.9), status(5.0)], [Status::Note, Status::Ok]);
/// ```
pub fn verdict(oxygen_mg_l: Band, breathers: AirBreathers, goal: Option<Concentration>) -> Verdict {
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

/// Oxygen at dawn.
fn judged(case: &NightCase<'_>) -> Finding {
    let verdict = case_verdict(case);
    let night = case.night;
    let oxygen = night.outlook.low_mg_l;
    let breathers = match AirBreathers::of(&night.inputs) {
        AirBreathers::All if verdict.status != Status::Ok => {
            "; the animals planned breathe air and need an open surface"
        }
        AirBreathers::NoAnimals if verdict.status != Status::Ok => {
            "; no animals are planned that would gasp"
        }
        AirBreathers::Some if verdict.status != Status::Ok => {
            "; some of the animals breathe air, the others gasp"
        }
        _ => "",
    };
    let says = format!(
        "oxygen falls to {} mg/L by dawn on day {:.0}{}{breathers}",
        ranged(oxygen, night.outlook.ensemble.members),
        night.inputs.state.day,
        ahead(case)
    );
    let missed = oxygen.low < dawn_limit(case.design()).mg_l();
    let remedy = case
        .night
        .air
        .filter(|_| missed)
        .map(|air| more_air(case, air))
        .map(|remedy| before_animals(case, remedy));
    finding(Code::AirDawn, verdict, "dawn oxygen", says, remedy)
}

/// Dawn oxygen of a night against its limits.
pub(super) fn case_verdict(case: &NightCase<'_>) -> Verdict {
    verdict(
        case.night.outlook.low_mg_l,
        AirBreathers::of(&case.night.inputs),
        case.design().draft().goal.dawn_oxygen,
    )
}

/// A word on animals that are counted before they come.
fn ahead(case: &NightCase<'_>) -> &'static str {
    let inputs = &case.night.inputs;
    let stock = &case.design().draft().animals;
    let some_come_later = stock.iter().any(|stock| stock.from_day > inputs.state.day);
    if some_come_later && inputs.animals.len() == stock.len() {
        ", with all animals in that come later"
    } else {
        ""
    }
}

/// "3.1", or "3.1 (2.2-4.0)".
fn ranged(band: Band, members: u32) -> String {
    let [low, typical, high] =
        [band.low, band.typical, band.high].map(|value| significant(value.max(0.0), 2));
    if members == 0 || low == high {
        typical
    } else {
        format!("{typical} ({low}-{high})")
    }
}

/// Where none are planned, the calendar lets the first in all the same.
fn before_animals(case: &NightCase<'_>, remedy: Remedy) -> Remedy {
    match AirBreathers::of(&case.night.inputs) {
        AirBreathers::NoAnimals => Remedy {
            says: format!("before animals go in: {}", remedy.says),
            ..remedy
        },
        AirBreathers::None | AirBreathers::Some | AirBreathers::All => remedy,
    }
}

fn more_air(case: &NightCase<'_>, air: AirNeed) -> Remedy {
    let limit = significant(dawn_limit(case.design()).mg_l(), 2);
    match air {
        AirNeed::Air(air) => bubbles(case, &air, &limit),
        // the same members that miss the limit would have to meet it
        AirNeed::SurfaceIsEnough | AirNeed::PumpIsEnough => Remedy {
            says: "the device takes more than it gives: leave it off at night".to_owned(),
            quantity: Some(0.0),
            unit: "L/min",
        },
        AirNeed::OutOfReach { flow, dawn } => Remedy {
            says: format!(
                "no air pump does it ({} leaves {} mg/L): thin the floaters to {LESS_COVER_PCT:.0} % of the surface, open the lid, keep fewer animals",
                units(case).air_flow(flow),
                significant(dawn.mg_l().max(0.0), 2)
            ),
            quantity: Some(LESS_COVER_PCT),
            unit: "%",
        },
    }
}

fn bubbles(case: &NightCase<'_>, air: &AirFlow, limit: &str) -> Remedy {
    let inputs = &case.night.inputs;
    let through = match inputs.device {
        FlowDevice::SpongeFilter => "the sponge filter",
        FlowDevice::None | FlowDevice::AirStone | FlowDevice::Pump => "an air stone",
    };
    let setting = air_setting(air.always);
    let by_night = air.night_only.map(air_setting);
    let when = match by_night {
        None => "day and night".to_owned(),
        Some(night) if night <= setting => "while the lamp is off".to_owned(),
        Some(night) => format!(
            "day and night, or {} while the lamp is off",
            units(case).air_flow(night)
        ),
    };
    let then = if case.night.outlook.ensemble.members == 0 {
        "a typical tank then stays"
    } else {
        "nine tanks in ten then stay"
    };
    Remedy {
        says: format!(
            "run {} of air through {through} {} deep, {when}, from a pump over {} (both with some to spare): {then} at {limit} mg/L or more",
            units(case).air_flow(setting),
            depth(case, inputs.air_depth()),
            units(case).pump_pressure(Pressure::from_kpa(air.pressure_kpa.high))
        ),
        quantity: Some(setting.l_min()),
        unit: "L/min",
    }
}

fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let night = &plan.night;
    let dawn = night.dawn_oxygen_mg_l.band();
    let mut steps = vec![
        step("day", night.day, "d"),
        step(
            "oxygen in balance with the air",
            night.saturation_mg_l,
            "mg/L",
        ),
        step("members", f64::from(night.members), ""),
        step("dawn oxygen, one in ten below", dawn.low, "mg/L"),
        step("dawn oxygen, one in ten above", dawn.high, "mg/L"),
        step(
            "its hour, the lamp going on at 0",
            night.dawn_hour.typical(),
            "h",
        ),
        step("dawn oxygen, typical", dawn.typical, "mg/L"),
    ];
    steps.extend(air_setting::steps(
        "least air, day and night",
        night.air_needed_l_min,
    ));
    steps
}
