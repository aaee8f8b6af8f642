//! The light that reaches submerged plants, against what they need.

use super::coefficients::{extinction_depth, light_below_floaters, light_in_water};
use super::inputs::NightInputs;
use super::limits::LONG_LIGHT_H;
use super::rates::Rates;
use crate::numerics::root::first_crossing;
use crate::plants::shade::LightNeed;
use crate::source::Band;
use crate::units::Share;

/// Light of a day from its level and hours, mol/m2 per umol/(m2 s) and hour.
const MOL_PER_UMOL_HOUR: f64 = 0.0036;

/// The light below the floaters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lighting {
    /// Half way down, while the lamp is on, umol/(m2 s).
    pub par_mid_umol: Band,
    /// Half way down, over a day, mol/m2.
    pub daily_mol_m2: Band,
    /// Hours with which the plants just live, at the low, typical and high light; none
    /// where no day is long enough, or where there are no plants to ask.
    pub break_even: Option<BreakEven>,
    /// Hours that the lamp is on.
    pub hours: f64,
}

/// Hours of light with which growth just meets loss, by how bright the lamp is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BreakEven {
    /// At the low end of the lamp's band; none where no day is long enough.
    pub dim: Option<f64>,
    /// At the typical light.
    pub typical: Option<f64>,
    /// At the high end.
    pub bright: Option<f64>,
}

impl Lighting {
    /// The light of a tank; the band is that of the lamp. `need` is that of the plants
    /// that are to be kept alive, if there are any.
    pub fn of(inputs: &NightInputs, need: Option<&LightNeed>) -> Self {
        let central = Rates::of(inputs).central();
        let lit = |light: f64| Rates { light, ..central };
        let middle = |light: f64| {
            let rates = lit(light);
            light_below_floaters(inputs, &rates) * (-extinction_depth(inputs, &rates) / 2.0).exp()
        };
        let lamp = inputs.light;
        let par_mid_umol = Band::new(middle(lamp.low), middle(lamp.typical), middle(lamp.high));
        let hours = |need: &LightNeed, light: f64| {
            need.break_even_hours(light_in_water(inputs, &lit(light)))
        };
        Self {
            par_mid_umol,
            daily_mol_m2: par_mid_umol.scaled(inputs.light_hours * MOL_PER_UMOL_HOUR),
            break_even: need.map(|need| BreakEven {
                dim: hours(need, lamp.low),
                typical: hours(need, lamp.typical),
                bright: hours(need, lamp.high),
            }),
            hours: inputs.light_hours,
        }
    }

    /// What lets the submerged plants just live: a longer day, no longer than is
    /// usual, else fewer floaters, else a brighter lamp.
    pub fn mend(&self, inputs: &NightInputs, need: &LightNeed) -> Mend {
        if let Some(hours) = self.break_even.and_then(|even| even.typical)
            && hours <= LONG_LIGHT_H
        {
            return Mend::Hours(hours);
        }
        let rates = Rates::of(inputs).central();
        let day = inputs.light_hours.max(LONG_LIGHT_H);
        let live = |inputs: &NightInputs, rates: &Rates<f64>| {
            let even = need.break_even_hours(light_in_water(inputs, rates));
            even.is_some_and(|hours| hours <= day)
        };
        let thinned = |taken: f64| {
            let mut thinned = inputs.clone();
            thinned.state.cover = inputs.state.covered() * (1.0 - taken);
            thinned
        };
        let fewer = first_crossing(|taken| live(&thinned(taken), &rates), 0.0, 1.0, CLOSE);
        if let Ok(taken) = fewer {
            return Mend::Cover(thinned(taken).state.cover);
        }
        let lit = |light: f64| Rates { light, ..rates };
        let brighter = first_crossing(
            |light| live(inputs, &lit(light)),
            rates.light,
            MOST_UMOL,
            CLOSE * MOST_UMOL,
        );
        brighter.map_or(Mend::Nothing, Mend::Lamp)
    }
}

/// The brightest lamp that is tried, umol/(m2 s): half of full sun.
const MOST_UMOL: f64 = 1000.0;
/// How closely cover and lamp are sought, as a share.
const CLOSE: f64 = 0.01;

/// What lets submerged plants live.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mend {
    /// Hours of light a day.
    Hours(f64),
    /// Floaters thinned to this cover.
    Cover(Share),
    /// Light at the surface, umol/(m2 s).
    Lamp(f64),
    /// Not even the brightest lamp.
    Nothing,
}
