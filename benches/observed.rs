//! How far predictions lie from published observations: the table and the score.
// A case that cannot be read is broken.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../tests/validation/case.rs"]
#[expect(dead_code, reason = "the test asks for more")]
mod case;
#[path = "../tests/validation/score.rs"]
mod score;
#[path = "../tests/validation/suite.rs"]
mod suite;

#[expect(clippy::print_stdout, reason = "this is what it is for")]
fn main() {
    let all = suite::compared();
    println!("{}{}", score::table(&all), score::Score::of(&all));
}
