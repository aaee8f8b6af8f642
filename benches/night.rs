//! How long a night takes: one day and night, 64 of them, and all that a plan asks of one,
//! in a tank that animals do well in and in one with far too many of them.
// A bench that cannot set up its tank is broken.
#![allow(clippy::expect_used)]

use divan::Bencher;
use lentic::night::{Ensemble, NightInputs, Rates, cycle, outlook};
use lentic::plan::{self, OnDay, Options};
use lentic::source::Band;
use lentic::startup::{self, Inputs, Parameters, day_state};

/// The tank that is followed.
const SPEC: &str = include_str!("../demo-tanks/living-room-180.toml");
/// One with 14 fish, too many by a few.
const CROWDED: &str = include_str!("../demo-tanks/gasping-before-the-lamp.toml");
const DAY: u32 = 60;

fn main() {
    divan::main();
}

fn tank() -> (NightInputs, Rates<Band>) {
    let design = lentic::spec::parse(SPEC).expect("a demo tank");
    let (inputs, parameters) = (
        Inputs::of(&design),
        Parameters::<Band>::of(&design).central(),
    );
    let run = startup::run(&inputs, &parameters, DAY).expect("a run");
    let sample = run.at_day(DAY).expect("its last day");
    let state = day_state(&inputs, &parameters, sample);
    let night = NightInputs::of(&design, &state, startup::surface_light(&design));
    let rates = Rates::of(&night);
    (night, rates)
}

#[divan::bench]
fn one_day_and_night(bencher: Bencher<'_, '_>) {
    let (inputs, rates) = tank();
    let central = rates.central();
    bencher.bench(|| cycle(&inputs, &central));
}

#[divan::bench]
fn sixty_four_members(bencher: Bencher<'_, '_>) {
    let (inputs, rates) = tank();
    let ensemble = Ensemble {
        members: 64,
        seed: 1,
    };
    bencher.bench(|| outlook(&inputs, &rates, ensemble));
}

#[divan::bench]
fn all_of_a_plan(bencher: Bencher<'_, '_>) {
    let design = lentic::spec::parse(SPEC).expect("a demo tank");
    bencher.bench(|| plan::night(&design, Options::default(), OnDay::Leanest));
}

#[divan::bench]
fn all_of_a_plan_that_suffocates(bencher: Bencher<'_, '_>) {
    let crowded = CROWDED.replace("count = 14", "count = 80");
    let design = lentic::spec::parse(&crowded).expect("a demo tank");
    bencher.bench(|| plan::night(&design, Options::default(), OnDay::Leanest));
}
