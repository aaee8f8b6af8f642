//! What may be changed about a tank, how far, and which findings that may answer.

mod air;
mod animals;
mod bed;
mod light;
mod planting;
mod water;

use crate::design::Design;
use crate::finding::{Code, Status};
use crate::plan::{JudgedPlan, Reach};
use crate::spec::Edit;

/// A kind of change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Lever {
    /// Another cap.
    CapMaterial,
    /// A deeper, thinner or more level cap.
    CapDepth,
    /// Less or more level soil.
    SoilDepth,
    /// Rounds of soaking.
    Soaking,
    /// Cover under floaters.
    Floaters,
    /// Fast growers.
    Stems,
    /// The cover that floaters are thinned to.
    Thinning,
    /// Hours of light.
    Hours,
    /// A brighter lamp.
    Lamp,
    /// Regular water changes.
    Changes,
    /// A device, or more or less of it.
    Air,
    /// Fewer animals of the kind at this place.
    Count(usize),
    /// Later animals.
    Date,
}

/// One setting of a lever.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rung {
    pub(super) lever: Lever,
    pub(super) edits: Vec<Edit>,
    /// What it asks of a keeper beside other changes: judgement. Two for any change at all,
    /// and more by how far it goes, what is bought, and what is done again every week.
    pub(super) effort: f64,
    /// Whether it is less of something than as written; rungs that are more of it lie on
    /// another side.
    pub(super) is_less: bool,
}

impl Rung {
    fn new(lever: Lever, effort: f64, edits: impl IntoIterator<Item = Edit>) -> Self {
        Self {
            lever,
            edits: edits.into_iter().collect(),
            effort,
            is_less: false,
        }
    }

    /// The same on the side of less.
    fn less(self, is_less: bool) -> Self {
        Self { is_less, ..self }
    }

    /// The ladder that it is on: its lever, to one side.
    pub(super) fn ladder(&self) -> (Lever, bool) {
        (self.lever, self.is_less)
    }
}

/// A key set to a text.
fn text(key: impl Into<String>, value: impl std::fmt::Display) -> Edit {
    Edit {
        key: key.into(),
        value: Some(format!("\"{value}\"")),
    }
}

/// A key set to a bare number.
fn number(key: impl Into<String>, value: impl std::fmt::Display) -> Edit {
    Edit {
        key: key.into(),
        value: Some(value.to_string()),
    }
}

/// A key taken out.
fn out(key: &str) -> Edit {
    Edit {
        key: key.to_owned(),
        value: None,
    }
}

/// The tank as written, which settings are counted from, and as it is so far.
#[derive(Clone, Copy)]
pub(super) struct Now<'a> {
    pub(super) base: &'a Design,
    pub(super) design: &'a Design,
    pub(super) judged: &'a JudgedPlan,
}

/// What a kind of change is good for.
pub(super) struct Means {
    /// The findings that it may answer.
    answers: &'static [&'static [Code]],
    /// Whether it may raise the odds of the start.
    raises_odds: bool,
    /// From which reach of a judgement on it shows.
    shows: Reach,
    /// Its settings.
    rungs: fn(&Now<'_>) -> Vec<Rung>,
}

impl Means {
    /// Whether it may mend what is wrong.
    pub(super) fn may_mend(&self, judged: &JudgedPlan, reach: Reach) -> bool {
        let standing = judged.findings.iter();
        let mut standing = standing.filter(|finding| finding.status >= Status::Watch);
        let is_named = standing.any(|finding| {
            let mut codes = self.answers.iter().copied().flatten();
            codes.any(|code| *code == finding.code)
        });
        let is_short = self.raises_odds && judged.shortfall() > 0.0;
        reach >= self.shows && (is_named || is_short)
    }
}

/// All settings of the kinds of change that some of them are.
pub(super) fn rungs<'m>(means: impl IntoIterator<Item = &'m Means>, now: &Now<'_>) -> Vec<Rung> {
    let means = means.into_iter();
    means.flat_map(|means| (means.rungs)(now)).collect()
}

/// The rungs of each ladder that are looked at first: one half way, and the last.
pub(super) fn spread(mut rungs: Vec<Rung>) -> Vec<Rung> {
    rungs.sort_by(|one, other| {
        let ladders = one.ladder().cmp(&other.ladder());
        ladders.then(one.effort.total_cmp(&other.effort))
    });
    let levers = rungs.chunk_by(|one, other| one.ladder() == other.ladder());
    let spread = levers.flat_map(|ladder| {
        let last = ladder.len() - 1;
        let mut places = vec![last / 2, last];
        places.dedup();
        places
            .into_iter()
            .filter_map(|place| ladder.get(place).cloned())
    });
    spread.collect()
}

/// Findings on what the bed gives off and who takes it.
const FLUSH: &[Code] = &[
    Code::CapLeak,
    Code::PlantsLoad,
    Code::FlushAmmonia,
    Code::FlushNitrite,
    Code::FlushNitrate,
    Code::FlushChanges,
];

/// Every kind of change.
pub(super) const MEANS: &[Means] = &[
    Means {
        answers: &[&[Code::CapCoarse, Code::CapFine]],
        raises_odds: false,
        shows: Reach::Design,
        rungs: bed::cap_materials,
    },
    Means {
        answers: &[
            &[Code::CapThin, Code::CapDeep, Code::CapSlope, Code::CapLeak],
            FLUSH,
        ],
        raises_odds: true,
        shows: Reach::Design,
        rungs: bed::cap_depths,
    },
    Means {
        answers: &[
            &[Code::SoilDeep, Code::CapDeep, Code::CapSlope, Code::CapThin],
            &[Code::AirDawn, Code::WaterSoft],
            FLUSH,
        ],
        raises_odds: true,
        shows: Reach::Design,
        rungs: bed::soil_depths,
    },
    Means {
        answers: &[FLUSH, &[Code::WaterSoft]],
        raises_odds: true,
        shows: Reach::Start,
        rungs: bed::soakings,
    },
    Means {
        answers: &[
            &[Code::PlantsCover, Code::PlantsMix, Code::LightShort],
            &[Code::LightLong, Code::AirDawn, Code::AnimalsLoad],
            FLUSH,
        ],
        raises_odds: true,
        shows: Reach::Design,
        rungs: planting::floaters,
    },
    Means {
        answers: &[&[Code::PlantsMix, Code::AnimalsLoad, Code::AirDawn], FLUSH],
        raises_odds: true,
        shows: Reach::Design,
        rungs: planting::stems,
    },
    Means {
        answers: &[&[Code::LightShort, Code::AirDawn], FLUSH],
        raises_odds: true,
        shows: Reach::Start,
        rungs: planting::thinnings,
    },
    Means {
        answers: &[
            &[Code::LightShort, Code::LightLong, Code::AirDawn],
            &[Code::AnimalsLoad],
            FLUSH,
        ],
        raises_odds: true,
        shows: Reach::Start,
        rungs: light::hours,
    },
    Means {
        answers: &[&[Code::LightShort, Code::AnimalsLoad], FLUSH],
        raises_odds: true,
        shows: Reach::Start,
        rungs: light::lamps,
    },
    Means {
        answers: &[&[Code::WaterSoft], FLUSH],
        raises_odds: false,
        shows: Reach::Start,
        rungs: water::changes,
    },
    Means {
        answers: &[&[
            Code::AirDawn,
            Code::FlowSlack,
            Code::FlowStrong,
            Code::AnimalsLoad,
        ]],
        raises_odds: true,
        shows: Reach::Night,
        rungs: air::devices,
    },
    Means {
        answers: &[
            &[Code::AnimalsLoad, Code::AnimalsDiggers, Code::AnimalsFeed],
            &[Code::AirDawn, Code::WaterSoft],
            FLUSH,
        ],
        raises_odds: true,
        shows: Reach::Design,
        rungs: animals::counts,
    },
    Means {
        answers: &[&[Code::AnimalsEarly, Code::AirDawn], FLUSH],
        raises_odds: true,
        shows: Reach::Start,
        rungs: animals::dates,
    },
];
