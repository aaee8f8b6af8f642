//! What is computed of tanks in this process, each once for all tests that ask for it.

use std::collections::HashMap;
use std::sync::{Arc, LazyLock, Mutex, OnceLock};

use lentic::design::Design;
use lentic::diagnosis::{self, Diagnosis};
use lentic::finding::Finding;
use lentic::plan::{self, Night, OnDay, Options, Plan, Startup};
use lentic::report::chart::Glyphs;
use lentic::report::document::Document;
use lentic::report::text::{self, Layout};
use lentic::report::{compose, html};
use lentic::units::{Duration, Share, Volume};
use lentic::upkeep::{self, Upkeep, UpkeepQuestions};

use crate::command;

/// Few members: what is written looks the same with more.
pub(crate) const FEW: Options = Options {
    members: 8,
    seed: 1,
    days: 90,
};

/// The design of a spec's text.
pub(crate) fn design(text: &str) -> Design {
    lentic::spec::parse(text).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The design of a demo tank.
pub(crate) fn demo(path: &str) -> Design {
    design(&std::fs::read_to_string(command::root().join(path)).expect("a demo tank"))
}

/// Results by what they are results of.
struct Results<T>(Mutex<HashMap<String, Arc<OnceLock<T>>>>);

impl<T: Clone> Results<T> {
    fn new() -> Self {
        Self(Mutex::default())
    }

    fn of(&self, design: &Design, compute: impl FnOnce() -> T) -> T {
        let draft = format!("{:?}", design.draft());
        let result = Arc::clone(self.0.lock().expect("results").entry(draft).or_default());
        result.get_or_init(compute).clone()
    }
}

/// The plan of a design.
pub(crate) fn planned(design: &Design) -> Plan {
    static PLANS: LazyLock<Results<Plan>> = LazyLock::new(Results::new);
    PLANS.of(design, || plan::plan(design, FEW).expect("a plan"))
}

/// Its first weeks by themselves.
pub(crate) fn started(design: &Design) -> (Startup, Vec<Finding>) {
    static STARTS: LazyLock<Results<(Startup, Vec<Finding>)>> = LazyLock::new(Results::new);
    STARTS.of(design, || {
        plan::startup(design, FEW, &|_| ()).expect("a start")
    })
}

/// Its leanest night by itself.
pub(crate) fn night(design: &Design) -> (Night, Vec<Finding>) {
    static NIGHTS: LazyLock<Results<(Night, Vec<Finding>)>> = LazyLock::new(Results::new);
    NIGHTS.of(design, || {
        plan::night(design, FEW, OnDay::default()).expect("a night")
    })
}

/// What is found of it as it stands.
pub(crate) fn checked(design: &Design) -> Diagnosis {
    static CHECKS: LazyLock<Results<Diagnosis>> = LazyLock::new(Results::new);
    CHECKS.of(design, || {
        diagnosis::diagnose(design, &[], FEW).expect("a check")
    })
}

/// It running, with all that may be asked of it.
pub(crate) fn kept_up(design: &Design) -> Upkeep {
    static KEPT: LazyLock<Results<Upkeep>> = LazyLock::new(Results::new);
    let asked = UpkeepQuestions {
        day: None,
        stir: Some(Share::from_percent(20.0)),
        away: Some(Duration::from_days(14.0)),
        moved: true,
        bucket: Some(Volume::from_litres(8.0)),
    };
    KEPT.of(design, || {
        upkeep::upkeep(design, FEW, &asked, &|_| ()).expect("a running tank")
    })
}

/// The page of a design's plan.
pub(crate) fn page(design: &Design) -> String {
    html::render(&compose::plan(design, &planned(design)))
}

/// A document on a terminal of eighty columns.
pub(crate) fn on_terminal(document: &Document) -> String {
    let layout = Layout {
        width: 80,
        color: false,
        glyphs: Glyphs::UNICODE,
    };
    text::render(document, layout)
}
