//! The uncertain numbers that the simulations draw from.
//!
//! [`Parameters`] holds one value of each, in whatever form: as [`Band`] with
//! the range it plausibly lies in ([`Parameters::reference`]), as `f64` for one
//! run. Each has a name, a unit and a basis ([`descriptions`]).

mod bed;
mod group;
mod lamp;
mod moving;
mod night;
mod nitrifier;
mod plant;
mod water;

pub use bed::{Cap, Soil};
pub use group::Description;
pub use lamp::Lamp;
pub use moving::Moving;
pub use night::{Aeration, OxygenUse, Photosynthesis, night_descriptions};
pub use nitrifier::Nitrifiers;
pub use plant::{Algae, Fast, Floating, Slow, Submerged};
pub use water::{Tap, Water};

use crate::numerics::distribution::range_inverse;
use crate::source::Band;

/// One value of every uncertain number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameters<T> {
    /// The soil.
    pub soil: Soil<T>,
    /// The cap.
    pub cap: Cap<T>,
    /// The water column.
    pub water: Water<T>,
    /// Tap water, for filling and water changes.
    pub tap: Tap<T>,
    /// Nitrifying bacteria.
    pub nitrifiers: Nitrifiers<T>,
    /// Floating plants.
    pub floating: Floating<T>,
    /// What all submerged plants share.
    pub submerged: Submerged<T>,
    /// Fast submerged plants.
    pub fast: Fast<T>,
    /// Slow submerged plants.
    pub slow: Slow<T>,
    /// Algae.
    pub algae: Algae<T>,
    /// The light against what is said of it.
    pub lamp: Lamp<T>,
    /// What moving water does.
    pub moving: Moving<T>,
}

impl<T: Copy> Parameters<T> {
    /// The same numbers in another form, each made from the old one in the
    /// order of [`descriptions`].
    pub fn map<U>(&self, mut change: impl FnMut(T) -> U) -> Parameters<U> {
        Parameters {
            soil: self.soil.map(&mut change),
            cap: self.cap.map(&mut change),
            water: self.water.map(&mut change),
            tap: self.tap.map(&mut change),
            nitrifiers: self.nitrifiers.map(&mut change),
            floating: self.floating.map(&mut change),
            submerged: self.submerged.map(&mut change),
            fast: self.fast.map(&mut change),
            slow: self.slow.map(&mut change),
            algae: self.algae.map(&mut change),
            lamp: self.lamp.map(&mut change),
            moving: self.moving.map(&mut change),
        }
    }

    /// All numbers in the order of [`descriptions`].
    pub fn values(&self) -> Vec<T> {
        let mut values = Vec::new();
        self.map(|value| values.push(value));
        values
    }
}

impl Parameters<Band> {
    /// The reference tank: a garden loam under sand, common tap water, shop
    /// plants of each group. A known soil, cap or plant replaces its numbers.
    pub fn reference() -> Self {
        Self {
            soil: Soil::reference(),
            cap: Cap::reference(),
            water: Water::reference(),
            tap: Tap::reference(),
            nitrifiers: Nitrifiers::reference(),
            floating: Floating::reference(),
            submerged: Submerged::reference(),
            fast: Fast::reference(),
            slow: Slow::reference(),
            algae: Algae::reference(),
            lamp: Lamp::reference(),
            moving: Moving::reference(),
        }
    }

    /// The typical value of each.
    pub fn central(&self) -> Parameters<f64> {
        self.map(|band| band.typical)
    }

    /// One member of an ensemble: each number taken from its band at a
    /// probability that `coordinate` gives for its place in [`descriptions`].
    pub fn draw(&self, mut coordinate: impl FnMut(u32) -> f64) -> Parameters<f64> {
        let mut dimension = 0;
        self.map(|band| {
            let probability = coordinate(dimension);
            dimension += 1;
            range_inverse(band.low, band.typical, band.high, probability)
        })
    }
}

/// Name, unit and basis of every number.
///
/// # Example
/// ```
/// use lentic::parameters::descriptions;
/// let first = &descriptions()[0];
/// assert_eq!((first.name, first.unit), ("soil.dry_bulk_density", "kg/m3"));
/// ```
pub fn descriptions() -> Vec<Description> {
    [
        Soil::<Band>::DESCRIPTIONS,
        Cap::<Band>::DESCRIPTIONS,
        Water::<Band>::DESCRIPTIONS,
        Tap::<Band>::DESCRIPTIONS,
        Nitrifiers::<Band>::DESCRIPTIONS,
        Floating::<Band>::DESCRIPTIONS,
        Submerged::<Band>::DESCRIPTIONS,
        Fast::<Band>::DESCRIPTIONS,
        Slow::<Band>::DESCRIPTIONS,
        Algae::<Band>::DESCRIPTIONS,
        Lamp::<Band>::DESCRIPTIONS,
        Moving::<Band>::DESCRIPTIONS,
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_band_is_ordered_and_described_once() {
        let bands = Parameters::reference().values();
        let descriptions = descriptions();
        assert_eq!(bands.len(), descriptions.len());
        for (band, description) in bands.iter().zip(&descriptions) {
            assert!(band.is_ordered(), "{}", description.name);
        }
        let mut names: Vec<_> = descriptions.iter().map(|d| d.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), descriptions.len());
    }

    #[test]
    fn a_draw_takes_each_number_from_its_own_band() {
        let reference = Parameters::reference();
        let lowest = reference.draw(|_| 0.0);
        let highest = reference.draw(|_| 1.0);
        for ((band, low), high) in reference
            .values()
            .iter()
            .zip(lowest.values())
            .zip(highest.values())
        {
            assert!((low - band.low).abs() <= 1e-12 * band.low.abs());
            assert!((high - band.high).abs() <= 1e-12 * band.high.abs());
        }
        let mut asked = Vec::new();
        reference.draw(|dimension| {
            asked.push(dimension);
            0.5
        });
        assert_eq!(asked.len(), reference.values().len());
        assert!(asked.iter().zip(0..).all(|(asked, place)| *asked == place));
    }
}
