//! Cap and soil: what they are of, how deep and how level they lie, soaking.

use super::{Lever, Now, Rung, number, out, text};
use crate::geometry::LayerDepth;
use crate::spec::Edit;
use crate::units::{Length, UnitSystem};

/// The caps that a plan names where one is too coarse or too fine, the best known first.
const SOUND_CAPS: [&str; 3] = ["filter_sand", "grit_20_40", "aquarium_sand"];
/// Depths of a cap that are tried, mm, and in inches where the keeper measures in these.
const CAP_MM: [f64; 8] = [25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 75.0];
const CAP_IN: [f64; 8] = [1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 3.0];
/// Depths of soil that are tried, none so thin that it feeds for a short time only.
const SOIL_MM: [f64; 7] = [10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0];
const SOIL_IN: [f64; 7] = [0.5, 0.75, 1.0, 1.25, 1.5, 1.75, 2.0];
/// Depths nearer than this are alike, mm.
const ALIKE_MM: f64 = 0.5;
/// Rounds of soaking that are tried.
const ROUNDS: [u32; 3] = [1, 2, 3];

/// Caps that hold most soils; a keeper's own figures belong to the sand that goes.
pub(super) fn cap_materials(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let cap = &base.draft().cap;
    let mut own = Vec::new();
    if cap.grading != <_>::default() {
        own.push(out("cap.grading"));
    }
    if cap.dry_bulk_density.is_some() || cap.porosity.is_some() {
        own.push(out("cap.properties"));
    }
    if !cap.bags.is_empty() {
        own.push(out("cap.bags"));
    }
    let others = SOUND_CAPS.iter().zip([5.0, 5.1, 5.2]);
    others
        .filter(|(name, _)| **name != cap.material.name)
        .map(|(name, effort)| {
            let material = text("cap.material", name);
            let edits = std::iter::once(material).chain(own.clone());
            Rung::new(Lever::CapMaterial, effort, edits)
        })
        .collect()
}

/// The cap deeper or thinner, and level where it slopes.
pub(super) fn cap_depths(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let draft = base.draft();
    let depths = depths(draft.units, CAP_MM, CAP_IN);
    let depth = &draft.cap.depth;
    layers("cap", depth, depths, draft.units)
        .map(|layer| layer.rung(Lever::CapDepth))
        .collect()
}

/// Less soil, and level where it slopes.
pub(super) fn soil_depths(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let draft = base.draft();
    let depth = &draft.soil.depth;
    let least = depths(draft.units, SOIL_MM, SOIL_IN);
    let depths = least.filter(|depths| *depths <= depth.middle());
    layers("soil", depth, depths, draft.units)
        .map(|layer| layer.rung(Lever::SoilDepth))
        .collect()
}

/// More rounds of soaking.
pub(super) fn soakings(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let now = base.draft().soil.soaked;
    let more = ROUNDS.into_iter().filter(|rounds| *rounds > now);
    more.map(|rounds| {
        let effort = 2.0 + f64::from(rounds - now) / 2.0;
        Rung::new(Lever::Soaking, effort, [number("soil.soaked", rounds)])
    })
    .collect()
}

fn depths<const N: usize>(
    units: UnitSystem,
    mm: [f64; N],
    inches: [f64; N],
) -> impl Iterator<Item = Length> {
    let (depths, from): (_, fn(f64) -> Length) = match units {
        UnitSystem::Metric => (mm, Length::from_mm),
        UnitSystem::Us => (inches, Length::from_inches),
    };
    depths.into_iter().map(from)
}

/// A layer laid another way.
struct Layer {
    edits: Vec<Edit>,
    /// Its depth in the middle over the present one, as a logarithm.
    change: f64,
    /// Whether a slope is given up for it.
    is_levelled: bool,
}

impl Layer {
    fn rung(self, lever: Lever) -> Rung {
        let levelled = if self.is_levelled { 0.5 } else { 0.0 };
        let effort = 2.0 + self.change.abs() + levelled;
        Rung::new(lever, effort, self.edits).less(self.change < 0.0)
    }
}

/// A layer at each of some depths: even, and where it slopes with the same slope too.
fn layers(
    layer: &str,
    depth: &LayerDepth,
    depths: impl Iterator<Item = Length>,
    units: UnitSystem,
) -> impl Iterator<Item = Layer> {
    let (now, slopes) = (depth.middle(), depth.level().is_none());
    depths.flat_map(move |depths| {
        let change = (depths / now).ln();
        let is_new = slopes || (depths - now).mm().abs() > ALIKE_MM;
        let even = is_new.then(|| Layer {
            edits: vec![text(format!("{layer}.depth"), written(depths, units))],
            change,
            is_levelled: slopes,
        });
        let sloped = raised(layer, depth, depths - now, units).map(|edits| Layer {
            edits,
            change,
            is_levelled: false,
        });
        even.into_iter().chain(sloped)
    })
}

/// A sloping layer raised or lowered as a whole, where it stays a layer.
fn raised(layer: &str, depth: &LayerDepth, by: Length, units: UnitSystem) -> Option<Vec<Edit>> {
    let edges = match *depth {
        LayerDepth::Uniform(_) => return None,
        LayerDepth::BackToFront { back, front } => vec![("back", back), ("front", front)],
        LayerDepth::LeftToRight { left, right } => vec![("left", left), ("right", right)],
        LayerDepth::AllWalls {
            back,
            front,
            left,
            right,
        } => vec![
            ("back", back),
            ("front", front),
            ("left", left),
            ("right", right),
        ],
    };
    let stays = edges.iter().all(|(_, edge)| *edge + by > Length::ZERO);
    let moved = edges.into_iter().map(|(name, edge)| {
        let key = format!("{layer}.depth.{name}");
        text(key, written(edge + by, units))
    });
    (stays && by.mm().abs() > ALIKE_MM).then(|| moved.collect())
}

/// A depth as a spec has it.
fn written(depth: Length, units: UnitSystem) -> String {
    match units {
        UnitSystem::Metric => format!("{} mm", rounded(depth.mm(), 10.0)),
        UnitSystem::Us => format!("{} in", rounded(depth.inches(), 100.0)),
    }
}

fn rounded(value: f64, parts: f64) -> f64 {
    (value * parts).round() / parts
}
