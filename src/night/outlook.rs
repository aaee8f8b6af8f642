//! The day that repeats itself, over the whole range of what is not known.

use super::course::{FollowedDay, SAMPLES, SAMPLES_PER_HOUR, hour_of};
use super::cycle::{Low, hours_under, lowest_of};
use super::inputs::NightInputs;
use super::members::{Ensemble, MemberGroup, Nights};
use super::model::NightState;
use super::rates::Rates;
use crate::numerics::lanes::Lanes;
use crate::numerics::quantile::quantiles;
use crate::numerics::rodas::IntegrationError;
use crate::source::Band;
use crate::units::Concentration;
use crate::units::constants::HOURS_PER_DAY;
use crate::water::oxygen;

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
    /// Oxygen in balance with the air.
    pub saturation: Concentration,
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
/// [`IntegrationError`], as for [`cycle`](super::cycle()).
///
/// # Limits
/// As [`cycle`](super::cycle()). The spread is that of the numbers, not of the model.
pub fn outlook(
    inputs: &NightInputs,
    ranges: &Rates<Band>,
    ensemble: Ensemble,
) -> Result<Outlook, IntegrationError> {
    Ok(Nights::of(inputs, ranges, ensemble)?.outlook())
}

impl Nights {
    /// See [`outlook()`].
    pub fn outlook(&self) -> Outlook {
        let dusk_hour = self.inputs.light_hours;
        let lows = self.each(|group| std::array::from_fn(|lane| low(&group.day, lane, dusk_hour)));
        let [higher, lower] = LOW_OXYGEN_MG_L.map(|limit_mg_l| {
            let hours =
                |group: &MemberGroup, lane| hours_under(&group.day.oxygen(lane), limit_mg_l);
            spread(self.each(|group| std::array::from_fn(|lane| hours(group, lane))))
        });
        let dusk = self.moment(|group| group.day.dusk);
        let dawn = self.moment(|group| group.day.end);
        let inputs = &self.inputs;
        Outlook {
            ensemble: self.ensemble,
            saturation: oxygen::saturation(inputs.temperature, inputs.pressure),
            low_mg_l: spread(lows.iter().map(|low| low.oxygen.mg_l())),
            low_hour: spread(lows.iter().map(|low| low.hour)),
            hours_under_5: higher,
            hours_under_3: lower,
            carbon_dioxide_dusk_mg_l: dusk.carbon_dioxide_mg_l,
            carbon_dioxide_dawn_mg_l: dawn.carbon_dioxide_mg_l,
            ph_dusk: dusk.ph,
            ph_dawn: dawn.ph,
            hours: self.hours(),
        }
    }

    fn hours(&self) -> Vec<HourBand> {
        let samples = (0..SAMPLES as usize).step_by(SAMPLES_PER_HOUR as usize);
        samples
            .map(|sample| HourBand {
                hour: hour_of(sample),
                ..self.moment(|group| group.day.samples[sample])
            })
            .collect()
    }

    /// All members at one moment of their day.
    fn moment(&self, at: impl Fn(&MemberGroup) -> NightState<Lanes>) -> HourBand {
        let points = self.each(|group| {
            let [oxygen, all_carbon, _] = at(group);
            let carbon = group.model.carbonate.split(all_carbon);
            let (dioxide, ph) = (carbon.dioxide, carbon.ph());
            std::array::from_fn(|lane| [oxygen.0[lane], dioxide.0[lane], ph.0[lane]])
        });
        let band = |place: usize| spread(points.iter().map(|point: &[f64; 3]| point[place]));
        HourBand {
            hour: HOURS_PER_DAY,
            oxygen_mg_l: band(0),
            carbon_dioxide_mg_l: band(1),
            ph: band(2),
        }
    }
}

/// The lowest oxygen of a member's day.
fn low(day: &FollowedDay<Lanes>, lane: usize, dusk_hour: f64) -> Low {
    let at = |hour: f64, point: &NightState<Lanes>| Low {
        oxygen: Concentration::from_mg_l(point[0].0[lane]),
        hour,
    };
    let samples = day.samples.iter().enumerate().skip(1);
    let samples = samples.map(|(sample, point)| at(hour_of(sample), point));
    let ends = [at(dusk_hour, &day.dusk), at(HOURS_PER_DAY, &day.end)];
    lowest_of(samples.chain(ends))
}

/// Low, typical and high of some members; there is always one.
pub(super) fn spread(members: impl IntoIterator<Item = f64>) -> Band {
    let [low, typical, high] = quantiles(members, SHARES).unwrap_or([f64::NAN; 3]);
    Band::new(low, typical, high)
}
