//! What was asked for, unchecked.

use jiff::civil::Date;
use serde::Serialize;

use super::{
    Air, CapLayer, Conditioner, Event, Feed, FillWater, Goal, Harvest, KitMarks, Light,
    PlacedStone, Planting, Reading, Room, Signs, SoilLayer, Stock, Tank,
};
use crate::result::results;
use crate::units::{Analyte, UnitSystem};
use crate::water::card::Card;

/// A tank as asked for; every field may be changed before it is checked.
///
/// It has no default, for no tank is the usual one: start from a spec's text and
/// `lentic::spec::parse` it, or from the [`draft`](super::Design::draft) of a design, whose
/// defaults are those of the table of keys.
#[derive(Debug, Clone)]
pub struct Draft {
    /// What the keeper calls it.
    pub name: String,
    /// How results are shown.
    pub units: UnitSystem,
    /// The day the soil is flooded, where the calendar is to have dates.
    pub start: Option<Date>,
    /// The vessel.
    pub tank: Tank,
    /// The nutrient layer.
    pub soil: SoilLayer,
    /// The layer that seals it.
    pub cap: CapLayer,
    /// Stones and wood.
    pub hardscape: Vec<PlacedStone>,
    /// The planting of day one.
    pub plants: Vec<Planting>,
    /// The water and its changes.
    pub water: FillWater,
    /// What takes chlorine out of the tap water.
    pub conditioner: Conditioner,
    /// The lamp.
    pub light: Light,
    /// Air or flow.
    pub air: Air,
    /// Animals and when they move in.
    pub animals: Vec<Stock>,
    /// What the animals are fed.
    pub feed: Feed,
    /// The room around the tank.
    pub room: Room,
    /// How floaters are thinned.
    pub harvest: Harvest,
    /// What is done on which day.
    pub events: Vec<Event>,
    /// The marks of the kits' cards.
    pub kit: KitMarks,
    /// What was measured on which day.
    pub readings: Vec<Reading>,
    /// What was looked for and seen.
    pub signs: Signs,
    /// What the keeper asks of the start.
    pub goal: Goal,
    /// Defaults that stand for what was not said.
    pub assumed: Vec<Assumption>,
}

impl Draft {
    /// Whether the spec says what stands at a key, so that nothing was assumed for it.
    pub fn says(&self, key: &str) -> bool {
        self.assumed.iter().all(|assumption| assumption.key != key)
    }

    /// The card of the kit for a nutrient, with the keeper's own marks where they are given.
    pub fn card(&self, analyte: Analyte) -> Option<Card<'_>> {
        let own = match analyte {
            Analyte::Ammonia => &self.kit.ammonia,
            Analyte::Nitrite => &self.kit.nitrite,
            Analyte::Nitrate => &self.kit.nitrate,
            Analyte::Phosphate => return None,
        };
        Card::with(own).or_else(|| Card::of(analyte))
    }

    /// The first mark over nothing of the kit for a nutrient, on its own scale.
    pub fn first_mark(&self, analyte: Analyte) -> f64 {
        let card = self.card(analyte);
        card.map_or_else(|| Card::first_mark(analyte), |card| card.first())
    }

    /// The last reading of something, with its day.
    pub fn latest<T>(&self, of: impl Fn(&Reading) -> Option<T>) -> Option<(f64, T)> {
        let read = self.readings.iter();
        read.filter_map(|reading| Some((reading.day, of(reading)?)))
            .max_by(|(one, _), (other, _)| one.total_cmp(other))
    }
}

results! {
    /// A default that stands for something not said.
    #[derive(Debug, Clone, PartialEq, Eq, Serialize)]
    pub struct Assumption {
        /// the key that was left out
        pub key: String => Spec,
        /// what was taken for it
        pub value: String => Spec,
        /// why this and nothing else
        pub why: String => Program,
    }
}
