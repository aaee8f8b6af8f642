//! Devices that move air or water.

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Basis, Source};

/// What the flow of a device is a flow of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FlowKind {
    /// It has none.
    None,
    /// Air at the pump.
    Air,
    /// Water.
    Water,
}

/// A device.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Device {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// What its flow is a flow of.
    pub flow: FlowKind,
    /// What the row rests on.
    pub basis: Basis,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What it does.
    pub note: String,
}

row!(Device, "device", devices, "data/devices.toml");
