//! What is done, measured and asked for.

use super::Planting;
use crate::units::{Concentration, Length, Share, Temperature};

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
