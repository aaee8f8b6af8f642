//! Numbers and places in the sentences of findings.

use crate::geometry::FloorPlace;
pub(super) use crate::units::list::{either, listed};

/// Where something is: "at the front".
pub(super) const fn place(place: FloorPlace) -> &'static str {
    match place {
        FloorPlace::Everywhere => "everywhere",
        FloorPlace::Back => "at the back",
        FloorPlace::Front => "at the front",
        FloorPlace::Left => "at the left end",
        FloorPlace::Right => "at the right end",
        FloorPlace::BackLeft => "in the back left corner",
        FloorPlace::BackRight => "in the back right corner",
        FloorPlace::FrontLeft => "in the front left corner",
        FloorPlace::FrontRight => "in the front right corner",
        FloorPlace::Middle => "away from the walls",
    }
}

/// How many of a hundred a share is, as odds are told: whole, and never flattered.
pub fn of_100(share: f64) -> f64 {
    // what stands off a whole number by less is an error of the division
    (share * 100.0 + 1e-9).floor()
}
