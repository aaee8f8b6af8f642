//! A design as the start-up model sees it.

use super::by_reading::ChangesByReading;
use super::events::{events, feed};
use super::floating::reference_growth_per_d;
use super::inputs::{DailyFeed, Inputs, PlantedMass};
use crate::design::{Design, DutyHours, FloaterTraits, LightLevel, Planted, WaterChange};
use crate::parameters::{Floating, Parameters};
use crate::plants::light;
use crate::source::Band;
use crate::state::movement::{Movement, Stirred};
use crate::units::constants::HOURS_PER_DAY;
use crate::units::{Analyte, Area, Concentration, Length, PhotonFlux, Share};

/// Oxygen in the water, mean of the day: judgement, a planted tank at 24 C.
const OXYGEN_MG_L: f64 = 7.0;
/// Growth of shoots in the air over that of the same under water, less one (judgement).
const AIR_GAIN: f64 = 1.0;
/// Largest dry mass of floaters within which crowding is computed, g/m2 of surface.
const LEAST_CAPACITY_G_M2: f64 = 100.0;
const MOST_CAPACITY_G_M2: f64 = 1000.0;

impl Inputs {
    /// The inputs of a design.
    pub fn of(design: &Design) -> Self {
        Self::changed(design, design.draft().water.change)
    }

    /// The inputs of a design whose water is changed by readings in place of its own regular
    /// changes.
    pub fn by_reading(design: &Design, rule: ChangesByReading) -> Self {
        Self {
            changes_by_reading: Some(rule),
            ..Self::changed(design, None)
        }
    }

    /// The inputs of a design whose water is changed regularly in another way, or not at all.
    pub fn changed(design: &Design, changes: Option<WaterChange>) -> Self {
        let draft = design.draft();
        let stirred = Stirred::of(design);
        Self {
            floor: design.bed().area(),
            water: design.water(),
            soil_depth: design.bed().soil.mean,
            cap_depth: design.bed().cap.mean,
            planting: PlantedMass::of(design.planted()),
            light: PhotonFlux::from_umol_m2_s(surface_light(design).typical),
            light_hours: draft.light.hours,
            temperature: draft.water.temperature,
            ph: draft.water.ph,
            oxygen: Concentration::from_mg_l(OXYGEN_MG_L),
            leaf_film: Length::from_mm(Movement::of(&stirred).film_mm.typical),
            through_sponge: stirred.through_sponge() * running(design),
            feed: if draft.animals.is_empty() {
                feed(draft.feed)
            } else {
                DailyFeed::default()
            },
            floaters_above: Some(draft.harvest.floaters_above),
            stems_above_g_m2: Some(draft.harvest.stems_above.g_m2()),
            events: events(design, changes),
            changes_by_reading: None,
        }
    }
}

/// Share of the day in which the device runs.
fn running(design: &Design) -> f64 {
    let draft = design.draft();
    let lit = draft.light.hours / HOURS_PER_DAY;
    match draft.air.hours {
        DutyHours::Always => 1.0,
        DutyHours::Night => 1.0 - lit,
        DutyHours::Day => lit,
    }
}

impl PlantedMass {
    /// Plants by group, floaters that draw nitrogen from the air apart.
    pub fn of(planted: &Planted) -> Self {
        Self {
            cover: Share::ZERO,
            floating: planted.feeding_floaters.dry,
            fixing: planted.floating.dry - planted.feeding_floaters.dry,
            fast: planted.fast.dry,
            slow: planted.slow.dry,
        }
    }
}

/// Light at the water surface with its band, umol/(m2 s).
///
/// # Example
/// ```
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
/// [light]
/// par = "60 umol/m2/s"
/// "#;
/// let design = lentic::spec::parse(text)?;
/// assert_eq!(lentic::startup::surface_light(&design), lentic::source::Band::exact(60.0));
/// # Ok::<(), lentic::Faults>(())
/// ```
pub fn surface_light(design: &Design) -> Band {
    match design.draft().light.level {
        LightLevel::Par(par) => Band::exact(par.umol_m2_s()),
        LightLevel::Class(class) => light::from_words(class),
        LightLevel::Lumens { flux, height } => light::from_lumens(flux, height, design.surface()),
    }
}

impl Parameters<Band> {
    /// The reference's numbers with those of the design's soil, cap, tap water and
    /// floaters in their place.
    pub fn of(design: &Design) -> Self {
        Self::planted(design, design.planted())
    }

    /// The same with another planting in the design's place.
    pub fn planted(design: &Design, planted: &Planted) -> Self {
        let mut parameters = Self::reference();
        let draft = design.draft();
        let (soil, cap) = (&draft.soil, &draft.cap);
        let own = &mut parameters.soil;
        own.dry_bulk_density = soil.dry_bulk_kg_m3();
        own.porosity = soil.porosity();
        own.total_nitrogen = soil.total_n_g_kg();
        own.ammonium_kd = soil.ammonium_kd_l_kg();
        own.mineral_nitrogen = soil.mineral_n_g_kg();
        own.fast_share = soil.material.fast_n_share;
        own.slow_share = soil.material.slow_n_share;
        own.stable_mineralisation = soil.material.stable_n_per_year;
        own.pore_phosphate = soil.material.pore_phosphate_mg_p_l;
        own.phosphate_kd = soil.material.phosphate_kd_l_kg;
        own.reducible_phosphorus = soil.material.reducible_p_g_kg;
        let left = own
            .map(&mut |band| band.typical)
            .left_after_soaking(soil.soaked);
        own.mineral_nitrogen = own.mineral_nitrogen.scaled(left.ammonium);
        own.pore_phosphate = own.pore_phosphate.scaled(left.phosphate);
        parameters.cap.porosity = cap.porosity();
        parameters.cap.effective_grain = cap.d10_mm();
        parameters.tap.ammonia = nitrogen(Analyte::Ammonia, draft.water.ammonia);
        parameters.tap.nitrite = nitrogen(Analyte::Nitrite, draft.water.nitrite);
        parameters.tap.nitrate = nitrogen(Analyte::Nitrate, draft.water.nitrate);
        if let Some(phosphate) = draft.water.phosphate {
            parameters.tap.phosphate = nitrogen(Analyte::Phosphate, phosphate);
        }
        let by_surface = design.surface() / design.bed().area();
        let floating = &mut parameters.floating;
        let closed = closed_layer_g_m2(planted, design.surface(), floating.closed_layer);
        floating.closed_layer = closed.scaled(by_surface);
        if let Some(species) = planted.floater_traits {
            floating.growth = growth_of(&species, floating);
            floating.capacity = capacity_of(&species);
        }
        floating.capacity = floating.capacity.scaled(by_surface);
        parameters.lamp.level = lamp_level(surface_light(design));
        parameters.fast.carbon_factor = Band::exact(1.0 + planted.emergent.fraction() * AIR_GAIN);
        parameters
    }
}

/// The light's band over its typical value.
fn lamp_level(light: Band) -> Band {
    if light.typical > 0.0 {
        light.scaled(1.0 / light.typical)
    } else {
        Band::exact(1.0)
    }
}

/// Gross growth at the reference light of floaters with a growth of their own.
fn growth_of(species: &FloaterTraits, numbers: &Floating<Band>) -> Band {
    let growth = |net: f64| {
        reference_growth_per_d(net, numbers.loss.typical, numbers.daily_light_half.typical)
    };
    let net = species.growth_per_d;
    Band::new(growth(net.low), growth(net.typical), growth(net.high))
}

/// Their largest mass, within what the crowding law was made for.
fn capacity_of(species: &FloaterTraits) -> Band {
    let within = |mass: f64| mass.clamp(LEAST_CAPACITY_G_M2, MOST_CAPACITY_G_M2);
    let most = species.most_g_m2;
    Band::new(within(most.low), within(most.typical), within(most.high))
}

fn nitrogen(analyte: Analyte, own_scale: Concentration) -> Band {
    Band::exact(analyte.element(own_scale).mg_l())
}

/// The reference's band moved to the typical value of the floaters planted.
fn closed_layer_g_m2(planted: &Planted, surface: Area, reference: Band) -> Band {
    match planted.closed_surface_g_m2(surface) {
        Some(own) => reference.scaled(own / reference.typical),
        None => reference,
    }
}
