//! The planting section: how the planting meets the load, and the smallest addition
//! that would.

use super::flush::{self, Flush};
use super::load::{Load, Met};
use super::options::Options;
use super::section::{NeededPlanting, PlantingSection, PortionCount};
use crate::catalogue::{self, Plant, PlantGroup, Portion};
use crate::design::{self, Amount, Design, Planted, Planting};
use crate::numerics::rodas::IntegrationError;
use crate::numerics::root::first_whole;
use crate::source::Band;
use crate::startup::Parameters;
use crate::units::show::{counted, significant};
use crate::units::{Area, Mass, Share, UnitSystem};

/// Floaters are added up to this cover: more would starve the plants below.
pub const MOST_COVER: f64 = 0.45;
/// Fast growers are added up to this dry mass, g/m2: judgement, half as much again as a
/// tank planted heavily; beyond it nobody plants and stems only shade each other.
pub const MOST_STEMS_G_M2: f64 = 150.0;
/// Steps between nothing and the most, in which the first sufficient amount is sought.
const STEPS: u32 = 12;
/// The floater suggested where none is planted: the one whose growth is best measured.
const FLOATER: &str = "lemna_minor";
/// The fast grower suggested where none is planted: on no list of restricted plants.
const STEM: &str = "hygrophila_difformis";

/// How a planting meets its load, and the section that says so.
pub(super) struct Needed {
    /// The planting as given.
    pub(super) met: Met,
    /// The planting with the smallest addition.
    pub(super) reached: Met,
    /// Net growth of fast growers then, 1/d.
    pub(super) fast_growth_per_d: f64,
    pub(super) section: PlantingSection,
}

/// The planting as given, with nothing added.
pub(super) fn as_given(load: &Load<'_>, flush: &Flush<'_>) -> Result<Needed, IntegrationError> {
    let planted = *load.design.planted();
    let met = load.met_by(&planted)?;
    Ok(Needed {
        met,
        reached: met,
        fast_growth_per_d: load.growth(&planted).fast_per_d,
        section: PlantingSection {
            floating_cover_pct: planted.cover.percent(),
            floating_g: planted.floating.fresh.g(),
            fast_g: planted.fast.fresh.g(),
            slow_g: planted.slow.fresh.g(),
            index: met.index,
            probability_under_limits: flush.probability,
            needed: after(load, &planted, &[], (met.index, flush.probability)),
            shortfall_pct: load.shortfall_pct(&planted),
        },
    })
}

/// The planting with the smallest addition that meets the load; with none where the
/// index is met already and no addition holds the flush down in time.
pub(super) fn needed(
    load: &Load<'_>,
    options: Options,
    flush: &Flush<'_>,
) -> Result<Needed, IntegrationError> {
    let given = as_given(load, flush)?;
    if given.met.is_met() {
        return Ok(given);
    }
    let search = PlantingSearch::new(load);
    let added = search.smallest_addition()?;
    if added.is_empty() {
        return Ok(given);
    }
    let total = search.with(&added);
    let reached = load.met_by(&total)?;
    if given.met.index_is_met() && !reached.is_met() {
        return Ok(given);
    }
    let bands = Parameters::<Band>::planted(load.design, &total);
    let probability = flush::probability(load.design, &load.planted(&total), &bands, options)?;
    Ok(Needed {
        reached,
        fast_growth_per_d: load.growth(&total).fast_per_d,
        section: PlantingSection {
            needed: after(load, &total, &added, (reached.index, probability)),
            ..given.section
        },
        ..given
    })
}

/// A planting after an addition.
fn after(
    load: &Load<'_>,
    total: &Planted,
    added: &[Planting],
    (index, probability): (f64, f64),
) -> NeededPlanting {
    let surface = load.design.surface();
    NeededPlanting {
        floating_cover_pct: total.cover.percent(),
        floating_g: total.floating.fresh.g(),
        fast_g: total.fast.fresh.g(),
        portions: added
            .iter()
            .filter_map(|planting| portion_count(planting, surface))
            .collect(),
        index,
        probability_under_limits: probability,
        cost: cost(added),
    }
}

/// The search for the smallest addition.
struct PlantingSearch<'a> {
    load: &'a Load<'a>,
    floater: Candidate,
    stem: Candidate,
}

impl<'a> PlantingSearch<'a> {
    fn new(load: &'a Load<'a>) -> Self {
        let own = &load.design.draft().plants;
        Self {
            load,
            floater: Candidate::choose(own, PlantGroup::Floater).weighed(load.design),
            stem: Candidate::choose(own, PlantGroup::Fast),
        }
    }

    /// Floaters first, to at most 45 % cover, then fast growers, in whole portions; as
    /// far as plants go where they are not enough.
    fn smallest_addition(&self) -> Result<Vec<Planting>, IntegrationError> {
        let most_floaters = self.most_floaters();
        let floaters = |count: f64| vec![self.floater.times(count)];
        if let Found::Enough(count) = self.fewest(most_floaters, floaters)? {
            return Ok(floaters(count));
        }
        let with_stems = |count: f64| {
            let mut plantings = Vec::new();
            if most_floaters >= 1.0 {
                plantings.push(self.floater.times(most_floaters));
            }
            plantings.push(self.stem.times(count));
            plantings
        };
        let growing = self.load.growth(&self.with(&with_stems(1.0))).fast_per_d > 0.0;
        if !growing {
            // Stems that shrink in this light only add to the flush.
            let most = if most_floaters >= 1.0 {
                vec![self.floater.times(most_floaters)]
            } else {
                Vec::new()
            };
            return Ok(most);
        }
        let most_stems = self.most_stems();
        Ok(match self.fewest(most_stems, with_stems)? {
            Found::Enough(count) | Found::Nearest(count) => with_stems(count),
        })
    }

    /// The fewest portions, up to `most`, that meet the load: the first of some even
    /// steps that does, then halving towards the step before it.
    fn fewest(
        &self,
        most: f64,
        plantings: impl Fn(f64) -> Vec<Planting>,
    ) -> Result<Found, IntegrationError> {
        let met = |count: f64| self.load.met_by(&self.with(&plantings(count)));
        let mut too_few = 0.0;
        let mut nearest = None;
        for step in 1..=STEPS {
            let count = (most * f64::from(step) / f64::from(STEPS)).ceil();
            if count < 1.0 || count <= too_few {
                continue;
            }
            let reached = met(count)?;
            if reached.is_met() {
                return Ok(Found::Enough(first_whole(too_few, count, |count| {
                    Ok(met(count)?.is_met())
                })?));
            }
            if reached.index >= reached.limit {
                nearest = nearest.or(Some(count));
            }
            too_few = count;
        }
        Ok(Found::Nearest(nearest.unwrap_or(most)))
    }

    /// The design's planting with an addition.
    fn with(&self, added: &[Planting]) -> Planted {
        let mut all = self.load.design.draft().plants.clone();
        all.extend_from_slice(added);
        Planted::of(&all, self.load.design.areas())
    }

    /// Grams of floaters that bring the cover to the most.
    fn most_floaters(&self) -> f64 {
        (room_for_floaters(self.load.design, self.floater.plant).g() / self.floater.grams).floor()
    }

    fn most_stems(&self) -> f64 {
        let dry_g = MOST_STEMS_G_M2 * self.load.inputs.floor.m2();
        (dry_g / self.stem.plant.dry_per_fresh.typical / self.stem.grams).ceil()
    }
}

/// What a search for a number of portions ends with.
enum Found {
    /// So many are enough.
    Enough(f64),
    /// None is enough: the first at which the index is, or the most.
    Nearest(f64),
}

/// A plant that may be added, in portions or, for floaters, by the gram.
#[derive(Clone, Copy)]
struct Candidate {
    plant: &'static Plant,
    portion: Option<Portion>,
    /// Fresh grams of one portion.
    grams: f64,
    price: Option<f64>,
}

impl Candidate {
    /// The first plant of the group that the keeper has chosen, or the one suggested; in
    /// the portion counted by the keeper, or the plant's smallest.
    fn choose(own: &[Planting], group: PlantGroup) -> Self {
        let chosen = own.iter().find(|planting| is_added(planting.plant, group));
        let plant = chosen.map_or_else(|| suggested(group), |planting| planting.plant);
        let counted = chosen.and_then(|planting| match planting.amount {
            Amount::Portions(_, portion) => Some((portion, plant.fresh_g.get(&portion)?.typical)),
            _ => None,
        });
        let portion = match group {
            PlantGroup::Floater => None,
            PlantGroup::Fast | PlantGroup::Slow => counted.or_else(|| smallest_portion(plant)),
        };
        Self {
            plant,
            portion: portion.map(|(portion, _)| portion),
            grams: portion.map_or(1.0, |(_, grams)| grams),
            // A price belongs to the portion the keeper counted.
            price: chosen
                .filter(|_| portion.is_some() && portion == counted)
                .and_then(|planting| planting.price),
        }
    }

    /// Floaters by fives of grams where many are asked for.
    fn weighed(self, design: &Design) -> Self {
        let most = room_for_floaters(design, self.plant);
        let grams = if most.g() < BY_FIVES_G { 1.0 } else { FIVE_G };
        Self { grams, ..self }
    }

    /// So many portions of it.
    fn times(&self, count: f64) -> Planting {
        Planting {
            plant: self.plant,
            amount: match self.portion {
                Some(portion) => Amount::Portions(count, portion),
                None => Amount::Fresh(Mass::from_g(count * self.grams)),
            },
            emergent: Share::ZERO,
            price: self.price,
        }
    }
}

/// Fresh floaters of a kind that a surface has room for, up to the most cover.
fn room_for_floaters(design: &Design, floater: &Plant) -> Mass {
    let room = MOST_COVER - design.planted().cover.fraction();
    let closed = design::closed(floater, design.surface());
    closed * room.max(0.0) / floater.dry_per_fresh.typical
}

/// The smallest portion that a plant is sold in, with its fresh grams.
pub fn smallest_portion(plant: &Plant) -> Option<(Portion, f64)> {
    plant
        .fresh_g
        .iter()
        .map(|(portion, grams)| (*portion, grams.typical))
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

/// Whether more of a plant is ever asked for: it feeds from the water, and no list restricts it.
pub fn is_added(plant: &Plant, group: PlantGroup) -> bool {
    plant.group == group && !plant.fixes_nitrogen && plant.listed.is_empty()
}

/// The plant that is asked for where none of its group is planted.
pub fn suggested(group: PlantGroup) -> &'static Plant {
    let plants = catalogue::plants();
    let name = match group {
        PlantGroup::Floater => FLOATER,
        PlantGroup::Fast | PlantGroup::Slow => STEM,
    };
    plants
        .iter()
        .find(|plant| plant.name == name)
        .or_else(|| plants.iter().find(|plant| plant.group == group))
        .unwrap_or(&plants[0])
}

/// What floaters are counted in, and from how many grams on by fives (judgement: what a
/// kitchen scale tells of a wet handful).
const GRAM: &str = "g";
const BY_FIVES_G: f64 = 20.0;
const FIVE_G: f64 = 5.0;

fn portion_count(planting: &Planting, surface: Area) -> Option<PortionCount> {
    let (count, portion, cover_pct) = match planting.amount {
        Amount::Portions(count, portion) => (count, portion.singular(), None),
        Amount::Fresh(fresh) => {
            let dry = fresh * planting.plant.dry_per_fresh.typical;
            let cover = dry / design::closed(planting.plant, surface);
            (fresh.g().round(), GRAM, Some(100.0 * cover))
        }
        Amount::Cover(_) => return None,
    };
    Some(PortionCount {
        cover_pct,
        name: &planting.plant.name,
        count: count as u32,
        portion,
    })
}

/// Of the plantings whose price is known; none where it is known of none.
pub(super) fn cost(plantings: &[Planting]) -> Option<f64> {
    let costs: Vec<f64> = plantings.iter().filter_map(price).collect();
    (!costs.is_empty()).then(|| costs.iter().sum())
}

/// Of all portions of a planting; of a cover or a mass the price as given.
pub fn price(planting: &Planting) -> Option<f64> {
    match planting.amount {
        Amount::Portions(count, _) => planting.price.map(|price| count * price),
        Amount::Cover(_) | Amount::Fresh(_) => planting.price,
    }
}

/// "2 handfuls of frogbit and 3 stems of ludwigia".
pub fn portions_in_words(units: UnitSystem, portions: &[PortionCount]) -> String {
    let parts: Vec<String> = portions
        .iter()
        .map(|portion| {
            let (plant, count) = needed_in_words(units, portion);
            format!("{count} of {plant}")
        })
        .collect();
    super::words::listed(&parts)
}

/// "water wisteria" and "2 bunches"; "frogbit" and "45 g (2 handfuls, 8 % of the surface)".
pub fn needed_in_words(units: UnitSystem, needed: &PortionCount) -> (&'static str, String) {
    let count = f64::from(needed.count);
    let plant = catalogue::find::<Plant>(needed.name).ok();
    let label = plant.map_or(needed.name, |plant| plant.label.as_str());
    let amount = match needed.cover_pct {
        Some(cover) => {
            let handful = plant.and_then(|plant| plant.fresh_g.get(&Portion::Handful));
            let handfuls = handful
                .map(|handful| (count / handful.typical).round())
                .filter(|handfuls| *handfuls >= 1.0)
                .map(|handfuls| format!("{}, ", counted(handfuls, Portion::Handful.singular())))
                .unwrap_or_default();
            let fresh = units.plant_mass(Mass::from_g(count));
            format!(
                "{fresh} ({handfuls}{} % of the surface)",
                significant(cover, 2)
            )
        }
        None if needed.count == 1 => format!("1 {}", needed.portion),
        None => format!("{count} {}", plural(needed.portion)),
    };
    (label, amount)
}

fn plural(singular: &'static str) -> &'static str {
    Portion::ALL
        .iter()
        .find(|portion| portion.singular() == singular)
        .map_or(singular, |portion| portion.plural())
}
