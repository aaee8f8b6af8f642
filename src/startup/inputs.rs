//! What the start-up model needs to know of a tank.

use super::by_reading::ChangesByReading;
use crate::plants::shade::GROWTH_HOURS;
use crate::units::constants::{HOURS_PER_DAY, L_PER_M3};
use crate::units::{
    Area, Concentration, Flow, Length, Mass, PhotonFlux, Share, Temperature, Volume,
};

/// A tank on the day it is filled, and what is done to it later.
///
/// The soil's and the tap water's numbers are among the
/// [`Parameters`](super::Parameters), because they are uncertain.
#[derive(Debug, Clone, PartialEq)]
pub struct Inputs {
    /// Area of the bed. Where the surface is wider or narrower, the floaters'
    /// closed layer and capacity have to be given per area of the bed.
    pub floor: Area,
    /// Free water above the bed.
    pub water: Volume,
    /// Mean depth of the soil.
    pub soil_depth: Length,
    /// Mean depth of the cap; none is zero.
    pub cap_depth: Length,
    /// Plants on day 0.
    pub planting: PlantedMass,
    /// Light at the water surface.
    pub light: PhotonFlux,
    /// Hours of light a day.
    pub light_hours: f64,
    /// Water temperature.
    pub temperature: Temperature,
    /// pH of the water.
    pub ph: f64,
    /// Dissolved oxygen, mean of the day.
    pub oxygen: Concentration,
    /// Film of still water on the leaves.
    pub leaf_film: Length,
    /// Water that goes through a sponge filter, mean of the day.
    pub through_sponge: Flow,
    /// Feed given from day 0.
    pub feed: DailyFeed,
    /// Cover to which floaters are thinned; none are taken without it.
    pub floaters_above: Option<Share>,
    /// Dry mass to which fast submerged plants are cut back, g/m2 of floor, if they were not
    /// planted thicker; none are cut without it.
    pub stems_above_g_m2: Option<f64>,
    /// What is done later, in any order.
    pub events: Vec<ModelEvent>,
    /// By what readings water is changed beside that, if by any.
    pub changes_by_reading: Option<ChangesByReading>,
}

impl Inputs {
    /// The same tank before its animals: what it is fed with them is left out.
    #[must_use]
    pub fn before_animals(mut self) -> Self {
        let fed = |event: &ModelEvent| matches!(event.kind, ModelEventKind::Fed(_));
        self.events.retain(|event| !fed(event));
        self
    }

    /// The day from which animals are fed; none where none are.
    pub fn fed_from(&self) -> Option<f64> {
        let events = self.events.iter();
        let fed = events.filter(|event| matches!(event.kind, ModelEventKind::Fed(_)));
        fed.map(|event| event.day).reduce(f64::min)
    }

    /// The cube on which the model was compared with an independent program: a floor of
    /// 493 cm2, 25 mm of soil under 25 mm of sand, 16 cm of water at 25 C and pH 7.2, ten
    /// hours a day of 100 umol/(m2 s), stirred, and no plants.
    pub fn reference() -> Self {
        let floor = Area::from_cm2(493.0);
        Self {
            floor,
            water: floor * Length::from_cm(16.0),
            soil_depth: Length::from_mm(25.0),
            cap_depth: Length::from_mm(25.0),
            planting: PlantedMass::default(),
            light: PhotonFlux::from_umol_m2_s(100.0),
            light_hours: 10.0,
            temperature: Temperature::from_celsius(25.0),
            ph: 7.2,
            oxygen: Concentration::from_mg_l(7.0),
            leaf_film: Length::ZERO,
            through_sponge: Flow::ZERO,
            feed: DailyFeed::default(),
            floaters_above: None,
            stems_above_g_m2: None,
            events: Vec::new(),
            changes_by_reading: None,
        }
    }
}

/// Plants by group, dry mass in the whole tank.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlantedMass {
    /// Floaters given by the share of the surface they cover.
    pub cover: Share,
    /// Floaters given by mass; adds to the cover.
    pub floating: Mass,
    /// Floaters that draw their nitrogen from the air: they shade, and stay as they are.
    pub fixing: Mass,
    /// Fast submerged plants.
    pub fast: Mass,
    /// Slow submerged plants.
    pub slow: Mass,
}

/// Feed for the animals.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DailyFeed {
    /// Dry food a day.
    pub mass_per_day: Mass,
    /// Protein in it.
    pub protein: Share,
}

/// Something done on a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModelEvent {
    /// Days since filling.
    pub day: f64,
    /// What is done.
    pub kind: ModelEventKind,
}

/// What can be done to a running tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ModelEventKind {
    /// Share of the water replaced by tap water.
    WaterChange(Share),
    /// Sand spread over the cap.
    CapAdded(Length),
    /// Share of the bed stirred up.
    Disturbed(Share),
    /// Plants put in.
    PlantsAdded(PlantedMass),
    /// Plants taken out, as far as there are any.
    PlantsRemoved(PlantedMass),
    /// Feed given from now on.
    Fed(DailyFeed),
    /// Floaters thinned back to this cover from now on.
    Thinned(Share),
    /// Hours of light a day from now on.
    LightHours(f64),
    /// Water temperature from now on.
    Temperature(Temperature),
    /// Shares of the nitrifying bacteria killed or carried off.
    BacteriaLost {
        /// Of those that oxidise ammonia.
        ammonia: Share,
        /// Of those that oxidise nitrite.
        nitrite: Share,
    },
    /// Nitrogen in the water is found to be this much.
    Measured(Dissolved),
    /// Nutrients put into the water.
    Dosed(NutrientDose),
}

/// Nutrients put into the water at once.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct NutrientDose {
    /// Nitrogen, as nitrate.
    pub nitrate_n: Mass,
    /// Phosphorus, as phosphate.
    pub phosphorus: Mass,
}

/// Nitrogen in the water as measured; what was not stays as it was.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Dissolved {
    /// Ammonia nitrogen.
    pub ammonia: Option<Concentration>,
    /// Nitrogen of nitrite.
    pub nitrite_n: Option<Concentration>,
    /// Nitrogen of nitrate.
    pub nitrate_n: Option<Concentration>,
}

/// The same inputs as the rates use them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Conditions {
    /// Water volume over floor area, m.
    pub(super) depth_m: f64,
    pub(super) floor_m2: f64,
    pub(super) soil_depth_m: f64,
    pub(super) cap_depth_m: f64,
    pub(super) light_umol_m2_s: f64,
    pub(super) light_hours: f64,
    pub(super) temperature_c: f64,
    pub(super) ph: f64,
    pub(super) oxygen_mg_l: f64,
    pub(super) leaf_film: Length,
    pub(super) sponge_m_d: f64,
    pub(super) feed_g_m2_d: f64,
    pub(super) feed_protein: f64,
    pub(super) floaters_above: Option<f64>,
    pub(super) stems_above_g_m2: Option<f64>,
    /// Fast submerged plants put in so far.
    pub(super) stems_planted_g_m2: f64,
    /// Plants put in so far that carry bacteria.
    pub(super) planted_g_m2: f64,
    /// Floaters that draw their nitrogen from the air.
    pub(super) fixing_g_m2: f64,
}

impl Conditions {
    pub(super) fn new(inputs: &Inputs) -> Self {
        let unfed = Self {
            depth_m: (inputs.water / inputs.floor).m(),
            floor_m2: inputs.floor.m2(),
            soil_depth_m: inputs.soil_depth.m(),
            cap_depth_m: inputs.cap_depth.m(),
            light_umol_m2_s: inputs.light.umol_m2_s(),
            light_hours: inputs.light_hours,
            temperature_c: inputs.temperature.celsius(),
            ph: inputs.ph,
            oxygen_mg_l: inputs.oxygen.mg_l(),
            leaf_film: inputs.leaf_film,
            sponge_m_d: m3_per_day(inputs.through_sponge) / inputs.floor.m2(),
            feed_g_m2_d: 0.0,
            feed_protein: 0.0,
            floaters_above: inputs.floaters_above.map(Share::fraction),
            stems_above_g_m2: inputs.stems_above_g_m2,
            stems_planted_g_m2: 0.0,
            planted_g_m2: 0.0,
            fixing_g_m2: 0.0,
        };
        unfed.fed(inputs.feed)
    }

    /// The same tank with other feed.
    #[must_use]
    pub(super) fn fed(self, feed: DailyFeed) -> Self {
        Self {
            feed_g_m2_d: feed.mass_per_day.g() / self.floor_m2,
            feed_protein: feed.protein.fraction(),
            ..self
        }
    }

    /// Light of a day at the surface, mol/m2.
    pub(super) fn daily_light_mol_m2(&self) -> f64 {
        daily_light_mol_m2(self.light_umol_m2_s, self.light_hours)
    }

    /// Hours of light over twelve.
    pub(super) fn day_share(&self) -> f64 {
        self.light_hours / GROWTH_HOURS
    }
}

/// Cubic metres a day of a flow.
fn m3_per_day(flow: Flow) -> f64 {
    flow.l_h() * HOURS_PER_DAY / L_PER_M3
}

/// Light of a day from its level and hours, mol/m2.
///
/// ```text
/// DLI = PAR h 3600 / 1e6
/// ```
pub(super) fn daily_light_mol_m2(light_umol_m2_s: f64, hours: f64) -> f64 {
    light_umol_m2_s * hours * 0.0036
}
