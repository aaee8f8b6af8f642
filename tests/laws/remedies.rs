//! What a plan tells a keeper to do never makes it worse.

use lentic::design::Design;
use lentic::mend::{Keep, MendRequest, mend};
use lentic::plan::{JudgedPlan, Options, Reach, judged, plan, remedied};
use lentic::{Finding, Status, spec};
use proptest::prelude::*;
use rayon::prelude::*;

use crate::random::{config, drawn};
use crate::{command, demo};

/// Members that a plan is made and judged again with, the ones that its remedies are tried
/// with.
const OPTIONS: Options = Options {
    members: 16,
    seed: 1,
    days: 90,
};
/// One demo tank in so many is looked at in every run, all with `LENTIC_LAWS`.
const EVERY: usize = 5;
/// Odds that a remedy may cost.
const COST: f64 = 0.02;

fn stands(finding: &Finding) -> bool {
    finding.status >= Status::Watch
}

fn look(design: &Design) -> JudgedPlan {
    judged(design, OPTIONS, Reach::Night).expect("a run")
}

/// Every step that a plan tells, followed by itself, leaves no more to mend and no worse
/// odds, unless they are as good as asked; days on which animals are advised are accepted.
fn no_step_harms(name: &str, design: &Design) -> u32 {
    let plan = plan(design, OPTIONS).expect("a run");
    let before = look(design);
    let mut followed_steps = 0;
    for finding in plan.findings.iter().filter(|finding| stands(finding)) {
        let draft = remedied(design, &plan.planting.needed, finding);
        let Some(after) = draft.and_then(|draft| draft.check().ok()) else {
            continue;
        };
        let after = look(&after);
        let code = finding.code.text();
        let says = finding.remedy.as_ref().map(|remedy| &remedy.says);
        let acts = |judged: &JudgedPlan| judged.count(Status::Act);
        assert!(acts(&after) <= acts(&before), "{name}, {code}: {says:?}");
        let lost = before.odds.unwrap_or_default() - after.odds.unwrap_or_default();
        let are_enough = after.odds >= Some(after.asked);
        assert!(
            are_enough || lost <= COST + 1e-9,
            "{name}, {code}: {lost} by {says:?}"
        );
        if code == "animals.early" {
            let mut left = after.findings.iter().filter(|left| stands(left));
            assert!(
                left.all(|left| left.code != finding.code),
                "{name}: {says:?}"
            );
        }
        followed_steps += 1;
    }
    followed_steps
}

#[test]
fn no_step_told_for_a_demo_tank_harms() {
    let all = std::env::var_os("LENTIC_LAWS").is_some();
    let every = if all { 1 } else { EVERY };
    let tanks: Vec<String> = demo::tanks().into_iter().step_by(every).collect();
    let followed: u32 = tanks
        .par_iter()
        .map(|path| {
            let text = std::fs::read_to_string(command::root().join(path)).expect("a file");
            no_step_harms(path, &spec::parse(&text).expect("a spec"))
        })
        .sum();
    assert!(followed > 5, "{followed} steps followed");
}

proptest! {
    #![proptest_config(config(2))]

    #[test]
    fn no_step_told_for_any_tank_harms(drawn in drawn()) {
        no_step_harms("drawn", &drawn.design);
    }
}

/// A mended spec planned again has nothing to mend or watch and the odds that are asked; one
/// that cannot be mended says what stands against it.
fn holds_once_mended_or_says_why_not(name: &str, text: &str) {
    let request = MendRequest {
        text,
        design: &spec::parse(text).expect("a spec"),
        keep: &Keep::default(),
        options: OPTIONS,
    };
    let (mended, new) = mend(&request, &|| ()).expect("a run");
    let again = look(&spec::parse(&new).expect("a spec"));
    assert_eq!(again.holds(), mended.holds, "{name}\n{new}");
    assert_eq!(mended.unmet.is_empty(), mended.holds, "{name}");
    let standing = again.findings.iter().filter(|finding| stands(finding));
    assert!(!mended.holds || standing.count() == 0, "{name}\n{new}");
}

#[test]
fn a_mended_demo_tank_holds_or_says_why_not() {
    let all = std::env::var_os("LENTIC_LAWS").is_some();
    let every = if all { 1 } else { 24 };
    let tanks: Vec<String> = demo::tanks().into_iter().step_by(every).collect();
    tanks.par_iter().for_each(|path| {
        let text = std::fs::read_to_string(command::root().join(path)).expect("a file");
        holds_once_mended_or_says_why_not(path, &text);
    });
}

proptest! {
    #![proptest_config(config(1))]

    #[test]
    fn any_mended_tank_holds_or_says_why_not(drawn in drawn()) {
        holds_once_mended_or_says_why_not("drawn", &format!("{drawn:?}"));
    }
}
