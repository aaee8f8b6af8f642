//! The animals that the night's oxygen and the plants' appetite carry.

use super::inputs::{Kept, NightInputs};
use super::members::{Ensemble, EnsembleSearch, Members, closing_in};
use super::outlook::spread;
use super::rates::Rates;
use crate::catalogue::{Animal, animals};
use crate::numerics::rodas::IntegrationError;
use crate::numerics::root::doubled;
use crate::source::Band;
use crate::state::AMMONIA_PER_PROTEIN;
use crate::units::{Concentration, Mass, MassRate, Share, Volume};

/// The first mass tried, per litre of water, and the most, g/L (judgement: no tank
/// without a filter comes near).
const FIRST_G_L: f64 = 0.025;
const MOST_G_L: f64 = 25.6;
/// How closely the mass is sought, as a share of it.
const CLOSENESS: f64 = 0.02;

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
            .filter(|animal| animal.digs_mm.high <= DIGS_LITTLE_MM);
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
    Ok(Carried {
        by_oxygen_g: by_oxygen(inputs, ensemble, diet, limit)?,
        by_nitrogen: by_nitrogen(inputs, diet),
    })
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

/// Each member carries its own mass, and more animals mean less oxygen in all of them:
/// so the mass at which a quantile of dawn oxygen meets the limit is that quantile of
/// the masses.
fn by_oxygen(
    inputs: &NightInputs,
    ensemble: Ensemble,
    diet: &Diet,
    limit: Concentration,
) -> Result<Band, IntegrationError> {
    let members = Members::draw(&Rates::of(inputs), ensemble);
    let mut stocked = Stocked {
        inputs: inputs.clone(),
        search: EnsembleSearch::over(&members),
        diet: *diet,
        limit_mg_l: limit.mg_l(),
    };
    let low = stocked.most_g(|dawn| dawn.low)?;
    let typical = stocked.most_g(|dawn| dawn.typical)?.max(low);
    let high = stocked.most_g(|dawn| dawn.high)?.max(typical);
    Ok(Band::new(low, typical, high))
}

/// A tank with some mass of animals in it.
struct Stocked<'a> {
    inputs: NightInputs,
    search: EnsembleSearch<'a>,
    diet: Diet,
    limit_mg_l: f64,
}

impl Stocked<'_> {
    /// A quantile of dawn oxygen over the limit.
    fn surplus_mg_l(
        &mut self,
        mass_g: f64,
        quantile: impl Fn(Band) -> f64,
    ) -> Result<f64, IntegrationError> {
        self.inputs.animals = vec![Kept {
            body: self.diet.body,
            count: mass_g / self.diet.body.g(),
            air_breathing: false,
        }];
        self.inputs.feed = MassRate::from_g_d(mass_g * self.diet.feed_per_d.fraction());
        let lows = self.search.lowest_mg_l(&self.inputs)?;
        Ok(quantile(spread(lows)) - self.limit_mg_l)
    }

    /// The most that is carried: doubled until it is not, then closed in on.
    fn most_g(&mut self, quantile: impl Fn(Band) -> f64 + Copy) -> Result<f64, IntegrationError> {
        let litres = self.inputs.water.litres();
        let most = MOST_G_L * litres;
        if self.diet.body <= Mass::ZERO {
            return Ok(most);
        }
        if self.surplus_mg_l(0.0, quantile)? <= 0.0 {
            return Ok(0.0);
        }
        let carried = |mass_g| Ok(self.surplus_mg_l(mass_g, quantile)? > 0.0);
        let Some((below, mass_g)) = doubled(FIRST_G_L * litres, most, carried)? else {
            return Ok(most);
        };
        closing_in(below, mass_g, CLOSENESS * mass_g, |mass_g| {
            self.surplus_mg_l(mass_g, quantile)
        })
    }
}
