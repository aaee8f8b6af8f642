//! How heavy a lift is for one person.

use crate::units::{Length, Mass};

/// Load constant, kg.
const LOAD_KG: f64 = 23.0;
/// Horizontal distance, cm: nearer counts as this, further is no lift at all.
const HORIZONTAL_CM: (f64, f64) = (25.0, 63.0);
/// Most favourable height of the hands and the highest, cm.
const VERTICAL_CM: (f64, f64) = (75.0, 175.0);
/// Shortest and longest travel, cm.
const TRAVEL_CM: (f64, f64) = (25.0, 175.0);
/// Most turn, degrees.
const TURN_DEG: f64 = 135.0;

/// One lift of a load with both hands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lift {
    /// From the ankles to the hands.
    pub horizontal: Length,
    /// From the floor to the hands at the start.
    pub vertical: Length,
    /// How far up or down it travels.
    pub travel: Length,
    /// How far the body turns, degrees.
    pub turn_deg: f64,
    /// Multiplier for how often it is repeated; 1 for a rare lift.
    pub frequency: f64,
    /// Multiplier for the grip: 1 good, 0.95 fair, 0.90 poor.
    pub grip: f64,
}

impl Lift {
    /// A bag from the floor to a stand: hands 30 cm out, from the floor up 75 cm, no
    /// handles.
    pub fn bag_to_stand() -> Self {
        Self {
            horizontal: Length::from_cm(30.0),
            vertical: Length::ZERO,
            travel: Length::from_cm(75.0),
            turn_deg: 0.0,
            frequency: 1.0,
            grip: 0.95,
        }
    }

    /// The load that nearly all healthy adults can lift so without harm over time.
    ///
    /// ```text
    /// RWL = 23 (25/H)(1 - 0.003 |V - 75|)(0.82 + 4.5/D)(1 - 0.0032 A) FM CM
    /// ```
    ///
    /// `H` horizontal, `V` vertical, `D` travel (cm), `A` turn (degrees).
    ///
    /// # Valid range
    /// Two hands, firm floor, healthy adults; zero beyond 63 cm out, 175 cm up or along,
    /// 135 degrees.
    ///
    /// # Source
    /// Revised NIOSH lifting equation, DHHS (NIOSH) 94-110.
    ///
    /// # Example
    /// ```
    /// use lentic::plan::lifting::Lift;
    /// let limit = Lift::bag_to_stand().recommended_limit();
    /// assert!((limit.kg() - 12.418).abs() < 5e-4);
    /// ```
    pub fn recommended_limit(&self) -> Mass {
        let (near, far) = HORIZONTAL_CM;
        let (best, highest) = VERTICAL_CM;
        let (short, long) = TRAVEL_CM;
        let (out, up, along) = (self.horizontal.cm(), self.vertical.cm(), self.travel.cm());
        if out > far || up > highest || along > long || self.turn_deg > TURN_DEG {
            return Mass::ZERO;
        }
        let horizontal = near / out.max(near);
        let vertical = 1.0 - 0.003 * (up - best).abs();
        let travel = 0.82 + 4.5 / along.max(short);
        let turn = 1.0 - 0.0032 * self.turn_deg;
        let factors = horizontal * vertical * travel * turn * self.frequency * self.grip;
        Mass::from_kg(LOAD_KG * factors)
    }
}
