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
    labile_share = 0.052 (0.016 to 0.104) "",
        Published [Zou2018]: "27 flooded soils";
    /// Rate constant of that breakdown at 25 C.
    mineralisation = 0.048 (0.014 to 0.078) "1/d",
        Published [Zou2018]: "halved from 35 C";
    /// Share of the mineral nitrogen stirred into the water at filling.
    stirred_share = 0.03 (0.0 to 0.12) "",
        Judgement []: "a careful filling to a careless one";
    /// Phosphorus that leaves the bed with each gram of nitrogen.
    phosphorus_per_nitrogen = 0.10 (0.02 to 0.25) "g P/g N",
        Judgement [Reddy1983]: "below the 0.22 of an uncapped soil";
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
    /// How much roots, gas and burrows speed transport up.
    enhancement = 1.5 (1.0 to 4.0) "",
        Judgement [Janse2005]: "planting and gas; a lake model takes 5 for burrowed mud";
    /// Share of the release that bacteria in the cap's oxic top turn into nitrate.
    oxidised_share = 0.0 (0.0 to 0.0) "",
        Judgement []: "off; a cap that is months old oxidises some of it on the way";
}
