//! Lists of plants whose sale, keeping or movement is restricted.

use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use crate::source::Source;

/// The day on which the lists were last compared with the catalogue.
///
/// Lists change, and countries and states keep lists of their own: a plant on
/// none of these is not thereby cleared.
pub const LISTS_AS_OF: &str = "2026-11-27";

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
    pub fn label(self) -> &'static str {
        text(self).map_or("", |list| &list.label)
    }
}

/// A list of restricted plants as its text prints it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ListText {
    /// Which list.
    pub name: RestrictedList,
    /// Its name for people.
    pub label: String,
    /// The day or year from which the text that was read holds, where it says so.
    pub dated: String,
    /// What of it was read, where it was not had whole.
    pub read: Option<String>,
    /// Lists that the text makes its own.
    #[serde(default)]
    pub takes_over: Vec<RestrictedList>,
    /// Its plants, by the act that named them.
    pub part: Vec<ListingPart>,
}

impl ListText {
    /// Whether its text, and that of each list it takes over, was had whole.
    pub fn is_whole(&self) -> bool {
        self.read.is_none() && self.others().all(Self::is_whole)
    }

    fn others(&self) -> impl Iterator<Item = &'static Self> {
        self.takes_over.iter().filter_map(|list| text(*list))
    }

    /// The place of a plant of these Latin names on it, itself or through a list that it takes over.
    fn names(&self, latin: &[&str]) -> Option<Listing> {
        let part = self.part.iter().find(|part| part.names(latin));
        part.map(|part| Listing {
            list: self.name,
            since: part.since,
            source: part.source,
        })
        .or_else(|| self.taken_over(latin))
    }

    fn taken_over(&self, latin: &[&str]) -> Option<Listing> {
        let own = self.part.first()?;
        let is_named = self.others().any(|other| other.names(latin).is_some());
        is_named.then_some(Listing {
            list: self.name,
            since: None,
            source: own.source,
        })
    }
}

/// Plants that one act put on a list.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ListingPart {
    /// Where it stands.
    pub source: Source,
    /// The year in which they were added, where a source gives it.
    pub since: Option<u16>,
    /// Species, and genera with their exceptions, as printed.
    pub taxa: Vec<Taxon>,
}

impl ListingPart {
    fn names(&self, latin: &[&str]) -> bool {
        self.taxa.iter().any(|taxon| taxon.holds(latin))
    }
}

/// What a line of a list names.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(from = "String")]
pub enum Taxon {
    /// One species: "Azolla pinnata".
    Species(String),
    /// A genus, and species that are left out of it:
    /// "Salvinia spp. except Salvinia rotundifolia".
    Genus {
        /// Its name.
        genus: String,
        /// The species that it does not restrict.
        except: Vec<String>,
    },
}

impl From<String> for Taxon {
    fn from(text: String) -> Self {
        let Some((genus, rest)) = text.split_once(" spp.") else {
            return Self::Species(text);
        };
        let except = rest.trim().strip_prefix("except ").unwrap_or_default();
        Self::Genus {
            genus: genus.to_owned(),
            except: except
                .split(", ")
                .filter(|name| !name.is_empty())
                .map(str::to_owned)
                .collect(),
        }
    }
}

impl Taxon {
    /// Whether a plant of these Latin names is meant.
    fn holds(&self, latin: &[&str]) -> bool {
        let bears = |name: &str| latin.iter().any(|own| own.eq_ignore_ascii_case(name));
        match self {
            Self::Species(name) => bears(name),
            Self::Genus { genus, except } => {
                let is_of_genus = latin.iter().any(|own| {
                    let first = own.split_once(' ').map(|(first, _)| first);
                    first.is_some_and(|first| first.eq_ignore_ascii_case(genus))
                });
                is_of_genus && !except.iter().any(|name| bears(name))
            }
        }
    }
}

/// A plant's place on a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Listing {
    /// The list.
    pub list: RestrictedList,
    /// The year in which it was added, where a source gives it.
    pub since: Option<u16>,
    /// Where the list stands.
    pub source: Source,
}

/// Every list of restricted plants that the catalogue is compared with.
pub fn restricted_lists() -> &'static [ListText] {
    static TABLE: OnceLock<Vec<ListText>> = OnceLock::new();
    TABLE.get_or_init(read)
}

/// Reads the embedded table.
#[expect(
    clippy::expect_used,
    reason = "the table is embedded and a test parses it"
)]
fn read() -> Vec<ListText> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Table {
        list: Vec<ListText>,
    }
    let table: Table = toml::from_str(include_str!("data/restricted.toml"))
        .expect("the embedded table is well formed");
    table.list
}

fn text(list: RestrictedList) -> Option<&'static ListText> {
    restricted_lists().iter().find(|text| text.name == list)
}

/// The places of a plant of these Latin names on all lists, in their order.
pub(super) fn listings(latin: &[&str]) -> Vec<Listing> {
    let lists = restricted_lists().iter();
    lists.filter_map(|list| list.names(latin)).collect()
}
