//! Water plants.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::listing::{self, Listing, RestrictedList};
use super::row::{self, row};
use crate::source::{Band, Basis, Source};

/// The part a plant has in taking up the flush.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlantGroup {
    /// Floats, with leaves in the air.
    Floater,
    /// Grows fast under water.
    Fast,
    /// Grows too slowly to count in the first month.
    Slow,
}

impl PlantGroup {
    /// The group in one word for people.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Floater => "floater",
            Self::Fast => "fast",
            Self::Slow => "slow",
        }
    }
}

/// The way a plant grows, by which its numbers are filled in where none is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GrowthForm {
    /// Duckweeds and floating ferns of their size.
    SmallFloating,
    /// Floating rosettes and ferns.
    LargeFloating,
    /// A stem that lives under water, rooted or not.
    SubmergedStem,
    /// A stem that lives under and above water, here under it.
    AmphibiousStem,
    /// A rosette that spreads by runners.
    RunnerRosette,
    /// A rosette that stays in its place.
    SlowRosette,
    /// Grows on stone and wood.
    Epiphyte,
    /// A moss.
    Moss,
}

/// A portion in which plants are sold or handled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Portion {
    /// One cut stem.
    Stem,
    /// A bunch of stems.
    Bunch,
    /// A potted plant, without pot and wool.
    Pot,
    /// A cup of laboratory-grown plants.
    Cup,
    /// A loose, drained handful.
    Handful,
    /// One single plant.
    Piece,
}

impl Portion {
    /// Every portion.
    pub const ALL: &'static [Self] = &[
        Self::Stem,
        Self::Bunch,
        Self::Pot,
        Self::Cup,
        Self::Handful,
        Self::Piece,
    ];

    /// One of them in words.
    pub const fn singular(self) -> &'static str {
        match self {
            Self::Stem => "stem",
            Self::Bunch => "bunch",
            Self::Pot => "pot",
            Self::Cup => "cup",
            Self::Handful => "handful",
            Self::Piece => "piece",
        }
    }

    /// Several of them in words.
    pub const fn plural(self) -> &'static str {
        match self {
            Self::Stem => "stems",
            Self::Bunch => "bunches",
            Self::Pot => "pots",
            Self::Cup => "cups",
            Self::Handful => "handfuls",
            Self::Piece => "pieces",
        }
    }
}

/// A water plant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plant {
    /// Species in snake case.
    pub name: String,
    /// Trade name for people.
    pub label: String,
    /// Latin name as printed.
    pub latin: String,
    /// Further trade names and Latin synonyms.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Its part in taking up the flush.
    pub group: PlantGroup,
    /// The way it grows.
    pub form: GrowthForm,
    /// Relative growth per day with nutrients, light and warmth in plenty.
    pub rgr_good_per_d: Band,
    /// Relative growth per day in modest light without added carbon dioxide.
    pub rgr_low_per_d: Band,
    /// Dry mass per fresh mass.
    pub dry_per_fresh: Band,
    /// Nitrogen in the dry mass.
    pub n_pct: Band,
    /// Dry mass that closes the surface (floaters) or plants the floor densely on day one (others).
    pub full_cover_g_dry_m2: Band,
    /// Standing crop at which growth ends.
    pub max_g_dry_m2: Band,
    /// Lowest, best and highest temperature for growth.
    pub temperature_c: Band,
    /// Fresh mass of the portions in which it is handled.
    #[serde(default)]
    pub fresh_g: BTreeMap<Portion, Band>,
    /// Whether it draws nitrogen from the air, and so is no sink for that in the water.
    #[serde(default)]
    pub fixes_nitrogen: bool,
    /// Whether it thrives in shade.
    #[serde(default)]
    pub shade_plant: bool,
    /// Whether its leaves take carbon dioxide from the air.
    #[serde(default)]
    pub air_leaves: bool,
    /// Whether its leaves use bicarbonate beside carbon dioxide (from memory); absent
    /// where that is not known, and for floaters.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub uses_bicarbonate: Option<bool>,
    /// How it floats, for a plant that also grows rooted or under water.
    pub floating_form: Option<String>,
    /// Its places on lists of restricted plants, found by its Latin names in the whole
    /// lists; see [`super::LISTS_AS_OF`].
    #[serde(skip_deserializing)]
    pub listed: Vec<Listing>,
    /// What its numbers rest on.
    pub basis: Basis,
    /// What those fields rest on that differ from it.
    #[serde(default)]
    pub basis_of: BTreeMap<String, Basis>,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What to know about it.
    #[serde(default)]
    pub note: String,
}

/// What fields of a plant rest on where its row does not say otherwise.
const BASIS_OF_FIELDS: [(&str, Basis); 2] = [
    ("temperature_c", Basis::Practice),
    ("fresh_g", Basis::Practice),
];

row!(Plant, "plant", plants, "data/plants.toml", Plant::finished);

impl Plant {
    /// The same with its places on the lists of restricted plants, and with what its fields
    /// rest on in any row.
    fn finished(mut self) -> Self {
        self.listed = listing::listings(&self.latin_names().collect::<Vec<_>>());
        row::complete(&mut self.basis_of, self.basis, &BASIS_OF_FIELDS);
        self
    }

    /// Its Latin name, and those among its further names: synonyms.
    pub(super) fn latin_names(&self) -> impl Iterator<Item = &str> {
        let synonyms = self.aliases.iter().map(String::as_str);
        std::iter::once(self.latin.as_str()).chain(synonyms)
    }

    /// Share of it that counts as a user of bicarbonate: half where it is not known.
    pub fn bicarbonate_use(&self) -> f64 {
        self.uses_bicarbonate
            .map_or(0.5, |uses| f64::from(u8::from(uses)))
    }

    /// Its place on one list, if it is there.
    pub fn listing(&self, list: RestrictedList) -> Option<&Listing> {
        self.listed.iter().find(|listing| listing.list == list)
    }
}
