//! How far the light may lie from what is said of it.

use super::group::group;

group! {
    /// The light at the water surface against the light given.
    Lamp as "lamp":
    /// True light over the light given; a meter reading is taken as true.
    level = 1.0 (1.0 to 1.0) "",
        Judgement []: "widened where the light is known by class or lumens alone";
}
