//! What stands where a keeper says nothing.

use crate::design::usual;

/// A value that stands where a key is left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DefaultValue {
    /// The key's path; `[]` stands for any item of a list.
    pub path: &'static str,
    /// The value as TOML.
    pub written: &'static str,
    /// Why this value, with what it rests on.
    pub why: &'static str,
}

/// Every default with a fixed value that a plan lists when it is used.
#[rustfmt::skip]
pub const DEFAULTS: &[DefaultValue] = &[
    DefaultValue { path: "tank.material", written: "\"glass\"", why: "practice: most tanks are glass" },
    DefaultValue { path: "tank.freeboard", written: "\"25 mm\"", why: "practice: the usual gap below the rim" },
    DefaultValue { path: "tank.lid", written: "false", why: "judgement: open unless said; a lid saves evaporation" },
    DefaultValue { path: "tank.rim", written: "\"free\"", why: "judgement: nothing holds the upper edge unless said" },
    DefaultValue { path: "soil.soaked", written: "0", why: "judgement: the soil goes in as it comes from the bag" },
    DefaultValue { path: "water.temperature", written: "\"24 C\"", why: "practice: suits most of the plants and animals listed" },
    DefaultValue { path: "water.ph", written: "7.2", why: "judgement: near neutral; measure your own" },
    DefaultValue { path: "water.alkalinity", written: "\"4 dKH\"", why: "judgement: fairly soft tap water; measure your own" },
    DefaultValue { path: "water.hardness", written: "\"6 dGH\"", why: "judgement: fairly soft tap water; measure your own" },
    DefaultValue { path: "water.nitrate", written: "\"5 mg/L\"", why: "judgement: tap water low in nitrate; the supplier's report says yours" },
    DefaultValue { path: "water.change.until", written: "365", why: "judgement: kept up for a year unless said" },
    DefaultValue { path: "light.class", written: "\"medium\"", why: "judgement: a middling lamp, about 60 umol/m2/s at the surface" },
    DefaultValue { path: "light.hours", written: "8", why: "practice: longer days feed algae in a young tank" },
    DefaultValue { path: "air.device", written: "\"none\"", why: "practice: low-tech tanks stand still unless said" },
    DefaultValue { path: "air.hours", written: "\"always\"", why: "practice: a device runs day and night unless said" },
    DefaultValue { path: "feed.protein", written: usual::PROTEIN_WRITTEN, why: usual::PROTEIN_WHY },
    DefaultValue { path: "room.temperature", written: "\"20 C\"", why: "judgement: a heated living room" },
    DefaultValue { path: "room.humidity", written: "\"50 %\"", why: "judgement: a heated living room" },
    DefaultValue { path: "room.altitude", written: "\"0 m\"", why: "judgement: near sea level" },
    DefaultValue { path: "harvest.floaters_above", written: "\"50 %\"", why: "practice: more cover starves the plants below" },
    DefaultValue { path: "goal.probability", written: "\"80 %\"", why: "judgement: four starts in five stay under the limits" },
];

/// The default of a path.
pub(super) fn find(path: &str) -> Option<&'static DefaultValue> {
    DEFAULTS.iter().find(|default| default.path == path)
}

/// Why a wall's thickness was taken by the tank's height.
pub(super) const WALL_WHY: &str =
    "practice: common for the tank's height; used for weight and panes, measure your own";
