//! How far predictions lie from published observations: the table and the score.
// A case that cannot be read is broken.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../tests/validation/case.rs"]
#[expect(dead_code, reason = "the test asks for more")]
mod case;
#[path = "../tests/validation/score.rs"]
#[expect(dead_code, reason = "the test asks for more")]
mod score;
#[path = "../tests/validation/suite.rs"]
mod suite;

#[expect(clippy::print_stdout, reason = "this is what it is for")]
fn main() {
    let all = suite::compared();
    let score = score::Score::of(&all);
    let (low, high) = score::Score::interval(score.inside, score.points);
    println!("{}", score::table(&all));
    println!("{score:?}");
    println!("share inside, 95 % of a binomial: {low:.2} to {high:.2}");
}
