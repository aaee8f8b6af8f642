//! Where each knob turns.

use super::{Knob, KnobKind as K, Value as V};
use crate::design::{
    Air, CapLayer, Device, Draft, EventKind, LightLevel, SoilLayer, Violation, WaterChange,
};
use crate::geometry::{Dimension, LayerDepth, Shape};
use crate::units::{Flow, Length, LuminousFlux};

/// Puts a value where a knob turns.
pub(super) fn turn(knob: Knob, draft: &mut Draft, value: V) -> Result<(), Violation> {
    let turned = tank(knob, draft, value)
        .or_else(|| soil(knob, &mut draft.soil, value))
        .or_else(|| cap(knob, &mut draft.cap, value))
        .or_else(|| living(knob, draft, value))
        .or_else(|| water(knob, draft, value))
        .or_else(|| lamp_and_air(knob, draft, value))
        .or_else(|| surroundings(knob, draft, value));
    turned.unwrap_or_else(|| {
        Err(Violation {
            key: knob.path(),
            other: None,
            found: "a value of another kind".to_owned(),
            rule: "a knob takes the kind of value that its key takes".to_owned(),
            help: "give the value as a spec would".to_owned(),
        })
    })
}

/// Nothing where this is not where the knob turns.
type Turned = Option<Result<(), Violation>>;

/// Puts a value in a place.
#[expect(clippy::unnecessary_wraps, reason = "what an arm of each match gives")]
fn put<T>(place: &mut T, value: T) -> Turned {
    *place = value;
    Some(Ok(()))
}

/// That a draft has nothing where a knob would turn.
#[expect(clippy::unnecessary_wraps, reason = "what an arm of each match gives")]
fn nothing(knob: Knob, needs: &str) -> Turned {
    let path = knob.path();
    Some(Err(Violation {
        found: "there is nothing to vary".to_owned(),
        rule: format!("to vary {path} the tank needs {needs}"),
        help: "add it to the spec, or vary something else".to_owned(),
        other: None,
        key: path,
    }))
}

fn tank(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    let tank = &mut draft.tank;
    match (knob.kind, value) {
        (K::TankSize, V::Size(size)) => match &mut tank.shape {
            Shape::Box(place) => put(place, size),
            _ => nothing(knob, "the shape box"),
        },
        (K::TankSides, V::Count(count)) => match &mut tank.shape {
            Shape::RegularPolygon { sides, .. } => put(sides, count),
            _ => nothing(knob, "the shape regular_polygon"),
        },
        (kind, V::Length(length)) if kind.dimension().is_some() => {
            let place = kind
                .dimension()
                .and_then(|dimension| measure(&mut tank.shape, dimension));
            match place {
                Some(place) => put(place, length),
                None => nothing(knob, "a shape with that dimension"),
            }
        }
        (K::TankOutside, V::Flag(flag)) => put(&mut tank.outside, flag),
        (K::TankWall, V::Length(length)) => put(&mut tank.wall, length),
        (K::TankBottom, V::Length(length)) => put(&mut tank.bottom, length),
        (K::TankMaterial, V::Material(material)) => put(&mut tank.material, material),
        (K::TankFreeboard, V::Length(length)) => put(&mut tank.freeboard, length),
        (K::TankLid, V::Flag(flag)) => put(&mut tank.lid, flag),
        (K::TankRim, V::Rim(rim)) => put(&mut tank.rim, rim),
        (K::TankStand, V::Mass(mass)) => put(&mut tank.stand, mass),
        _ => None,
    }
}

/// Where a shape holds a dimension.
fn measure(shape: &mut Shape, dimension: Dimension) -> Option<&mut Length> {
    use Dimension as D;
    Some(match (shape, dimension) {
        (Shape::Box(size), D::Length) => &mut size.length,
        (Shape::Box(size), D::Width) => &mut size.width,
        (Shape::Box(size), D::Height) => &mut size.height,
        (
            Shape::Cylinder { height, .. }
            | Shape::BowFront { height, .. }
            | Shape::RegularPolygon { height, .. }
            | Shape::QuarterCylinder { height, .. }
            | Shape::HalfCylinder { height, .. }
            | Shape::CutCorner { height, .. }
            | Shape::Trapezoid { height, .. },
            D::Height,
        ) => height,
        (
            Shape::Cylinder { diameter, .. }
            | Shape::HalfCylinder { diameter, .. }
            | Shape::Bowl { diameter, .. },
            D::Diameter,
        ) => diameter,
        (Shape::BowFront { length, .. } | Shape::CutCorner { length, .. }, D::Length) => length,
        (Shape::BowFront { width_end, .. }, D::WidthEnd) => width_end,
        (Shape::BowFront { width_middle, .. }, D::WidthMiddle) => width_middle,
        (Shape::RegularPolygon { side, .. }, D::Side) => side,
        (Shape::QuarterCylinder { radius, .. }, D::Radius) => radius,
        (Shape::CutCorner { width, .. } | Shape::Trapezoid { width, .. }, D::Width) => width,
        (Shape::CutCorner { cut_length, .. }, D::CutLength) => cut_length,
        (Shape::CutCorner { cut_width, .. }, D::CutWidth) => cut_width,
        (Shape::Trapezoid { front, .. }, D::Front) => front,
        (Shape::Trapezoid { back, .. }, D::Back) => back,
        (Shape::Bowl { base, .. }, D::Base) => base,
        (Shape::Bowl { mouth, .. }, D::Mouth) => mouth,
        _ => return None,
    })
}

fn soil(knob: Knob, soil: &mut SoilLayer, value: V) -> Turned {
    let own = &mut soil.properties;
    match (knob.kind, value) {
        (K::SoilMaterial, V::Soil(row)) => put(&mut soil.material, row),
        (K::SoilDepth, V::Length(length)) => put(&mut soil.depth, LayerDepth::Uniform(length)),
        (K::SoilSoaked, V::Count(count)) => put(&mut soil.soaked, count),
        (K::SoilDryBulkDensity, V::Density(density)) => {
            put(&mut own.dry_bulk_density, Some(density))
        }
        (K::SoilPorosity, V::Share(share)) => put(&mut own.porosity, Some(share)),
        (K::SoilTotalNitrogen, V::Content(content)) => put(&mut own.total_nitrogen, Some(content)),
        (K::SoilMineralNitrogen, V::Content(content)) => {
            put(&mut own.mineral_nitrogen, Some(content))
        }
        (K::SoilOrganicMatter, V::Share(share)) => put(&mut own.organic_matter, Some(share)),
        (K::SoilAmmoniumKd, V::Sorption(sorption)) => put(&mut own.ammonium_kd, Some(sorption)),
        (
            K::SoilDepthBack | K::SoilDepthFront | K::SoilDepthLeft | K::SoilDepthRight,
            V::Length(length),
        ) => edge(knob, &mut soil.depth, length),
        _ => None,
    }
}

fn cap(knob: Knob, cap: &mut CapLayer, value: V) -> Turned {
    match (knob.kind, value) {
        (K::CapMaterial, V::Cap(row)) => put(&mut cap.material, row),
        (K::CapDepth, V::Length(length)) => put(&mut cap.depth, LayerDepth::Uniform(length)),
        (K::CapD10, V::Length(length)) => put(&mut cap.grading.d10, Some(length)),
        (K::CapD15, V::Length(length)) => put(&mut cap.grading.d15, Some(length)),
        (K::CapD50, V::Length(length)) => put(&mut cap.grading.d50, Some(length)),
        (K::CapD85, V::Length(length)) => put(&mut cap.grading.d85, Some(length)),
        (K::CapDryBulkDensity, V::Density(density)) => {
            put(&mut cap.dry_bulk_density, Some(density))
        }
        (K::CapPorosity, V::Share(share)) => put(&mut cap.porosity, Some(share)),
        (
            K::CapDepthBack | K::CapDepthFront | K::CapDepthLeft | K::CapDepthRight,
            V::Length(length),
        ) => edge(knob, &mut cap.depth, length),
        _ => None,
    }
}

/// One edge of a sloped layer.
fn edge(knob: Knob, depth: &mut LayerDepth, length: Length) -> Turned {
    let place = match (knob.kind, depth) {
        (
            K::SoilDepthBack | K::CapDepthBack,
            LayerDepth::BackToFront { back, .. } | LayerDepth::AllWalls { back, .. },
        ) => back,
        (
            K::SoilDepthFront | K::CapDepthFront,
            LayerDepth::BackToFront { front, .. } | LayerDepth::AllWalls { front, .. },
        ) => front,
        (
            K::SoilDepthLeft | K::CapDepthLeft,
            LayerDepth::LeftToRight { left, .. } | LayerDepth::AllWalls { left, .. },
        ) => left,
        (
            K::SoilDepthRight | K::CapDepthRight,
            LayerDepth::LeftToRight { right, .. } | LayerDepth::AllWalls { right, .. },
        ) => right,
        _ => return nothing(knob, "a depth given at that edge"),
    };
    put(place, length)
}

fn living(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    match knob.kind {
        K::StoneMaterial | K::StoneMass => {
            let Some(stone) = draft.hardscape.get_mut(knob.item) else {
                return nothing(knob, "that stone");
            };
            match value {
                V::Stone(row) => put(&mut stone.material, row),
                V::Mass(mass) => put(&mut stone.mass, mass),
                _ => None,
            }
        }
        K::PlantName | K::PlantAmount | K::PlantEmergent | K::PlantPrice => {
            let Some(planting) = draft.plants.get_mut(knob.item) else {
                return nothing(knob, "that plant");
            };
            match value {
                V::Plant(row) => put(&mut planting.plant, row),
                V::Amount(amount) => put(&mut planting.amount, amount),
                V::Share(share) => put(&mut planting.emergent, share),
                V::Number(price) => put(&mut planting.price, Some(price)),
                _ => None,
            }
        }
        K::AnimalName | K::AnimalCount | K::AnimalFromDay => {
            let Some(stock) = draft.animals.get_mut(knob.item) else {
                return nothing(knob, "that animal");
            };
            match value {
                V::Animal(row) => put(&mut stock.animal, row),
                V::Count(count) => put(&mut stock.count, count),
                V::Number(day) => put(&mut stock.from_day, day),
                _ => None,
            }
        }
        K::EventDay | K::EventCapAdded | K::EventWaterChange | K::EventDisturbed => {
            event(knob, draft, value)
        }
        _ => None,
    }
}

fn event(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    let Some(event) = draft.events.get_mut(knob.item) else {
        return nothing(knob, "that event");
    };
    match (knob.kind, value, &mut event.kind) {
        (K::EventDay, V::Number(day), _) => put(&mut event.day, day),
        (K::EventCapAdded, V::Length(length), EventKind::CapAdded(place)) => put(place, length),
        (K::EventWaterChange, V::Share(share), EventKind::WaterChange(place))
        | (K::EventDisturbed, V::Share(share), EventKind::Disturbed(place)) => put(place, share),
        _ => nothing(knob, "an event that does this"),
    }
}

fn water(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    let water = &mut draft.water;
    match (knob.kind, value) {
        (K::WaterTemperature, V::Temperature(kept)) => put(&mut water.temperature, kept),
        (K::WaterPh, V::Number(ph)) => put(&mut water.ph, ph),
        (K::WaterAlkalinity, V::Alkalinity(alkalinity)) => put(&mut water.alkalinity, alkalinity),
        (K::WaterHardness, V::Hardness(hardness)) => put(&mut water.hardness, hardness),
        (K::WaterAmmonia, V::Concentration(ammonia)) => put(&mut water.ammonia, ammonia),
        (K::WaterNitrite, V::Concentration(nitrite)) => put(&mut water.nitrite, nitrite),
        (K::WaterNitrate, V::Concentration(nitrate)) => put(&mut water.nitrate, nitrate),
        (K::WaterPhosphate, V::Concentration(phosphate)) => {
            put(&mut water.phosphate, Some(phosphate))
        }
        (K::ChangeShare | K::ChangeEvery | K::ChangeFrom | K::ChangeUntil, _) => {
            match &mut water.change {
                Some(change) => regular_change(knob.kind, change, value),
                None => nothing(knob, "[water.change]"),
            }
        }
        _ => None,
    }
}

fn regular_change(kind: K, change: &mut WaterChange, value: V) -> Turned {
    match (kind, value) {
        (K::ChangeShare, V::Share(share)) => put(&mut change.share, share),
        (K::ChangeEvery, V::Duration(every)) => put(&mut change.every, every),
        (K::ChangeFrom, V::Number(day)) => put(&mut change.from, day),
        (K::ChangeUntil, V::Number(day)) => put(&mut change.until, day),
        _ => None,
    }
}

fn lamp_and_air(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    let (light, air) = (&mut draft.light, &mut draft.air);
    match (knob.kind, value, &mut light.level) {
        (K::LightPar, V::PhotonFlux(par), level) => put(level, LightLevel::Par(par)),
        (K::LightClass, V::LightClass(class), level) => put(level, LightLevel::Class(class)),
        (K::LightLumens, V::Number(lumens), LightLevel::Lumens { flux, .. }) => {
            put(flux, LuminousFlux::from_lumens(lumens))
        }
        (K::LightHeight, V::Length(length), LightLevel::Lumens { height, .. }) => {
            put(height, length)
        }
        (K::LightLumens | K::LightHeight, _, _) => nothing(knob, "a lamp in lumens at a height"),
        (K::LightHours, V::Number(hours), _) => put(&mut light.hours, hours),
        (K::AirDevice, V::Device(device), _) => moved(knob, air, device),
        (K::AirFlow | K::AirDepth | K::AirHours, _, _) if air.device == Device::None => {
            nothing(knob, "a device")
        }
        (K::AirFlow, V::Flow(flow), _) => put(&mut air.flow, flow),
        (K::AirDepth, V::Length(depth), _) => put(&mut air.depth, depth),
        (K::AirHours, V::DutyHours(hours), _) => put(&mut air.hours, hours),
        _ => None,
    }
}

/// Another device, or none; one that is new needs a flow.
fn moved(knob: Knob, air: &mut Air, device: Device) -> Turned {
    if device != Device::None && air.flow == Flow::ZERO {
        return nothing(knob, "a device with its flow");
    }
    air.device = device;
    if device == Device::None {
        air.flow = Flow::ZERO;
        air.depth = Length::ZERO;
    }
    Some(Ok(()))
}

fn surroundings(knob: Knob, draft: &mut Draft, value: V) -> Turned {
    let (room, goal) = (&mut draft.room, &mut draft.goal);
    match (knob.kind, value) {
        (K::FeedMass, V::Mass(mass)) => put(&mut draft.feed.mass_per_day, mass),
        (K::FeedProtein, V::Share(share)) => put(&mut draft.feed.protein, share),
        (K::RoomTemperature, V::Temperature(air)) => put(&mut room.temperature, air),
        (K::RoomHumidity, V::Share(share)) => put(&mut room.humidity, share),
        (K::RoomAltitude, V::Length(length)) => put(&mut room.altitude, length),
        (K::RoomTariff, V::Number(price)) => put(&mut room.tariff, Some(price)),
        (K::HarvestFloatersAbove, V::Share(share)) => put(&mut draft.harvest.floaters_above, share),
        (K::GoalProbability, V::Share(share)) => put(&mut goal.probability, share),
        (K::GoalAmmonia, V::Concentration(limit)) => put(&mut goal.ammonia, Some(limit)),
        (K::GoalNitrite, V::Concentration(limit)) => put(&mut goal.nitrite, Some(limit)),
        (K::GoalNitrate, V::Concentration(limit)) => put(&mut goal.nitrate, Some(limit)),
        (K::GoalDawnOxygen, V::Concentration(limit)) => put(&mut goal.dawn_oxygen, Some(limit)),
        _ => None,
    }
}
