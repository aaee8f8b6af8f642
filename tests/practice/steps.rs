//! That no step against a danger contradicts what a cause beside it asks for: common
//! practice, no source.

use lentic::design::Design;
use lentic::diagnosis::CauseResult;
use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::Cause;
use lentic::diagnosis::estimate::TankEstimate;
use lentic::diagnosis::next_step::{NextStep, of};
use lentic::diagnosis::remedy::treat;
use lentic::diagnosis::scenario::{middle, scenario};
use lentic::plan::{Check, Options, check};
use rayon::prelude::*;

/// Orders of which a step gives one at most.
const CONTRARY: [(&str, &str); 6] = [
    ("feed nothing", "feed the animals more"),
    ("do not raise pH", "baking soda"),
    ("do not raise pH", "raise alkalinity"),
    ("run no air before", "run an air stone now"),
    ("leave it alone", "change"),
    ("feed nothing", "g of potassium nitrate"),
];

const TANK: &str = "
[tank]
shape = \"box\"
size = \"60 x 30 x 36 cm\"
[soil]
material = \"loam_topsoil\"
depth = \"25 mm\"
[cap]
material = \"filter_sand\"
depth = \"40 mm\"
[[plants]]
name = \"hygrophila_polysperma\"
amount = \"8 bunches\"
[[animals]]
name = \"small_fish\"
count = 10
from_day = 50
";

/// What makes a tank an emergency: poison, gasping in clean water, want of oxygen, and
/// gasping after something was sprayed.
const DANGERS: [&str; 4] = [
    "[[readings]]\nday = 100\nammonia = \"2 mg/L\"\nnitrite = \"3 mg/L\"\n[signs]\nobserved = [\"gasping_all_day\"]\n",
    "[[readings]]\nday = 100\nammonia = \"0 mg/L\"\nnitrite = \"0 mg/L\"\n[signs]\nobserved = [\"gasping_at_dawn\"]\n",
    "[[readings]]\nday = 100\noxygen = \"2 mg/L\"\n",
    "[[events]]\nday = 99\nsprayed = true\n[[readings]]\nday = 100\nammonia = \"0 mg/L\"\nnitrite = \"0 mg/L\"\n[signs]\nobserved = [\"gasping_all_day\"]\n",
];

fn found(case: &CaseHistory<'_>, cause: Cause, probability: f64) -> CauseResult {
    let estimate = TankEstimate {
        tank: scenario(case, cause, &middle()),
        now_d: case.now_d(),
        cause,
    };
    CauseResult {
        cause,
        probability,
        says: cause.says(),
        evidence: Vec::new(),
        remedy: Some(treat(case, &estimate, None).expect("a remedy").remedy),
    }
}

/// A tank in danger, with what is found of its bed.
struct Danger {
    design: Design,
    bed: Check,
}

impl Danger {
    fn new(danger: &str) -> Self {
        let design = lentic::spec::parse(&format!("{TANK}{danger}")).expect("a spec");
        let central = Options {
            members: 0,
            ..Options::default()
        };
        let bed = check(&design, central).expect("a bed");
        Self { design, bed }
    }

    fn step(&self, cause: Cause, probability: f64) -> NextStep {
        let case = CaseHistory::of(&self.design, &[]).expect("a case");
        let found = found(&case, cause, probability);
        of(&case, &[found], &[], None, &self.bed)
    }
}

fn contradicts_nothing(says: &str, cause: Cause) {
    for (one, other) in CONTRARY {
        let both = says.contains(one) && says.contains(other);
        assert!(!both, "{}: \"{one}\" and \"{other}\": {says}", cause.name());
    }
}

#[test]
fn every_danger_is_met_with_every_cause_beside_it_and_nothing_contradicts() {
    for danger in DANGERS {
        let danger = Danger::new(danger);
        let case = CaseHistory::of(&danger.design, &[]).expect("a case");
        let chlorine = found(&case, Cause::Chlorine, 0.21);
        Cause::ALL.par_iter().for_each(|cause| {
            let one = found(&case, *cause, 0.35);
            let step = of(&case, std::slice::from_ref(&one), &[], None, &danger.bed);
            let says = &step.result.says;
            assert!(step.is_urgent, "{}: {says}", cause.name());
            let is_named = says.contains(cause.label());
            let needs_none = matches!(cause, Cause::AsExpected | Cause::KitError);
            assert_eq!(is_named, !needs_none, "{}: {says}", cause.name());
            contradicts_nothing(says, *cause);
            let two = of(&case, &[one, chlorine.clone()], &[], None, &danger.bed);
            let says = &two.result.says;
            assert!(says.contains("by the label"), "{}: {says}", cause.name());
            contradicts_nothing(says, *cause);
        });
    }
}

#[test]
fn chlorine_from_a_fifth_on_comes_before_the_air() {
    let danger = Danger::new(DANGERS[1]);
    let named = danger.step(Cause::Chlorine, 0.21).result;
    assert!(named.now[0].contains("by the label"), "{}", named.says);
    let unnamed = danger.step(Cause::Chlorine, 0.19).result;
    assert!(!unnamed.says.contains("chlorine"), "{}", unnamed.says);
}
