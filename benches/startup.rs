//! How long a start takes: one run, and a thousand on one thread and on two.
// A bench that cannot set up its tank is broken.
#![allow(clippy::expect_used)]

use divan::Bencher;
use lentic::source::Band;
use lentic::startup::{Draw, Inputs, Parameters, ensemble, run};
use rayon::ThreadPoolBuilder;

/// The tank that is followed.
const SPEC: &str = include_str!("../demo-tanks/reading-room-cube.toml");
const DAYS: u32 = 90;

fn main() {
    divan::main();
}

fn tank() -> (Inputs, Parameters<Band>) {
    let design = lentic::spec::parse(SPEC).expect("a demo tank");
    (Inputs::of(&design), Parameters::of(&design))
}

#[divan::bench]
fn ninety_days(bencher: Bencher<'_, '_>) {
    let (inputs, bands) = tank();
    let numbers = bands.central();
    bencher.bench(|| run(&inputs, &numbers, DAYS));
}

#[divan::bench(args = [1, 2], sample_count = 10)]
fn a_thousand_members(bencher: Bencher<'_, '_>, threads: usize) {
    let (inputs, bands) = tank();
    let draw = Draw {
        members: 1000,
        seed: 1,
    };
    let pool = ThreadPoolBuilder::new()
        .num_threads(threads)
        .build()
        .expect("threads");
    bencher.bench(|| pool.install(|| ensemble::members(&inputs, &bands, DAYS, draw, &|_| ())));
}
