//! What is done, measured and asked for.

use super::Planting;
use crate::catalogue::{Animal, Sign};
use crate::units::{
    Alkalinity, Analyte, Concentration, Conductivity, Duration, Hardness, Length, Mass, Share,
    Temperature, Volume,
};
use crate::water::salt::{Element, Salt};

/// Something done on a day.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Days since flooding.
    pub day: f64,
    /// What is done.
    pub kind: EventKind,
}

/// What can be done to a running tank.
#[derive(Debug, Clone, PartialEq)]
pub enum EventKind {
    /// Sand spread over the whole bed.
    CapAdded(Length),
    /// Share of the water replaced.
    WaterChange(Share),
    /// Share of the bed stirred.
    Disturbed(Share),
    /// Plants put in.
    PlantsAdded(Vec<Planting>),
    /// Plants taken out.
    PlantsRemoved(Vec<Planting>),
    /// A salt put in.
    Dosed(Dosed),
    /// Food given on that day beside what is fed every day.
    Fed(Mass),
    /// Water poured in for what went to the air.
    ToppedUp(Volume),
    /// Nobody there for so long: nothing is fed, changed or thinned.
    Away(Duration),
    /// Emptied and carried elsewhere; of the water so much is new.
    Drained(Share),
    /// What no model follows, but a check of a tank in trouble reads.
    Incident(Incident),
}

/// A salt as it was weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dosed {
    /// Which.
    pub salt: &'static Salt,
    /// How much of what is sold.
    pub mass: Mass,
    /// Salt in it.
    pub purity: Share,
}

impl Dosed {
    /// What it brings of an element.
    pub fn element(&self, element: Element) -> Mass {
        self.mass * (self.purity.fraction() * self.salt.share(element))
    }
}

/// What happened to a tank that no model follows.
#[derive(Debug, Clone, PartialEq)]
pub enum Incident {
    /// A medicine went in, by its active substance.
    Medicine(String),
    /// The filter was washed or replaced.
    FilterWashed,
    /// Filter and heater stood still for so long.
    Off(Duration),
    /// The lamp was changed for another.
    LampChanged,
    /// Animals came from elsewhere; those that stayed stand under the animals.
    AnimalsAdded(Vec<(&'static Animal, u32)>),
    /// Something was sprayed, painted or polished in the room.
    Sprayed,
    /// Carbon dioxide was led in.
    GasAdded,
}

/// What a keeper looked for, and what was seen of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Signs {
    /// What was seen.
    pub observed: Vec<&'static Sign>,
    /// What was looked for and not seen.
    pub absent: Vec<&'static Sign>,
    /// How much was looked for.
    pub looked: Looked,
}

/// How much a keeper looked for beside the signs written down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Looked {
    /// All of the common signs: one that is not written down is not there.
    #[default]
    All,
    /// Some: of a sign that is not written down nothing is known.
    Some,
}

impl Signs {
    /// Whether a sign was seen.
    pub fn has(&self, name: &str) -> bool {
        self.observed.iter().any(|sign| sign.name == name)
    }

    /// Whether it is known that a sign is not there.
    pub fn lacks(&self, sign: &Sign) -> bool {
        let counts = self.looked == Looked::All && sign.common;
        !self.has(&sign.name) && (counts || self.absent.iter().any(|one| one.name == sign.name))
    }

    /// Whether nothing was seen and nothing named as missing.
    pub fn is_empty(&self) -> bool {
        self.observed.is_empty() && self.absent.is_empty()
    }
}

/// The marks of the cards of a keeper's kits, on each nutrient's own scale, mg/L, rising; none
/// where they are not said.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct KitMarks {
    /// Of total ammonia, as nitrogen.
    pub ammonia: Vec<f64>,
    /// Of nitrite, as NO2.
    pub nitrite: Vec<f64>,
    /// Of nitrate, as NO3.
    pub nitrate: Vec<f64>,
}

/// What was measured on a day; nutrients on their analyte's own scale.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Reading {
    /// Days since flooding.
    pub day: f64,
    /// Total ammonia, as nitrogen.
    pub ammonia: Option<Concentration>,
    /// Nitrite, as NO2.
    pub nitrite: Option<Concentration>,
    /// Nitrate, as NO3.
    pub nitrate: Option<Concentration>,
    /// Phosphate, as PO4.
    pub phosphate: Option<Concentration>,
    /// pH.
    pub ph: Option<f64>,
    /// Water temperature.
    pub temperature: Option<Temperature>,
    /// Dissolved oxygen.
    pub oxygen: Option<Concentration>,
    /// Calcium and magnesium.
    pub hardness: Option<Hardness>,
    /// Alkalinity.
    pub alkalinity: Option<Alkalinity>,
    /// Conductivity.
    pub conductivity: Option<Conductivity>,
    /// Potassium.
    pub potassium: Option<Concentration>,
    /// Iron.
    pub iron: Option<Concentration>,
    /// Nutrients whose colour lay between two marks, with both; the amount itself is their
    /// middle.
    pub between: Vec<(Analyte, Concentration, Concentration)>,
    /// Whether the same kits showed nothing in water that holds nothing, where that was tried.
    pub blank: Option<bool>,
}

/// What the keeper asks of the start.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Goal {
    /// Asked of the planting and the water changes.
    pub probability: Share,
    /// Replaces the watch limit for ammonia.
    pub ammonia: Option<Concentration>,
    /// Replaces the watch limit for nitrite.
    pub nitrite: Option<Concentration>,
    /// Replaces the watch limit for nitrate.
    pub nitrate: Option<Concentration>,
    /// Replaces the watch limit for dawn oxygen.
    pub dawn_oxygen: Option<Concentration>,
}
