//! How often the cause of a made-up tank is found again, and how far the probabilities
//! stated can be trusted.
//!
//! `cargo bench --bench recovery` makes 300 tanks from seeds that nothing else uses and
//! prints the scores, the reliability of the probabilities, the score with shuffled
//! labels and the table of confusions. `-- N FIRST MEMBERS` takes other seeds.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "the tanks are made up here, a fault in one is a fault of this program, and the tables are its result"
)]

#[path = "../tests/support/synthetic.rs"]
mod synthetic;

use std::collections::BTreeMap;

use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::Cause;
use lentic::diagnosis::dawn::Dawn;
use lentic::diagnosis::hypotheses::Hypotheses;
use lentic::diagnosis::weighing::Weighing;
use lentic::plan::Options;
use rayon::prelude::*;
use synthetic::{Dice, tank};

/// A tank's true cause and the causes found for it, the most probable first.
struct Found {
    truth: Cause,
    ranked: Vec<(Cause, f64)>,
}

fn find(seed: u64, members: u32) -> Found {
    let made = tank(seed);
    let design = lentic::spec::parse(&made.spec).expect("a sound spec");
    let case = CaseHistory::of(&design, &[]).expect("a case");
    let options = Options {
        members,
        ..Options::default()
    };
    let hypotheses = Hypotheses::of(&case, options).expect("courses");
    let dawn = Dawn::of(&case, options.seed).ok();
    Found {
        truth: made.cause,
        ranked: Weighing::of(&case, &hypotheses, dawn).posterior.ranked(),
    }
}

fn share(found: &[Found], holds: impl Fn(&Found) -> bool) -> f64 {
    found.iter().filter(|one| holds(one)).count() as f64 / found.len() as f64
}

fn among(found: &Found, first: usize) -> bool {
    found.ranked[..first]
        .iter()
        .any(|(cause, _)| *cause == found.truth)
}

fn main() {
    let numbers: Vec<u64> = std::env::args()
        .filter_map(|text| text.parse().ok())
        .collect();
    let count = numbers.first().copied().unwrap_or(300);
    let first = numbers.get(1).copied().unwrap_or(9_000_000);
    let members = numbers.get(2).copied().unwrap_or(64) as u32;
    let mut found: Vec<Found> = (first..first + count)
        .into_par_iter()
        .map(|seed| find(seed, members))
        .collect();
    println!("{count} tanks from seed {first}, {members} members a cause");
    println!(
        "first       {:.1} %",
        100.0 * share(&found, |one| among(one, 1))
    );
    println!(
        "first three {:.1} %",
        100.0 * share(&found, |one| among(one, 3))
    );
    reliability(&found);
    confusion(&found);
    shuffle(&mut found);
    println!(
        "shuffled labels: first {:.1} %, first three {:.1} %",
        100.0 * share(&found, |one| among(one, 1)),
        100.0 * share(&found, |one| among(one, 3))
    );
}

/// Probabilities stated for the first cause against how often it was the true one.
fn reliability(found: &[Found]) {
    println!("\nstated      tanks  mean stated  true");
    let mut error = 0.0;
    for tenth in 0..10 {
        let (low, high) = (f64::from(tenth) / 10.0, f64::from(tenth + 1) / 10.0);
        let inside: Vec<&Found> = found
            .iter()
            .filter(|one| one.ranked[0].1 > low && one.ranked[0].1 <= high)
            .collect();
        if inside.is_empty() {
            continue;
        }
        let count = inside.len() as f64;
        let stated = inside.iter().map(|one| one.ranked[0].1).sum::<f64>() / count;
        let held = inside.iter().filter(|one| among(one, 1)).count() as f64 / count;
        error += count / found.len() as f64 * (stated - held).abs();
        println!("{low:.1}-{high:.1}  {count:9}  {stated:11.2}  {held:4.2}");
    }
    println!("expected calibration error {error:.3}\n");
}

fn confusion(found: &[Found]) {
    let mut rows: BTreeMap<Cause, BTreeMap<Cause, u32>> = BTreeMap::new();
    for one in found {
        let row = rows.entry(one.truth).or_default();
        *row.entry(one.ranked[0].0).or_default() += 1;
    }
    println!("{:18} tanks  found  taken for", "true cause");
    for (truth, row) in &rows {
        let total: u32 = row.values().sum();
        let right = row.get(truth).copied().unwrap_or_default();
        let mut others: Vec<(&Cause, &u32)> =
            row.iter().filter(|(cause, _)| *cause != truth).collect();
        others.sort_by_key(|(_, count)| std::cmp::Reverse(**count));
        let others: Vec<String> = others
            .iter()
            .map(|(cause, count)| format!("{} {count}", cause.name()))
            .collect();
        println!(
            "{:18} {total:5} {right:6}  {}",
            truth.name(),
            others.join(", ")
        );
    }
    println!();
}

fn shuffle(found: &mut [Found]) {
    let mut dice = Dice::new(77);
    for last in (1..found.len()).rev() {
        let other = (dice.even() * (last + 1) as f64) as usize;
        let (one, two) = (found[last].truth, found[other].truth);
        found[last].truth = two;
        found[other].truth = one;
    }
}
