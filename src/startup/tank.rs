//! A design as the start-up model sees it.

use super::inputs::{Event, EventKind, Feed, Inputs, Planting};
use crate::design::{self, Design, LightLevel, Planted, WaterChange};
use crate::parameters::Parameters;
use crate::plants::light;
use crate::source::Band;
use crate::substrate::soaking::left_after_soaking;
use crate::units::{Analyte, Area, Concentration, PhotonFlux, Share};

/// Oxygen in the water, mean of the day: judgement, a planted tank at 24 C.
const OXYGEN_MG_L: f64 = 7.0;

impl Inputs {
    /// The inputs of a design.
    pub fn of(design: &Design) -> Self {
        Self::with_changes(design, design.draft().water.change)
    }

    /// The inputs of a design with other regular water changes than its own.
    pub fn with_changes(design: &Design, changes: Option<WaterChange>) -> Self {
        let draft = design.draft();
        Self {
            floor: design.bed().area(),
            water: design.water(),
            soil_depth: design.bed().soil.mean,
            cap_depth: design.bed().cap.mean,
            planting: Planting::of(design.planted()),
            light: PhotonFlux::from_umol_m2_s(surface_light(design).typical),
            light_hours: draft.light.hours,
            temperature: draft.water.temperature,
            ph: draft.water.ph,
            oxygen: Concentration::from_mg_l(OXYGEN_MG_L),
            feed: if draft.animals.is_empty() {
                feed(draft.feed)
            } else {
                Feed::default()
            },
            floaters_above: Some(draft.harvest.floaters_above),
            events: events(design, changes),
        }
    }
}

impl Planting {
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

fn feed(feed: design::Feed) -> Feed {
    Feed {
        mass_per_day: feed.mass_per_day,
        protein: feed.protein,
    }
}

/// Regular water changes, what is fed once animals are in, and the events.
fn events(design: &Design, changes: Option<WaterChange>) -> Vec<Event> {
    let draft = design.draft();
    let mut events = Vec::new();
    if let Some(change) = changes {
        let kind = EventKind::WaterChange(change.share);
        events.extend(change.days().map(|day| Event { day, kind }));
    }
    let first_in = draft.animals.iter().map(|stock| stock.from_day);
    if let Some(day) = first_in.reduce(f64::min) {
        let kind = EventKind::Fed(feed(draft.feed));
        events.push(Event { day, kind });
    }
    let areas = design.areas();
    events.extend(draft.events.iter().map(|event| Event {
        day: event.day,
        kind: match &event.kind {
            design::EventKind::CapAdded(depth) => EventKind::CapAdded(*depth),
            design::EventKind::WaterChange(share) => EventKind::WaterChange(*share),
            design::EventKind::Disturbed(share) => EventKind::Disturbed(*share),
            design::EventKind::PlantsAdded(plants) => {
                EventKind::PlantsAdded(Planting::of(&Planted::of(plants, areas)))
            }
            design::EventKind::PlantsRemoved(plants) => {
                EventKind::PlantsRemoved(Planting::of(&Planted::of(plants, areas)))
            }
        },
    }));
    events
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
        parameters.soil.dry_bulk_density = soil.dry_bulk_kg_m3();
        parameters.soil.porosity = soil.porosity();
        parameters.soil.total_nitrogen = soil.total_n_g_kg();
        parameters.soil.ammonium_kd = soil.ammonium_kd_l_kg();
        parameters.soil.mineral_nitrogen = soil.mineral_n_g_kg().scaled(soaked(design));
        parameters.cap.porosity = cap.porosity();
        parameters.tap.ammonia = nitrogen(Analyte::Ammonia, draft.water.ammonia);
        parameters.tap.nitrite = nitrogen(Analyte::Nitrite, draft.water.nitrite);
        parameters.tap.nitrate = nitrogen(Analyte::Nitrate, draft.water.nitrate);
        if let Some(phosphate) = draft.water.phosphate {
            parameters.tap.phosphate = nitrogen(Analyte::Phosphate, phosphate);
        }
        let by_surface = design.surface() / design.bed().area();
        let closed = closed_layer_g_m2(planted, design.surface(), parameters.floating.closed_layer);
        parameters.floating.closed_layer = closed.scaled(by_surface);
        parameters.floating.capacity = parameters.floating.capacity.scaled(by_surface);
        parameters.lamp.level = lamp_level(surface_light(design));
        parameters.submerged.carbon_factor =
            carbon_factor(parameters.submerged.carbon_factor, planted.emergent);
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

/// Share of the mineral nitrogen that soaking and draining leave in the soil.
fn soaked(design: &Design) -> f64 {
    let soil = &design.draft().soil;
    left_after_soaking(
        soil.porosity().typical,
        soil.dry_bulk_kg_m3().typical,
        soil.ammonium_kd_l_kg().typical,
        soil.soaked,
    )
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

/// Leaves in the air have all the carbon dioxide they need.
fn carbon_factor(submerged: Band, emergent: Share) -> Band {
    let air = emergent.fraction();
    let mixed = |factor: f64| factor * (1.0 - air) + air;
    Band::new(
        mixed(submerged.low),
        mixed(submerged.typical),
        mixed(submerged.high),
    )
}
