//! Animals, by kinds that matter to a bed and its water.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::row::{self, row};
use crate::source::{Band, Basis, Source};
use crate::units::Volume;

/// How much ammonia and nitrite a kind bears.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tolerance {
    /// As much as fish and shrimp.
    #[default]
    Usual,
    /// More than these.
    High,
}

/// A kind of animal.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "a row says each of these facts by itself"
)]
pub struct Animal {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// The same of several.
    pub plural: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Fresh mass of one adult.
    pub mass_g: Band,
    /// Depth to which it stirs the bed.
    pub digs_mm: Band,
    /// Whether it can live on air when the water lacks oxygen.
    pub air_breathing: bool,
    /// Whether it lives on algae and waste as much as on feed.
    pub grazes: bool,
    /// Water that each is given at least, by practice, L.
    pub litres_each: f64,
    /// Smallest tank that it is advised for, to the rim, by practice, L.
    #[serde(default)]
    pub least_tank_l: f64,
    /// Whether it comes in by itself, so that nobody is told how many to buy.
    #[serde(default)]
    pub comes_unasked: bool,
    /// Whether two of it fight, so that one is kept alone.
    #[serde(default)]
    pub fights_its_kind: bool,
    /// How much ammonia and nitrite it bears.
    #[serde(default)]
    pub tolerance: Tolerance,
    /// The earliest day it is put in, by practice, counted from filling.
    pub first_day: u16,
    /// Feed per day, of its body mass.
    pub feed_pct_per_d: Band,
    /// Protein in that feed.
    pub protein_pct: Band,
    /// What the numbers rest on.
    pub basis: Basis,
    /// What those fields rest on that differ from it.
    #[serde(default)]
    pub basis_of: BTreeMap<String, Basis>,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What to know about it.
    pub note: String,
}

impl Animal {
    /// Whether it bears more ammonia and nitrite than fish and shrimp do.
    pub fn is_hardy(&self) -> bool {
        self.tolerance == Tolerance::High
    }

    /// The most that are kept in so much water of a tank of a size to the rim.
    ///
    /// # Source
    /// Common practice, no source: 2 L of water to the gram of fish, and no fish in tanks under
    /// 20 L.
    ///
    /// # Example
    /// ```
    /// use lentic::{catalogue, units::Volume};
    /// let (water, tank) = (Volume::from_litres(48.0), Volume::from_litres(60.0));
    /// let most = |name| {
    ///     let animal = catalogue::find::<catalogue::Animal>(name).ok();
    ///     animal.map(|animal| animal.most_in(water, tank))
    /// };
    /// // 24 g of fish of up to 0.6 g; males that fight are kept singly
    /// assert_eq!([most("small_fish"), most("labyrinth_fish")], [Some(40), Some(1)]);
    /// ```
    pub fn most_in(&self, water: Volume, tank: Volume) -> u32 {
        if tank.litres() < self.least_tank_l {
            return 0;
        }
        let most = (water.litres() / self.litres_each).floor() as u32;
        if self.fights_its_kind {
            most.min(1)
        } else {
            most
        }
    }

    /// "1 surface snail", "about 120 small shrimp": from a hundred on down to two digits,
    /// which is all that an estimate bears.
    pub fn counted(&self, count: u32) -> String {
        let label = if count == 1 {
            &self.label
        } else {
            &self.plural
        };
        if count < 100 {
            return format!("{count} {label}");
        }
        let step = 10_u32.pow(count.ilog10() - 1);
        format!("about {} {label}", count / step * step)
    }
}

/// What fields of an animal rest on where its row does not say otherwise.
const BASIS_OF_FIELDS: [(&str, Basis); 5] = [
    ("digs_mm", Basis::Judgement),
    ("litres_each", Basis::Practice),
    ("first_day", Basis::Practice),
    ("feed_pct_per_d", Basis::Practice),
    ("protein_pct", Basis::Practice),
];

row!(
    Animal,
    "animal",
    animals,
    "data/animals.toml",
    Animal::finished
);

impl Animal {
    /// The same with what its fields rest on in any row.
    fn finished(mut self) -> Self {
        row::complete(&mut self.basis_of, self.basis, &BASIS_OF_FIELDS);
        self
    }
}
