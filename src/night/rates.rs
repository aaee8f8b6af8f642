//! The uncertain numbers of a night.

use super::inputs::NightInputs;
use crate::numerics::distribution::range_inverse;
use crate::parameters::{Aeration, OxygenUse, Parameters, Photosynthesis};
use crate::source::Band;

/// One value of every number of a night that is known only as a range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates<T> {
    /// Light at the water surface, umol/(m2 s).
    pub light: T,
    /// How light fades on its way down.
    pub shade: Shade<T>,
    /// Exchange with the air.
    pub aeration: Aeration<T>,
    /// Photosynthesis.
    pub photosynthesis: Photosynthesis<T>,
    /// What uses oxygen.
    pub oxygen_use: OxygenUse<T>,
}

/// What takes light on its way down: numbers that the weeks of a start-up draw too.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shade<T> {
    /// Share of the light that one layer of floaters takes.
    pub floating_absorptance: T,
    /// Extinction by the water itself, 1/m.
    pub water_extinction: T,
    /// Extinction by submerged plants, m2/g.
    pub plant_extinction: T,
    /// Extinction by algae, m2/g.
    pub algae_extinction: T,
}

impl<T: Copy> Shade<T> {
    fn map<U>(&self, change: &mut impl FnMut(T) -> U) -> Shade<U> {
        Shade {
            floating_absorptance: change(self.floating_absorptance),
            water_extinction: change(self.water_extinction),
            plant_extinction: change(self.plant_extinction),
            algae_extinction: change(self.algae_extinction),
        }
    }
}

impl<T: Copy> Rates<T> {
    /// The same numbers in another form, each made from the old one in order.
    fn map<U>(&self, mut change: impl FnMut(T) -> U) -> Rates<U> {
        Rates {
            light: change(self.light),
            shade: self.shade.map(&mut change),
            aeration: self.aeration.map(&mut change),
            photosynthesis: self.photosynthesis.map(&mut change),
            oxygen_use: self.oxygen_use.map(&mut change),
        }
    }
}

impl Rates<Band> {
    /// The ranges for a tank in its light.
    pub fn of(inputs: &NightInputs) -> Self {
        let start = Parameters::reference();
        Self {
            light: inputs.light,
            shade: Shade {
                floating_absorptance: start.floating.absorptance,
                water_extinction: start.water.extinction,
                plant_extinction: start.submerged.extinction,
                algae_extinction: start.algae.extinction,
            },
            aeration: Aeration::reference(),
            photosynthesis: Photosynthesis::reference(),
            oxygen_use: OxygenUse::reference(),
        }
    }

    /// The typical value of each.
    pub fn central(&self) -> Rates<f64> {
        self.map(|band| band.typical)
    }

    /// One member of an ensemble: each number taken from its range at a
    /// probability that `coordinate` gives for its place.
    pub fn draw(&self, mut coordinate: impl FnMut(u32) -> f64) -> Rates<f64> {
        let mut place = 0;
        self.map(|band| {
            let probability = coordinate(place);
            place += 1;
            range_inverse(band.low, band.typical, band.high, probability)
        })
    }
}
