//! `air.dawn`, `flow.*`, `light.*` and `animals.load`.

use crate::design::{Design, Device};
use crate::finding::{Code, Finding, Remedy, Status};
use crate::night::flow::{air_for_speed, own_flow_for_speed};
use crate::night::lighting::Mend;
use crate::night::sizing::{AirFlow, AirNeed};
use crate::night::verdict::{self, AirBreathers, LONG_LIGHT_H, Support, Verdict};
use crate::plan::night::{Nocturne, dawn_limit};
use crate::plan::words;
use crate::source::Band;
use crate::units::show::significant;
use crate::units::{Flow, Length, Velocity};

/// A sign that backs still water.
const STALLED_PLANTS: &str = "stalled_plants";
/// Floaters may cover this much where animals want oxygen at night (judgement), %.
const LESS_COVER_PCT: f64 = 30.0;

/// What these rules judge.
pub(in crate::plan) struct Case<'a> {
    night: &'a Nocturne<'a>,
    /// Whether the planting meets its load.
    load_is_met: bool,
}

impl<'a> Case<'a> {
    pub(in crate::plan) const fn of(night: &'a Nocturne<'a>, load_is_met: bool) -> Self {
        Self { night, load_is_met }
    }

    const fn design(&self) -> &Design {
        self.night.design
    }

    fn dawn(&self) -> Verdict {
        verdict::dawn(
            self.night.outlook.low_mg_l,
            AirBreathers::of(&self.night.inputs),
            self.design().draft().goal.dawn_oxygen,
        )
    }

    /// Whether anything else says that the water is too still.
    fn support(&self) -> Support {
        let mut signs = self.design().draft().signs.iter();
        let stalled = signs.any(|sign| sign.name == STALLED_PLANTS);
        if stalled || !self.load_is_met || self.dawn().status >= Status::Watch {
            Support::Found
        } else {
            Support::None
        }
    }
}

/// The findings on a day and a night.
pub(in crate::plan) fn all(case: &Case<'_>) -> Vec<Finding> {
    let mut findings = vec![dawn(case), slack(case), strong(case)];
    findings.extend(short(case));
    findings.extend([long(case), load(case)]);
    findings
}

fn finding(
    code: Code,
    verdict: Verdict,
    subject: &str,
    says: String,
    remedy: Option<Remedy>,
) -> Finding {
    Finding {
        code,
        status: verdict.status,
        subject: subject.to_owned(),
        value: Some(verdict.value),
        unit: verdict.unit,
        low: verdict.low,
        high: verdict.high,
        says,
        remedy,
        basis: verdict.basis,
        source: verdict.source,
    }
}

/// Oxygen at dawn.
fn dawn(case: &Case<'_>) -> Finding {
    let verdict = case.dawn();
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

/// A word on animals that are counted before they come.
fn ahead(case: &Case<'_>) -> &'static str {
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
fn before_animals(case: &Case<'_>, remedy: Remedy) -> Remedy {
    match AirBreathers::of(&case.night.inputs) {
        AirBreathers::NoAnimals => Remedy {
            says: format!("before animals go in: {}", remedy.says),
            ..remedy
        },
        AirBreathers::None | AirBreathers::Some | AirBreathers::All => remedy,
    }
}

fn more_air(case: &Case<'_>, air: AirNeed) -> Remedy {
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
                litres_a_minute(flow),
                significant(dawn.mg_l().max(0.0), 2)
            ),
            quantity: Some(LESS_COVER_PCT),
            unit: "%",
        },
    }
}

fn bubbles(case: &Case<'_>, air: &AirFlow, limit: &str) -> Remedy {
    let inputs = &case.night.inputs;
    let through = match inputs.device {
        Device::SpongeFilter => "the sponge filter",
        Device::None | Device::AirStone | Device::Pump => "an air stone",
    };
    let setting = air_setting_l_min(air.always);
    let by_night = air.night_only.map(air_setting_l_min);
    let when = match by_night {
        None => "day and night".to_owned(),
        Some(night) if night <= setting => "while the lamp is off".to_owned(),
        Some(night) => format!(
            "day and night, or {} while the lamp is off",
            litres_a_minute(Flow::from_l_min(night))
        ),
    };
    let then = if case.night.outlook.ensemble.members == 0 {
        "a typical tank then stays"
    } else {
        "nine tanks in ten then stay"
    };
    Remedy {
        says: format!(
            "run {} of air through {through} {} deep, {when}: {then} at {limit} mg/L or more; its pump must exceed {} kPa (both with some to spare)",
            litres_a_minute(Flow::from_l_min(setting)),
            depth(case, inputs.air_depth()),
            significant(air.pressure_kpa.high, 2)
        ),
        quantity: Some(setting),
        unit: "L/min",
    }
}

/// A flow to set: up to the next twentieth of a litre.
fn air_setting_l_min(flow: Flow) -> f64 {
    (flow.l_min() * 20.0).ceil() / 20.0
}

/// Air pumps are sold by litres a minute in either system.
fn litres_a_minute(flow: Flow) -> String {
    format!("{} L/min", significant(flow.l_min(), 2))
}

fn depth(case: &Case<'_>, depth: Length) -> String {
    case.design().draft().units.dimension(depth)
}

/// Water too still.
fn slack(case: &Case<'_>) -> Finding {
    let night = case.night;
    let movement = &night.movement;
    let verdict = verdict::slack(movement, night.inputs.state.submerged(), case.support());
    let (speed, film) = (
        significant(movement.velocity_cm_s.typical, 2),
        significant(movement.film_mm.typical, 2),
    );
    let says = match verdict.status {
        Status::Ok => format!("the water moves at {speed} cm/s"),
        Status::Note => format!(
            "the water hardly moves ({speed} cm/s, {film} mm of still film on the leaves), which many planted tanks do well with"
        ),
        Status::Watch | Status::Act => format!(
            "the water hardly moves ({speed} cm/s): through {film} mm of still film plants take {} % of what they could",
            significant(movement.uptake_pct.typical, 2)
        ),
    };
    let remedy = (verdict.status >= Status::Watch)
        .then_some(verdict.low)
        .flatten()
        .and_then(|cm_s| stirring(case, cm_s));
    finding(Code::FlowSlack, verdict, "water", says, remedy)
}

fn stirring(case: &Case<'_>, cm_s: f64) -> Option<Remedy> {
    let flow = air_for_speed(&case.night.inputs, Velocity::from_cm_s(cm_s))?;
    let setting = air_setting_l_min(flow);
    Some(Remedy {
        says: format!(
            "let an air stone {} deep bubble {}: it moves the water at {cm_s} cm/s",
            depth(case, case.night.inputs.air_depth()),
            litres_a_minute(Flow::from_l_min(setting))
        ),
        quantity: Some(setting),
        unit: "L/min",
    })
}

/// Water too fast.
fn strong(case: &Case<'_>) -> Finding {
    let night = case.night;
    let cover = night.inputs.state.cover;
    let verdict = verdict::strong(&night.movement, cover);
    let speed = significant(verdict.value, 2);
    let says = match verdict.status {
        Status::Ok => format!("nothing is swept about ({speed} cm/s)"),
        Status::Note => format!("at {speed} cm/s floaters grow more slowly than in still water"),
        Status::Watch | Status::Act => {
            format!("at {speed} cm/s floaters are swept under and melt, or leaves are dragged")
        }
    };
    let remedy = (verdict.status >= Status::Watch)
        .then_some(verdict.high)
        .flatten()
        .and_then(|cm_s| throttled(case, cm_s));
    finding(Code::FlowStrong, verdict, "water", says, remedy)
}

fn throttled(case: &Case<'_>, cm_s: f64) -> Option<Remedy> {
    let flow = own_flow_for_speed(&case.night.inputs, Velocity::from_cm_s(cm_s))?;
    Some(Remedy {
        says: format!(
            "turn it down to {} or break its jet on a sponge or a wall",
            case.design().draft().units.flow(flow)
        ),
        quantity: Some(flow.l_min()),
        unit: "L/min",
    })
}

/// Too little light for what grows under water.
fn short(case: &Case<'_>) -> Option<Finding> {
    let night = case.night;
    let need = night.need.as_ref()?;
    let verdict = verdict::short(&night.lighting)?;
    let hours = significant(night.lighting.hours, 2);
    let asked = verdict.low.map_or_else(
        || "no day is long enough".to_owned(),
        |even| format!("they just live on {} h", significant(even, 2)),
    );
    let says = format!(
        "{hours} h of {} umol/m2/s reach the middle of the water: {asked}",
        significant(night.lighting.par_mid_umol.typical, 2)
    );
    let remedy = (verdict.status >= Status::Watch)
        .then(|| night.lighting.mend(&night.inputs, need))
        .map(brighter);
    Some(finding(Code::LightShort, verdict, "light", says, remedy))
}

fn brighter(mend: Mend) -> Remedy {
    let (says, quantity, unit) = match mend {
        Mend::Hours(hours) => (
            format!("light it {} h a day", significant(hours, 2)),
            Some(hours),
            "h",
        ),
        Mend::Cover(cover) => (
            format!(
                "thin the floaters to {:.0} % of the surface",
                cover.percent()
            ),
            Some(cover.percent()),
            "%",
        ),
        Mend::Lamp(par) => (
            format!(
                "take a lamp that gives {} umol/m2/s at the surface, or plant for shade",
                significant(par, 2)
            ),
            Some(par),
            "umol/m2/s",
        ),
        Mend::Nothing => (
            "nothing planted here lives below the surface: keep floaters alone".to_owned(),
            None,
            "",
        ),
    };
    Remedy {
        says,
        quantity,
        unit,
    }
}

/// Long days in a tank that feeds algae.
fn long(case: &Case<'_>) -> Finding {
    let window_d = case.night.algae_window_d;
    let verdict = verdict::long(case.night.lighting.hours, window_d);
    let hours = significant(verdict.value, 2);
    let says = match verdict.status {
        Status::Ok => format!("{hours} h of light a day"),
        Status::Note | Status::Watch | Status::Act => format!(
            "{hours} h of light while for {window_d:.0} days there is more light and food than plants take"
        ),
    };
    let remedy = (verdict.status >= Status::Watch).then(|| Remedy {
        says: format!(
            "light it {LONG_LIGHT_H:.0} h a day at most until the algae window has closed"
        ),
        quantity: Some(LONG_LIGHT_H),
        unit: "h",
    });
    finding(Code::LightLong, verdict, "light", says, remedy)
}

/// Animals against what is carried.
fn load(case: &Case<'_>) -> Finding {
    let carried = &case.night.carried;
    let verdict = verdict::load(case.night.inputs.animal_mass(), carried);
    let grams = |grams: f64| significant(grams, 2);
    let most = grams(verdict.high.unwrap_or_default());
    let animals = grams(verdict.value);
    let oxygen_g = carried.by_oxygen_g.typical;
    let which = if oxygen_g > 0.0 && oxygen_g <= carried.by_nitrogen.g() {
        "oxygen at dawn carries"
    } else {
        "nitrogen that the plants take carries"
    };
    let says = match (verdict.value > 0.0, oxygen_g > 0.0) {
        (true, true) => format!("{animals} g of animals; the {which} about {most} g"),
        (true, false) => format!(
            "{animals} g of animals, and at dawn oxygen is short even without them (see air.dawn); the {which} about {most} g"
        ),
        (false, true) => format!("the {which} about {most} g of animals"),
        (false, false) => {
            "at dawn oxygen is short before any animal is in (see air.dawn)".to_owned()
        }
    };
    let remedy = (verdict.status >= Status::Watch).then(|| Remedy {
        says: format!("keep {most} g at most{}", examples(case)),
        quantity: verdict.high,
        unit: "g",
    });
    finding(Code::AnimalsLoad, verdict, "animals", says, remedy)
}

/// ", of one kind alone ... 5 small fish or 40 small shrimp", empty where not even one is carried.
fn examples(case: &Case<'_>) -> String {
    let found = case.night.carried.examples(case.night.inputs.water);
    let some = found.iter().filter(|example| example.count > 0);
    let named: Vec<String> = some
        .map(|example| example.animal.counted(example.count))
        .collect();
    if named.is_empty() {
        String::new()
    } else {
        format!(
            ", of one kind alone and by stocking practice {}",
            words::either(&named)
        )
    }
}
