//! What the movement of the water does for plants and bacteria.

use super::group::group;

group! {
    /// Leaves behind a film of still water, and a sponge that water is drawn through.
    Moving as "moving":
    /// All surfaces of a gram of dry submerged plant.
    leaf_area = 0.10 (0.065 to 0.126) "m2/g",
        Published [SherKaul1995]: "four species: 652, 762, 1205 and 1255 cm2/g";
    /// Share of its ammonia that water loses at most on its way through a sponge.
    sponge_share = 0.2 (0.05 to 0.5) "",
        Judgement []: "seconds behind the film of a coarse pore; no measurement found";
}
