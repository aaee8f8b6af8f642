//! Cautions: the hazards that go with building a tank, and limits of what was computed.

use super::lifting::Lift;
use super::range;
use crate::catalogue::{CapCaution, LISTS_AS_OF, SoilKind};
use crate::design::{BagSize, Design, Device};
use crate::finding::Caution;
use crate::source::Source;
use crate::units::Mass;
use crate::units::show::significant;

/// Total mass from which the wording points at the floor itself: an editorial trigger.
const HEAVY_KG: f64 = 200.0;

/// Every caution of a plan.
pub(super) fn cautions(design: &Design, total_kg: f64) -> Vec<Caution> {
    let mut cautions = vec![floor(design, total_kg), electricity(design)];
    if design.vessel().long_pane().is_some() {
        cautions.push(panes());
    }
    cautions.extend([silica(), sulfide(), infection(design), lifting(design)]);
    cautions.push(release());
    cautions.extend(cap_material(design));
    cautions.extend(stones(design));
    cautions.extend(range::cautions(design));
    cautions
}

/// The cautions of a night by itself.
pub(super) fn cautions_at_night(design: &Design) -> Vec<Caution> {
    let mut cautions = vec![electricity(design)];
    cautions.extend(range::cautions_of_night(design));
    cautions
}

/// Whether a caution is about work in the bed.
pub(super) fn is_of_bed_work(code: &str) -> bool {
    ![
        "hazard.floor",
        "hazard.panes",
        "hazard.lifting",
        "hazard.restricted_plants",
    ]
    .contains(&code)
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
        Device::None | Device::Pump => "",
        Device::AirStone | Device::SpongeFilter => {
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

fn release() -> Caution {
    Caution {
        code: "hazard.restricted_plants",
        says: format!(
            "Release: never put plants, animals or their water into the wild. The restricted lists used are as of {LISTS_AS_OF}; ask your own authority."
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
