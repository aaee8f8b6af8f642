//! How a tank cools when the heater stops, as in a power cut.

use super::evaporation::Climate;
use super::heater::heat_capacity_j_k;
use super::loss::Enclosure;
use crate::units::{Duration, Temperature, Volume};

/// Parts that a time or a fall of temperature is cut into.
const PARTS: u32 = 200;
/// Seconds in an hour.
const SECONDS_PER_HOUR: f64 = 3600.0;

/// Time in which the water cools to a temperature; nothing where it never does,
/// because the room holds it warmer, or where it is that cold already.
///
/// ```text
/// t = integral of m c / Q(T) over the fall
/// ```
///
/// by the midpoint rule, Q as [`Enclosure::loss`]. `climate.water` is the temperature at the start.
///
/// # Source
/// A balance of heat; the losses stand with their sources.
///
/// # Example
/// ```
/// use lentic::heat::{Climate, Enclosure, Glazing, Top, cooling, heater};
/// use lentic::units::{Area, Length, Share, Temperature, Volume};
/// use lentic::water::atmosphere::SEA_LEVEL;
/// let tank = Enclosure {
///     sides: Area::from_cm2(6480.0),
///     bottom: Area::from_cm2(1800.0),
///     surface: Area::from_cm2(1800.0),
///     glazing: Glazing::Glass,
///     side_thickness: Length::from_mm(6.0),
///     bottom_thickness: Length::from_mm(6.0),
///     top: Top::Open,
/// };
/// let room = Climate {
///     water: Temperature::from_celsius(25.0),
///     air: Temperature::from_celsius(20.0),
///     humidity: Share::from_percent(50.0),
///     pressure: SEA_LEVEL,
/// };
/// let water = Volume::from_litres(60.0);
/// let cool = Temperature::from_celsius(24.9);
/// let time = cooling::cooling_time(&tank, &room, water, cool).ok_or("it never cools so far")?;
/// // over a tenth of a degree nearly the heat capacity over the loss at its start
/// let loss_w = tank.loss(&room).total().watts();
/// let seconds = 0.1 * heater::heat_capacity_j_k(water, room.water) / loss_w;
/// assert!((time.hours() * 3600.0 / seconds - 1.0).abs() < 0.02);
/// # Ok::<(), &str>(())
/// ```
///
/// # Limits
/// Bed and stones would hold the fall up: the time errs short.
pub fn cooling_time(
    tank: &Enclosure,
    climate: &Climate,
    water: Volume,
    to: Temperature,
) -> Option<Duration> {
    let capacity_j_k = heat_capacity_j_k(water, climate.water);
    let fall_k = climate.water.celsius() - to.celsius();
    if fall_k <= 0.0 || loss_watts(tank, climate, to.celsius()) <= 0.0 {
        return None;
    }
    let part_k = fall_k / f64::from(PARTS);
    let seconds: f64 = (0..PARTS)
        .map(|part| to.celsius() + (f64::from(part) + 0.5) * part_k)
        .map(|celsius| capacity_j_k * part_k / loss_watts(tank, climate, celsius))
        .sum();
    Some(Duration::from_hours(seconds / SECONDS_PER_HOUR))
}

fn loss_watts(tank: &Enclosure, climate: &Climate, celsius: f64) -> f64 {
    let now = Climate {
        water: Temperature::from_celsius(celsius),
        ..*climate
    };
    tank.loss(&now).total().watts()
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;
    use crate::heat::{Glazing, Top};
    use crate::units::{Area, Length, Share};
    use crate::water::atmosphere;

    fn tank(top: Top) -> Enclosure {
        Enclosure {
            sides: Area::from_m2(0.648),
            bottom: Area::from_m2(0.18),
            surface: Area::from_m2(0.18),
            glazing: Glazing::Glass,
            side_thickness: Length::from_mm(6.0),
            bottom_thickness: Length::from_mm(6.0),
            top,
        }
    }

    fn room() -> Climate {
        Climate {
            water: Temperature::from_celsius(25.0),
            air: Temperature::from_celsius(15.0),
            humidity: Share::from_percent(50.0),
            pressure: atmosphere::SEA_LEVEL,
        }
    }

    #[test]
    fn without_evaporation_the_fall_is_exponential() {
        let sealed = tank(Top::Lid(Share::ZERO));
        let water = Volume::from_litres(55.0);
        let conductance_w_k = sealed.loss(&room()).total().watts() / 10.0;
        let hours = heat_capacity_j_k(water, room().water) / conductance_w_k / 3600.0;
        let to = Temperature::from_celsius(15.0 + 10.0 * (-1.0_f64).exp());
        let time = cooling_time(&sealed, &room(), water, to).unwrap();
        assert_relative_eq!(time.hours(), hours, max_relative = 1e-4);
    }

    #[test]
    fn a_sealed_tank_never_cools_below_its_room() {
        let sealed = tank(Top::Lid(Share::ZERO));
        let water = Volume::from_litres(55.0);
        for celsius in [14.0, 15.0, 25.0] {
            let to = Temperature::from_celsius(celsius);
            assert_eq!(cooling_time(&sealed, &room(), water, to), None);
        }
    }
}
