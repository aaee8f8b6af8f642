//! Cautions: the hazards of the work that a text orders, and of materials.

use std::collections::BTreeSet;

use super::lifting::Lift;
use super::range;
use crate::catalogue::{CapCaution, LISTS_AS_OF, SoilKind};
use crate::design::{BagSize, Design, FlowDevice};
use crate::finding::{Action, Caution};
use crate::source::Source;
use crate::units::show::significant;
use crate::units::{Mass, Volume};

/// Total mass from which the wording points at the floor itself: an editorial trigger.
const HEAVY_KG: f64 = 200.0;

/// A common bucket: practice.
const BUCKET: Volume = Volume::from_litres(10.0);

/// What goes on in every new tank.
const BUILDING: [Action; 4] = [
    Action::LayBed,
    Action::Fill,
    Action::RunDevice,
    Action::Plant,
];
/// What a judged bed is judged for.
const BED_WORK: [Action; 2] = [Action::AddSand, Action::OpenBed];

/// A hazard of some work, in the order in which it is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Hazard {
    Floor,
    Electricity,
    Panes,
    Dust,
    Sulfide,
    Infection,
    Lifting,
    WaterChange,
    Conditioner,
    Scald,
    Nitrate,
    Release,
}

/// The hazards of a piece of work.
const fn hazards(action: Action) -> &'static [Hazard] {
    use Hazard::{
        Conditioner, Dust, Electricity, Floor, Infection, Lifting, Nitrate, Panes, Release, Scald,
        Sulfide, WaterChange,
    };
    match action {
        Action::LayBed => &[Floor, Dust, Sulfide, Infection, Lifting],
        Action::AddSand => &[Electricity, Dust, Infection, Lifting],
        Action::OpenBed => &[Electricity, Sulfide, Infection],
        Action::Fill => &[Floor, Electricity, Panes, Lifting],
        Action::RunDevice => &[Electricity],
        Action::ChangeWater => &[
            Floor,
            Electricity,
            Infection,
            Lifting,
            WaterChange,
            Conditioner,
        ],
        Action::Condition => &[Conditioner],
        Action::ReachIn => &[Electricity, Infection],
        Action::Plant => &[Electricity, Infection, Release],
        Action::MoveAnimals => &[Release],
        Action::DrawHot => &[Scald],
        Action::DoseNitrate => &[Nitrate],
    }
}

/// The cautions that go with what a text orders, each once.
pub fn cautions_for(design: &Design, actions: impl IntoIterator<Item = Action>) -> Vec<Caution> {
    let total_kg = super::weight(design).total_kg;
    let hazards: BTreeSet<Hazard> = actions.into_iter().flat_map(hazards).copied().collect();
    let caution = |hazard| match hazard {
        Hazard::Floor => Some(floor(design, total_kg)),
        Hazard::Electricity => Some(electricity(design)),
        Hazard::Panes => design.vessel().long_pane().map(|_| panes()),
        Hazard::Dust => Some(silica()),
        Hazard::Sulfide => Some(sulfide()),
        Hazard::Infection => Some(infection(design)),
        Hazard::Lifting => Some(lifting(design)),
        Hazard::WaterChange => Some(water_change(design)),
        Hazard::Conditioner => Some(conditioner()),
        Hazard::Scald => Some(scald()),
        Hazard::Nitrate => Some(nitrate()),
        Hazard::Release => Some(release()),
    };
    hazards.into_iter().filter_map(caution).collect()
}

/// Every caution of a plan whose calendar and remedies order these actions.
pub(super) fn cautions(design: &Design, ordered: impl IntoIterator<Item = Action>) -> Vec<Caution> {
    let mut cautions = cautions_for(design, BUILDING.into_iter().chain(ordered));
    cautions.extend(of_design(design));
    cautions
}

/// The cautions of a start-up run whose calendar and remedies order these actions.
pub(super) fn cautions_of_start(
    design: &Design,
    ordered: impl IntoIterator<Item = Action>,
) -> Vec<Caution> {
    let mut cautions = cautions_for(design, ordered);
    cautions.extend(of_design(design));
    cautions
}

/// The cautions of a bed that is judged.
pub(super) fn cautions_of_bed(
    design: &Design,
    ordered: impl IntoIterator<Item = Action>,
) -> Vec<Caution> {
    let mut cautions = cautions_for(design, BED_WORK.into_iter().chain(ordered));
    cautions.extend(of_design(design));
    cautions
}

/// Cautions on materials, and on inputs outside what was measured.
fn of_design(design: &Design) -> Vec<Caution> {
    let mut cautions = Vec::from_iter(cap_material(design));
    cautions.extend(stones(design));
    cautions.extend(range::cautions(design));
    cautions
}

/// The cautions of a night by itself.
pub(super) fn cautions_at_night(
    design: &Design,
    ordered: impl IntoIterator<Item = Action>,
) -> Vec<Caution> {
    let mut cautions = cautions_for(design, [Action::RunDevice].into_iter().chain(ordered));
    cautions.extend(range::cautions_of_night(design));
    cautions
}

fn floor(design: &Design, total_kg: f64) -> Caution {
    let heavy = if total_kg > HEAVY_KG {
        "At this weight ask"
    } else {
        "For upper, old or damaged floors ask"
    };
    let total = design.draft().units.mass(Mass::from_kg(total_kg));
    Caution {
        code: "hazard.floor",
        says: format!(
            "Floor: {total} is an estimate, not a floor check. {heavy} a licensed structural engineer; follow local codes. Never move a filled tank."
        ),
        source: Some(Source::IrcR301_5),
    }
}

fn panes() -> Caution {
    Caution {
        code: "hazard.panes",
        says: "Panes: the figures hold for flawless panes and are no design; ask a glass engineer."
            .to_owned(),
        source: Some(Source::AstmE3401),
    }
}

fn electricity(design: &Design) -> Caution {
    let device = match design.draft().air.device {
        FlowDevice::None | FlowDevice::Pump => "",
        FlowDevice::AirStone | FlowDevice::SpongeFilter => {
            " Hang an air pump above the water or fit a check valve."
        }
    };
    Caution {
        code: "hazard.electricity",
        says: format!(
            "Electricity: an RCD of at most 30 mA (in North America a GFCI), drip loops; unplug everything before reaching in.{device}"
        ),
        source: Some(Source::Iec60364_4_41),
    }
}

fn silica() -> Caution {
    Caution {
        code: "hazard.silica_dust",
        says: "Dust: wet sand before pouring and rinse it outdoors; dry silica dust harms lungs."
            .to_owned(),
        source: Some(Source::Osha1926_1153),
    }
}

fn sulfide() -> Caution {
    Caution {
        code: "hazard.hydrogen_sulfide",
        says: "Hydrogen sulfide: a black bed that smells of bad eggs kills fish when stirred; small patches only, air on, animals out.".to_owned(),
        source: Some(Source::Smith1976),
    }
}

fn infection(design: &Design) -> Caution {
    let bag = match design.draft().soil.material.kind {
        SoilKind::Organic => "open potting mix away from your face and damp it (Legionella); ",
        SoilKind::Mineral => "",
    };
    Caution {
        code: "hazard.infection",
        says: format!(
            "Infection: {bag}wash hands and forearms after work, cover cuts, never start a siphon by mouth."
        ),
        source: Some(Source::WhsQueensland),
    }
}

/// The heaviest bag of sand on offer against what the lifting equation recommends.
fn lifting(design: &Design) -> Caution {
    let units = design.draft().units;
    let limit = Lift::bag_to_stand().recommended_limit();
    let bags = design.draft().cap.bags.iter().map(|bag| match bag.size {
        BagSize::Mass(mass) => mass,
        BagSize::Volume(_) => Mass::ZERO,
    });
    let heaviest = bags.reduce(Mass::max).filter(|bag| *bag > limit);
    let bag = heaviest.map_or_else(String::new, |bag| {
        format!(
            "a {} bag is {} times that; ",
            units.mass(bag),
            significant(bag / limit, 2)
        )
    });
    Caution {
        code: "hazard.lifting",
        says: format!(
            "Lifting: from floor to stand about {} is a load for one healthy adult; {bag}split or share heavier ones.",
            units.mass(limit)
        ),
        source: Some(Source::Niosh94_110),
    }
}

/// Common practice, no source: what hangs dry burns out or breaks, and a bucket is heavy.
fn water_change(design: &Design) -> Caution {
    let bucket = design.draft().units.volume(BUCKET);
    let weight = design.draft().units.mass(Mass::from_kg(BUCKET.litres()));
    Caution {
        code: "hazard.water_change",
        says: format!(
            "Water change: switch heater, filter and lamp off before the level falls, and on again once they are under water; {bucket} in a bucket are {weight}, so carry less or use a hose; stop the flow before you walk away, and dry the floor at once."
        ),
        source: None,
    }
}

/// Common practice, no source: sulfites that bind chlorine bind oxygen too.
fn conditioner() -> Caution {
    Caution {
        code: "hazard.conditioner",
        says: "Conditioner: dose it by its label, never more, with air running: too much takes oxygen out of the water; keep it from children.".to_owned(),
        source: None,
    }
}

/// Common practice, no source.
fn scald() -> Caution {
    Caution {
        code: "hazard.scald",
        says: "Hot tap: it scalds; run the cold water first. Water that stood in hot pipes may carry copper, which shrimp and snails bear badly: let it run for a minute.".to_owned(),
        source: None,
    }
}

/// Common practice, no source.
fn nitrate() -> Caution {
    Caution {
        code: "hazard.potassium_nitrate",
        says: "Potassium nitrate: an oxidiser that feeds fire; keep it dry, labelled, from heat, fuel and food, and locked away from children; some countries restrict its sale and keeping: ask which rules hold where you live; the shop may ask what it is for.".to_owned(),
        source: None,
    }
}

fn release() -> Caution {
    Caution {
        code: "hazard.restricted_plants",
        says: format!(
            "Release: never put plants, animals or their water into the wild. The restricted lists used are as of {LISTS_AS_OF}, as far as read; ask your own authority."
        ),
        source: Some(Source::Eu1143_2014),
    }
}

fn stones(design: &Design) -> Option<Caution> {
    let stone = design
        .draft()
        .hardscape
        .iter()
        .find(|stone| stone.material.raises_hardness)?;
    Some(Caution {
        code: "hazard.hard_stone",
        says: format!(
            "Stone: {} dissolves and raises hardness and pH.",
            stone.material.label
        ),
        source: None,
    })
}

fn cap_material(design: &Design) -> Option<Caution> {
    let (code, says, source) = match design.draft().cap.material.caution? {
        CapCaution::Slag => (
            "hazard.slag",
            "Slag: common in the trade; whether metals leach from it in a tank is not settled. Rinse it well.",
            Some(Source::Stettler1983),
        ),
        CapCaution::DirtAndLime => (
            "hazard.dirt_and_lime",
            "Dirt and lime: rinse until clear; test a spoonful with vinegar, fizzing means that it raises hardness.",
            None,
        ),
        CapCaution::RaisesHardness => (
            "hazard.raises_hardness",
            "Lime: this cap dissolves and raises hardness and alkalinity.",
            None,
        ),
    };
    Some(Caution {
        code,
        says: says.to_owned(),
        source,
    })
}
