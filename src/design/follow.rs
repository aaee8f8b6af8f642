//! What stands for keys not said, when a key that it hangs on is varied.

use crate::design::{Assumption, Draft, usual};
use crate::units::{Mass, Share};

const WALL: &str = "tank.wall";
const BOTTOM: &str = "tank.bottom";
const FEED: &str = "feed.mass_per_day";
const PROTEIN: &str = "feed.protein";
const FIRST_CHANGE: &str = "water.change.from";
const CLASS: &str = "light.class";

fn is_assumed(key: &str, draft: &Draft) -> bool {
    let is_it = |assumption: &Assumption| assumption.key == key;
    draft.assumed.iter().any(is_it)
}

/// Takes a key off the list of what is assumed.
pub(super) fn forget(key: &str, draft: &mut Draft) {
    draft.assumed.retain(|assumption| assumption.key != key);
}

/// Lists a value that is taken from now on.
fn assume(key: &str, value: String, why: &str, draft: &mut Draft) {
    draft.assumed.push(Assumption {
        key: key.to_owned(),
        value,
        why: why.to_owned(),
    });
}

/// Says the value that an assumption now has.
fn restate(key: &str, value: String, draft: &mut Draft) {
    let mut assumed = draft.assumed.iter_mut();
    if let Some(assumption) = assumed.find(|assumption| assumption.key == key) {
        assumption.value = value;
    }
}

/// The usual wall goes by the tank's height.
pub(in crate::design) fn wall(draft: &mut Draft, item: usize) {
    if is_assumed(WALL, draft) {
        draft.tank.wall = usual::wall(&draft.tank.shape);
        restate(WALL, usual::wall_in_words(draft.tank.wall), draft);
        bottom(draft, item);
    }
}

/// The usual bottom is as thick as the wall.
pub(in crate::design) fn bottom(draft: &mut Draft, _: usize) {
    if is_assumed(BOTTOM, draft) {
        draft.tank.bottom = draft.tank.wall;
        restate(BOTTOM, usual::wall_in_words(draft.tank.wall), draft);
    }
}

/// Another animal moves in on another day and eats another share.
pub(in crate::design) fn animal(draft: &mut Draft, item: usize) {
    first_day(item, draft);
    feed(draft, item);
}

/// A lamp said in numbers is not assumed in words.
pub(in crate::design) fn lamp(draft: &mut Draft, _: usize) {
    forget(CLASS, draft);
}

fn first_day(item: usize, draft: &mut Draft) {
    let key = format!("animals[{item}].from_day");
    if !is_assumed(&key, draft) {
        return;
    }
    if let Some(stock) = draft.animals.get_mut(item) {
        let day = stock.animal.first_day;
        stock.from_day = f64::from(day);
        restate(&key, day.to_string(), draft);
    }
}

/// Food that nobody stated goes by the animals; without animals there is none.
pub(in crate::design) fn feed(draft: &mut Draft, _: usize) {
    let unfed = draft.feed.mass_per_day == Mass::ZERO && draft.feed.protein == Share::ZERO;
    if !unfed && !is_assumed(FEED, draft) {
        return;
    }
    let mass = usual::feed(&draft.animals);
    draft.feed.mass_per_day = mass;
    if mass == Mass::ZERO && is_assumed(PROTEIN, draft) {
        draft.feed.protein = Share::ZERO;
        forget(PROTEIN, draft);
        forget(FEED, draft);
    } else if unfed && mass > Mass::ZERO {
        draft.feed.protein = usual::PROTEIN;
        let words = usual::feed_in_words(mass);
        assume(FEED, words, usual::FEED_WHY, draft);
        assume(
            PROTEIN,
            usual::PROTEIN_IN_WORDS.to_owned(),
            usual::PROTEIN_WHY,
            draft,
        );
    } else {
        restate(FEED, usual::feed_in_words(mass), draft);
    }
}

/// The first change comes after one interval.
pub(in crate::design) fn first_change(draft: &mut Draft, _: usize) {
    if !is_assumed(FIRST_CHANGE, draft) {
        return;
    }
    if let Some(change) = &mut draft.water.change {
        change.from = change.every.days();
        let day = usual::day_in_words(change.from);
        restate(FIRST_CHANGE, day, draft);
    }
}
