//! What `compare` gives: rows of what is asked for, which no struct holds.

use crate::result::Ground::{self, From, Topic};
use crate::result::{Declared, Kind, Origin};

/// Each result with what it is, what it rests on and what stands there.
const RESULTS: [(&str, &str, Ground, Kind); 14] = [
    (
        "rows",
        "a row for each tank, or for each variation of it",
        From(Origin::Spec),
        Kind::List,
    ),
    (
        "rows[].name",
        "what you call the tank",
        From(Origin::Spec),
        Kind::Word,
    ),
    (
        "rows[].file",
        "the spec's file",
        From(Origin::Spec),
        Kind::Word,
    ),
    (
        "rows[].status",
        "the worst status of all findings: ok, note, watch or act",
        From(Origin::Finding),
        Kind::Word,
    ),
    (
        "rows[].vary",
        "what the varied keys are in this row; the results asked for stand beside it by their paths",
        From(Origin::Option),
        Kind::Section,
    ),
    (
        "failed",
        "what could not be compared",
        From(Origin::Spec),
        Kind::List,
    ),
    (
        "failed[].file",
        "the spec's file",
        From(Origin::Spec),
        Kind::Word,
    ),
    (
        "failed[].vary",
        "what the varied keys were",
        From(Origin::Option),
        Kind::Section,
    ),
    (
        "failed[].error",
        "why not",
        From(Origin::Program),
        Kind::Word,
    ),
    (
        "sensitivity",
        "how much each varied key moves the result asked for",
        Topic("study.influence"),
        Kind::List,
    ),
    (
        "sensitivity[].result",
        "the result",
        From(Origin::Option),
        Kind::Word,
    ),
    (
        "sensitivity[].key",
        "the varied key",
        From(Origin::Option),
        Kind::Word,
    ),
    (
        "sensitivity[].variance_share",
        "share of the result's variance that goes with this key alone",
        Topic("study.influence"),
        Kind::Number,
    ),
    (
        "sensitivity[].rank_correlation",
        "direction and steadiness, from -1 to 1",
        Topic("study.influence"),
        Kind::Number,
    ),
];

/// The results of a comparison beside those that are asked for.
pub(super) fn results() -> Vec<Declared> {
    RESULTS
        .map(|(path, says, ground, kind)| Declared {
            path: path.to_owned(),
            says,
            ground,
            band: None,
            kind,
        })
        .to_vec()
}
