//! Lifting and hydrogen sulfide: formulas of the sources named, worked out by hand.

use lentic::plan::lifting::Lift;
use lentic::units::Length;

use crate::compare::{Within, check};

/// Revised NIOSH lifting equation, DHHS (NIOSH) 94-110: its terms evaluated by hand.
#[test]
fn recommended_weight_limits_follow_the_lifting_equation() {
    for (horizontal, vertical, travel, grip, limit_kg) in [
        (25.0, 75.0, 25.0, 1.0, 23.0),
        (40.0, 0.0, 75.0, 0.95, 9.314),
        (30.0, 0.0, 75.0, 0.95, 12.418),
    ] {
        let lift = Lift {
            horizontal: Length::from_cm(horizontal),
            vertical: Length::from_cm(vertical),
            travel: Length::from_cm(travel),
            turn_deg: 0.0,
            frequency: 1.0,
            grip,
        };
        let what = format!("RWL at H {horizontal}, V {vertical}");
        check(
            &what,
            lift.recommended_limit().kg(),
            limit_kg,
            Within::Absolute(5e-4),
        );
    }
    let index = 20.0 / Lift::bag_to_stand().recommended_limit().kg();
    check(
        "lifting index of a 20 kg bag",
        index,
        1.611,
        Within::Absolute(5e-4),
    );
}
