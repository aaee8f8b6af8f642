//! How long rows take: of quantities alone, and with an ensemble of starts.
// A bench that cannot set up its tank is broken.
#![allow(clippy::expect_used)]

use divan::Bencher;
use divan::counter::ItemsCount;
use lentic::plan::Options;
use lentic::study::{BaseTank, Question, ResultColumn, Space, compare};
use rayon::ThreadPoolBuilder;

/// The tank that is varied.
const SPEC: &str = include_str!("../demo-tanks/reading-room-cube.toml");
const QUANTITIES: [&str; 6] = [
    "tank.water_l",
    "soil.bags_total_l",
    "cap.bags_total_kg",
    "weight.total_kg",
    "cost.total",
    "findings.cap.coarse",
];
const STARTS: [&str; 2] = [
    "startup.ammonia_peak_mg_l",
    "startup.nitrite_peak_mg_l.high",
];

fn main() {
    divan::main();
}

fn rows(bencher: Bencher<'_, '_>, threads: usize, vary: &str, columns: &[&str]) {
    let design = lentic::spec::parse(SPEC).expect("a demo tank");
    let bases = [BaseTank::of(0, design.into_draft())];
    let axes = vec![lentic::spec::axis(vary).expect("an axis")];
    let options = Options {
        members: 64,
        ..Options::default()
    };
    let columns = columns
        .iter()
        .map(|name| ResultColumn::of(name).expect("a result"));
    let question = Question {
        columns: columns.collect(),
        ..Question::about(Space::grid(axes).expect("a grid"), options)
    };
    let pool = ThreadPoolBuilder::new()
        .num_threads(threads)
        .build()
        .expect("threads");
    bencher
        .counter(ItemsCount::new(question.space.points()))
        .bench(|| pool.install(|| compare(&question, &bases).count()));
}

#[divan::bench(args = [1, 2], sample_count = 5, sample_size = 1)]
fn quantities(bencher: Bencher<'_, '_>, threads: usize) {
    rows(bencher, threads, "cap.depth=20..60mm/20000", &QUANTITIES);
}

#[divan::bench(args = [1, 2], sample_count = 5, sample_size = 1)]
fn ensembles(bencher: Bencher<'_, '_>, threads: usize) {
    rows(bencher, threads, "cap.depth=20..60mm/50", &STARTS);
}
