//! Numbers of the nitrifying bacteria.

use super::group::group;

group! {
    /// The two kinds of nitrifying bacteria, at 20 C.
    Nitrifiers as "nitrifiers":
    /// Largest growth rate of the ammonia oxidisers.
    ammonia_growth = 0.55 (0.40 to 0.80) "1/d",
        Judgement [HiattGrady2008, Sin2008]: "the low side, for attached growth";
    /// Largest growth rate of the nitrite oxidisers.
    nitrite_growth = 0.55 (0.35 to 0.80) "1/d",
        Judgement [HiattGrady2008, Sin2008]: "the low side, for attached growth";
    /// Ammonia at half growth.
    ammonia_half = 0.5 (0.14 to 1.0) "mg N/L",
        Published [Sin2008]: "range of treatment models";
    /// Nitrite at half growth.
    nitrite_half = 0.8 (0.2 to 1.5) "mg N/L",
        Published [Sin2008]: "range of treatment models";
    /// Oxygen at half growth of the ammonia oxidisers.
    ammonia_oxygen_half = 0.6 (0.3 to 1.0) "mg/L",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Oxygen at half growth of the nitrite oxidisers.
    nitrite_oxygen_half = 1.2 (0.4 to 1.5) "mg/L",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Cells grown on ammonia.
    ammonia_yield = 0.18 (0.11 to 0.24) "g COD/g N",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Cells grown on nitrite.
    nitrite_yield = 0.06 (0.03 to 0.09) "g COD/g N",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Decay of both.
    decay = 0.096 (0.05 to 0.15) "1/d",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Ammonia oxidisers at filling, without media from a running tank.
    ammonia_seed = 5e-5 (5e-6 to 5e-4) "g COD/m2",
        Judgement []: "fitted, so that ammonia peaks after two weeks in the dark";
    /// Nitrite oxidisers at filling, without media from a running tank.
    nitrite_seed = 2e-5 (2e-6 to 2e-4) "g COD/m2",
        Judgement []: "fitted, so that nitrite peaks after four weeks in the dark";
}
