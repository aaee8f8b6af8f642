//! The vessel as asked for.

use crate::geometry::Shape;
use crate::units::{Density, Length, Mass, Pressure};

/// The vessel: shape, walls, water level, equipment.
#[derive(Debug, Clone, PartialEq)]
pub struct Tank {
    /// Shape with its dimensions.
    pub shape: Shape,
    /// Whether the dimensions are taken outside the walls.
    pub outside: bool,
    /// Wall thickness.
    pub wall: Length,
    /// Bottom thickness.
    pub bottom: Length,
    /// What the walls are made of.
    pub material: Material,
    /// From the rim down to the water.
    pub freeboard: Length,
    /// Whether it is covered.
    pub lid: bool,
    /// How the upper edge is held.
    pub rim: Rim,
    /// Stand, lid and equipment.
    pub stand: Mass,
}

/// What walls are made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Material {
    /// Annealed soda-lime float glass.
    #[default]
    Glass,
    /// Cast acrylic (PMMA).
    Acrylic,
}

impl Material {
    /// The word in a spec.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Glass => "glass",
            Self::Acrylic => "acrylic",
        }
    }

    /// Density: glass by EN 572-1, acrylic by a polymer maker's data sheet
    /// (ISO 1183 method; ISO 7823, `iso_7823`).
    pub fn density(self) -> Density {
        Density::from_kg_m3(match self {
            Self::Glass => 2500.0,
            Self::Acrylic => 1190.0,
        })
    }

    /// Young's modulus: glass by EN 572-1; acrylic from memory, short-term.
    pub fn stiffness(self) -> Pressure {
        Pressure::from_mpa(match self {
            Self::Glass => 70_000.0,
            Self::Acrylic => 3_200.0,
        })
    }
}

/// How the upper edge of the panes is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Rim {
    /// Nothing holds it.
    #[default]
    Free,
    /// A stiff full frame holds it.
    Braced,
}
