//! What `compare` gives: rows of what is asked for, which no struct holds.

use crate::result::Ground::{self, From, Topic};
use crate::result::{Declared, Origin, ResultKind};

/// Each result with what it is, what it rests on and what stands there.
const RESULTS: [(&str, &str, Ground, ResultKind); 14] = [
    (
        "rows",
        "a row for each tank, or for each variation of it",
        From(Origin::Spec),
        ResultKind::List,
    ),
    (
        "rows[].name",
        "what you call the tank",
        From(Origin::Spec),
        ResultKind::Word,
    ),
    (
        "rows[].file",
        "the spec's file",
        From(Origin::Spec),
        ResultKind::Word,
    ),
    (
        "rows[].status",
        "the worst status of all findings: ok, note, watch or act",
        From(Origin::Finding),
        ResultKind::Word,
    ),
    (
        "rows[].vary",
        "what the varied keys are in this row; the results asked for stand beside it by their paths",
        From(Origin::Option),
        ResultKind::Section,
    ),
    (
        "failed",
        "what could not be compared",
        From(Origin::Spec),
        ResultKind::List,
    ),
    (
        "failed[].file",
        "the spec's file",
        From(Origin::Spec),
        ResultKind::Word,
    ),
    (
        "failed[].vary",
        "what the varied keys were",
        From(Origin::Option),
        ResultKind::Section,
    ),
    (
        "failed[].error",
        "why not",
        From(Origin::Program),
        ResultKind::Word,
    ),
    (
        "sensitivity",
        "how much each varied key moves the result asked for",
        Topic("study.influence"),
        ResultKind::List,
    ),
    (
        "sensitivity[].result",
        "the result",
        From(Origin::Option),
        ResultKind::Word,
    ),
    (
        "sensitivity[].key",
        "the varied key",
        From(Origin::Option),
        ResultKind::Word,
    ),
    (
        "sensitivity[].variance_share",
        "share of the result's variance that goes with this key alone",
        Topic("study.influence"),
        ResultKind::Number,
    ),
    (
        "sensitivity[].rank_correlation",
        "direction and steadiness, from -1 to 1",
        Topic("study.influence"),
        ResultKind::Number,
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
