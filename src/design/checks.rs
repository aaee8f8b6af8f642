//! The rules that tie several keys of a draft together.

use super::limits;
use super::measured::{hardscape, surface, water_level};
use super::planted::{Areas, Planted};
use super::{Amount, Design, Draft, EventKind, FillWater, FlowDevice, Planting, Violation};
use crate::catalogue::{PlantGroup, Portion};
use crate::geometry::{Bed, GeometryError, Measured, Vessel, Wall};
use crate::units::show::significant;
use crate::units::{Length, Share, Volume};

/// Least free water that counts as a tank: judgement, a glass of water.
const LEAST_WATER: Volume = Volume::from_litres(0.2);

/// Shares that add up to the whole may pass it by so little: conversions round.
const SHARE_ROUNDING: f64 = 1e-9;

impl Draft {
    /// Measures the tank and checks it.
    ///
    /// # Errors
    /// Every rule that the draft breaks.
    pub fn check(self) -> Result<Design, Vec<Violation>> {
        let draft = self;
        let mut violations = Vec::new();
        let measured = measure(&draft, &mut violations);
        check_plants(&draft, &mut violations);
        check_change(&draft, &mut violations);
        violations.extend(soft_water(&draft.water));
        violations.extend(hot_water(&draft.water));
        violations.extend(grading(&draft));
        if let (Some((vessel, bed)), true) = (&measured, violations.is_empty()) {
            violations.extend(limits::impossible(&limits::TankMeasures {
                draft: &draft,
                bed,
                areas: areas(&draft, vessel, bed),
                water: bed.water_below(water_level(&draft, vessel)) - hardscape(&draft),
                least_water: LEAST_WATER,
            }));
        }
        match measured {
            Some((vessel, bed)) if violations.is_empty() => {
                let planted = Planted::of(&draft.plants, areas(&draft, &vessel, &bed));
                Ok(Design::new(draft, vessel, bed, planted))
            }
            _ => Err(violations),
        }
    }
}

fn areas(draft: &Draft, vessel: &Vessel, bed: &Bed) -> Areas {
    Areas {
        surface: surface(draft, vessel, bed),
        floor: bed.area(),
    }
}

/// The vessel and the bed in it, where both can be.
fn measure(draft: &Draft, violations: &mut Vec<Violation>) -> Option<(Vessel, Bed)> {
    let vessel = match vessel(draft) {
        Ok(vessel) => vessel,
        Err(error) => {
            violations.push(of_geometry(&error));
            return None;
        }
    };
    if let Some(violation) = freeboard(draft, &vessel) {
        violations.push(violation);
    }
    if let Some(violation) = layers(draft, &vessel) {
        violations.push(violation);
        return None;
    }
    let bed = match Bed::new(&vessel, draft.soil.depth, draft.cap.depth) {
        Ok(bed) => bed,
        Err(error) => {
            violations.push(of_geometry(&error));
            return None;
        }
    };
    if violations.is_empty() {
        violations.extend(free_water(draft, &vessel, &bed));
        violations.extend(air_depth(draft, &vessel));
    }
    Some((vessel, bed))
}

fn vessel(draft: &Draft) -> Result<Vessel, GeometryError> {
    let tank = &draft.tank;
    let measured = if tank.outside {
        Measured::Outside
    } else {
        Measured::Inside
    };
    let wall = Wall {
        sides: tank.wall,
        bottom: tank.bottom,
    };
    Vessel::new(&tank.shape, measured, wall)
}

fn of_geometry(error: &GeometryError) -> Violation {
    let (at_fault, other) = error.dimensions();
    Violation {
        key: at_fault.key().to_owned(),
        other: other.map(|dimension| dimension.key().to_owned()),
        found: error.found(),
        rule: error.rule(),
        help: error.way_out(),
    }
}

fn freeboard(draft: &Draft, vessel: &Vessel) -> Option<Violation> {
    let (freeboard, height) = (draft.tank.freeboard, vessel.height());
    (freeboard >= height).then(|| Violation {
        key: "tank.freeboard".to_owned(),
        other: Some("tank.height".to_owned()),
        found: format!("the freeboard is {}", shown(draft, freeboard)),
        rule: format!(
            "a freeboard is less than the inner height of {}",
            shown(draft, height)
        ),
        help: "freeboard is the gap from the rim down to the water, often 2 to 4 cm".to_owned(),
    })
}

fn layers(draft: &Draft, vessel: &Vessel) -> Option<Violation> {
    let (soil, cap) = (draft.soil.depth.middle(), draft.cap.depth.middle());
    if soil <= Length::ZERO {
        return Some(Violation {
            key: "soil.depth".to_owned(),
            other: None,
            found: "there is no soil".to_owned(),
            rule: "the mean depth of the soil is over 0 mm".to_owned(),
            help: "a first tank takes about 25 mm".to_owned(),
        });
    }
    let height = vessel.height();
    (soil + cap >= height).then(|| Violation {
        key: "cap.depth".to_owned(),
        other: Some("tank.height".to_owned()),
        found: format!(
            "{} of soil and {} of cap",
            shown(draft, soil),
            shown(draft, cap)
        ),
        rule: format!(
            "soil and cap together stay under the inner height of {}",
            shown(draft, height)
        ),
        help: "make the layers thinner or the tank higher".to_owned(),
    })
}

fn free_water(draft: &Draft, vessel: &Vessel, bed: &Bed) -> Option<Violation> {
    let over_bed = bed.water_below(water_level(draft, vessel));
    let stones = hardscape(draft);
    if over_bed < LEAST_WATER {
        return Some(Violation {
            key: "cap.depth".to_owned(),
            other: Some("tank.freeboard".to_owned()),
            found: format!("{} of water over the bed", draft.units.volume(over_bed)),
            rule: format!("at least {} is left", draft.units.volume(LEAST_WATER)),
            help: "make the layers thinner, the freeboard smaller or the tank higher".to_owned(),
        });
    }
    (over_bed - stones < LEAST_WATER).then(|| Violation {
        key: "hardscape[0].mass".to_owned(),
        other: None,
        found: format!(
            "the stones displace {} of {} over the bed",
            draft.units.volume(stones),
            draft.units.volume(over_bed)
        ),
        rule: format!("at least {} is left", draft.units.volume(LEAST_WATER)),
        help: "take fewer stones, or check the unit of their mass".to_owned(),
    })
}

fn air_depth(draft: &Draft, vessel: &Vessel) -> Option<Violation> {
    let level = water_level(draft, vessel);
    (draft.air.device != FlowDevice::None && draft.air.depth > level).then(|| Violation {
        key: "air.depth".to_owned(),
        other: Some("tank.height".to_owned()),
        found: format!("the device hangs {} deep", shown(draft, draft.air.depth)),
        rule: format!(
            "a device hangs in the water, which stands {} high",
            shown(draft, level)
        ),
        help: "depth is measured from the water surface down".to_owned(),
    })
}

/// Sieve sizes rise with the share that is finer, the keeper's own beside the catalogue's.
fn grading(draft: &Draft) -> Option<Violation> {
    let cap = &draft.cap;
    let sizes = [
        ("d10", cap.d10_mm().typical),
        ("d15", cap.d15_mm().typical),
        ("d50", cap.d50_mm().typical),
        ("d85", cap.d85_mm().typical),
    ];
    let pair = sizes.windows(2).find(|pair| pair[0].1 > pair[1].1 + 1e-9)?;
    let [(finer, finer_mm), (coarser, coarser_mm)] = [pair[0], pair[1]];
    Some(Violation {
        key: "cap.grading".to_owned(),
        other: None,
        found: format!("{finer} is {finer_mm} mm and {coarser} {coarser_mm} mm"),
        rule: "sizes rise from d10 to d85".to_owned(),
        help: format!(
            "give d10, d50 and d85 together: the catalogue's {} fill in what is left out",
            cap.material.label
        ),
    })
}

fn check_plants(draft: &Draft, violations: &mut Vec<Violation>) {
    check_plantings("plants", &draft.plants, violations);
    for (index, event) in draft.events.iter().enumerate() {
        let (word, plantings) = match &event.kind {
            EventKind::PlantsAdded(plantings) => ("plants_added", plantings),
            EventKind::PlantsRemoved(plantings) => ("plants_removed", plantings),
            _ => continue,
        };
        check_plantings(&format!("events[{index}].{word}"), plantings, violations);
    }
}

fn check_plantings(list: &str, plantings: &[Planting], violations: &mut Vec<Violation>) {
    let mut cover = Share::ZERO;
    for (index, planting) in plantings.iter().enumerate() {
        let key = format!("{list}[{index}].amount");
        match planting.amount {
            Amount::Portions(_, portion) if !planting.plant.fresh_g.contains_key(&portion) => {
                let name = format!("{list}[{index}].name");
                violations.push(unknown_portion(key, name, planting, portion));
            }
            Amount::Cover(share) if planting.plant.group == PlantGroup::Floater => {
                cover = cover + share;
                if cover > Share::from_fraction(1.0 + SHARE_ROUNDING) {
                    violations.push(too_much_cover(key, cover));
                }
            }
            _ => {}
        }
    }
}

fn unknown_portion(key: String, name: String, planting: &Planting, portion: Portion) -> Violation {
    let known: Vec<&str> = planting
        .plant
        .fresh_g
        .keys()
        .map(|portion| portion.plural())
        .collect();
    let choices = if known.is_empty() {
        "a share (\"30 %\") or fresh grams (\"12 g\")".to_owned()
    } else {
        format!(
            "{}, a share (\"30 %\") or fresh grams (\"12 g\")",
            known.join(", ")
        )
    };
    Violation {
        key,
        other: Some(name),
        found: format!(
            "{} is not counted in {}",
            planting.plant.label,
            portion.plural()
        ),
        rule: "a portion has a known mass".to_owned(),
        help: format!("give {choices}"),
    }
}

fn too_much_cover(key: String, cover: Share) -> Violation {
    Violation {
        key,
        other: None,
        found: format!("floaters cover {:.0} % with this one", cover.percent()),
        rule: "floaters together cover at most 100 % of the surface".to_owned(),
        help: "give smaller shares; from 66 % plants below starve".to_owned(),
    }
}

fn check_change(draft: &Draft, violations: &mut Vec<Violation>) {
    let Some(change) = draft.water.change else {
        return;
    };
    if change.from > change.until {
        violations.push(Violation {
            key: "water.change".to_owned(),
            other: None,
            found: format!("from day {} until day {}", change.from, change.until),
            rule: "the first day is not after the last".to_owned(),
            help: "swap from and until".to_owned(),
        });
    }
}

/// Softened water is no harder than the tap's.
fn soft_water(water: &FillWater) -> Option<Violation> {
    let (soft, tap) = (water.softened.hardness.dgh(), water.hardness.dgh());
    (soft > tap).then(|| Violation {
        key: "water.softened.hardness".to_owned(),
        other: Some("water.hardness".to_owned()),
        found: format!(
            "softened water of {} dGH and tap water of {} dGH",
            significant(soft, 3),
            significant(tap, 3)
        ),
        rule: "softened water is no harder than the tap water".to_owned(),
        help: "swap the two, or measure both with one kit".to_owned(),
    })
}

/// The hot tap is warmer than the cold one.
fn hot_water(water: &FillWater) -> Option<Violation> {
    let (cold, hot) = (water.cold?, water.hot?);
    (hot <= cold).then(|| Violation {
        key: "water.hot".to_owned(),
        other: Some("water.cold".to_owned()),
        found: format!(
            "{} C from the hot tap and {} C from the cold one",
            significant(hot.celsius(), 3),
            significant(cold.celsius(), 3)
        ),
        rule: "the hot tap is warmer than the cold one".to_owned(),
        help: "measure each after it has run for a minute, or leave hot out".to_owned(),
    })
}

fn shown(draft: &Draft, length: Length) -> String {
    draft.units.dimension(length)
}
