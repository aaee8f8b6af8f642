//! Numbers and places in the sentences of findings.

use crate::geometry::Place;

/// Where something is: "at the front".
pub(super) const fn place(place: Place) -> &'static str {
    match place {
        Place::Everywhere => "everywhere",
        Place::Back => "at the back",
        Place::Front => "at the front",
        Place::Left => "at the left end",
        Place::Right => "at the right end",
        Place::BackLeft => "in the back left corner",
        Place::BackRight => "in the back right corner",
        Place::FrontLeft => "in the front left corner",
        Place::FrontRight => "in the front right corner",
        Place::Middle => "away from the walls",
    }
}

/// How many of a hundred a share is, as odds are told: whole, and never flattered.
pub fn of_100(share: f64) -> f64 {
    // what stands off a whole number by less is an error of the division
    (share * 100.0 + 1e-9).floor()
}

/// "a", "a and b", "a, b and c".
pub(super) fn listed<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "and")
}

/// "a", "a or b", "a, b or c".
pub(super) fn either<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "or")
}

fn joined<T: AsRef<str>>(items: &[T], last_word: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} {last_word} {}", head.join(", "), last.as_ref())
        }
    }
}
