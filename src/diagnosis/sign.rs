//! Signs as evidence: how often each is written down where a cause is at work.

use super::cause::{ByCause, Cause};
use crate::catalogue::Sign;

/// Signs of animals that suffer.
pub const SUFFERING: [&str; 8] = [
    "gasping_at_dawn",
    "gasping_all_day",
    "dead_animal",
    "deaths_after_change",
    "clamped_fins",
    "listless",
    "failed_moult",
    "circling",
];

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
    sign.odds.share(cause.name()).min(MOST)
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
    use crate::catalogue::{Odds, facts, questions, signs};

    /// From this ratio on the table says why.
    const SAYS_WHY: f64 = 3.0;

    fn evidence() -> impl Iterator<Item = (&'static str, &'static Odds)> {
        let signs = signs().iter().map(|row| (row.name.as_str(), &row.odds));
        let facts = facts().iter().map(|row| (row.name.as_str(), &row.odds));
        let looks = questions().iter().map(|row| (row.name.as_str(), &row.odds));
        signs.chain(facts).chain(looks)
    }

    #[test]
    fn all_evidence_speaks_for_causes_of_the_list_and_says_why_where_it_speaks_loud() {
        for (name, odds) in evidence() {
            assert!(odds.usual > 0.0 && odds.usual <= 0.5, "{name}");
            for (cause, ratio) in &odds.speaks_for {
                assert!(Cause::find(cause).is_some(), "{name}: {cause}");
                let share = odds.usual * ratio;
                assert!(share > 0.0 && share <= MOST + 0.01, "{name}: {cause}");
                let why = odds.because.get(cause).map_or("", String::as_str);
                assert!(*ratio <= SAYS_WHY || why.len() > 10, "{name}: {cause}");
            }
            for cause in odds.because.keys() {
                assert!(odds.speaks_for.contains_key(cause), "{name}: {cause}");
            }
        }
    }

    #[test]
    fn every_cause_has_a_sign_that_speaks_for_it() {
        let speaks = |odds: &Odds, cause: &Cause| odds.speaks_for.get(cause.name()) >= Some(&3.0);
        let without: Vec<&str> = Cause::ALL
            .iter()
            .filter(|cause| !signs().iter().any(|sign| speaks(&sign.odds, cause)))
            .map(|cause| cause.name())
            .collect();
        assert!(without.is_empty(), "{without:?}");
    }
}
