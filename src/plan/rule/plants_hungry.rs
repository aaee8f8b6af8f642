//! `plants.hungry`: stands that decline because nothing feeds them any more.

use super::case::{FlushCase, TypicalDay};
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::source::Basis;
use crate::units::show::significant;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::PlantsHungry,
    about: About::Tank,
    judge: Judge::Flush(|case| judged(case).into_iter().collect()),
    orders: &[Action::Plant],
    steps: |_, _| Vec::new(),
    explanation: Explanation {
        asks: "Do the plants go hungry in the long run?",
        limits: || {
            format!(
                "note where floaters or fast growers fall for good under {:.0} % of the most that they have been from day {FROM_DAY} on, in water with less than {NITRATE_MG_L} mg NO3/L and {AMMONIA_MG_L} mg N/L of ammonia or with less than {PHOSPHATE_MG_L} mg P/L; in the typical run",
                FALLEN_TO * 100.0
            )
        },
        formula: || "M(t) / max M(s), s from day 30 to t".to_owned(),
        symbols: &["M: fresh mass of floaters, or of fast growers"],
        range: || {
            "where light is what is short the water keeps its nutrients, and nothing is said here; potassium and iron are not followed".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[],
    },
};

/// By then what was planted has settled in, and been thinned: practice.
const FROM_DAY: f64 = 30.0;
/// Share of its largest mass under which a stand declines, not only varies (judgement).
const FALLEN_TO: f64 = 0.5;
/// What hungry plants leave of nitrate, mg NO3/L, of ammonia, mg N/L, and of phosphate, mg
/// P/L (judgement: below what half of full uptake takes).
const NITRATE_MG_L: f64 = 0.5;
const AMMONIA_MG_L: f64 = 0.1;
const PHOSPHATE_MG_L: f64 = 0.01;

/// A stand that declines.
struct Decline {
    of: &'static str,
    from_day: f64,
    /// What the water lacks.
    lacks: &'static str,
    /// Share that is left at the end.
    left: f64,
}

fn judged(case: &FlushCase<'_>) -> Option<Finding> {
    let floaters = decline(&case.days, "floaters", |day| day.floating_g);
    let fast = decline(&case.days, "fast growers", |day| day.fast_g);
    let found = floaters.into_iter().chain(fast);
    let first = found.min_by(|one, other| one.from_day.total_cmp(&other.from_day))?;
    let draft = case.design.draft();
    let fed = draft.feed.mass_per_day.g() > 0.0 && !draft.animals.is_empty();
    let (why, says) = if fed {
        (
            "more than the food brings is taken or thinned out",
            "thin what grows best less often, or let a few animals more in and feed them",
        )
    } else {
        (
            "nothing is fed",
            "let animals in and feed them, as they may come, or let the stand thin itself",
        )
    };
    Some(Finding {
        code: Code::PlantsHungry,
        status: Status::Note,
        subject: first.of.to_owned(),
        value: Some(first.from_day),
        unit: "d",
        low: None,
        high: None,
        says: format!(
            "{} go hungry: from day {:.0} under half of what they were, the water holds no {} and {why}; {} % are left on day {:.0}",
            first.of,
            first.from_day,
            first.lacks,
            significant(first.left * 100.0, 2),
            case.days.last().map_or(0.0, |day| day.day)
        ),
        remedy: Some(Remedy {
            says: says.to_owned(),
            quantity: None,
            unit: "",
        }),
        basis: Basis::Judgement,
        source: None,
    })
}

/// The day from which a stand lies for good under half of the most that it was, for want
/// of a nutrient.
fn decline(
    days: &[TypicalDay],
    of: &'static str,
    mass: impl Fn(&TypicalDay) -> f64,
) -> Option<Decline> {
    let settled = days.iter().filter(|day| day.day >= FROM_DAY);
    let (mut most, mut since) = (0.0_f64, None);
    for day in settled {
        most = most.max(mass(day));
        if mass(day) >= most * FALLEN_TO {
            since = None;
        } else if since.is_none() {
            since = Some(day);
        }
    }
    let (day, last) = (since?, days.last()?);
    Some(Decline {
        of,
        from_day: day.day,
        lacks: lacking(day)?,
        left: mass(last) / most,
    })
}

/// The nutrient that the water is out of.
fn lacking(day: &TypicalDay) -> Option<&'static str> {
    if day.nitrate_mg_l < NITRATE_MG_L && day.ammonia_mg_l < AMMONIA_MG_L {
        Some("nitrogen")
    } else if day.phosphate_p_mg_l < PHOSPHATE_MG_L {
        Some("phosphorus")
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A stand of so much on each tenth day, in water with so much nitrate.
    fn days(masses: &[f64], nitrate_mg_l: f64) -> Vec<TypicalDay> {
        let each = masses.iter().enumerate();
        each.map(|(place, mass)| TypicalDay {
            day: 10.0 * place as f64,
            floating_g: *mass,
            fast_g: 0.0,
            ammonia_mg_l: 0.0,
            nitrate_mg_l,
            phosphate_p_mg_l: 0.1,
        })
        .collect()
    }

    fn from_day(masses: &[f64], nitrate_mg_l: f64) -> Option<f64> {
        let days = days(masses, nitrate_mg_l);
        decline(&days, "floaters", |day| day.floating_g).map(|decline| decline.from_day)
    }

    #[test]
    fn a_stand_that_halves_in_water_without_nitrogen_is_hungry() {
        assert_eq!(
            from_day(&[5.0, 9.0, 9.0, 10.0, 8.0, 4.0, 1.0], 0.0),
            Some(50.0)
        );
    }

    #[test]
    fn thinning_recovery_and_want_of_light_are_not_hunger() {
        // thinned before day 30
        assert_eq!(from_day(&[20.0, 9.0, 9.0, 9.0, 9.0], 0.0), None);
        assert_eq!(from_day(&[5.0, 9.0, 9.0, 10.0, 4.0, 8.0], 0.0), None);
        assert_eq!(from_day(&[5.0, 9.0, 9.0, 10.0, 4.0, 1.0], 20.0), None);
    }
}
