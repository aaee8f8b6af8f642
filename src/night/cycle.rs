//! The day that repeats itself, for one set of numbers.

use super::carbon::Carbonate;
use super::coefficients::Coefficients;
use super::course::{Accuracy, FollowedDay, Moved, Schedule, follow_closely, hour_of};
use super::inputs::NightInputs;
use super::model::{NightModel, NightState};
use super::rates::Rates;
use super::settle::{in_balance, settle_finely};
use crate::numerics::rodas::IntegrationError;
use crate::units::Concentration;
use crate::units::constants::HOURS_PER_DAY;

/// The water at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hour {
    /// Hours since the lamp went on.
    pub hour: f64,
    /// Dissolved oxygen.
    pub oxygen: Concentration,
    /// Carbon dioxide.
    pub carbon_dioxide: Concentration,
    /// All inorganic carbon, mg CO2/L.
    pub carbon_mg_l: f64,
    /// pH that goes with it and the alkalinity.
    pub ph: f64,
}

/// The lowest oxygen of the day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Low {
    /// Dissolved oxygen.
    pub oxygen: Concentration,
    /// Hours since the lamp went on: 24 is when it goes on again.
    pub hour: f64,
}

/// Oxygen given to the water in a day, mg/L; below zero what was taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Totals {
    /// By plants and algae in the light.
    pub photosynthesis: f64,
    /// By plants and algae breathing.
    pub plants: f64,
    /// By animals.
    pub animals: f64,
    /// By what decays: dead tissue, what animals leave of their feed.
    pub dead: f64,
    /// By the bed.
    pub bed: f64,
    /// By nitrifiers.
    pub nitrification: f64,
    /// By the air, through surface and bubbles.
    pub exchange: f64,
}

impl Totals {
    /// All together.
    pub fn sum(&self) -> f64 {
        self.photosynthesis
            + self.plants
            + self.animals
            + self.dead
            + self.bed
            + self.nitrification
            + self.exchange
    }
}

/// Carbon dioxide given to the water in a day, mg/L; below zero what was taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CarbonTotals {
    /// By all that breathes, the bed included.
    pub breathed: f64,
    /// By plants and algae in the light.
    pub fixed: f64,
    /// By the air, through surface and bubbles.
    pub exchange: f64,
}

impl CarbonTotals {
    /// All together.
    pub fn sum(&self) -> f64 {
        self.breathed + self.fixed + self.exchange
    }
}

/// A day and a night.
#[derive(Debug, Clone, PartialEq)]
pub struct Cycle {
    /// Oxygen in balance with the air.
    pub saturation: Concentration,
    /// Six moments an hour, both ends included.
    pub course: Vec<Hour>,
    /// When the lamp goes off.
    pub dusk: Hour,
    /// When the lamp goes on again.
    pub dawn: Hour,
    /// The lowest oxygen.
    pub low: Low,
    /// What moved oxygen.
    pub totals: Totals,
    /// What moved carbon.
    pub carbon: CarbonTotals,
    /// Oxygen gained over a day that should repeat itself, mg/L, and carbon likewise, mg
    /// CO2/L: next to nothing but where exchange is shut off.
    pub drift: (f64, f64),
}

/// A day and a night of a tank with one set of numbers, once its days repeat.
///
/// # Errors
/// [`IntegrationError`], when the numbers of the tank leave the finite ones.
///
/// # Source
/// A balance of oxygen and carbon as lake models keep it; each rate stands with its
/// source in [`air`](crate::air) and [`Rates`].
///
/// # Limits
/// The water is mixed; plants, animals and alkalinity stay as they are through the
/// day; nothing precipitates. Alkalinity of humic matter is taken for bicarbonate.
///
/// # Example
/// ```
/// use lentic::night::{Ceiling, NightInputs, Rates, Users, cycle};
/// use lentic::design::{FlowDevice, DutyHours};
/// use lentic::source::Band;
/// use lentic::state::DayState;
/// use lentic::units::{Alkalinity, Area, Flow, Length, Mass, MassRate, Share, Temperature};
/// use lentic::water::atmosphere;
/// let floor = Area::from_m2(0.1);
/// let tank = NightInputs {
///     surface: floor,
///     floor,
///     water: floor * Length::from_cm(25.0),
///     depth: Length::from_cm(25.0),
///     temperature: Temperature::from_celsius(24.0),
///     pressure: atmosphere::SEA_LEVEL,
///     alkalinity: Alkalinity::from_dkh(4.0),
///     light: Band::exact(60.0),
///     light_hours: 9.0,
///     ceiling: Ceiling::Open,
///     device: FlowDevice::None,
///     flow: Flow::ZERO,
///     device_depth: Length::ZERO,
///     duty: DutyHours::Always,
///     emergent: Share::ZERO,
///     animals: Vec::new(),
///     feed: MassRate::ZERO,
///     surface_film: false,
///     bicarbonate_users: Users::UNKNOWN,
///     state: DayState { day: 60.0, fast: Mass::from_g(4.0), ..DayState::LIFELESS },
/// };
/// let night = cycle(&tank, &Rates::of(&tank).central())?;
/// assert!(night.low.oxygen < night.dusk.oxygen && night.dusk.ph > night.dawn.ph);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn cycle(inputs: &NightInputs, rates: &Rates<f64>) -> Result<Cycle, IntegrationError> {
    let model = NightModel::new(inputs, Coefficients::of(inputs, rates));
    let schedule = Schedule::of(inputs);
    let settled = settle_finely(&model, &schedule, in_balance(&model))?;
    let (day, moved) = follow_closely(&model, &schedule, settled.start, Accuracy::FINE)?;
    let water = CycleReader::of(&model, &schedule);
    Ok(water.read(&day, &moved, settled.drift))
}

/// What it takes to read a day.
struct CycleReader {
    carbonate: Carbonate<f64>,
    saturation_mg_l: f64,
    light_hours: f64,
}

impl CycleReader {
    fn of(model: &NightModel<f64>, schedule: &Schedule) -> Self {
        Self {
            carbonate: model.carbonate,
            saturation_mg_l: model.saturation_mg_l,
            light_hours: schedule.light_hours,
        }
    }

    /// What is read off a day.
    fn read(&self, day: &FollowedDay<f64>, moved: &Moved<f64>, drift: NightState<f64>) -> Cycle {
        let course = day.samples.iter().enumerate();
        let course: Vec<Hour> = course
            .map(|(place, point)| self.hour(hour_of(place), point))
            .collect();
        let dusk = self.hour(self.light_hours, &day.dusk);
        let dawn = self.hour(HOURS_PER_DAY, &day.end);
        let [
            photosynthesis,
            plants,
            animals,
            dead,
            bed,
            nitrification,
            exchange,
        ] = moved.oxygen;
        let [breathed, fixed, carbon_exchange] = moved.carbon;
        Cycle {
            saturation: Concentration::from_mg_l(self.saturation_mg_l),
            low: lowest_of(course.iter().skip(1).chain([&dusk, &dawn]).map(Hour::low)),
            course,
            dusk,
            dawn,
            totals: Totals {
                photosynthesis,
                plants,
                animals,
                dead,
                bed,
                nitrification,
                exchange,
            },
            carbon: CarbonTotals {
                breathed,
                fixed,
                exchange: carbon_exchange,
            },
            drift: (drift[0], drift[1]),
        }
    }

    fn hour(&self, hour: f64, &[oxygen, all_carbon, _]: &NightState<f64>) -> Hour {
        let carbon = self.carbonate.split(all_carbon);
        Hour {
            hour,
            oxygen: Concentration::from_mg_l(oxygen),
            carbon_dioxide: Concentration::from_mg_l(carbon.dioxide),
            carbon_mg_l: all_carbon,
            ph: carbon.ph(),
        }
    }
}

impl Hour {
    fn low(&self) -> Low {
        Low {
            oxygen: self.oxygen,
            hour: self.hour,
        }
    }
}

/// The last of the lowest.
pub(super) fn lowest_of(moments: impl Iterator<Item = Low>) -> Low {
    let none = Low {
        oxygen: Concentration::from_mg_l(f64::INFINITY),
        hour: HOURS_PER_DAY,
    };
    moments.fold(none, |low, moment| {
        if moment.oxygen <= low.oxygen {
            moment
        } else {
            low
        }
    })
}

/// Hours of evenly spaced oxygen levels under a limit, straight between them.
pub(super) fn hours_under(oxygen_mg_l: &[f64], limit_mg_l: f64) -> f64 {
    let each = oxygen_mg_l.windows(2).map(|pair| {
        let (from, to) = (limit_mg_l - pair[0], limit_mg_l - pair[1]);
        if from.signum() == to.signum() {
            f64::from(u8::from(from > 0.0))
        } else {
            from.max(to) / (from - to).abs()
        }
    });
    each.sum::<f64>() * hour_of(1)
}

#[cfg(test)]
mod tests {
    use super::hours_under;

    #[test]
    fn time_under_a_limit_counts_parts_of_steps() {
        // six samples an hour; a fall through 5 a quarter into the second step
        let course = [6.0, 5.25, 4.25, 4.25];
        let expected = (0.75 + 1.0) / 6.0;
        assert!((hours_under(&course, 5.0) - expected).abs() < 1e-12);
        assert!(hours_under(&course, 1.0).abs() < 1e-12);
        assert!((hours_under(&[5.0, 5.0], 5.0)).abs() < 1e-12);
    }
}
