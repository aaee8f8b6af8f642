//! Plants and animals as asked for.

use crate::catalogue::{self, Portion};
use crate::units::{ArealDensity, Mass, Share};

/// One kind of plant, as planted.
#[derive(Debug, Clone, PartialEq)]
pub struct Planting {
    /// Which plant.
    pub plant: &'static catalogue::Plant,
    /// How much of it.
    pub amount: Amount,
    /// Share of its leaves above the water.
    pub emergent: Share,
    /// Price of one portion as counted.
    pub price: Option<f64>,
}

/// How much of a plant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// A share of the surface (floaters) or of the floor (others).
    Cover(Share),
    /// Fresh mass, drained.
    Fresh(Mass),
    /// So many portions as sold.
    Portions(f64, Portion),
}

/// One kind of animal.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// Which animal.
    pub animal: &'static catalogue::Animal,
    /// How many.
    pub count: u32,
    /// The day they move in.
    pub from_day: f64,
}

impl Stock {
    /// Fresh mass of all of them.
    pub fn mass(&self) -> Mass {
        Mass::from_g(self.animal.mass_g.typical * f64::from(self.count))
    }
}

/// What the animals are fed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feed {
    /// Dry food a day.
    pub mass_per_day: Mass,
    /// Protein in it.
    pub protein: Share,
}

/// How plants are thinned.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Harvest {
    /// The cover they are thinned back to.
    pub floaters_above: Share,
    /// Dry mass that fast plants under water are cut back to, on the floor.
    pub stems_above: ArealDensity,
    /// Prunings that were weighed.
    pub taken: Vec<Taken>,
}

/// Plants taken out on a day and weighed fresh, drained.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Taken {
    /// Days since flooding.
    pub day: f64,
    /// Floaters.
    pub floaters: Option<Mass>,
    /// Stems and leaves of fast growers.
    pub stems: Option<Mass>,
}
