//! The types that a key's value may have: each knows what is written for it and reads it.

use super::amount::amount;
use super::named::row;
use super::read::{count, dose, flag, number, quantity, size, top_up, word};
use super::{KeyEntry, KeyKind};
use crate::catalogue::{self, CatalogueRow};
use crate::design::{
    Amount, Disinfectant, DutyHours, FlowDevice, LabelDose, Looked, Material, Rim, TopUp, Violation,
};
use crate::plants::light::LightClass;
use crate::units::size::Size;
use crate::units::{Quantity, UnitSystem};
use crate::water::salt::{SALTS, Salt};

/// A value that a key may have.
pub(crate) trait Value: Copy + Send + Sync + 'static {
    /// What is written for it.
    const KIND: KeyKind;

    /// What stands at a key, within the key's limits.
    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation>;

    /// Whether only whole numbers make sense for it.
    fn is_whole(&self) -> bool {
        false
    }
}

impl<Q: Quantity + Send + Sync + 'static> Value for Q {
    const KIND: KeyKind = KeyKind::Quantity(Q::NAME);

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        quantity(entry)
    }
}

impl<V: Value> Value for Option<V> {
    const KIND: KeyKind = V::KIND;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        V::read(entry).map(Some)
    }

    fn is_whole(&self) -> bool {
        self.as_ref().is_some_and(V::is_whole)
    }
}

/// Lets keys name the rows of tables of the catalogue.
macro_rules! rows {
    ($($row:ident),+) => {
        $(impl Value for &'static catalogue::$row {
            const KIND: KeyKind = KeyKind::Name(catalogue::$row::LIST);

            fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
                row(entry)
            }
        })+
    };
}

rows!(Animal, Cap, Plant, Sign, Soil, Stone);

impl Value for f64 {
    const KIND: KeyKind = KeyKind::Number;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        number(entry)
    }
}

impl Value for u32 {
    const KIND: KeyKind = KeyKind::Count;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        count(entry)
    }

    fn is_whole(&self) -> bool {
        true
    }
}

impl Value for bool {
    const KIND: KeyKind = KeyKind::Flag;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        flag(entry)
    }
}

impl Value for Size {
    const KIND: KeyKind = KeyKind::Size;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        size(entry)
    }
}

impl Value for Amount {
    const KIND: KeyKind = KeyKind::Amount;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        amount(entry)
    }

    fn is_whole(&self) -> bool {
        matches!(self, Self::Portions(..))
    }
}

impl Value for LabelDose {
    const KIND: KeyKind = KeyKind::Dose;

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        dose(entry)
    }
}

impl Value for TopUp {
    const KIND: KeyKind = KeyKind::WordOrShare(&["tap", "soft"]);

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        top_up(entry)
    }
}

impl Value for &'static Salt {
    const KIND: KeyKind = KeyKind::Word(&[
        SALTS[0].0, SALTS[1].0, SALTS[2].0, SALTS[3].0, SALTS[4].0, SALTS[5].0,
    ]);

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        word(|word| {
            let word = word.to_lowercase();
            let found = SALTS.iter().find(|(name, _)| *name == word);
            found.map(|(_, salt)| *salt)
        })(entry)
    }
}

impl Value for FlowDevice {
    const KIND: KeyKind = KeyKind::Name(catalogue::Device::LIST);

    fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
        match row::<catalogue::Device>(entry)?.name.as_str() {
            "none" => Ok(Self::None),
            "air_stone" => Ok(Self::AirStone),
            "sponge_filter" => Ok(Self::SpongeFilter),
            "pump" => Ok(Self::Pump),
            _ => Err(entry.wrong_type()),
        }
    }
}

/// Declares the words of a type, each with what it means.
macro_rules! words {
    ($type:ty: $($word:literal = $meaning:ident),+) => {
        impl Value for $type {
            const KIND: KeyKind = KeyKind::Word(&[$($word),+]);

            fn read(entry: &KeyEntry<'_>) -> Result<Self, Violation> {
                word(|word| match word {
                    $($word => Some(Self::$meaning),)+
                    _ => None,
                })(entry)
            }
        }
    };
}

words!(UnitSystem: "metric" = Metric, "us" = Us);
words!(Material: "glass" = Glass, "acrylic" = Acrylic);
words!(Rim: "free" = Free, "braced" = Braced);
words!(Disinfectant: "none" = None, "chlorine" = Chlorine, "chloramine" = Chloramine);
words!(Looked: "all" = All, "some" = Some);
words!(LightClass: "low" = Low, "medium" = Medium, "high" = High);
words!(DutyHours: "always" = Always, "night" = Night, "day" = Day);
