//! The reading or look that would part the causes best.

use serde::Serialize;

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::hypotheses::{Hypotheses, NEXT_READING_D};
use super::measurement::{Measurand, Reported};
use super::sign::{WRITTEN_DOWN, seen};
use crate::catalogue::{questions, signs};
use crate::result::results;
use crate::units::show::significant;

results! {
    /// The next thing to measure or to look at.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct NextReading {
        /// the reading or look that would tell most
        pub reading: String => "check.look",
        /// what to do for it
        pub why: String => "check.look",
        /// The same as a step: "test nitrite again in a week".
        #[serde(skip)]
        pub asks: String,
        /// what it is expected to tell; 1 bit halves what is open
        pub bits: f64 => "check.look",
    }
}

/// A look that tells less is not advised, bits (judgement).
const LEAST_BITS: f64 = 0.05;

/// No answer is yes in more than this share of the tanks.
const MOST: f64 = 0.95;

/// Whether the case knows the answer to a question already.
fn is_known(case: &CaseHistory<'_>, question: &str) -> bool {
    let read = |of| case.latest(of).is_some();
    match question {
        "dawn_oxygen" => read(Measurand::Oxygen),
        "temperature" => read(Measurand::Temperature),
        "softness" => read(Measurand::Ph) || read(Measurand::Alkalinity),
        "hardness" => read(Measurand::Hardness),
        "tap_water" => case.has_sign("tap_tests_high"),
        "second_kit" => case.has_sign("tests_disagree"),
        "food_eaten" => case.has_sign("uneaten_food"),
        "soil_bag" => case.has_sign("fertiliser_beads"),
        _ => false,
    }
}

/// The look of the largest expected information.
pub fn best(
    case: &CaseHistory<'_>,
    hypotheses: &Hypotheses,
    posterior: &ByCause,
) -> Option<NextReading> {
    let open = questions()
        .iter()
        .filter(|question| !is_known(case, &question.name));
    let asked = open.map(|question| {
        let yes = |cause: Cause| question.odds.share(cause.name()).min(MOST);
        let asks = question.asks.clone();
        (question.reading.clone(), asks, two_ways(yes))
    });
    let looked = signs()
        .iter()
        .filter(|sign| !case.signs.contains(sign))
        .map(|sign| {
            let missed = |cause| {
                let seen = seen(sign, cause);
                seen * (1.0 - WRITTEN_DOWN) / (1.0 - WRITTEN_DOWN * seen)
            };
            let asks = format!("look again for {}", sign.label);
            (sign.name.clone(), asks, two_ways(missed))
        });
    let measured = measured_next(case, hypotheses);
    let all = asked.chain(looked).chain(measured);
    let best = all
        .map(|(reading, asks, answers)| {
            let bits = expected_bits(posterior, &answers);
            (reading, asks, bits)
        })
        .max_by(|a, b| a.2.total_cmp(&b.2))?;
    let (reading, asks, bits) = best;
    if bits < LEAST_BITS {
        return None;
    }
    let leading: Vec<&str> = posterior
        .ranked()
        .into_iter()
        .take(2)
        .map(|(cause, _)| cause.label())
        .collect();
    Some(NextReading {
        reading,
        why: format!(
            "{asks}: of all looks it parts {} best, by {} bits",
            leading.join(" and "),
            significant(bits, 2)
        ),
        asks,
        bits,
    })
}

/// The answers yes and no under each cause.
fn two_ways(yes: impl Fn(Cause) -> f64) -> Vec<ByCause> {
    vec![ByCause::of(&yes), ByCause::of(|cause| 1.0 - yes(cause))]
}

/// A further reading of each nutrient, a week from now or now where it was never read:
/// the marks of its card under each cause.
fn measured_next<'a>(
    case: &'a CaseHistory<'_>,
    hypotheses: &'a Hypotheses,
) -> impl Iterator<Item = (String, String, Vec<ByCause>)> + 'a {
    [Measurand::Ammonia, Measurand::Nitrite, Measurand::Nitrate]
        .into_iter()
        .filter_map(move |of| {
            let kit = case.kit(of)?;
            let (wait_d, asks) = if case.latest(of).is_some() {
                (
                    NEXT_READING_D,
                    format!("test {} again in a week", of.word()),
                )
            } else {
                (0.0, format!("test {}", of.word()))
            };
            let day = case.now_d() + wait_d;
            let marks = kit.marks().iter().map(|mark| {
                ByCause::of(|cause| {
                    let members = hypotheses.members(cause);
                    let sum: f64 = members
                        .iter()
                        .filter_map(|member| member.expected(of, day))
                        .map(|expected| kit.probability(Reported::Value(*mark), expected))
                        .sum();
                    sum / members.len().max(1) as f64
                })
            });
            Some((of.word().to_owned(), asks, marks.collect()))
        })
}

/// How much an answer is expected to tell of the cause, bits.
///
/// ```text
/// I = sum_a P(a) sum_c P(c | a) log2(P(c | a)/P(c))
/// ```
///
/// # Source
/// Lindley 1956 (`lindley_1956`, from memory).
pub fn expected_bits(prior: &ByCause, answers: &[ByCause]) -> f64 {
    let of_answer = |answer: &ByCause| {
        let joint = prior.times(answer);
        let share: f64 = joint.iter().map(|(_, joint)| joint).sum();
        if share <= 0.0 {
            return 0.0;
        }
        joint
            .iter()
            .filter(|(_, joint)| *joint > 0.0)
            .map(|(cause, joint)| joint * (joint / share / prior.get(cause)).log2())
            .sum()
    };
    answers.iter().map(of_answer).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_look_that_parts_two_even_causes_for_certain_tells_one_bit() {
        let (one, other) = (Cause::Heat, Cause::KitError);
        let prior = ByCause::of(|cause| {
            if cause == one || cause == other {
                0.5
            } else {
                0.0
            }
        });
        let sure = two_ways(|cause| if cause == one { 1.0 } else { 0.0 });
        assert!((expected_bits(&prior, &sure) - 1.0).abs() < 1e-12);
        let blind = two_ways(|_| 0.3);
        assert!(expected_bits(&prior, &blind).abs() < 1e-12);
    }
}
