//! The whole gas exchange of a tank: its surface, its floaters, its bubbles.

use super::bubble::Bubbles;
use super::plume;
use super::surface::{self, Surface};
use crate::units::{Area, Flow, Share, Temperature, Velocity};
use crate::water::Gas;

/// What a tank's gas exchange depends on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exchange {
    /// The water surface.
    pub area: Area,
    /// What it is like where nothing ripples it.
    pub calm: Surface,
    /// Transfer velocity there at a Schmidt number of 600; see [`Aeration`](crate::parameters::Aeration).
    pub calm_k600: Velocity,
    /// The share that a pump or bubbles ripple; see [`plume::rippled_share`].
    pub rippled: Share,
    /// Transfer velocity there at a Schmidt number of 600.
    pub rippled_k600: Velocity,
    /// The share under floating plants.
    pub floaters: Share,
    /// See [`Aeration`](crate::parameters::Aeration).
    pub mat_passage: Share,
    /// Bubbles, where there are any.
    pub bubbles: Option<Bubbles>,
}

/// Clearance by way of the surface and of the bubbles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clearance {
    /// Of the surface, less what the bubbles take over.
    pub surface: Flow,
    /// Of the bubbles and the surface where they come up.
    pub bubbles: Flow,
}

impl Clearance {
    /// Both together.
    pub fn total(self) -> Flow {
        self.surface + self.bubbles
    }
}

impl Exchange {
    /// Clearance of a gas.
    ///
    /// The efficiency of bubbles was found in tanks with a surface. So what the
    /// surface of their plume would exchange by itself is theirs and counts no
    /// second time, up to all that they exchange; the rest counts as surface,
    /// ripples included.
    ///
    /// # Example
    /// ```
    /// use lentic::air::{Exchange, Surface};
    /// use lentic::units::{Area, Share, Temperature, Velocity};
    /// use lentic::water::Gas;
    /// let tank = Exchange {
    ///     area: Area::from_m2(0.18),
    ///     calm: Surface::Open,
    ///     calm_k600: Velocity::from_m_d(0.35),
    ///     rippled: Share::ZERO,
    ///     rippled_k600: Velocity::from_m_d(1.0),
    ///     floaters: Share::from_percent(50.0),
    ///     mat_passage: Share::from_percent(30.0),
    ///     bubbles: None,
    /// };
    /// let clearance = tank.clearance(Gas::Oxygen, Temperature::from_celsius(25.0));
    /// assert!(clearance.total().l_h() < 3.0);
    /// ```
    ///
    /// # Limits
    /// No exchange of a small indoor tank was measured: that of a calm surface spans a
    /// factor of five.
    pub fn clearance(&self, gas: Gas, temperature: Temperature) -> Clearance {
        let velocity = self.transfer_velocity(gas, temperature);
        let whole = surface::clearance(velocity, self.area);
        let Some(bubbles) = self.bubbles else {
            return Clearance {
                surface: whole,
                bubbles: Flow::ZERO,
            };
        };
        let plume = plume::area(bubbles.submergence).min(self.area);
        let by_bubbles = bubbles.clearance(gas, temperature);
        Clearance {
            surface: whole - surface::clearance(velocity, plume).min(by_bubbles),
            bubbles: by_bubbles,
        }
    }

    /// Mean over the surface, floaters included.
    fn transfer_velocity(&self, gas: Gas, temperature: Temperature) -> Velocity {
        let open = self.open_velocity(gas, temperature);
        surface::under_floaters(open, self.floaters, self.mat_passage)
    }

    /// Mean over the surface that no floaters cover, ripples included.
    pub fn open_velocity(&self, gas: Gas, temperature: Temperature) -> Velocity {
        let of = |k600, kind| surface::transfer_velocity(k600, kind, gas, temperature);
        let rippled = self.rippled.fraction();
        of(self.calm_k600, self.calm) * (1.0 - rippled)
            + of(self.rippled_k600, Surface::Rippled) * rippled
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parameters::Aeration;
    use crate::units::Length;

    fn exchange(area_m2: f64, bubbles: Option<Bubbles>) -> Exchange {
        Exchange {
            area: Area::from_m2(area_m2),
            calm: Surface::Open,
            calm_k600: Velocity::from_m_d(0.35),
            rippled: Share::ZERO,
            rippled_k600: Velocity::from_m_d(1.0),
            floaters: Share::ZERO,
            mat_passage: Share::from_fraction(0.3),
            bubbles,
        }
    }

    fn bubbles(l_min: f64) -> Bubbles {
        Bubbles {
            air: Flow::from_l_min(l_min),
            submergence: Length::from_cm(30.0),
            efficiency_per_m: 0.04,
            alpha: 1.0,
            beta: 1.0,
        }
    }

    #[test]
    fn a_plume_that_fills_the_surface_leaves_the_bubbles_alone() {
        let temperature = Temperature::from_celsius(24.0);
        let tank = exchange(0.01, Some(bubbles(1.0)));
        let clearance = tank.clearance(Gas::Oxygen, temperature);
        assert_eq!(clearance.surface, Flow::ZERO);
        let alone = bubbles(1.0).clearance(Gas::Oxygen, temperature);
        assert_eq!(clearance.total(), alone);
    }

    #[test]
    fn the_least_air_changes_nothing_and_more_air_never_less() {
        let temperature = Temperature::from_celsius(24.0);
        let total = |l_min: f64| {
            let tank = exchange(0.2, Some(bubbles(l_min)));
            tank.clearance(Gas::Oxygen, temperature).total().l_min()
        };
        let still = exchange(0.2, None);
        let alone = still.clearance(Gas::Oxygen, temperature).total().l_min();
        assert!((total(0.0) / alone - 1.0).abs() < 1e-12);
        for l_min in [0.0, 0.001, 0.01, 0.1, 1.0] {
            assert!(total(l_min + 0.001) >= total(l_min));
        }
    }

    #[test]
    fn floaters_and_lids_lower_the_exchange_and_ripples_raise_it() {
        let temperature = Temperature::from_celsius(24.0);
        let total = |tank: Exchange| tank.clearance(Gas::Oxygen, temperature).total().l_min();
        let open = exchange(0.2, None);
        let covered = Exchange {
            floaters: Share::from_fraction(0.5),
            ..open
        };
        let rippled = Exchange {
            rippled: Share::from_fraction(0.5),
            ..open
        };
        let lidded = Exchange {
            calm: Surface::Lidded,
            calm_k600: Velocity::from_m_d(Aeration::reference().lid_k600.typical),
            ..open
        };
        assert!((total(covered) / total(open) - 0.65).abs() < 1e-12);
        assert!(total(lidded) < total(open) && total(open) < total(rippled));
    }
}
