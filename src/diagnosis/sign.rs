//! Signs as evidence: how often each is written down where a cause is at work.

use super::cause::{ByCause, Cause};
use crate::catalogue::Sign;

/// Share of the signs seen that a keeper writes down (judgement).
pub const WRITTEN_DOWN: f64 = 0.85;
/// Share of the tanks in which a sign is written down that is not there: slips, and
/// signs that look alike (judgement).
pub const MISTAKEN: f64 = 0.01;
/// No sign is seen in more than this share of the tanks.
const MOST: f64 = 0.95;

/// Share of the tanks with a cause in which a sign is seen.
///
/// ```text
/// min(0.95, usual x ratio)
/// ```
pub fn seen(sign: &Sign, cause: Cause) -> f64 {
    let ratio = sign.speaks_for.get(cause.name()).copied().unwrap_or(1.0);
    (sign.usual * ratio).min(MOST)
}

/// Share of the tanks with a cause in which a sign is written down.
pub fn written_down(sign: &Sign, cause: Cause) -> f64 {
    WRITTEN_DOWN * seen(sign, cause) + MISTAKEN
}

/// The likelihood of a sign's being written down or not, under each cause.
pub fn likelihood(sign: &Sign, is_written_down: bool) -> ByCause {
    ByCause::of(|cause| {
        let share = written_down(sign, cause);
        if is_written_down { share } else { 1.0 - share }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::signs;

    #[test]
    fn every_sign_speaks_for_causes_of_the_list() {
        for sign in signs() {
            assert!(sign.usual > 0.0 && sign.usual < 0.5, "{}", sign.name);
            for (name, ratio) in &sign.speaks_for {
                assert!(Cause::find(name).is_some(), "{}: {name}", sign.name);
                assert!(
                    *ratio > 0.0 && sign.usual * ratio <= MOST,
                    "{}: {name}",
                    sign.name
                );
            }
        }
    }

    #[test]
    fn every_cause_has_a_sign_that_speaks_for_it() {
        let without: Vec<&str> = Cause::ALL
            .iter()
            .filter(|cause| {
                !signs()
                    .iter()
                    .any(|sign| sign.speaks_for.get(cause.name()).is_some_and(|r| *r >= 3.0))
            })
            .map(|cause| cause.name())
            .collect();
        assert!(without.is_empty(), "{without:?}");
    }
}
