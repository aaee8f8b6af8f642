//! What following the remedy of a finding makes of a tank, so that it can be tried.

use crate::catalogue::{self, Cap, Plant, PlantGroup, Portion};
use crate::design::{
    Air, Amount, CapGrading, Design, Draft, DutyHours, FlowDevice, LightLevel, Planting, Stock,
};
use crate::finding::{Code, Finding, Remedy};
use crate::geometry::LayerDepth;
use crate::night::inputs::air_depth;
use crate::plan::rule::{cap_deep, cap_thin};
use crate::plan::section::{NeededPlanting, PortionCount};
use crate::units::{Flow, Length, Mass, PhotonFlux, Share};

/// The cap that is named where one is too coarse or too fine.
const FINER_CAP: &str = "filter_sand";
/// A limit that something has to stay under is tried this much below it.
const UNDER: f64 = 0.98;

/// What remedies refer to beside their own quantity.
pub(in crate::plan) struct Advice<'a> {
    pub(in crate::plan) design: &'a Design,
    pub(in crate::plan) needed: &'a NeededPlanting,
}

/// The tank after a remedy; none where it names no amount, or nothing of a design.
pub(super) fn applied(advice: &Advice<'_>, finding: &Finding) -> Option<Draft> {
    let remedy = finding.remedy.as_ref()?;
    remedy.quantity?;
    let design = advice.design;
    let mut draft = design.draft().clone();
    match finding.code {
        Code::CapCoarse | Code::CapFine => another_cap(&mut draft)?,
        Code::CapThin => {
            let wanted = draft.units.up(cap_thin::limits(design).watch_under);
            raise(&mut draft.cap.depth, wanted);
        }
        Code::CapDeep => {
            let taken = cap_deep::verdict(design).take_off;
            let left = cap_deep::advised(design, taken);
            shift(&mut draft.cap.depth, left - design.bed().cap.mean);
        }
        Code::SoilDeep => {
            let most = Length::from_mm(remedy.quantity?);
            draft.soil.depth = LayerDepth::Uniform(most);
        }
        Code::CapLeak if remedy.unit == "L" => {
            let more = more_sand(design, remedy)?;
            shift(&mut draft.cap.depth, more);
        }
        Code::PlantsLoad | Code::PlantsMix | Code::CapLeak => add(&mut draft, advice.needed)?,
        Code::PlantsCover => {
            let most = finding.high? * UNDER;
            thin(design, &mut draft, Share::from_percent(most));
        }
        Code::LightLong | Code::LightShort => light(design, &mut draft, remedy)?,
        Code::AirDawn | Code::FlowSlack => air(design, &mut draft, remedy)?,
        Code::FlowStrong => draft.air.flow = Flow::from_l_min(remedy.quantity?),
        Code::AnimalsLoad => fewer(&mut draft, remedy.quantity?),
        Code::AnimalsEarly => later(&mut draft, remedy.quantity?),
        _ => return None,
    }
    Some(draft)
}

fn another_cap(draft: &mut Draft) -> Option<()> {
    let cap = &mut draft.cap;
    cap.material = catalogue::find::<Cap>(FINER_CAP).ok()?;
    cap.grading = CapGrading::default();
    cap.dry_bulk_density = None;
    cap.porosity = None;
    Some(())
}

/// Every edge of a layer brought to a depth at least.
fn raise(depth: &mut LayerDepth, least: Length) {
    each_edge(depth, |edge| edge.max(least));
}

/// Every edge of a layer moved by the same, not below the floor.
fn shift(depth: &mut LayerDepth, by: Length) {
    each_edge(depth, |edge| (edge + by).max(Length::ZERO));
}

fn each_edge(depth: &mut LayerDepth, moved: impl Fn(Length) -> Length) {
    *depth = match *depth {
        LayerDepth::Uniform(depth) => LayerDepth::Uniform(moved(depth)),
        LayerDepth::BackToFront { back, front } => LayerDepth::BackToFront {
            back: moved(back),
            front: moved(front),
        },
        LayerDepth::LeftToRight { left, right } => LayerDepth::LeftToRight {
            left: moved(left),
            right: moved(right),
        },
        LayerDepth::AllWalls { .. } => LayerDepth::Uniform(moved(depth.middle())),
    };
}

/// Sand by its volume, as a depth over the whole bed.
fn more_sand(design: &Design, remedy: &Remedy) -> Option<Length> {
    let litres = remedy.quantity?;
    Some(Length::from_m(litres / 1e3 / design.bed().area().m2()))
}

/// The portions that are asked for beside what is planted.
fn add(draft: &mut Draft, needed: &NeededPlanting) -> Option<()> {
    let added: Vec<Planting> = needed.portions.iter().filter_map(planting).collect();
    draft.plants.extend(added.clone());
    (!added.is_empty()).then_some(())
}

fn planting(asked: &PortionCount) -> Option<Planting> {
    let plant = catalogue::find::<Plant>(asked.name).ok()?;
    let count = f64::from(asked.count);
    let mut portions = Portion::ALL.iter();
    let portion = portions.find(|portion| portion.singular() == asked.portion);
    let amount = match portion {
        Some(portion) => Amount::Portions(count, *portion),
        None => Amount::Fresh(Mass::from_g(count)),
    };
    Some(Planting {
        plant,
        amount,
        emergent: Share::ZERO,
        price: None,
    })
}

/// Floaters thinned to a cover now, and whenever they pass it.
fn thin(design: &Design, draft: &mut Draft, cover: Share) {
    let factor = (cover / design.planted().cover).min(1.0);
    let floaters = draft.plants.iter_mut();
    for planting in floaters.filter(|planting| planting.plant.group == PlantGroup::Floater) {
        planting.amount = match planting.amount {
            Amount::Cover(share) => Amount::Cover(share * factor),
            Amount::Fresh(mass) => Amount::Fresh(mass * factor),
            Amount::Portions(count, portion) => Amount::Portions(count * factor, portion),
        };
    }
    draft.harvest.floaters_above = draft.harvest.floaters_above.min(cover);
}

fn light(design: &Design, draft: &mut Draft, remedy: &Remedy) -> Option<()> {
    let quantity = remedy.quantity?;
    match remedy.unit {
        "h" => draft.light.hours = quantity,
        "%" => thin(design, draft, Share::from_percent(quantity)),
        _ => draft.light.level = LightLevel::Par(PhotonFlux::from_umol_m2_s(quantity)),
    }
    Some(())
}

/// Air through what is there, or a stone where nothing is that makes bubbles.
fn air(design: &Design, draft: &mut Draft, remedy: &Remedy) -> Option<()> {
    let quantity = remedy.quantity?;
    if remedy.unit == "%" {
        thin(design, draft, Share::from_percent(quantity));
        return Some(());
    }
    let now = draft.air;
    let flow = Flow::from_l_min(quantity);
    draft.air = match now.device {
        _ if quantity <= 0.0 => Air {
            hours: DutyHours::Day,
            ..now
        },
        FlowDevice::AirStone | FlowDevice::SpongeFilter => Air { flow, ..now },
        FlowDevice::None | FlowDevice::Pump => Air {
            device: FlowDevice::AirStone,
            flow,
            depth: air_depth(design) * UNDER,
            hours: DutyHours::Always,
        },
    };
    Some(())
}

/// Animals of every kind in proportion, in whole numbers, up to a mass, and fed no more
/// than these.
fn fewer(draft: &mut Draft, most_g: f64) {
    let all = mass(draft);
    for stock in &mut draft.animals {
        let share = (most_g / all.g()).min(1.0);
        stock.count = (f64::from(stock.count) * share).floor() as u32;
    }
    let left = mass(draft);
    if all > Mass::ZERO {
        draft.feed.mass_per_day = draft.feed.mass_per_day * (left / all);
    }
}

fn mass(draft: &Draft) -> Mass {
    draft.animals.iter().map(Stock::mass).sum()
}

/// Every kind from a day on, or from its own first day where that is later.
fn later(draft: &mut Draft, day: f64) {
    for stock in &mut draft.animals {
        let first = day.max(f64::from(stock.animal.first_day));
        stock.from_day = stock.from_day.max(first);
    }
}
