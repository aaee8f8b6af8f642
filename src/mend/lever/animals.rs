//! How many animals, and from which day.

use super::{Lever, Now, Rung, number, text};
use crate::design::{Design, Stock};
use crate::spec::Edit;
use crate::units::Mass;
use crate::units::show::significant;

/// Shares of a kind that are kept.
const SHARES: [f64; 8] = [0.8, 0.65, 0.5, 0.4, 0.3, 0.2, 0.1, 0.0];
/// What it asks to do without a kind altogether, as a tank is often planned for its animals.
const GIVEN_UP: f64 = 8.0;
const FEED: &str = "feed.mass_per_day";

/// Fewer of one kind, or none.
pub(super) fn counts(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let stock = base.draft().animals.iter().enumerate();
    stock
        .flat_map(|(place, kind)| {
            let counts = SHARES.map(|share| (f64::from(kind.count) * share).floor() as u32);
            let mut fewer: Vec<u32> = counts.into_iter().filter(|n| *n < kind.count).collect();
            fewer.dedup();
            fewer
                .into_iter()
                .map(move |count| fewer_of(base, place, kind, count))
        })
        .collect()
}

fn fewer_of(base: &Design, place: usize, kind: &Stock, count: u32) -> Rung {
    let gone = f64::from(kind.count - count) / f64::from(kind.count);
    let given_up = if count == 0 { GIVEN_UP } else { 0.0 };
    let key = format!("animals[{place}].count");
    let edits = std::iter::once(number(key, count)).chain(less_feed(base, kind, count));
    Rung::new(Lever::Count(place), 5.0 + 2.0 * gone + given_up, edits)
}

/// Food that the keeper has stated, less what the animals that go would eat.
fn less_feed(base: &Design, kind: &Stock, count: u32) -> Option<Edit> {
    let draft = base.draft();
    let is_assumed = draft.assumed.iter().any(|assumed| assumed.key == FEED);
    let all: Mass = draft.animals.iter().map(Stock::mass).sum();
    let gone = Stock {
        count: kind.count - count,
        ..kind.clone()
    };
    let left = 1.0 - gone.mass() / all;
    let mg = draft.feed.mass_per_day.mg() * left;
    (!is_assumed && left.is_finite() && left > 0.0)
        .then(|| text(FEED, format!("{} mg", significant(mg, 2))))
}

/// Every kind that comes too early on the day from which it is advised; a day that was
/// assumed is not too early.
pub(super) fn dates(now: &Now<'_>) -> Vec<Rung> {
    let draft = now.design.draft();
    let is_given = |key: &str| draft.assumed.iter().all(|assumed| assumed.key != key);
    let late: Vec<(String, f64)> = (draft.animals.iter().enumerate())
        .filter(|(_, kind)| kind.count > 0)
        .filter_map(|(place, kind)| {
            let key = format!("animals[{place}].from_day");
            let mut advised = now.judged.animals_from.iter();
            let advised = advised.find(|advised| advised.name == kind.animal.name)?;
            (is_given(&key) && kind.from_day < advised.day).then_some((key, advised.day))
        })
        .collect();
    let last = late.iter().map(|(_, day)| *day).fold(0.0, f64::max);
    let edits = late.into_iter().map(|(key, day)| number(key, day));
    let rung = Rung::new(Lever::Date, 2.0 + last / 90.0, edits);
    (!rung.edits.is_empty())
        .then_some(rung)
        .into_iter()
        .collect()
}
