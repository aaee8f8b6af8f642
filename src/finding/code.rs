//! The closed list of finding codes; a code never changes its meaning.

use serde::{Serialize, Serializer};

use crate::result::plain;

plain! { Word: Code; }

/// Declares the codes with their spelling.
macro_rules! codes {
    ($($(#[$doc:meta])* $name:ident = $text:literal,)+) => {
        /// Which rule a finding comes from.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Code {
            $($(#[$doc])* $name,)+
        }

        impl Code {
            /// Every code, in the order they are reported.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// The spelling in results and on the command line.
            pub const fn text(self) -> &'static str {
                match self {
                    $(Self::$name => $text,)+
                }
            }
        }
    };
}

codes! {
    /// Cap grains against what holds the soil back.
    CapCoarse = "cap.coarse",
    /// Cap grains that pack or seal.
    CapFine = "cap.fine",
    /// Cap depth at its thinnest place.
    CapThin = "cap.thin",
    /// Peak release through the cap against what the planting takes.
    CapLeak = "cap.leak",
    /// Cap depth against what roots and gas can cross.
    CapDeep = "cap.deep",
    /// Slope of the bed against the angle of repose, and where it was cut.
    CapSlope = "cap.slope",
    /// Sand added later against the water.
    CapAdded = "cap.added",
    /// Soil too shallow to feed rooted plants.
    SoilThin = "soil.thin",
    /// Soil deep enough to turn foul.
    SoilDeep = "soil.deep",
    /// Gas made in the soil against what can diffuse out.
    BedGas = "bed.gas",
    /// How far oxygen reaches into the bed.
    BedOxygen = "bed.oxygen",
    /// Planting of day one against the flush.
    PlantsLoad = "plants.load",
    /// Share of the surface under floaters.
    PlantsCover = "plants.cover",
    /// Whether anything in the mix grows fast.
    PlantsMix = "plants.mix",
    /// Plants on a list of restricted species.
    PlantsListed = "plants.listed",
    /// Plants that decline because nothing feeds them.
    PlantsHungry = "plants.hungry",
    /// How high ammonia rises.
    FlushAmmonia = "flush.ammonia",
    /// How high nitrite rises.
    FlushNitrite = "flush.nitrite",
    /// How high nitrate rises.
    FlushNitrate = "flush.nitrate",
    /// How much water the first weeks take.
    FlushChanges = "flush.changes",
    /// Oxygen at the end of the night.
    AirDawn = "air.dawn",
    /// Water too still for the plants in it.
    FlowSlack = "flow.slack",
    /// Water too fast for floaters or leaves.
    FlowStrong = "flow.strong",
    /// Too little light for the plants under water.
    LightShort = "light.short",
    /// Long days in a tank that feeds algae.
    LightLong = "light.long",
    /// Animals against what oxygen and plants carry.
    AnimalsLoad = "animals.load",
    /// Animals that move in too early.
    AnimalsEarly = "animals.early",
    /// Animals that dig against the cap.
    AnimalsDiggers = "animals.diggers",
    /// Food against the water.
    AnimalsFeed = "animals.feed",
    /// Alkalinity that nitrification uses up.
    WaterSoft = "water.soft",
    /// Water changed at once against what animals bear.
    WaterChange = "water.change",
    /// Lime that settles out of the water at dusk.
    WaterLime = "water.lime",
    /// The last readings against their limits.
    CheckWater = "check.water",
    /// The likeliest cause of what was read and seen.
    CheckCause = "check.cause",
    /// Weight and pressure on the floor.
    WeightFloor = "weight.floor",
    /// Stress in the panes.
    GlassPane = "glass.pane",
}

impl Serialize for Code {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.text())
    }
}

impl Code {
    /// The code with this spelling.
    pub fn find(text: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|code| code.text() == text)
    }
}
