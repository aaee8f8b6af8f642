//! What can be wrong with a tank: the closed list of causes.

use serde::{Serialize, Serializer};

use crate::result::plain;

plain! { Word: Cause; }

/// Declares the causes with their name, their label and what they mean.
macro_rules! causes {
    ($($variant:ident = $name:literal, $label:literal: $says:literal;)+) => {
        /// Something that may be wrong, or that nothing is.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Cause {
            $(#[doc = $says] $variant,)+
        }

        impl Cause {
            /// Every cause.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name in results.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }

            /// The name for people.
            pub const fn label(self) -> &'static str {
                match self { $(Self::$variant => $label,)+ }
            }

            /// What it means, in one sentence without a full stop.
            pub const fn says(self) -> &'static str {
                match self { $(Self::$variant => $says,)+ }
            }
        }
    };
}

causes! {
    CapBreached = "cap_breached", "cap breached":
        "soil lies open somewhere, and what the cap should hold back gets out there";
    CapThin = "cap_thin", "cap too thin":
        "the cap is too thin to slow down what the soil gives off";
    CapCoarse = "cap_coarse", "cap too coarse":
        "water moves between the grains of the cap, carries out what the soil gives off, and part of it turns into nitrate on the way";
    CapFine = "cap_fine", "bed packed or too deep":
        "the bed is so fine or so deep that gas gathers in it and leaves in bursts";
    BedDisturbed = "bed_disturbed", "bed disturbed":
        "the bed was dug into lately and let ammonia out";
    SoilRich = "soil_rich", "rich soil":
        "the soil holds far more nitrogen than its kind usually does";
    FewPlants = "few_plants", "too few plants":
        "there are too few growing plants for what the soil gives off";
    SlowGrowersOnly = "slow_growers_only", "slow growers alone":
        "slow growers take next to nothing in the first months";
    ShadedOut = "shaded_out", "shaded out":
        "floaters keep the light from the plants below, which starve";
    LightLong = "light_long", "too much light":
        "there is more light than the plants can use, and algae use the rest";
    HungryWater = "hungry_water", "hungry water":
        "the bed is spent and little is fed: plants lack nitrogen, potassium or iron";
    TankYoung = "tank_young", "tank too young":
        "the bacteria that turn ammonia and nitrite into nitrate are not there yet";
    BacteriaSetBack = "bacteria_set_back", "filter bacteria set back":
        "cleaning, a stop or a medicine has killed the bacteria that oxidise ammonia";
    Overfed = "overfed", "overfed or overstocked":
        "more food goes in than animals and plants can use";
    DeadMatter = "dead_matter", "something is rotting":
        "a dead animal or a heap of dead leaves gives off ammonia";
    LeavesMelting = "leaves_melting", "leaves melting":
        "leaves grown in air die under water and feed the water instead of taking from it";
    TapWater = "tap_water", "tap water brings it":
        "the tap water itself holds nitrate or ammonia, and each change brings more";
    Chlorine = "chlorine", "chlorine in the tap water":
        "chlorine or chloramine of untreated tap water harms gills and bacteria";
    SoftWater = "soft_water", "soft water":
        "alkalinity is used up, pH falls and the bacteria slow down";
    HardnessCreep = "hardness_creep", "hardness creeping up":
        "topping up with tap water leaves its salts behind, more each week";
    StillWater = "still_water", "water too still":
        "nothing carries food to the leaves and films form on surface and bed";
    NightExchange = "night_exchange", "too little air at night":
        "plants, animals and bed use more oxygen by night than the surface lets in";
    Heat = "heat", "too warm":
        "warm water holds less oxygen while everything in it uses more";
    Diggers = "diggers", "animals dig":
        "animals turn the bed over faster than it settles";
    KitError = "kit_error", "a test is wrong":
        "one of the tests shows what is not there";
    NoneOfThese = "none_of_these", "none of these":
        "animals are ill, or something came in that the other causes do not hold: a medicine, a gas, a spray, new animals";
    AsExpected = "as_expected", "as expected":
        "the tank is as it should be at its age";
}

impl Cause {
    /// The cause of a name.
    pub fn find(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|cause| cause.name() == name)
    }
}

impl Serialize for Cause {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

/// A number for each cause.
#[derive(Debug, Clone, PartialEq)]
pub struct ByCause(Vec<f64>);

impl ByCause {
    /// What a function gives for each.
    pub fn of(value: impl FnMut(Cause) -> f64) -> Self {
        Self(Cause::ALL.iter().copied().map(value).collect())
    }

    /// That of one cause.
    pub fn get(&self, cause: Cause) -> f64 {
        self.0.get(cause as usize).copied().unwrap_or_default()
    }

    /// Each cause with its number.
    pub fn iter(&self) -> impl Iterator<Item = (Cause, f64)> + '_ {
        Cause::ALL.iter().copied().zip(self.0.iter().copied())
    }

    /// Each times that of another.
    #[must_use]
    pub fn times(&self, other: &Self) -> Self {
        Self::of(|cause| self.get(cause) * other.get(cause))
    }

    /// Divided by their sum; even where they are all nothing.
    #[must_use]
    pub fn shared_out(&self) -> Self {
        let sum: f64 = self.0.iter().sum();
        if sum > 0.0 {
            Self::of(|cause| self.get(cause) / sum)
        } else {
            Self::even()
        }
    }

    /// The same for every cause, one together.
    pub fn even() -> Self {
        Self::of(|_| 1.0 / Cause::ALL.len() as f64)
    }

    /// The causes with the largest number first; of equals, in the order of the list.
    pub fn ranked(&self) -> Vec<(Cause, f64)> {
        let mut ranked: Vec<(Cause, f64)> = self.iter().collect();
        ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
        ranked
    }
}
