//! Tables of numbers with their ranges.

use crate::source::{Basis, Source};

/// What is known of a parameter besides its value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Description {
    /// Group and name, as in `soil.porosity`.
    pub name: &'static str,
    /// Unit; empty for a plain number.
    pub unit: &'static str,
    /// What the range rests on.
    pub basis: Basis,
    /// The sources.
    pub source: &'static [Source],
    /// What the numbers are, or why they were chosen.
    pub note: &'static str,
}

/// Declares a group of parameters: a struct with a field for each, the table of
/// their typical values and ranges, and their descriptions.
macro_rules! group {
    (
        $(#[$doc:meta])*
        $group:ident as $prefix:literal:
        $(
            $(#[$about:meta])*
            $name:ident = $typical:literal ($low:literal to $high:literal) $unit:literal,
            $basis:ident [$($source:ident),*]: $note:literal;
        )+
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $group<T> {
            $(
                $(#[$about])*
                #[doc = concat!(" Unit: `", $unit, "`.")]
                pub $name: T,
            )+
        }

        impl<T: Copy> $group<T> {
            pub(crate) fn map<U>(&self, change: &mut impl FnMut(T) -> U) -> $group<U> {
                $group { $($name: change(self.$name),)+ }
            }
        }

        impl $group<$crate::source::Band> {
            pub(super) const DESCRIPTIONS: &'static [$crate::parameters::Description] = &[
                $($crate::parameters::Description {
                    name: concat!($prefix, ".", stringify!($name)),
                    unit: $unit,
                    basis: $crate::source::Basis::$basis,
                    source: &[$($crate::source::Source::$source),*],
                    note: $note,
                },)+
            ];

            /// The range of each.
            pub fn reference() -> Self {
                Self { $($name: $crate::source::Band::new($low, $typical, $high),)+ }
            }
        }
    };
}

pub(super) use group;
