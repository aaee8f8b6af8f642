//! Numbers of the soil and the cap.

use super::group::group;

group! {
    /// What the soil holds and gives.
    Soil as "soil":
    /// Dry mass of the settled layer per volume.
    dry_bulk_density = 700.0 (400.0 to 1200.0) "kg/m3",
        Judgement []: "wet settled layers from potting mix to topsoil";
    /// Pore share.
    porosity = 0.70 (0.55 to 0.80) "",
        Judgement []: "follows the bulk density";
    /// Nitrogen in all forms.
    total_nitrogen = 5.0 (1.5 to 12.0) "g/kg",
        Judgement []: "topsoil to potting mix";
    /// Ammonium at flooding, dissolved and exchangeable.
    mineral_nitrogen = 0.10 (0.02 to 0.30) "g/kg",
        Memory []: "unfertilised soil 0.02-0.05, charged potting mix 0.2-0.3";
    /// Linear sorption of ammonium.
    ammonium_kd = 2.0 (0.5 to 8.0) "L/kg",
        Memory []: "exchange of ammonium on soils and sediments";
    /// Share of the nitrogen that breaks down within weeks of flooding.
    fast_share = 0.052 (0.016 to 0.104) "",
        Published [Zou2018]: "27 flooded mineral soils";
    /// Share of the nitrogen that breaks down over months.
    slow_share = 0.06 (0.02 to 0.20) "",
        Judgement [StanfordSmith1972, Reddy1983]: "between potentials of field soils and what a flooded bed gives off";
    /// Rate constant of the fast share at 25 C.
    mineralisation = 0.048 (0.014 to 0.078) "1/d",
        Published [Zou2018]: "halved from 35 C";
    /// Rate constant of the slow share at 25 C.
    slow_mineralisation = 0.004 (0.0025 to 0.006) "1/d",
        Published [StanfordSmith1972]: "0.054 a week at 35 C, halved";
    /// Rate constant of the nitrogen in neither share at 25 C.
    stable_mineralisation = 0.02 (0.01 to 0.06) "1/year",
        Judgement []: "fields give off about 2 % a year, cooler than tanks";
    /// Days of mineralisation that roots leave on the soil's exchanger.
    exchange_turnover = 15.0 (9.5 to 24.0) "d",
        Memory []: "turnover of exchangeable ammonium under a bed of milfoil";
    /// Share of the mineral nitrogen stirred into the water at filling.
    stirred_share = 0.03 (0.0 to 0.12) "",
        Judgement []: "a careful filling to a careless one";
    /// Phosphate in the pore water at flooding.
    pore_phosphate = 1.0 (0.1 to 5.0) "mg P/L",
        Judgement []: "topsoil; rich mixes hold more";
    /// Linear sorption of phosphate.
    phosphate_kd = 20.0 (5.0 to 100.0) "L/kg",
        Memory []: "iron and clay hold most of it";
    /// Phosphorus that flooding sets free as iron is reduced.
    reducible_phosphorus = 0.08 (0.02 to 0.30) "g/kg",
        Judgement [Kolath2022]: "set with the release of flooded farm soils in view";
    /// Rate constant of that at 25 C.
    reduction = 0.07 (0.03 to 0.20) "1/d",
        Judgement []: "weeks from flooding to the end of reduction";
    /// Rate at which phosphorus of dead matter that stays in the bed comes back.
    stable_phosphorus_return = 0.1 (0.03 to 0.30) "1/year",
        Judgement []: "so that an old bed does not run dry by bookkeeping";
}

group! {
    /// How the cap lets ammonium through.
    Cap as "cap":
    /// Pore share.
    porosity = 0.40 (0.35 to 0.45) "",
        Judgement []: "sands as they settle under water";
    /// Retardation of ammonium.
    retardation = 1.2 (1.0 to 1.6) "",
        Memory []: "weak exchange on clean quartz sand";
    /// Diffusion coefficient of ammonium in free water at 25 C.
    ammonium_diffusivity = 1.71e-4 (1.5e-4 to 1.8e-4) "m2/d",
        Memory [LiGregory1974]: "at infinite dilution";
    /// Linear sorption of phosphate on clean sand.
    phosphate_kd = 5.0 (1.0 to 30.0) "L/kg",
        Judgement [DelBubba2003]: "sands that held phosphate back for two to twelve months";
    /// Share of the phosphate carried past the grains that the oxic top lets by.
    phosphate_passed = 0.3 (0.1 to 0.7) "",
        Judgement []: "iron in the oxic top catches part of it";
    /// Size that 10 % of the grains by mass are finer than.
    effective_grain = 0.5 (0.5 to 0.5) "mm",
        Judgement []: "of the cap chosen";
    /// Exchange by slow currents through the pores over the cap's permeability.
    pore_exchange = 6e3 (1e3 to 3e4) "1/d",
        Judgement []: "order of magnitude for currents of a half degree a metre; m2/d per m2";
    /// How much roots, gas and burrows speed transport up.
    enhancement = 1.5 (1.0 to 4.0) "",
        Judgement [Janse2005]: "planting and gas; a lake model takes 5 for burrowed mud";
    /// Share of the release that bacteria in the cap's oxic top turn into nitrate.
    oxidised_share = 0.0 (0.0 to 0.0) "",
        Judgement []: "off; a cap that is months old oxidises some of it on the way";
}
