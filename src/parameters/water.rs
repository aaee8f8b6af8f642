//! Numbers of the water column and of tap water.

use super::group::group;

group! {
    /// What happens to light, nitrogen and phosphorus in the water.
    Water as "water":
    /// Extinction of light by the water itself.
    extinction = 0.5 (0.2 to 2.0) "1/m",
        Judgement []: "clear water to tannin";
    /// Velocity with which nitrite and nitrate are lost to nitrogen gas.
    denitrification = 0.005 (0.001 to 0.010) "m/d",
        Judgement [Veraart2011]: "diffusion to the anoxic zone; the high end meets the highest rate measured";
    /// Weight of nitrite and nitrate against ammonium in uptake by plants.
    oxidised_preference = 0.30 (0.07 to 1.0) "",
        Published [JampeetongBrix2009]: "uptake and growth ratios of a floating fern";
    /// Ammonium below which plants and algae take up none.
    least_ammonium = 0.02 (0.005 to 0.06) "mg N/L",
        Memory [JampeetongBrix2009]: "that there is such a level; its value from memory";
    /// Share of the nitrogen of dead tissue that dissolves at once.
    leached_share = 0.25 (0.15 to 0.50) "",
        Published [Janse2005]: "a lake model";
    /// Rate constant with which the rest breaks down at 25 C.
    detritus_decay = 0.03 (0.015 to 0.06) "1/d",
        Published [Hill1979]: "two ditch plants gone in 50 to 64 days";
    /// Share of the phosphorus of dead tissue that comes back to the water.
    dead_phosphorus_share = 0.6 (0.4 to 0.8) "",
        Judgement []: "phosphorus leaches sooner than nitrogen";
    /// Share that animals keep of the feed's nitrogen beyond what they excrete as ammonia.
    feed_retained = 0.2 (0.0 to 0.4) "",
        Judgement []: "growing food fish keep 12 to 44 % of it";
    /// Phosphorus that dissolves from feed.
    feed_phosphorus = 0.005 (0.002 to 0.010) "g/g",
        Memory []: "1.0-1.5 % in feed, 30-50 % of it dissolved";
}

group! {
    /// Tap water, in mg/L of nitrogen and phosphorus.
    Tap as "tap":
    /// Ammonia nitrogen.
    ammonia = 0.0 (0.0 to 0.0) "mg N/L",
        Judgement []: "none unless measured";
    /// Nitrite nitrogen.
    nitrite = 0.0 (0.0 to 0.0) "mg N/L",
        Judgement []: "none unless measured";
    /// Nitrate nitrogen.
    nitrate = 1.0 (0.0 to 5.0) "mg N/L",
        Judgement []: "common tap water";
    /// Dissolved phosphate phosphorus.
    phosphate = 0.03 (0.005 to 0.30) "mg P/L",
        Judgement []: "common tap water, the high end dosed against lead";
}
