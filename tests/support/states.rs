//! Whether the states of a start can be: every amount at least nothing, none more than all
//! that the tank holds.

use lentic::design::Design;
use lentic::source::Band;
use lentic::startup::{Draw, Inputs, Parameters, Sample, ensemble};

/// How far an amount may lie below nothing or above what there is.
const ERROR: f64 = 1e-9;
/// Dry matter of one kind on a square metre, g: ten times a closed stand.
const MOST_LIVING_G_M2: f64 = 2e3;

/// The depth of water over the floor that a design's start is followed with, m.
pub(crate) fn depth_m(inputs: &Inputs) -> f64 {
    (inputs.water / inputs.floor).m()
}

/// What is wrong with the members of a design: one lost, or one with an amount that cannot be.
pub(crate) fn impossible(design: &Design, members: u32, days: u32) -> Option<String> {
    let (inputs, bands) = (Inputs::of(design), Parameters::<Band>::of(design));
    let depth_m = depth_m(&inputs);
    let draw = Draw { members, seed: 1 };
    let found = ensemble::members(&inputs, &bands, days, draw, &|_| ());
    if found.len() != members as usize {
        return Some(format!("{} of {members} members", found.len()));
    }
    let wrong = found
        .iter()
        .flat_map(|member| member.days.iter().map(move |sample| (member.index, sample)))
        .find(|(_, sample)| !is_possible(sample, depth_m));
    wrong.map(|(index, sample)| format!("member {index}: {sample:?}"))
}

/// Whether every amount is there and none is more than all that the tank holds; what is not
/// a number is neither.
pub(crate) fn is_possible(sample: &Sample, depth_m: f64) -> bool {
    let state = &sample.state;
    let held_n = sample.nitrogen_g_m2 + state.added_n - state.harvested_n - state.denitrified_n;
    let held_p = sample.phosphorus_g_m2 + state.added_p - state.harvested_p;
    let nitrogen = [
        state.fast_soil_n,
        state.slow_soil_n,
        state.stable_soil_n,
        state.soil_n,
        state.ammonia * depth_m,
        state.nitrite * depth_m,
        state.nitrate * depth_m,
        state.floating_n,
        state.fast_n,
        state.detritus_n,
    ];
    let phosphorus = [
        state.reducible_p,
        state.stable_p,
        state.soil_p,
        state.phosphate * depth_m,
        state.floating_p,
        state.fast_p,
    ];
    let living = [
        state.ammonia_oxidisers,
        state.nitrite_oxidisers,
        state.floating,
        state.fast,
        state.slow,
        state.algae,
    ];
    let within = |amount: f64, held: f64| amount >= -ERROR && amount <= held * (1.0 + 1e-6) + ERROR;
    nitrogen.iter().all(|amount| within(*amount, held_n))
        && phosphorus.iter().all(|amount| within(*amount, held_p))
        && living
            .iter()
            .all(|amount| within(*amount, MOST_LIVING_G_M2))
}
