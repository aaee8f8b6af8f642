//! Numbers of a day and a night: exchange with the air, photosynthesis, respiration.

use super::group::{Description, group};
use crate::source::Band;

group! {
    /// The exchange of oxygen and carbon dioxide with the air.
    Aeration as "aeration":
    /// Transfer velocity of a calm open surface at a Schmidt number of 600.
    open_k600 = 0.40 (0.15 to 0.75) "m/d",
        Judgement [Cole2010, CrusiusWanninkhof2003, Emerson1975Lakes]: "calm lakes 0.13-0.6; a clean surface over a warm tank up to 0.75 by convection";
    /// The same under a lid.
    lid_k600 = 0.30 (0.10 to 0.55) "m/d",
        Judgement []: "the open one by the quarter power of the heat that still leaves; no measurement found";
    /// Exchange of a calm surface under an oily film over that of a clean one.
    film = 0.5 (0.25 to 0.8) "",
        Judgement []: "films damp the small motions of the surface";
    /// Transfer velocity of a rippled surface at a Schmidt number of 600.
    rippled_k600 = 1.0 (0.6 to 2.0) "m/d",
        Judgement []: "no measurement found";
    /// Share of the exchange that goes on under floaters.
    mat_passage = 0.35 (0.1 to 0.8) "",
        Judgement [WollenbergPeters2009]: "mercury left 17-67 % slower from under duckweed";
    /// Share of the oxygen in the air that dissolves per metre of depth, from a stone.
    stone_efficiency = 0.04 (0.02 to 0.08) "1/m",
        Judgement [Epa625_1_89_023]: "deep basins 0.05-0.07 with fine pores, 0.02-0.03 with coarse bubbles";
    /// The same from an open tube.
    tube_efficiency = 0.025 (0.02 to 0.03) "1/m",
        Judgement [Epa625_1_89_023]: "coarse bubbles in deep basins";
    /// Transfer in tank water over transfer in clean water.
    alpha = 0.8 (0.6 to 1.0) "",
        Memory []: "less with organic matter";
    /// Saturation in tank water over saturation in clean water, for bubbles.
    beta = 1.0 (0.95 to 1.0) "",
        Memory []: "less with salts";
    /// Air that ripples two thirds of the surface.
    rippling_air = 5.0 (2.0 to 10.0) "L/min/m2",
        Judgement []: "no measurement found";
    /// Water from a pump that ripples two thirds of the surface.
    rippling_water = 20.0 (8.0 to 50.0) "L/min/m2",
        Judgement []: "no measurement found";
    /// Carbon dioxide in the air of the room.
    room_carbon = 600.0 (420.0 to 1200.0) "ppm",
        Judgement []: "outdoor air to a closed bedroom";
    /// Oxygen over saturation from which it also leaves in bubbles of its own.
    pearling_from = 1.5 (1.2 to 2.0) "",
        Judgement [Martinsen2022]: "a charophyte lake reached 1.77";
    /// How fast it then leaves.
    pearling = 0.3 (0.1 to 1.0) "1/h",
        Judgement []: "no measurement found";
}

group! {
    /// Photosynthesis, masses dry.
    Photosynthesis as "photosynthesis":
    /// Of fast plants in full light with all carbon at 25 C.
    fast = 15.0 (8.0 to 22.0) "mg O2/g/h",
        Judgement [VanHallerBowes1976]: "50-60 umol per mg of chlorophyll and hour in three weeds, 5-9 mg of it in a gram";
    /// Of slow plants, likewise.
    slow = 5.5 (3.0 to 9.0) "mg O2/g/h",
        Judgement []: "to fast ones as their growth";
    /// Of algae, likewise.
    algae = 107.0 (64.0 to 160.0) "mg O2/g/h",
        Judgement [Janse2005]: "gross growth of 0.6-1.5 a day";
    /// Oxygen per light absorbed where light alone limits.
    light_yield = 0.065 (0.04 to 0.09) "mol/mol",
        Judgement []: "0.08-0.10 in thin green algae, less in thick ones; 0.125 is the limit";
    /// Carbon dioxide at half photosynthesis.
    carbon_half = 5.0 (3.0 to 9.0) "mg/L",
        Judgement [Bowes1985]: "10-20 % of full at 1 mg/L, nearly all at 30";
    /// Carbon dioxide at which photosynthesis stops, at saturation with oxygen.
    compensation = 0.06 (0.02 to 0.15) "mg/L",
        Memory []: "43 ppm of leaves in air, dissolved";
    /// Bicarbonate that counts as carbon dioxide for plants that use it.
    bicarbonate_weight = 0.03 (0.01 to 0.08) "mol/mol",
        Judgement []: "used far less well than carbon dioxide";
    /// Light at which half of that use is switched on.
    bicarbonate_light = 80.0 (50.0 to 120.0) "umol/m2/s",
        Judgement [JonesElodea]: "a waterweed that does not use it in less light; the form is a guess";
    /// Share of what is fixed that becomes tissue.
    tissue_share = 0.35 (0.2 to 0.5) "",
        Judgement []: "no measurement found";
    /// Of floaters in full light at 25 C.
    floating = 30.0 (15.0 to 50.0) "mg O2/g/h",
        Judgement []: "gross growth of duckweed 0.3-0.55 a day";
    /// Light at half of it.
    floating_light_half = 80.0 (40.0 to 160.0) "umol/m2/s",
        Judgement []: "half of full growth at 3 mol a day, over ten hours";
    /// Share of the oxygen of floaters that goes into the water.
    floater_oxygen_share = 0.05 (0.0 to 0.15) "",
        Judgement []: "the upper side gives its oxygen to the air";
}

group! {
    /// What uses oxygen.
    OxygenUse as "oxygen_use":
    /// Of submerged plants with a full store at 22.5 C.
    submerged = 1.5 (0.9 to 2.5) "mg O2/g/h",
        Judgement [OwensMaris1964]: "27-112 umol a gram and hour from 15 to 35 C in a watermilfoil";
    /// Time for which a full store would last at that rate.
    store = 12.0 (6.0 to 25.0) "h",
        Judgement [Kragh2017]: "respiration fell to 24-70 % in a short northern night";
    /// Of floaters in the dark at 22.5 C.
    floating = 1.0 (0.45 to 2.0) "mg O2/g/h",
        Judgement [Janse2005, OwensMaris1964]: "a lake model 0.7, plants from the field 1.5";
    /// Share of that which the water bears: roots, undersides.
    floater_share = 0.2 (0.1 to 0.5) "",
        Judgement []: "the rest stands in the air";
    /// Of algae in the dark at 22.5 C.
    algae = 3.5 (2.0 to 6.0) "mg O2/g/h",
        Judgement [Janse2005]: "a loss of 0.075 a day to respiration";
    /// Tissue of plants and algae that dies and is breathed by others, at 20 C.
    dead = 0.002 (0.0007 to 0.006) "1/d",
        Judgement [Janse2005]: "death of 0.005 a day, 0.4 of it breathed in season";
    /// Share of the feed that is left to bacteria and snails.
    feed_left = 0.35 (0.2 to 0.5) "",
        Judgement []: "leftovers and droppings";
    /// Of animals that are not fed over that at rest.
    swimming = 1.75 (1.5 to 2.0) "",
        Memory []: "fish that swim about";
    /// Of animals that are fed over that at rest.
    fed = 2.5 (2.0 to 3.0) "",
        Memory []: "fish that digest";
    /// Of an old bed at 20 C.
    bed = 0.6 (0.25 to 1.4) "g/m2/d",
        Judgement [Rong2016]: "pond and river mud 0.46-1.24, here under sand";
    /// What a bed just flooded uses over that, as a share of it.
    new_bed = 0.5 (0.0 to 1.0) "",
        Judgement []: "at most 4 g/m2 a day";
    /// Carbon dioxide that the bed gives off per oxygen asked for.
    bed_quotient = 1.2 (0.9 to 2.0) "mol/mol",
        Judgement []: "some of the decay goes on without oxygen";
}

/// Name, unit and basis of every number of a night that the weeks before do not draw.
///
/// # Example
/// ```
/// use lentic::parameters::night_descriptions;
/// let first = &night_descriptions()[0];
/// assert_eq!((first.name, first.unit), ("aeration.open_k600", "m/d"));
/// ```
pub fn night_descriptions() -> Vec<Description> {
    [
        Aeration::<Band>::DESCRIPTIONS,
        Photosynthesis::<Band>::DESCRIPTIONS,
        OxygenUse::<Band>::DESCRIPTIONS,
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parameters::descriptions;

    #[test]
    fn every_band_is_ordered() {
        let check = |band: Band| assert!(band.is_ordered(), "{band:?}");
        Aeration::reference().map(&mut |band| check(band));
        Photosynthesis::reference().map(&mut |band| check(band));
        OxygenUse::reference().map(&mut |band| check(band));
    }

    #[test]
    fn no_name_stands_twice() {
        let all = [descriptions(), night_descriptions()].concat();
        let mut names: Vec<_> = all.iter().map(|described| described.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all.len());
    }
}
