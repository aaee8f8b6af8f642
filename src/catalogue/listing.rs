//! Lists of plants whose sale, keeping or movement is restricted.

use serde::{Deserialize, Serialize};

use crate::source::Source;

/// The day on which the lists were last compared with the catalogue.
///
/// Lists change, and countries and states keep lists of their own: a plant on
/// none of these is not thereby cleared.
pub const LISTS_AS_OF: &str = "2026-11-25";

/// A list that restricts plants.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RestrictedList {
    /// Invasive alien species of Union concern.
    EuUnion,
    /// Federal noxious weeds of the United States.
    UsFederal,
    /// The ban on sale in England.
    EnglandSale,
    /// Vermont's noxious weeds.
    Vermont,
    /// North Carolina's noxious aquatic weeds.
    NorthCarolina,
}

impl RestrictedList {
    /// The list's name for people.
    pub const fn label(self) -> &'static str {
        match self {
            Self::EuUnion => "EU Union list of invasive alien species",
            Self::UsFederal => "US federal noxious weed list",
            Self::EnglandSale => "England's ban on sale",
            Self::Vermont => "Vermont noxious weed list",
            Self::NorthCarolina => "North Carolina noxious aquatic weed list",
        }
    }
}

/// A plant's place on a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Listing {
    /// The list.
    pub list: RestrictedList,
    /// The year in which it was added, where a source gives it.
    pub since: Option<u16>,
    /// Where the list stands.
    pub source: Source,
}
