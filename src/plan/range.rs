//! The ranges in which the formulas hold, against what a design gives them.

use crate::air::{airlift, bubble, demand};
use crate::design::{Design, FlowDevice};
use crate::finding::Caution;
use crate::heat::evaporation;
use crate::night::inputs;
use crate::source::{OutOfRange, Validity};
use crate::state::movement;
use crate::units::show::significant;
use crate::water::{
    ammonia, atmosphere, carbon_dioxide, carbonate, density, diffusion, oxygen, schmidt,
    surface_tension, viscosity,
};

/// Where the growth rates of most plants listed were measured: judgement on their sources.
const TEMPERATURE: Validity = Validity::new("water temperature", "C", 15.0, 32.0);
/// Where nitrifying bacteria were measured: judgement on their sources.
const PH: Validity = Validity::new("pH", "", 6.0, 8.5);
/// The tanks this is made for: judgement; check the unit of the dimensions beyond.
const VOLUME: Validity = Validity::new("inner volume", "L", 5.0, 1000.0);

/// The code of cautions on what a night and the upkeep are computed from.
const NIGHT: &str = "range.night";

/// A range with what a design puts into it.
#[derive(Debug, Clone, Copy)]
pub struct CheckedRange {
    /// The range.
    pub validity: Validity,
    /// The code of the caution where a design leaves it.
    pub code: &'static str,
    /// What a design gives, in the unit of the range; nothing where the formula is not used.
    pub given: fn(&Design) -> Vec<f64>,
}

/// Every range in which a formula holds. Of several on one input the first that is left is
/// said.
pub const RANGES: &[CheckedRange] = &[
    CheckedRange::new("range.temperature", TEMPERATURE, water_c),
    CheckedRange::new("range.ph", PH, ph),
    CheckedRange::new("range.volume", VOLUME, litres),
    CheckedRange::new(NIGHT, oxygen::VALIDITY, water_c),
    CheckedRange::new(NIGHT, oxygen::PRESSURE_VALIDITY, pressure_atm),
    CheckedRange::new(NIGHT, carbon_dioxide::VALIDITY, water_c),
    CheckedRange::new(NIGHT, inputs::PLANT_TEMPERATURE, water_c),
    CheckedRange::new(NIGHT, demand::FISH_TEMPERATURE, animals_c),
    CheckedRange::new(NIGHT, demand::FISH_MASS, bodies_g),
    CheckedRange::new(NIGHT, bubble::SUBMERGENCE_VALIDITY, bubbles_m),
    CheckedRange::new(NIGHT, evaporation::WATER_VALIDITY, water_c),
    CheckedRange::new(NIGHT, evaporation::AIR_VALIDITY, room_c),
    CheckedRange::new(NIGHT, evaporation::HUMIDITY_VALIDITY, humidity_pct),
    CheckedRange::new(NIGHT, evaporation::AREA_VALIDITY, surface_m2),
    CheckedRange::new(NIGHT, diffusion::VALIDITY, water_c),
    CheckedRange::new(NIGHT, viscosity::VALIDITY, water_c),
    CheckedRange::new(NIGHT, density::VALIDITY, water_c),
    CheckedRange::new(NIGHT, schmidt::VALIDITY, water_c),
    CheckedRange::new(NIGHT, carbonate::VALIDITY, water_c),
    CheckedRange::new(NIGHT, atmosphere::ALTITUDE_VALIDITY, altitude_m),
    CheckedRange::new(NIGHT, atmosphere::VAPOUR_VALIDITY, water_c),
    CheckedRange::new(NIGHT, evaporation::LATENT_HEAT_VALIDITY, water_c),
    CheckedRange::new(NIGHT, airlift::SURFACE_TENSION_VALIDITY, riser_number),
    CheckedRange::new("range.startup", ammonia::VALIDITY, water_c),
    CheckedRange::new("range.bed", surface_tension::VALIDITY, water_c),
];

impl CheckedRange {
    const fn new(code: &'static str, validity: Validity, given: fn(&Design) -> Vec<f64>) -> Self {
        Self {
            validity,
            code,
            given,
        }
    }

    /// The value with which a design leaves it.
    pub fn left_by(&self, design: &Design) -> Option<OutOfRange> {
        let given = (self.given)(design);
        given
            .into_iter()
            .find_map(|value| self.validity.check(value))
    }
}

/// A caution for each input that lies outside the range of a formula.
///
/// # Example
/// ```
/// let text = include_str!("../../demo-tanks/pea-gravel.toml");
/// let design = lentic::spec::parse(text)?;
/// assert!(lentic::plan::range::cautions(&design).is_empty());
/// # Ok::<(), lentic::spec::Faults>(())
/// ```
pub fn cautions(design: &Design) -> Vec<Caution> {
    each_once(design, RANGES.iter())
}

/// Those of a night and the upkeep alone.
pub(super) fn cautions_of_night(design: &Design) -> Vec<Caution> {
    each_once(design, RANGES.iter().filter(|range| range.code == NIGHT))
}

/// That the pH of a day leaves the model.
pub(super) fn ph_outside(ph: f64) -> Caution {
    Caution {
        code: "range.ph_of_day",
        says: format!(
            "Range: pH comes to {} within the day, outside 4 to 11: the model of it does not hold there.",
            significant(ph, 3)
        ),
        source: None,
    }
}

fn each_once<'a>(design: &Design, ranges: impl Iterator<Item = &'a CheckedRange>) -> Vec<Caution> {
    let mut known = Vec::new();
    let mut cautions = Vec::new();
    for range in ranges {
        let input = range.validity.input;
        if let Some(out) = range.left_by(design).filter(|_| !known.contains(&input)) {
            known.push(input);
            cautions.push(Caution {
                code: range.code,
                says: format!("Range: {out}: a guess there."),
                source: None,
            });
        }
    }
    cautions
}

fn water_c(design: &Design) -> Vec<f64> {
    vec![design.draft().water.temperature.celsius()]
}

fn ph(design: &Design) -> Vec<f64> {
    vec![design.draft().water.ph]
}

fn litres(design: &Design) -> Vec<f64> {
    vec![design.vessel().brimful().litres()]
}

fn altitude_m(design: &Design) -> Vec<f64> {
    vec![design.draft().room.altitude.m()]
}

fn pressure_atm(design: &Design) -> Vec<f64> {
    vec![atmosphere::pressure_at(design.draft().room.altitude).atm()]
}

fn room_c(design: &Design) -> Vec<f64> {
    vec![design.draft().room.temperature.celsius()]
}

fn humidity_pct(design: &Design) -> Vec<f64> {
    vec![design.draft().room.humidity.percent()]
}

fn surface_m2(design: &Design) -> Vec<f64> {
    vec![design.surface().m2()]
}

/// The water in which animals are kept.
fn animals_c(design: &Design) -> Vec<f64> {
    let animals = design.draft().animals.iter();
    animals.flat_map(|_| water_c(design)).collect()
}

fn bodies_g(design: &Design) -> Vec<f64> {
    let animals = design.draft().animals.iter();
    animals.map(|stock| stock.animal.mass_g.typical).collect()
}

/// How deep air is let in, where it rises as bubbles.
fn bubbles_m(design: &Design) -> Vec<f64> {
    let air = &design.draft().air;
    match air.device {
        FlowDevice::AirStone | FlowDevice::SpongeFilter => vec![air.depth.m()],
        FlowDevice::None | FlowDevice::Pump => Vec::new(),
    }
}

fn riser_number(design: &Design) -> Vec<f64> {
    let draft = design.draft();
    match draft.air.device {
        FlowDevice::SpongeFilter => {
            let riser = movement::riser(draft.air.flow, draft.air.depth, draft.water.temperature);
            vec![riser.surface_tension_number()]
        }
        FlowDevice::None | FlowDevice::Pump | FlowDevice::AirStone => Vec::new(),
    }
}
