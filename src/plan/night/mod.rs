//! A day and a night of a design: oxygen and the air it takes, flow, light, animals,
//! heat.

mod day;
mod section;

pub use day::OnDay;
pub use section::{
    AnimalCount, AnimalsSection, FlowSection, HeatSection, HourRow, LightSection, Night,
    NightSection,
};

use super::estimate::Estimate;
use super::options::Options;
use crate::catalogue::{self, Animal};
use crate::design::{Design, Stock, usual};
use crate::finding::Caution;
use crate::night::lighting::Lighting;
use crate::night::limits::{DAWN_ACT_MG_L, DAWN_WATCH_MG_L};
use crate::night::outage::Outage;
use crate::night::sizing::AirNeed;
use crate::night::stock::{Carried, Diet, Example};
use crate::night::upkeep::EnergyUse;
use crate::night::{Ensemble, NightInputs, Nights, Outlook, Rates, outlook};
use crate::numerics::rodas::IntegrationError;
use crate::plants::shade::LightNeed;
use crate::source::Band;
use crate::startup::{Inputs, Parameters, light_needs};
use crate::state::movement::Movement;
use crate::units::{Concentration, Duration, Flow, Mass, Share};
use day::TypicalStart;

/// Members that a night is drawn for at most: its bands are steady from a few dozen on,
/// and every search runs all of them many times.
const MOST_MEMBERS: u32 = 64;

/// The night of a design, computed.
pub(super) struct NightPlan<'a> {
    pub(super) design: &'a Design,
    pub(super) inputs: NightInputs,
    pub(super) outlook: Outlook,
    /// The air that it takes; none where it was not sought.
    pub(super) air: Option<AirNeed>,
    pub(super) movement: Movement,
    pub(super) lighting: Lighting,
    /// What the submerged plants ask of light, where there are any.
    pub(super) need: Option<LightNeed>,
    pub(super) carried: Carried,
    pub(super) upkeep: EnergyUse,
    /// Days on which light and nutrients favour algae.
    pub(super) algae_window_d: f64,
    /// How long a power cut is borne; none where it was not sought.
    outage: Option<Outage>,
}

/// Where the pH of a day follows from carbonate alone: judgement, for below it other acids
/// and above it hydroxide count.
const MODEL_PH: std::ops::RangeInclusive<f64> = 4.0..=11.0;

/// Whether what takes a search is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Remedies {
    /// The air that is needed and how long a power cut is borne.
    Sought,
    /// Neither.
    Omitted,
}

impl<'a> NightPlan<'a> {
    /// The night of a day of the typical start.
    pub(super) fn of(
        design: &'a Design,
        options: Options,
        on_day: OnDay,
        remedies: Remedies,
    ) -> Result<Self, IntegrationError> {
        let start = TypicalStart::of(design, options.days, on_day)?;
        let inputs = start.inputs(on_day)?;
        let nights = Nights::of(&inputs, &Rates::of(&inputs), members(options))?;
        let limit = dawn_limit(design);
        let need = light_need(design, &inputs);
        let diet = diet(design);
        Ok(Self {
            outlook: nights.outlook(),
            air: match remedies {
                Remedies::Sought => Some(nights.air_needed(limit)?),
                Remedies::Omitted => None,
            },
            outage: match remedies {
                Remedies::Sought => {
                    let limit = Concentration::from_mg_l(DAWN_ACT_MG_L);
                    Some(nights.outage(limit)?)
                }
                Remedies::Omitted => None,
            },
            movement: Movement::of(&inputs.stirred()),
            lighting: Lighting::of(&inputs, need.as_ref()),
            carried: nights.carried(&diet, limit)?,
            upkeep: EnergyUse::of(design),
            algae_window_d: start.algae_window_d(),
            need,
            design,
            inputs,
        })
    }

    /// The night and its course.
    pub(super) fn whole(&self, cautions: Vec<Caution>) -> Night {
        Night {
            name: self.design.draft().name.clone(),
            section: self.night(),
            flow: self.flow(),
            light: self.light(),
            animals: self.animals(),
            heat: self.heat(),
            hours: self.hours(),
            cautions,
        }
    }

    /// A row an hour.
    pub(super) fn hours(&self) -> Vec<HourRow> {
        let hours = self.outlook.hours.iter();
        hours
            .map(|hour| HourRow {
                hour: hour.hour,
                oxygen_mg_l: self.estimate(hour.oxygen_mg_l),
                co2_mg_l: self.estimate(hour.carbon_dioxide_mg_l),
                ph: self.estimate(hour.ph),
            })
            .collect()
    }

    /// The night section of a plan.
    pub(super) fn night(&self) -> NightSection {
        let outlook = &self.outlook;
        let (always, by_night, pressure) = match self.air {
            Some(AirNeed::SurfaceIsEnough | AirNeed::PumpIsEnough) => (Some(0.0), Some(0.0), None),
            Some(AirNeed::Air(air)) => (
                Some(air.always.l_min()),
                air.night_only.map(Flow::l_min),
                Some(self.estimate(air.pressure_kpa)),
            ),
            Some(AirNeed::OutOfReach { .. }) | None => (None, None, None),
        };
        NightSection {
            day: self.inputs.state.day,
            members: outlook.ensemble.members,
            seed: outlook.ensemble.seed,
            saturation_mg_l: outlook.saturation.mg_l(),
            dawn_oxygen_mg_l: self.estimate(outlook.low_mg_l),
            dawn_hour: self.estimate(outlook.low_hour),
            hours_under_5_mg_l: self.estimate(outlook.hours_under_5),
            hours_under_3_mg_l: self.estimate(outlook.hours_under_3),
            air_needed_l_min: always,
            air_needed_night_l_min: by_night,
            pump_pressure_kpa: pressure,
            co2_dusk_mg_l: self.estimate(outlook.carbon_dioxide_dusk_mg_l),
            co2_dawn_mg_l: self.estimate(outlook.carbon_dioxide_dawn_mg_l),
            ph_dawn: self.estimate(outlook.ph_dawn),
            ph_dusk: self.estimate(outlook.ph_dusk),
            power_cut_h: self
                .outage
                .and_then(|outage| outage.from_dusk.low)
                .map(Duration::hours),
        }
    }

    /// The flow section.
    pub(super) fn flow(&self) -> FlowSection {
        FlowSection {
            turnover_per_h: self.estimate(self.movement.turnover_per_h),
            velocity_cm_s: self.estimate(self.movement.velocity_cm_s),
            film_mm: self.estimate(self.movement.film_mm),
            uptake_pct: self.estimate(self.movement.uptake_pct),
        }
    }

    /// The light section.
    pub(super) fn light(&self) -> LightSection {
        LightSection {
            par_mid_umol: self.estimate(self.lighting.par_mid_umol),
            daily_mol_m2: self.estimate(self.lighting.daily_mol_m2),
            break_even_hours: self.lighting.break_even.and_then(|even| even.typical),
        }
    }

    /// The animals section.
    pub(super) fn animals(&self) -> AnimalsSection {
        let examples = self.examples().into_iter();
        AnimalsSection {
            mass_g: self.inputs.animal_mass().g(),
            carried_by_oxygen_g: self.estimate(self.carried.by_oxygen_g),
            carried_by_nitrogen_g: self.carried.by_nitrogen.g(),
            examples: examples
                .map(|example| AnimalCount {
                    name: &example.animal.name,
                    animal: example.animal,
                    count: example.count,
                })
                .collect(),
            unfed: is_unfed(self.design),
        }
    }

    /// What the tank carries in animals of one kind alone.
    pub(super) fn examples(&self) -> Vec<Example> {
        let tank = self.design.vessel().brimful();
        self.carried.examples(self.inputs.water, tank)
    }

    /// The heat section.
    pub(super) fn heat(&self) -> HeatSection {
        let upkeep = &self.upkeep;
        HeatSection {
            heater_w: upkeep.heater.watts(),
            kwh_per_year: upkeep.kwh_per_year(),
            cost_per_year: upkeep.cost_per_year,
            evaporation_l_per_week: upkeep.evaporation_l_per_week,
            cools_4_k_h: upkeep.cools_in.map(Duration::hours),
        }
    }

    /// A pH of the day that lies outside the model.
    pub(super) fn ph_outside(&self) -> Option<f64> {
        let hours = self.outlook.hours.iter();
        let mut ends = hours.flat_map(|hour| [hour.ph.low, hour.ph.high]);
        ends.find(|ph| !MODEL_PH.contains(ph))
    }

    /// A band as the ensemble gives it, or the typical number alone.
    fn estimate(&self, band: Band) -> Estimate {
        Estimate::of(band, self.outlook.ensemble.members)
    }
}

/// pH when the lamp goes off on the day of the typical ammonia peak, the highest of a
/// day: what ammonia is judged at.
pub(super) fn ph_at_dusk(design: &Design, options: Options) -> Result<Band, IntegrationError> {
    let inputs =
        TypicalStart::of(design, options.days, OnDay::FlushPeak)?.inputs(OnDay::FlushPeak)?;
    let night = outlook(&inputs, &Rates::of(&inputs), members(options))?;
    Ok(night.ph_dusk)
}

/// The members of a night.
fn members(options: Options) -> Ensemble {
    Ensemble {
        members: options.members.min(MOST_MEMBERS),
        seed: options.seed,
    }
}

/// The dawn oxygen asked for.
pub fn dawn_limit(design: &Design) -> Concentration {
    let goal = design.draft().goal.dawn_oxygen;
    goal.unwrap_or(Concentration::from_mg_l(DAWN_WATCH_MG_L))
}

/// What the plants under water ask of light: the fast growers where there are any.
fn light_need(design: &Design, inputs: &NightInputs) -> Option<LightNeed> {
    let parameters = Parameters::<Band>::of(design).central();
    let needs = light_needs(&Inputs::of(design), &parameters);
    let planted = |mass: Mass| mass > Mass::ZERO;
    if planted(inputs.state.fast) {
        Some(needs.fast)
    } else {
        planted(inputs.state.slow).then_some(needs.slow)
    }
}

/// Whether animals are planned that are given nothing that would come back as ammonia.
fn is_unfed(design: &Design) -> bool {
    let (feed, stock) = (design.draft().feed, &design.draft().animals);
    let kept = stock.iter().any(|stock| stock.count > 0);
    kept && (feed.mass_per_day <= Mass::ZERO || feed.protein <= Share::ZERO)
}

/// The kind of animal that stands where none is planned.
const EXAMPLE_ANIMAL: &str = "small_fish";

/// The animals that a tank is asked to carry: more of those planned, or small fish, fed,
/// where none is.
fn diet(design: &Design) -> Diet {
    let (feed, stock) = (design.draft().feed, &design.draft().animals);
    let count: f64 = stock.iter().map(|stock| f64::from(stock.count)).sum();
    let masses = stock.iter().map(Stock::mass);
    let mass = masses.fold(Mass::ZERO, |sum, mass| sum + mass);
    if mass > Mass::ZERO {
        return Diet {
            body: mass * (1.0 / count),
            feed_per_d: Share::from_fraction(feed.mass_per_day / mass),
            protein: feed.protein,
        };
    }
    let example = catalogue::find::<Animal>(EXAMPLE_ANIMAL).ok();
    Diet {
        body: example.map_or(Mass::ZERO, |animal| Mass::from_g(animal.mass_g.typical)),
        feed_per_d: example.map_or(Share::ZERO, |animal| {
            Share::from_percent(animal.feed_pct_per_d.typical)
        }),
        protein: if feed.protein > Share::ZERO {
            feed.protein
        } else {
            usual::PROTEIN
        },
    }
}
