//! What is told in several places is the same in each, and a plan is short.

use lentic::finding::Finding;
use lentic::plan::{self, OnDay, air_setting, of_100};
use lentic::report::chart::Glyphs;
use lentic::report::compose;
use lentic::report::document::Document;
use lentic::report::text::{self, Layout};
use lentic::units::Flow;
use lentic::{Status, UnitSystem};

use crate::demo;
use crate::designed::{FEW, demo as demo_tank, page, planned};

/// Lines of a plan in a terminal of 80 columns where nothing is to be done, and how many
/// more each thing to mend or watch takes.
const MOST_LINES: usize = 48;
const LINES_A_FINDING: usize = 5;
/// One demo tank in so many is started and looked at by night alone, too.
const EVERY: usize = 5;

fn in_terminal(document: &Document) -> String {
    let layout = Layout {
        width: 80,
        color: false,
        glyphs: Glyphs::UNICODE,
    };
    text::render(document, layout)
}

fn stands(finding: &Finding) -> bool {
    finding.status >= Status::Watch
}

#[test]
fn a_plan_takes_about_forty_lines() {
    for path in demo::tanks() {
        let design = demo_tank(&path);
        let plan = planned(&design);
        let short = in_terminal(&compose::plan_in_short(&design, &plan));
        let most =
            MOST_LINES + LINES_A_FINDING * plan.findings.iter().filter(|one| stands(one)).count();
        let lines = short.lines().count();
        assert!(
            lines <= most,
            "{path}: {lines} lines, {most} at most\n{short}"
        );
    }
}

/// What is to be done about a finding is said there, or at the finding that is named.
#[test]
fn a_finding_that_leans_on_another_names_one_with_a_remedy_of_its_own() {
    let mut leaning = 0;
    for path in demo::tanks() {
        let plan = planned(&demo_tank(&path));
        let says = |finding: &Finding| finding.remedy.as_ref().map(|remedy| remedy.says.clone());
        for finding in plan.findings.iter().filter(|one| stands(one)) {
            let own = says(finding);
            let Some(other) = own.as_deref().and_then(|own| own.strip_prefix("as for ")) else {
                continue;
            };
            let mut others = plan.findings.iter().filter(|one| stands(one));
            let named = others.find(|named| named.code.text() == other);
            let remedy = named.and_then(says);
            let is_told = remedy.is_some_and(|told| !told.starts_with("as for "));
            assert!(is_told, "{path}: {} as for {other}", finding.code.text());
            leaning += 1;
        }
    }
    assert!(leaning > 10, "{leaning}");
}

#[test]
fn the_same_air_and_the_same_odds_stand_everywhere() {
    for path in demo::tanks().into_iter().step_by(EVERY) {
        let design = demo_tank(&path);
        let plan = planned(&design);
        let held = of_100(plan.startup.odds_with_changes.expect("odds"));
        let (startup, findings) = plan::startup(&design, FEW, &|_| ()).expect("a run");
        let start = in_terminal(&compose::startup(&design, &startup, &findings));
        let (night, findings) = plan::night(&design, FEW, OnDay::default()).expect("a run");
        let night = in_terminal(&compose::night(&design, &night, &findings));
        let full = in_terminal(&compose::plan(&design, &plan));
        let page = page(&design);
        let odds = format!("{held:.0} of 100 starts hold");
        for told in [&plan.verdict(), &start, &full, &page] {
            let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(told.contains(&odds), "{path}: {odds}");
        }
        let Some(needed) = plan.night.air_needed_l_min.filter(|air| *air > 0.0) else {
            continue;
        };
        let units: UnitSystem = design.draft().units;
        let setting = units.air_flow(air_setting(Flow::from_l_min(needed)));
        for told in [&night, &full, &page] {
            assert!(told.contains(&setting), "{path}: {setting}");
        }
    }
}
