//! The day that repeats itself, over the whole range of what is not known.

use super::coefficients::Coefficients;
use super::course::{SAMPLES, SAMPLES_PER_HOUR, Schedule};
use super::cycle::{Cycle, CycleReader, Hour, cycle};
use super::inputs::NightInputs;
use super::members::{Ensemble, Members};
use super::model::NightModel;
use super::rates::Rates;
use crate::numerics::lanes::LANES;
use crate::numerics::quantile::quantiles;
use crate::numerics::rodas::IntegrationError;
use crate::source::Band;
use crate::units::Concentration;

/// Quantiles that stand for low, typical and high.
const SHARES: [f64; 3] = [0.1, 0.5, 0.9];
/// Limits of dawn oxygen that hours are counted under, mg/L.
const LOW_OXYGEN_MG_L: [f64; 2] = [5.0, 3.0];

/// A day and a night with what the spread of the numbers makes of them: 10, 50 and
/// 90 % of the members.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlook {
    /// How it was drawn.
    pub ensemble: Ensemble,
    /// The day with the typical numbers.
    pub central: Cycle,
    /// Lowest oxygen of the day, mg/L.
    pub low_mg_l: Band,
    /// When it comes, hours since the lamp went on.
    pub low_hour: Band,
    /// Hours under 5 mg/L.
    pub hours_under_5: Band,
    /// Hours under 3 mg/L.
    pub hours_under_3: Band,
    /// Carbon dioxide when the lamp goes off, mg/L.
    pub carbon_dioxide_dusk_mg_l: Band,
    /// Carbon dioxide when it goes on again, mg/L.
    pub carbon_dioxide_dawn_mg_l: Band,
    /// pH when the lamp goes off.
    pub ph_dusk: Band,
    /// pH when it goes on again.
    pub ph_dawn: Band,
    /// The course, hour by hour, both ends included.
    pub hours: Vec<HourBand>,
}

/// The water at one hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HourBand {
    /// Hours since the lamp went on.
    pub hour: f64,
    /// Dissolved oxygen, mg/L.
    pub oxygen_mg_l: Band,
    /// Carbon dioxide, mg/L.
    pub carbon_dioxide_mg_l: Band,
    /// pH.
    pub ph: Band,
}

/// A day and a night of a tank for every member of an ensemble.
///
/// # Errors
/// [`IntegrationError`], as for [`cycle`].
///
/// # Limits
/// As [`cycle`]. The spread is that of the numbers, not of the model.
pub fn outlook(
    inputs: &NightInputs,
    ranges: &Rates<Band>,
    ensemble: Ensemble,
) -> Result<Outlook, IntegrationError> {
    let members = Members::draw(ranges, ensemble);
    let cycles = cycles(inputs, &members)?;
    let over = |value: &dyn Fn(&Cycle) -> f64| spread(cycles.iter().map(value));
    let under = |limit: f64| over(&|cycle| cycle.hours_under(Concentration::from_mg_l(limit)));
    let [higher, lower] = LOW_OXYGEN_MG_L;
    Ok(Outlook {
        ensemble,
        central: cycle(inputs, &ranges.central())?,
        low_mg_l: over(&|cycle| cycle.low.oxygen.mg_l()),
        low_hour: over(&|cycle| cycle.low.hour),
        hours_under_5: under(higher),
        hours_under_3: under(lower),
        carbon_dioxide_dusk_mg_l: over(&|cycle| cycle.dusk.carbon_dioxide.mg_l()),
        carbon_dioxide_dawn_mg_l: over(&|cycle| cycle.dawn.carbon_dioxide.mg_l()),
        ph_dusk: over(&|cycle| cycle.dusk.ph),
        ph_dawn: over(&|cycle| cycle.dawn.ph),
        hours: hours(&cycles),
    })
}

/// Every member's day.
fn cycles(inputs: &NightInputs, members: &Members) -> Result<Vec<Cycle>, IntegrationError> {
    let schedule = Schedule::of(inputs);
    let any = Coefficients::of(inputs, &Rates::of(inputs).central());
    let water = CycleReader::of(&NightModel::new(inputs, any), &schedule);
    let groups: Vec<[Cycle; LANES]> = members
        .follow(inputs)?
        .iter()
        .map(|(settled, day)| {
            std::array::from_fn(|lane| {
                let drift = settled.drift.map(|lanes| lanes.0[lane]);
                water.read(&day.lane(lane), drift)
            })
        })
        .collect();
    Ok(members.unpacked(&groups))
}

fn hours(cycles: &[Cycle]) -> Vec<HourBand> {
    (0..SAMPLES)
        .step_by(SAMPLES_PER_HOUR as usize)
        .map(|sample| {
            let at = |value: &dyn Fn(&Hour) -> f64| {
                let moments = cycles.iter().map(|cycle| &cycle.course[sample as usize]);
                spread(moments.map(value))
            };
            HourBand {
                hour: f64::from(sample) / f64::from(SAMPLES_PER_HOUR),
                oxygen_mg_l: at(&|hour| hour.oxygen.mg_l()),
                carbon_dioxide_mg_l: at(&|hour| hour.carbon_dioxide.mg_l()),
                ph: at(&|hour| hour.ph),
            }
        })
        .collect()
}

/// Low, typical and high of some members; there is always one.
pub(super) fn spread(members: impl IntoIterator<Item = f64>) -> Band {
    let [low, typical, high] = quantiles(members, SHARES).unwrap_or([f64::NAN; 3]);
    Band::new(low, typical, high)
}

/// The low end of some members.
pub(super) fn low_end(members: impl IntoIterator<Item = f64>) -> f64 {
    spread(members).low
}
