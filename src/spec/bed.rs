//! `[soil]`, `[cap]` and `[[hardscape]]`: what lies on the bottom.

use super::section::SpecSection;
use crate::design::key::{KeyEntry, Value, unread};
use crate::design::usual;
use crate::design::{
    BagSize, CapGrading, CapLayer, PlacedStone, PricedBag, SoilLayer, SoilProperties, Violation,
};
use crate::geometry::LayerDepth;
use crate::source::Band;
use crate::units::error::{QuantityError, QuantityProblem};
use crate::units::show::significant;
use crate::units::{Length, Mass, Quantity, Volume};

/// Reads `[soil]`.
pub(super) fn soil(section: &SpecSection<'_>) -> Option<SoilLayer> {
    let material = section.required("material", Value::read);
    let depth = depth(section, usual::SOIL_DEPTH_MM);
    section.plain();
    let bags = bags(section);
    section.child("properties").plain();
    Some(SoilLayer {
        material: material?,
        depth: depth?,
        soaked: 0,
        bags: bags?,
        properties: SoilProperties::default(),
    })
}

/// Reads `[cap]`.
pub(super) fn cap(section: &SpecSection<'_>) -> Option<CapLayer> {
    let material = section.required("material", Value::read);
    let depth = depth(section, usual::CAP_DEPTH_MM);
    section.plain();
    let bags = bags(section);
    section.child("grading").plain();
    section.child("properties").plain();
    Some(CapLayer {
        material: material?,
        depth: depth?,
        bags: bags?,
        grading: CapGrading::default(),
        dry_bulk_density: None,
        porosity: None,
    })
}

/// One depth, or depths at the edges; the usual one where it is said to be unknown.
fn depth(section: &SpecSection<'_>, usual_mm: Band) -> Option<LayerDepth> {
    if section.is_unknown("depth") {
        let typical = Length::from_mm(usual_mm.typical);
        section.stand_in(
            "depth",
            &format!("{} mm", significant(usual_mm.typical, 2)),
            "unknown: judgement, the middle of what is usual",
            Violation::new(
                "unknown",
                "all but lentic check reckons with a depth",
                "measure it through the glass, or push a thin ruler down to the bottom at the front and at the back; lentic check FILE goes on without it",
            ),
        );
        return Some(LayerDepth::Uniform(typical));
    }
    if section.has_table("depth") {
        return sloped(section);
    }
    section
        .required("depth", Value::read)
        .map(LayerDepth::Uniform)
}

fn sloped(section: &SpecSection<'_>) -> Option<LayerDepth> {
    let edges = section.child("depth");
    let across = edge_pair(&edges, "back", "front");
    let along = edge_pair(&edges, "left", "right");
    match (across, along) {
        (Pair::Absent, Pair::Absent) => {
            section.report(
                "depth",
                Violation::new(
                    "no edge is given",
                    "a sloped layer has back and front, left and right, or all four",
                    "for example depth = { back = \"40 mm\", front = \"20 mm\" }",
                ),
            );
            None
        }
        (Pair::Both(back, front), Pair::Absent) => Some(LayerDepth::BackToFront { back, front }),
        (Pair::Absent, Pair::Both(left, right)) => Some(LayerDepth::LeftToRight { left, right }),
        (Pair::Both(back, front), Pair::Both(left, right)) => {
            four_edges(&edges, [back, front, left, right])
        }
        _ => None,
    }
}

/// What is known of two opposite edges.
enum Pair {
    Absent,
    Faulty,
    Both(Length, Length),
}

fn edge_pair(edges: &SpecSection<'_>, first: &str, second: &str) -> Pair {
    if !edges.has(first) && !edges.has(second) {
        return Pair::Absent;
    }
    let read = |name: &str, other: &str| {
        if edges.has(name) {
            return edges.optional(name, Value::read);
        }
        edges.missing(name, format!("{other} needs {name}"));
        None
    };
    match (read(first, second), read(second, first)) {
        (Some(first), Some(second)) => Pair::Both(first, second),
        _ => Pair::Faulty,
    }
}

/// Four edge depths, which lie on one plane only if both pairs have the same sum.
fn four_edges(edges: &SpecSection<'_>, depths: [Length; 4]) -> Option<LayerDepth> {
    /// Rounding that a rule in millimetres allows.
    const SLACK_MM: f64 = 0.1;
    let [back, front, left, right] = depths;
    let (across, along) = (back + front, left + right);
    if (across - along).mm().abs() > SLACK_MM {
        let sum = |length: Length| format!("{} mm", crate::units::show::fixed(length.mm(), 1));
        edges.report(
            "left",
            Violation::new(
                format!("left and right add up to {}", sum(along)),
                "on a flat slope back + front equals left + right, to 0.1 mm",
                "give only back and front, or only left and right, or mend one of the four",
            )
            .beside(
                edges.span("back"),
                format!("back and front add up to {}", sum(across)),
            ),
        );
        return None;
    }
    Some(LayerDepth::AllWalls {
        back,
        front,
        left,
        right,
    })
}

fn bags(section: &SpecSection<'_>) -> Option<Vec<PricedBag>> {
    section.list("bags", |bag| {
        let size = bag.required("size", bag_size);
        let price = bag.optional("price", Value::read);
        let (label, size) = size?;
        Some(PricedBag { label, size, price })
    })
}

/// A volume or a mass, with the text that says it.
fn bag_size(entry: &KeyEntry<'_>) -> Result<(String, BagSize), Violation> {
    let text = entry.text()?;
    let (size, content) = match (Volume::parse(text), Mass::parse(text)) {
        (Ok(volume), _) => (BagSize::Volume(volume), volume.litres()),
        (_, Ok(mass)) => (BagSize::Mass(mass), mass.kg()),
        (Err(error), _) => return Err(no_bag_size(entry, &error)),
    };
    entry.within_limits(content, |bound| bound.parse().ok())?;
    Ok((text.trim().replace('_', " "), size))
}

fn no_bag_size(entry: &KeyEntry<'_>, error: &QuantityError) -> Violation {
    const EXAMPLES: &str =
        "for example size = \"10 L\", \"8 dry_qt\", \"1 ft3\", \"10 kg\" or \"50 lb\"";
    let unread = unread(entry, error);
    let (found, help) = match &error.problem {
        QuantityProblem::UnknownUnit { unit, .. } => (
            format!("\"{}\" is no unit of volume or mass", unit.escape_debug()),
            EXAMPLES.to_owned(),
        ),
        QuantityProblem::NoUnit { .. } => (unread.found, EXAMPLES.to_owned()),
        _ => (unread.found, unread.help),
    };
    Violation::new(found, "size is a volume or a mass", help)
}

/// Reads `[[hardscape]]`.
pub(super) fn hardscape(root: &SpecSection<'_>) -> Option<Vec<PlacedStone>> {
    root.list("hardscape", |stone| {
        let material = stone.required("material", Value::read);
        let mass = stone.required("mass", Value::read);
        Some(PlacedStone {
            material: material?,
            mass: mass?,
        })
    })
}
