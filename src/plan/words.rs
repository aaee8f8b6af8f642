//! Numbers and places in the sentences of findings.

use crate::geometry::FloorPlace;

/// Where something is: "at the front".
pub(super) const fn place(place: FloorPlace) -> &'static str {
    match place {
        FloorPlace::Everywhere => "everywhere",
        FloorPlace::Back => "at the back",
        FloorPlace::Front => "at the front",
        FloorPlace::Left => "at the left end",
        FloorPlace::Right => "at the right end",
        FloorPlace::BackLeft => "in the back left corner",
        FloorPlace::BackRight => "in the back right corner",
        FloorPlace::FrontLeft => "in the front left corner",
        FloorPlace::FrontRight => "in the front right corner",
        FloorPlace::Middle => "away from the walls",
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
