//! Where a draft holds what its shape, its slopes, its lists and its lamp may not have.

use super::prepared::Needs;
use crate::design::{
    Air, Draft, EventKind, FlowDevice, LightLevel, PlacedStone, Planting, Stock, WaterChange,
};
use crate::geometry::{Dimension, LayerDepth, Shape};
use crate::units::size::Size;
use crate::units::{Flow, Length, LuminousFlux, Share};

/// The size of a box.
pub(super) fn size(draft: &mut Draft) -> Result<&mut Size, Needs> {
    match &mut draft.tank.shape {
        Shape::Box(size) => Ok(size),
        _ => Err("the shape box"),
    }
}

/// The sides of a regular polygon.
pub(super) fn sides(draft: &mut Draft) -> Result<&mut u32, Needs> {
    match &mut draft.tank.shape {
        Shape::RegularPolygon { sides, .. } => Ok(sides),
        _ => Err("the shape regular_polygon"),
    }
}

/// A dimension of the vessel.
pub(super) fn dimension(draft: &mut Draft, dimension: Dimension) -> Result<&mut Length, Needs> {
    held_by(&mut draft.tank.shape, dimension).ok_or("a shape with that dimension")
}

/// Where a shape holds a dimension.
fn held_by(shape: &mut Shape, dimension: Dimension) -> Option<&mut Length> {
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

/// An edge of a sloped layer.
#[derive(Debug, Clone, Copy)]
pub(super) enum LayerEdge {
    Back,
    Front,
    Left,
    Right,
}

/// The depth of a layer at an edge.
pub(super) fn edge(depth: &mut LayerDepth, edge: LayerEdge) -> Result<&mut Length, Needs> {
    use LayerDepth::{AllWalls, BackToFront, LeftToRight};
    match (edge, depth) {
        (LayerEdge::Back, BackToFront { back, .. } | AllWalls { back, .. }) => Ok(back),
        (LayerEdge::Front, BackToFront { front, .. } | AllWalls { front, .. }) => Ok(front),
        (LayerEdge::Left, LeftToRight { left, .. } | AllWalls { left, .. }) => Ok(left),
        (LayerEdge::Right, LeftToRight { right, .. } | AllWalls { right, .. }) => Ok(right),
        _ => Err("a depth given at that edge"),
    }
}

/// A stone of the list.
pub(super) fn stone(draft: &mut Draft, item: usize) -> Result<&mut PlacedStone, Needs> {
    draft.hardscape.get_mut(item).ok_or("that stone")
}

/// A plant of the list.
pub(super) fn planting(draft: &mut Draft, item: usize) -> Result<&mut Planting, Needs> {
    draft.plants.get_mut(item).ok_or("that plant")
}

/// An animal of the list.
pub(super) fn stock(draft: &mut Draft, item: usize) -> Result<&mut Stock, Needs> {
    draft.animals.get_mut(item).ok_or("that animal")
}

/// The day of an event.
pub(super) fn day(draft: &mut Draft, item: usize) -> Result<&mut f64, Needs> {
    let event = draft.events.get_mut(item).ok_or("that event")?;
    Ok(&mut event.day)
}

/// How deep an event spreads sand.
pub(super) fn cap_added(draft: &mut Draft, item: usize) -> Result<&mut Length, Needs> {
    match done(draft, item)? {
        EventKind::CapAdded(depth) => Ok(depth),
        _ => Err(ANOTHER_EVENT),
    }
}

/// How much water an event replaces.
pub(super) fn water_change(draft: &mut Draft, item: usize) -> Result<&mut Share, Needs> {
    match done(draft, item)? {
        EventKind::WaterChange(share) => Ok(share),
        _ => Err(ANOTHER_EVENT),
    }
}

/// How much of the bed an event stirs.
pub(super) fn disturbed(draft: &mut Draft, item: usize) -> Result<&mut Share, Needs> {
    match done(draft, item)? {
        EventKind::Disturbed(share) => Ok(share),
        _ => Err(ANOTHER_EVENT),
    }
}

const ANOTHER_EVENT: Needs = "an event that does this";

fn done(draft: &mut Draft, item: usize) -> Result<&mut EventKind, Needs> {
    let event = draft.events.get_mut(item).ok_or("that event")?;
    Ok(&mut event.kind)
}

/// The regular water changes.
pub(super) fn change(draft: &mut Draft) -> Result<&mut WaterChange, Needs> {
    draft.water.change.as_mut().ok_or("[water.change]")
}

/// The label's lumens of a lamp that is given by them.
pub(super) fn lumens(draft: &mut Draft) -> Result<&mut LuminousFlux, Needs> {
    match &mut draft.light.level {
        LightLevel::Lumens { flux, .. } => Ok(flux),
        _ => Err(ANOTHER_LAMP),
    }
}

/// The height of a lamp that is given by its lumens.
pub(super) fn lamp_height(draft: &mut Draft) -> Result<&mut Length, Needs> {
    match &mut draft.light.level {
        LightLevel::Lumens { height, .. } => Ok(height),
        _ => Err(ANOTHER_LAMP),
    }
}

const ANOTHER_LAMP: Needs = "a lamp in lumens at a height";

/// Air or flow, where there is a device.
pub(super) fn moved(draft: &mut Draft) -> Result<&mut Air, Needs> {
    match draft.air.device {
        FlowDevice::None => Err("a device"),
        _ => Ok(&mut draft.air),
    }
}

/// Another device, or none; one that is new needs a flow.
pub(super) fn change_device(draft: &mut Draft, device: FlowDevice) -> Result<(), Needs> {
    let air = &mut draft.air;
    if device != FlowDevice::None && air.flow == Flow::ZERO {
        return Err("a device with its flow");
    }
    air.device = device;
    if device == FlowDevice::None {
        air.flow = Flow::ZERO;
        air.depth = Length::ZERO;
    }
    Ok(())
}
