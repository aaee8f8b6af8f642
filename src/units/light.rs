//! Light for plants and light for eyes.

use super::quantity::{Unit, quantity};

quantity! {
    /// Photosynthetic photon flux density (PAR, 400-700 nm); base umol/(m2 s).
    PhotonFlux, "a light level", example "60 umol/m2/s",
    base from_umol_m2_s / umol_m2_s,
    units [Unit::scaled("umol/m2/s", 1.0, &["umol m-2 s-1", "umol/(m2 s)", "umol/m2s", "umol", "umol/s/m2", "par", "ppfd"])]
}

quantity! {
    /// Luminous flux of a lamp; base lumen.
    LuminousFlux, "a luminous flux", example "1200 lm",
    base from_lumens / lumens,
    units [Unit::scaled("lm", 1.0, &["lumen"])]
}
