//! Cautions on amounts that a tank holds but a keeper seldom means.

use crate::design::{Design, EventKind};
use crate::finding::Caution;
use crate::units::show::significant;
use crate::units::{Share, Volume};

/// Share of the water that animals bear to have changed at once, % (common practice, no
/// source).
const CHANGED_PCT: f64 = 50.0;
/// Share of the water that sand added later displaces unasked, % (judgement).
const DISPLACED_PCT: f64 = 25.0;
/// Dry food a day that a litre takes without a word, mg (judgement, several times what
/// stocking practice comes to).
const FED_MG_L: f64 = 60.0;

/// A caution for each amount that is uncommonly large.
pub(super) fn cautions(design: &Design) -> Vec<Caution> {
    let (changed, displaced, fed) = (changed_pct(design), displaced_pct(design), fed_mg_l(design));
    let said = [
        (changed > CHANGED_PCT).then(|| {
            (
                "excess.water_change",
                format!(
                    "Much water: {} % is changed at once, animals bear about {CHANGED_PCT} %; take them out before, and refill at once: all of it may go, but the bed and its bacteria are not to fall dry.",
                    significant(changed, 2)
                ),
            )
        }),
        (displaced > DISPLACED_PCT).then(|| {
            (
                "excess.cap_added",
                format!(
                    "Much sand: what is added takes the room of {} % of the water; check its unit.",
                    significant(displaced, 2)
                ),
            )
        }),
        (fed > FED_MG_L).then(|| {
            (
                "excess.feed",
                format!(
                    "Much food: {} mg a day to the litre, several times what a stocked tank gets; check its unit.",
                    significant(fed, 2)
                ),
            )
        }),
    ];
    let said = said.into_iter().flatten();
    said.map(|(code, says)| Caution {
        code,
        says,
        source: None,
    })
    .collect()
}

/// That the pH of a day leaves the model.
pub(super) fn ph_outside(ph: f64) -> Caution {
    Caution {
        code: "range.ph_of_day",
        says: format!(
            "Range: pH comes to {} within the day, outside 4 to 11: the model of it does not hold there.",
            significant(ph, 3)
        ),
        source: None,
    }
}

/// The largest share of the water that is changed at once, %.
fn changed_pct(design: &Design) -> f64 {
    let draft = design.draft();
    let regular = draft.water.change.map(|change| change.share);
    let events = draft.events.iter().filter_map(|event| match event.kind {
        EventKind::WaterChange(share) => Some(share),
        _ => None,
    });
    let shares = regular.into_iter().chain(events).map(Share::percent);
    shares.fold(0.0, f64::max)
}

/// The share of the water that all sand added takes the room of, %.
fn displaced_pct(design: &Design) -> f64 {
    let events = design.draft().events.iter();
    let added = events.filter_map(|event| match event.kind {
        EventKind::CapAdded(depth) => Some(design.bed().area() * depth),
        _ => None,
    });
    added.sum::<Volume>() / design.water() * 100.0
}

fn fed_mg_l(design: &Design) -> f64 {
    design.draft().feed.mass_per_day.mg() / design.water().litres()
}
