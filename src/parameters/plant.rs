//! Numbers of the plant groups and of algae; masses are dry.

use super::group::group;

group! {
    /// Floating plants.
    Floating as "floating":
    /// Largest gross growth rate.
    growth = 0.47 (0.30 to 0.55) "1/d",
        Published [Klein2022]: "duckweed";
    /// Loss at 25 C, to respiration and death.
    loss = 0.05 (0.03 to 0.07) "1/d",
        Published [Klein2022]: "duckweed";
    /// Share of the loss that is dead tissue.
    dead_share = 0.4 (0.2 to 0.6) "",
        Judgement []: "no measurement found";
    /// Daily light at half growth.
    daily_light_half = 3.0 (1.5 to 6.0) "mol/m2/d",
        Judgement [Driever2005]: "fitted, also to the conditions of duckweed tests";
    /// Mass at which crowding stops growth.
    capacity = 100.0 (60.0 to 180.0) "g/m2",
        Judgement [Driever2005, Klein2022]: "below the 177-180 of duckweed";
    /// Mass of one closed layer.
    closed_layer = 25.0 (10.0 to 40.0) "g/m2",
        Judgement []: "a mixed cover; duckweed 10, large floaters 35-60";
    /// Share of the light that one layer takes.
    absorptance = 0.82 (0.70 to 0.95) "",
        Judgement []: "green leaves take 0.80-0.85";
    /// Largest uptake of nitrogen by an empty store.
    uptake = 0.030 (0.015 to 0.10) "g N/g/d",
        Judgement []: "above the demand of full growth, 0.018";
    /// Nitrogen at half uptake.
    nitrogen_half = 0.10 (0.034 to 0.20) "mg N/L",
        Published [Klein2022, Scheffer2003]: "0.034 and 0.2";
    /// Phosphorus at half growth.
    phosphorus_half = 0.005 (0.002 to 0.02) "mg P/L",
        Published [Klein2022]: "duckweed at the low end, 0.0043";
    /// Nitrogen content at which growth stops.
    least_nitrogen = 0.012 (0.006 to 0.018) "g N/g",
        Published [Room1986]: "lowest contents found in a floating fern";
    /// Nitrogen content of a full store.
    most_nitrogen = 0.050 (0.040 to 0.065) "g N/g",
        Published [ReddyDebusk1985]: "duckweed on rich water";
    /// Nitrogen content at planting.
    start_nitrogen = 0.030 (0.02 to 0.04) "g N/g",
        Judgement []: "between the two";
    /// Phosphorus taken up with growth.
    tissue_phosphorus = 0.0025 (0.0013 to 0.008) "g P/g",
        Judgement []: "plants bring a store, so near the critical content";
}

group! {
    /// What fast and slow submerged plants share.
    Submerged as "submerged":
    /// Growth without added carbon dioxide as a share of full growth.
    carbon_factor = 0.6 (0.3 to 0.9) "",
        Judgement []: "photosynthesis falls further than growth does";
    /// Nitrogen at half uptake.
    nitrogen_half = 0.20 (0.03 to 0.50) "mg N/L",
        Judgement []: "short uptake experiments, 0.03-1.6";
    /// Phosphorus at half growth.
    phosphorus_half = 0.005 (0.002 to 0.02) "mg P/L",
        Judgement []: "as floating plants";
    /// Time in which roots establish.
    rooting = 14.0 (7.0 to 28.0) "d",
        Practice []: "new roots within two to four weeks";
    /// Time in which growth starts after planting.
    lag = 7.0 (3.0 to 14.0) "d",
        Practice []: "plants stand still for a week";
    /// Loss of leaves just after planting.
    melt = 0.010 (0.0 to 0.03) "1/d",
        Practice []: "leaves grown in air die under water";
    /// Phosphorus taken up with growth.
    tissue_phosphorus = 0.0020 (0.0013 to 0.005) "g P/g",
        Judgement []: "plants bring a store, so near the critical content";
    /// Extinction of light by plants.
    extinction = 0.010 (0.005 to 0.020) "m2/g",
        Published [Janse2005, Scheffer2003]: "lake models";
}

group! {
    /// Fast submerged plants: stems and rootless ones.
    Fast as "fast":
    /// Largest gross growth rate at 25 C with carbon dioxide added.
    growth = 0.18 (0.10 to 0.25) "1/d",
        Judgement [NielsenSandJensen1991, Janse2005]: "at most 0.109 net at 15 C; a lake model 0.2";
    /// Respiration.
    respiration = 0.015 (0.010 to 0.025) "1/d",
        Judgement [Janse2005]: "a lake model 0.02";
    /// Death.
    death = 0.005 (0.003 to 0.010) "1/d",
        Published [Janse2005]: "a lake model";
    /// Light at half growth.
    light_half = 30.0 (15.0 to 80.0) "umol/m2/s",
        Published [RodriguesThomaz2010, Janse2005]: "16-35 in one, 78 in the other";
    /// Largest uptake of nitrogen by an empty store.
    uptake = 0.015 (0.005 to 0.050) "g N/g/d",
        Judgement []: "short uptake experiments on a pondweed, 15-28 mg/g/d";
    /// Nitrogen content at which growth stops.
    least_nitrogen = 0.010 (0.008 to 0.013) "g N/g",
        Published [Janse2005, GerloffKrombholz1966]: "1.0 and 1.3 %";
    /// Nitrogen content of a full store.
    most_nitrogen = 0.035 (0.030 to 0.045) "g N/g",
        Published [Janse2005]: "a lake model";
    /// Nitrogen content at planting.
    start_nitrogen = 0.020 (0.014 to 0.028) "g N/g",
        Judgement []: "between the two";
    /// Uptake by established roots over uptake by leaves.
    root_uptake = 0.30 (0.0 to 0.7) "",
        Judgement []: "rootless plants 0, rooted ones more in poor water";
}

group! {
    /// Slow submerged plants: rosettes, ferns, mosses.
    Slow as "slow":
    /// Largest gross growth rate at 25 C at the usual carbon dioxide.
    growth = 0.035 (0.02 to 0.06) "1/d",
        Judgement []: "growth forms";
    /// Respiration.
    respiration = 0.005 (0.003 to 0.008) "1/d",
        Judgement []: "growth forms";
    /// Death.
    death = 0.003 (0.001 to 0.005) "1/d",
        Judgement []: "growth forms";
    /// Light at half growth.
    light_half = 15.0 (5.0 to 30.0) "umol/m2/s",
        Judgement []: "shade plants";
    /// Nitrogen content, fixed.
    tissue_nitrogen = 0.022 (0.015 to 0.03) "g N/g",
        Judgement []: "growth forms";
    /// Share of the need that established roots meet.
    rooted_share = 0.5 (0.0 to 0.9) "",
        Judgement []: "epiphytes none, rosettes most";
}

group! {
    /// Algae, on all surfaces and in the water.
    Algae as "algae":
    /// Largest growth rate at 12 h of light.
    growth = 1.0 (0.6 to 1.5) "1/d",
        Published [Janse2005]: "a lake model";
    /// Loss.
    loss = 0.20 (0.10 to 0.35) "1/d",
        Judgement []: "respiration, grazing and washing off";
    /// Light at half growth.
    light_half = 40.0 (15.0 to 80.0) "umol/m2/s",
        Published [Janse2005]: "the high end, 78";
    /// Nitrogen at half growth.
    nitrogen_half = 0.05 (0.01 to 0.15) "mg N/L",
        Judgement []: "films in streams";
    /// Phosphorus at half growth.
    phosphorus_half = 0.010 (0.003 to 0.030) "mg P/L",
        Judgement []: "films in streams";
    /// Nitrogen content, fixed.
    tissue_nitrogen = 0.06 (0.03 to 0.10) "g N/g",
        Published [Janse2005]: "a lake model";
    /// Phosphorus content, fixed.
    tissue_phosphorus = 0.008 (0.003 to 0.015) "g P/g",
        Published [Janse2005]: "a lake model";
    /// Extinction of light by algae.
    extinction = 0.25 (0.10 to 0.35) "m2/g",
        Published [Janse2005]: "a lake model";
    /// Algae at filling.
    start = 0.02 (0.005 to 0.10) "g/m2",
        Judgement []: "spores and films on the plants";
}
