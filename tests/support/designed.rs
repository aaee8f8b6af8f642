//! Designs, plans and pages made in this process, each once for all tests that ask for it.

use std::collections::HashMap;
use std::sync::{Arc, LazyLock, Mutex, OnceLock};

use lentic::design::Design;
use lentic::plan::{self, Options, Plan};
use lentic::report::{compose, html};

use crate::command;

/// Few members: pages look the same with more.
pub(crate) const FEW: Options = Options {
    members: 8,
    seed: 1,
    days: 90,
};

/// A plan, once it was made.
type Once = Arc<OnceLock<Plan>>;

/// Plans by what they are plans of.
static PLANS: LazyLock<Mutex<HashMap<String, Once>>> = LazyLock::new(Mutex::default);

/// The design of a spec's text.
pub(crate) fn design(text: &str) -> Design {
    lentic::spec::parse(text).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The design of a demo tank.
pub(crate) fn demo(path: &str) -> Design {
    design(&std::fs::read_to_string(command::root().join(path)).expect("a demo tank"))
}

/// The plan of a design.
pub(crate) fn planned(design: &Design) -> Plan {
    let draft = format!("{:?}", design.draft());
    let plan = Arc::clone(PLANS.lock().expect("plans").entry(draft).or_default());
    plan.get_or_init(|| plan::plan(design, FEW).expect("a plan"))
        .clone()
}

/// The page of a design's plan.
pub(crate) fn page(design: &Design) -> String {
    html::render(&compose::plan(design, &planned(design)))
}
