//! The animals that the night's oxygen and the plants' appetite carry.

use super::crossing::{Crossing, Seat, SettingRange, Turn};
use super::inputs::{Kept, NightInputs};
use super::members::{Ensemble, Nights};
use super::outlook::spread;
use super::rates::Rates;
use crate::catalogue::{Animal, animals};
use crate::numerics::rodas::IntegrationError;
use crate::source::Band;
use crate::state::AMMONIA_PER_PROTEIN;
use crate::units::{Concentration, Mass, MassRate, Share, Volume};

/// The first mass tried, per litre of water, and the most, g/L (judgement: no tank
/// without a filter comes near).
const FIRST_G_L: f64 = 0.1;
const MOST_G_L: f64 = 25.6;

/// Fresh mass of animals that a tank carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carried {
    /// As far as dawn oxygen goes, g: in 10, 50 and 90 % of the members less.
    pub by_oxygen_g: Band,
    /// As far as the plants' uptake of nitrogen goes.
    pub by_nitrogen: Mass,
}

impl Carried {
    /// As far as both go, typically.
    pub fn least(&self) -> Mass {
        Mass::from_g(self.by_oxygen_g.typical).min(self.by_nitrogen)
    }

    /// The same in numbers of animals that leave a bed alone, no more of each than
    /// practice keeps in the water, and none that it keeps out of a tank of that size to the rim.
    pub fn examples(&self, water: Volume, tank: Volume) -> Vec<Example> {
        let grams = self.least().g();
        let quiet = animals()
            .iter()
            .filter(|animal| animal.digs_mm.high <= DIGS_LITTLE_MM && !animal.comes_unasked);
        quiet
            .map(|animal| Example {
                animal,
                count: animal
                    .most_in(water, tank)
                    .min((grams / animal.mass_g.typical).floor() as u32),
            })
            .collect()
    }
}

/// Animals that stir no deeper than this count as leaving the bed alone, mm.
const DIGS_LITTLE_MM: f64 = 10.0;

/// So many animals of one kind, and no others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Example {
    /// Which.
    pub animal: &'static Animal,
    /// How many.
    pub count: u32,
}

/// What the animals are like that are to be carried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Diet {
    /// Fresh mass of one: small bodies use more for their mass.
    pub body: Mass,
    /// Dry feed a day over body mass.
    pub feed_per_d: Share,
    /// Protein in it.
    pub protein: Share,
}

/// Fresh mass of animals that keeps dawn oxygen at a limit and gives off no more nitrogen than the plants' growth takes.
///
/// ```text
/// by nitrogen = taken / (feed share x protein share x 0.092)
/// ```
///
/// # Errors
/// [`IntegrationError`], as for [`cycle`](super::cycle()).
///
/// # Source
/// Oxygen by the day of [`cycle`](super::cycle()). Nitrogen: 9.2 % of the protein fed comes
/// back as ammonia (`timmons_ebeling`).
///
/// # Example
/// ```
/// use lentic::night::stock::{Diet, carried};
/// use lentic::night::{Ensemble, NightInputs};
/// use lentic::source::Band;
/// use lentic::state::DayState;
/// use lentic::units::{Concentration, Mass, MassRate, Share};
/// let text = r#"
/// [tank]
/// shape = "box"
/// size = "60 x 30 x 36 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "25 mm"
/// [cap]
/// material = "filter_sand"
/// depth = "40 mm"
/// "#;
/// let design = lentic::spec::parse(text)?;
/// // plants that take 8.28 mg of nitrogen a day
/// let state = DayState { nitrogen_taken: MassRate::from_g_d(8.28e-3), ..DayState::LIFELESS };
/// let tank = NightInputs::of(&design, &state, Band::exact(60.0));
/// let diet = Diet {
///     body: Mass::from_g(1.0),
///     feed_per_d: Share::from_percent(2.0),
///     protein: Share::from_percent(45.0),
/// };
/// let central = Ensemble { members: 0, seed: 1 };
/// let found = carried(&tank, central, &diet, Concentration::from_mg_l(5.0))?;
/// // 10 g of animals eat 0.2 g a day, 0.09 g of it protein, and give off 8.28 mg of nitrogen
/// assert!((found.by_nitrogen.g() - 10.0).abs() < 0.1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Limits
/// One kind of animal, spread over the tank; what they eat of the plants is left out.
pub fn carried(
    inputs: &NightInputs,
    ensemble: Ensemble,
    diet: &Diet,
    limit: Concentration,
) -> Result<Carried, IntegrationError> {
    Nights::of(inputs, &Rates::of(inputs), ensemble)?.carried(diet, limit)
}

impl Nights {
    /// See [`carried`].
    ///
    /// # Errors
    /// As for [`carried`].
    pub fn carried(&self, diet: &Diet, limit: Concentration) -> Result<Carried, IntegrationError> {
        Ok(Carried {
            by_oxygen_g: self.by_oxygen_g(diet, limit)?,
            by_nitrogen: by_nitrogen(&self.inputs, diet),
        })
    }

    /// Each member carries its own mass, and more animals mean less oxygen in all of them:
    /// so the mass at which a quantile of dawn oxygen meets the limit is that quantile of
    /// the masses.
    fn by_oxygen_g(&self, diet: &Diet, limit: Concentration) -> Result<Band, IntegrationError> {
        let litres = self.inputs.water.litres();
        let most = MOST_G_L * litres;
        if diet.body <= Mass::ZERO {
            return Ok(Band::exact(most));
        }
        let crossing = Crossing {
            nights: self,
            at: |mass_g| stocked(&self.inputs, diet, mass_g),
            span: SettingRange {
                first: FIRST_G_L * litres,
                most,
            },
            limit_mg_l: limit.mg_l(),
            turn: Turn::Falls,
        };
        let seats = crossing.sought(crossing.seated(0.0)?)?;
        let masses: Vec<_> = seats.iter().map(Seat::settings).collect();
        let masses = self.answers(&masses).into_iter();
        Ok(spread(masses.map(|mass_g| mass_g.min(most))))
    }
}

/// A tank with some mass of animals in it.
fn stocked(inputs: &NightInputs, diet: &Diet, mass_g: f64) -> NightInputs {
    NightInputs {
        animals: vec![Kept {
            body: diet.body,
            count: mass_g / diet.body.g(),
            air_breathing: false,
        }],
        feed: MassRate::from_g_d(mass_g * diet.feed_per_d.fraction()),
        ..inputs.clone()
    }
}

/// None is carried where the plants take nothing; all that is asked where unfed
/// animals give nothing off.
fn by_nitrogen(inputs: &NightInputs, diet: &Diet) -> Mass {
    let per_body = diet.feed_per_d.fraction() * diet.protein.fraction() * AMMONIA_PER_PROTEIN;
    let taken_g_d = inputs.state.nitrogen_taken.g_h() * 24.0;
    let most_g = MOST_G_L * inputs.water.litres();
    if taken_g_d < per_body * most_g {
        Mass::from_g(taken_g_d / per_body)
    } else {
        Mass::from_g(most_g)
    }
}
