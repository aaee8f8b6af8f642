//! Numbers of the plant groups and of algae; masses are dry.

use super::group::group;

group! {
    /// Floating plants.
    Floating as "floating":
    /// Gross growth at 2 mol/m2/d of light and 25 C, well fed.
    growth = 0.14 (0.09 to 0.20) "1/d",
        Judgement [Klein2022]: "mixed floaters; duckweed 0.188";
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
    capacity = 150.0 (100.0 to 240.0) "g/m2",
        Published [Driever2005]: "duckweed 177-180; a measured species has its own";
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
    /// Largest uptake of phosphorus by an empty store.
    phosphorus_uptake = 0.004 (0.0015 to 0.012) "g P/g/d",
        Judgement []: "four times the demand of full growth";
    /// Phosphorus at half uptake.
    phosphorus_half = 0.02 (0.005 to 0.08) "mg P/L",
        Memory []: "uptake by floating plants";
    /// Time in which growth starts after planting.
    lag = 5.0 (2.0 to 10.0) "d",
        Practice []: "floaters stand still for some days";
    /// Nitrogen content at which growth stops.
    least_nitrogen = 0.012 (0.006 to 0.018) "g N/g",
        Published [Room1986]: "lowest contents found in a floating fern";
    /// Nitrogen content of a full store.
    most_nitrogen = 0.050 (0.040 to 0.065) "g N/g",
        Published [ReddyDebusk1985]: "duckweed on rich water";
    /// Nitrogen content at planting.
    start_nitrogen = 0.030 (0.02 to 0.04) "g N/g",
        Judgement []: "between the two";
    /// Phosphorus content at which growth stops.
    least_phosphorus = 0.0008 (0.0003 to 0.0015) "g P/g",
        Published [Room1986]: "lowest contents found in a floating fern, 0.03 %";
    /// Phosphorus content of a full store.
    most_phosphorus = 0.010 (0.006 to 0.014) "g P/g",
        Published [Room1986]: "highest contents found in a floating fern, 1.07 %";
    /// Phosphorus content at planting.
    start_phosphorus = 0.005 (0.003 to 0.008) "g P/g",
        Judgement []: "between the two";
}

group! {
    /// What fast and slow submerged plants share.
    Submerged as "submerged":
    /// Nitrogen at half uptake.
    nitrogen_half = 0.20 (0.03 to 0.50) "mg N/L",
        Judgement []: "short uptake experiments, 0.03-1.6";
    /// Phosphorus at half uptake; slow plants grow at half their rate on a quarter of it.
    phosphorus_half = 0.02 (0.005 to 0.08) "mg P/L",
        Memory []: "as floating plants";
    /// Time in which roots establish.
    rooting = 14.0 (7.0 to 28.0) "d",
        Practice []: "new roots within two to four weeks";
    /// Time in which growth starts after planting.
    lag = 7.0 (3.0 to 14.0) "d",
        Practice []: "plants stand still for a week";
    /// Loss of leaves just after planting.
    melt = 0.010 (0.0 to 0.03) "1/d",
        Practice []: "leaves grown in air die under water";
    /// Extinction of light by plants.
    extinction = 0.010 (0.005 to 0.020) "m2/g",
        Published [Janse2005, Scheffer2003]: "lake models";
}

group! {
    /// Fast submerged plants: stems and rootless ones.
    Fast as "fast":
    /// Gross growth at 25 C in 10 h of 50 umol/m2/s, well fed, without added carbon dioxide.
    growth = 0.050 (0.032 to 0.075) "1/d",
        Judgement [Best1986, Larson2007, Tanner1993]: "so that 0.03 net is left, as measured";
    /// Growth over that without added carbon dioxide and under water.
    carbon_factor = 1.0 (1.0 to 1.0) "",
        Judgement []: "shoots in the air grow at twice the rate";
    /// Respiration of a stand in full growth; 0.4 of it at rest.
    respiration = 0.015 (0.010 to 0.022) "1/d",
        Judgement [Janse2005]: "a lake model 0.02";
    /// Death.
    death = 0.005 (0.003 to 0.010) "1/d",
        Published [Janse2005]: "a lake model";
    /// Light at half growth.
    light_half = 30.0 (15.0 to 60.0) "umol/m2/s",
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
    /// Largest uptake of phosphorus by an empty store, by leaves and by roots.
    phosphorus_uptake = 0.001 (0.0003 to 0.003) "g P/g/d",
        Judgement []: "above the demand of full growth";
    /// Phosphorus content at which growth stops.
    least_phosphorus = 0.0008 (0.0005 to 0.0013) "g P/g",
        Published [Janse2005]: "a lake model";
    /// Phosphorus content of a full store.
    most_phosphorus = 0.005 (0.0035 to 0.008) "g P/g",
        Published [Janse2005, Hill1979]: "0.35 % in a lake model, 0.59 % in ditches";
    /// Phosphorus content at planting.
    start_phosphorus = 0.003 (0.002 to 0.0045) "g P/g",
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
    /// Phosphorus content, fixed.
    tissue_phosphorus = 0.002 (0.001 to 0.003) "g P/g",
        Judgement []: "near the critical content";
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
    tissue_phosphorus = 0.004 (0.002 to 0.012) "g P/g",
        Published [Janse2005]: "a lake model, 0.15 to 1.5 %";
    /// Extinction of light by algae.
    extinction = 0.25 (0.10 to 0.35) "m2/g",
        Published [Janse2005]: "a lake model";
    /// Algae at filling.
    start = 0.02 (0.005 to 0.10) "g/m2",
        Judgement []: "spores and films on the plants";
}
