//! Heat through a pane.

use crate::units::{Length, Transmittance};

/// Film of still water inside a pane, within 200-600 W/(m2 K) (judgement).
pub const WATER_FILM: Transmittance = Transmittance::from_w_m2_k(400.0);
/// Film of room air on an upright pane, its radiation included: 1/0.13
/// (`iso_6946`, heat flow sideways).
pub const SIDE_FILM: Transmittance = Transmittance::from_w_m2_k(7.7);
/// Film of room air over a level pane: 1/0.10 (`iso_6946`, heat flow upwards).
pub const TOP_FILM: Transmittance = Transmittance::from_w_m2_k(10.0);
/// Film of room air under a level pane: 1/0.17 (`iso_6946`, heat flow downwards).
pub const BOTTOM_FILM: Transmittance = Transmittance::from_w_m2_k(1.0 / 0.17);

/// What a pane is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Glazing {
    /// Soda-lime glass.
    Glass,
    /// Acrylic.
    Acrylic,
}

impl Glazing {
    /// Thermal conductivity, W/(m K): `en_673` for glass; acrylic from memory.
    pub const fn conductivity_w_m_k(self) -> f64 {
        match self {
            Self::Glass => 1.0,
            Self::Acrylic => 0.19,
        }
    }
}

/// A pane between two films.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilmedWall {
    /// What it is made of.
    pub glazing: Glazing,
    /// How thick it is.
    pub thickness: Length,
    /// Film on the warm side.
    pub inside: Transmittance,
    /// Film on the cold side.
    pub outside: Transmittance,
}

impl FilmedWall {
    /// An upright pane of a tank in a room.
    pub const fn side(glazing: Glazing, thickness: Length) -> Self {
        Self {
            glazing,
            thickness,
            inside: WATER_FILM,
            outside: SIDE_FILM,
        }
    }

    /// Heat that passes per area and kelvin.
    ///
    /// ```text
    /// U = 1 / (1/h_in + d/k + 1/h_out)
    /// ```
    ///
    /// # Source
    /// The standards `en_673` and `iso_6946`. The 5.8 W/(m2 K) of a window has other films, a
    /// windy one outside, and is not for tanks.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::{Glazing, FilmedWall};
    /// use lentic::units::{Length, Transmittance};
    /// let window = FilmedWall {
    ///     glazing: Glazing::Glass,
    ///     thickness: Length::from_mm(4.0),
    ///     inside: Transmittance::from_w_m2_k(8.0),
    ///     outside: Transmittance::from_w_m2_k(23.0),
    /// };
    /// assert!((window.transmittance().w_m2_k() - 5.8).abs() < 0.01); // en_673, from memory
    /// ```
    ///
    /// # Limits
    /// A wall or a curtain close behind a pane keeps the heat in: errs high.
    pub fn transmittance(&self) -> Transmittance {
        Transmittance::from_w_m2_k(1.0 / self.resistance_m2_k_w())
    }

    /// The inverse of [`transmittance`](Self::transmittance), m2 K/W.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::{Glazing, FilmedWall};
    /// use lentic::units::Length;
    /// let pane = FilmedWall::side(Glazing::Glass, Length::from_mm(6.0));
    /// assert!((pane.resistance_m2_k_w() - (1.0 / 400.0 + 0.006 + 1.0 / 7.7)).abs() < 1e-9);
    /// ```
    pub fn resistance_m2_k_w(&self) -> f64 {
        1.0 / self.inside.w_m2_k()
            + self.thickness.m() / self.glazing.conductivity_w_m_k()
            + 1.0 / self.outside.w_m2_k()
    }
}
