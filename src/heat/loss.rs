//! Heat lost from a tank to its room.

use super::evaporation::{Climate, latent_power};
use super::wall::{BOTTOM_FILM, FilmedWall, Glazing, TOP_FILM, WATER_FILM};
use crate::units::{Area, Length, MassRate, Power, Share, Transmittance};

/// Still air between water and lid, m2 K/W: the film of a level pane (`iso_6946`)
/// on the underside of the lid and over the water, taken together (judgement).
const HEADSPACE_RESISTANCE: f64 = 0.17;
/// A shelf of 18 mm timber at 0.13 W/(m K), m2 K/W (from memory).
const SHELF_RESISTANCE: f64 = 0.018 / 0.13;
/// Thickness of a lid, m.
const LID_THICKNESS_M: f64 = 0.004;

/// Film of room air over open water: convection, Nu = 0.15 Ra^(1/3), about 3.5,
/// and radiation 5.6 W/(m2 K); evaporation comes on top.
pub const SURFACE_FILM: Transmittance = Transmittance::from_w_m2_k(9.1);

/// What lies over the water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Top {
    /// Nothing.
    Open,
    /// A cover glass that lets this share of the evaporation through; see
    /// [`LID_FACTOR`](super::evaporation::LID_FACTOR).
    Lid(Share),
}

/// The surfaces that a tank loses heat through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Enclosure {
    /// Upright panes, wetted inside.
    pub sides: Area,
    /// The bottom pane, on a shelf.
    pub bottom: Area,
    /// The water surface.
    pub surface: Area,
    /// What the panes are made of.
    pub glazing: Glazing,
    /// Of the upright panes.
    pub side_thickness: Length,
    /// Of the bottom pane.
    pub bottom_thickness: Length,
    /// What lies over the water.
    pub top: Top,
}

/// Heat lost, by way out; below zero where the room warms the tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatLoss {
    /// Through the upright panes.
    pub sides: Power,
    /// Through the bottom.
    pub bottom: Power,
    /// From the surface or the lid by convection and radiation.
    pub surface: Power,
    /// With the vapour.
    pub evaporation: Power,
}

impl HeatLoss {
    /// All together: what a heater gives to hold the temperature.
    pub fn total(&self) -> Power {
        self.sides + self.bottom + self.surface + self.evaporation
    }
}

impl Enclosure {
    /// Heat lost at a water and room temperature.
    ///
    /// ```text
    /// Q = (U_side A_side + U_bottom A_bottom + U_top A_top) (T_water - T_air) + L E
    /// ```
    ///
    /// Lamps, pumps and the wall behind the tank are left out: the loss errs high.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::{Climate, Enclosure, Glazing, Top};
    /// use lentic::units::{Area, Length, Share, Temperature};
    /// use lentic::water::atmosphere::SEA_LEVEL;
    /// let tank = Enclosure {
    ///     sides: Area::from_cm2(2.0 * (60.0 + 30.0) * 36.0),
    ///     bottom: Area::from_cm2(1800.0),
    ///     surface: Area::from_cm2(1800.0),
    ///     glazing: Glazing::Glass,
    ///     side_thickness: Length::from_mm(6.0),
    ///     bottom_thickness: Length::from_mm(6.0),
    ///     top: Top::Open,
    /// };
    /// let room = Climate {
    ///     water: Temperature::from_celsius(25.0),
    ///     air: Temperature::from_celsius(20.0),
    ///     humidity: Share::from_percent(50.0),
    ///     pressure: SEA_LEVEL,
    /// };
    /// let watts = tank.loss(&room).total().watts();
    /// assert!((50.0..60.0).contains(&watts));
    /// ```
    ///
    /// # Source
    /// Panes by the standards `en_673` and `iso_6946`, evaporation after Shah 2014 (`shah_2014`);
    /// the films over the water and the shelf are judgement.
    ///
    /// # Limits
    /// Evaporation is known to 18 % in the mean; draughts raise the whole.
    pub fn loss(&self, climate: &Climate) -> HeatLoss {
        let warmer_k = climate.water.celsius() - climate.air.celsius();
        let through =
            |u: Transmittance, area: Area| Power::from_watts(u.w_m2_k() * area.m2() * warmer_k);
        let side = FilmedWall::side(self.glazing, self.side_thickness);
        HeatLoss {
            sides: through(side.transmittance(), self.sides),
            bottom: through(self.bottom_transmittance(), self.bottom),
            surface: through(self.top_transmittance(), self.surface),
            evaporation: latent_power(self.evaporation(climate), climate.water),
        }
    }

    /// Water that evaporates, past the lid where there is one.
    pub fn evaporation(&self, climate: &Climate) -> MassRate {
        let open = climate.evaporation(self.surface);
        match self.top {
            Top::Open => open,
            Top::Lid(passed) => open * passed.fraction(),
        }
    }

    fn bottom_transmittance(&self) -> Transmittance {
        let pane = FilmedWall {
            glazing: self.glazing,
            thickness: self.bottom_thickness,
            inside: WATER_FILM,
            outside: BOTTOM_FILM,
        };
        Transmittance::from_w_m2_k(1.0 / (pane.resistance_m2_k_w() + SHELF_RESISTANCE))
    }

    fn top_transmittance(&self) -> Transmittance {
        match self.top {
            Top::Open => SURFACE_FILM,
            Top::Lid(_) => {
                let lid = LID_THICKNESS_M / Glazing::Glass.conductivity_w_m_k();
                let resistance = HEADSPACE_RESISTANCE + lid + 1.0 / TOP_FILM.w_m2_k();
                Transmittance::from_w_m2_k(1.0 / resistance)
            }
        }
    }
}
