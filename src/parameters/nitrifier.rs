//! Numbers of the nitrifying bacteria.

use super::group::group;

group! {
    /// The two kinds of nitrifying bacteria, at 20 C.
    Nitrifiers as "nitrifiers":
    /// Largest growth rate of the ammonia oxidisers.
    ammonia_growth = 0.35 (0.20 to 0.70) "1/d",
        Published [Sauder2018]: "an aquarium archaeon doubling in 34.9 h at 33 C; faster bacteria above";
    /// Largest growth rate of the nitrite oxidisers.
    nitrite_growth = 0.40 (0.25 to 0.65) "1/d",
        Published [AcidNitrospira]: "0.62 at its best, from a pond";
    /// Ammonia at half growth.
    ammonia_half = 0.20 (0.03 to 0.80) "mg N/L",
        Judgement [Sauder2018, Sin2008]: "between aquarium archaea and treatment plants";
    /// Nitrite at half growth.
    nitrite_half = 0.08 (0.04 to 0.20) "mg N/L",
        Published [Ushiki2017, AcidNitrospira]: "4, 6 and 10 umol/L in three strains";
    /// Oxygen at half growth of the ammonia oxidisers.
    ammonia_oxygen_half = 0.6 (0.3 to 1.0) "mg/L",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Oxygen at half growth of the nitrite oxidisers.
    nitrite_oxygen_half = 0.8 (0.3 to 1.3) "mg/L",
        Judgement [HiattGrady2008, Sin2008]: "the low side of treatment models";
    /// Cells grown on ammonia.
    ammonia_yield = 0.18 (0.11 to 0.24) "g COD/g N",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Cells grown on nitrite.
    nitrite_yield = 0.06 (0.03 to 0.09) "g COD/g N",
        Published [HiattGrady2008, Sin2008]: "range of treatment models";
    /// Decay of both.
    decay = 0.05 (0.02 to 0.10) "1/d",
        Judgement [HiattGrady2008, Sin2008]: "slower than in treatment models: starved films live long";
    /// pH at which the ammonia oxidisers work at half speed.
    acid_ph = 6.3 (5.9 to 6.7) "",
        Judgement [BagchiAquaria]: "aquarium filters still nitrify at pH 6";
    /// Share of the ammonia oxidisers that sit on the bed.
    bed_share = 0.5 (0.2 to 0.8) "",
        Judgement []: "bed against glass, plants and filter";
    /// Velocity with which ammonia reaches the others through still water.
    film_velocity = 0.5 (0.2 to 1.5) "m/d",
        Judgement []: "three square metres of surface to one of floor, behind a millimetre";
    /// Ammonia oxidisers brought in on each gram of plants, dry; nitrite oxidisers are 0.4 of it.
    plant_seed = 4e-6 (4e-7 to 4e-5) "g COD/g",
        Judgement []: "leaves and roots from running tanks";
    /// Ammonia oxidisers at filling, without media from a running tank.
    ammonia_seed = 5e-5 (5e-6 to 5e-4) "g COD/m2",
        Judgement []: "so that ammonia peaks after two weeks in the dark";
    /// Nitrite oxidisers at filling, without media from a running tank.
    nitrite_seed = 2e-5 (2e-6 to 2e-4) "g COD/m2",
        Judgement []: "so that nitrite peaks after three to four weeks in the dark";
}
