//! What a keeper tells beside signs, or does not know, and which way it moves the causes.

use lentic::design::Design;
use lentic::diagnosis::case::CaseHistory;
use lentic::diagnosis::cause::Cause;
use lentic::diagnosis::diagnose;
use lentic::diagnosis::hypotheses::Hypotheses;
use lentic::diagnosis::weighing::Weighing;
use lentic::plan::Options;

const FEW: Options = Options {
    members: 4,
    seed: 1,
    days: 90,
};

/// A tank of half a year with one reading, of which more is told.
fn tank(cap_depth: &str, water: &str, told: &str) -> Design {
    let text = format!(
        "[tank]\nsize = '60 x 30 x 36 cm'\n[soil]\nmaterial = 'loam_topsoil'\ndepth = '25 mm'\n\
         [cap]\nmaterial = 'filter_sand'\ndepth = '{cap_depth}'\n[water]\n{water}\n\
         [[plants]]\nname = 'hygrophila_polysperma'\namount = '8 bunches'\n{told}"
    );
    lentic::spec::parse_standing(&text, "tank", None).expect("a spec")
}

fn probability(told: &str, cause: Cause) -> f64 {
    let design = tank("40 mm", "hardness = '8 dGH'", told);
    let case = CaseHistory::of(&design, &[]).expect("a case");
    let hypotheses = Hypotheses::of(&case, FEW).expect("courses");
    Weighing::of(&case, &hypotheses, None).posterior.get(cause)
}

#[test]
fn what_is_told_moves_its_cause() {
    let read = |more: &str| format!("[[readings]]\nday = 180\nammonia = '0.5 mg/L'\n{more}\n");
    let event = |what: &str| format!("[[events]]\nday = 178\n{what}\n{}", read(""));
    for (cause, told, untold) in [
        (Cause::KitError, read("blank = false"), read("")),
        (Cause::KitError, read(""), read("blank = true")),
        (Cause::HardnessCreep, read("hardness = '24 dGH'"), read("")),
        (Cause::HardnessCreep, read(""), read("hardness = '8 dGH'")),
        (Cause::HardnessCreep, event("topped_up = '5 L'"), read("")),
        (Cause::SoftWater, read("alkalinity = '0.5 dKH'"), read("")),
        (
            Cause::BacteriaSetBack,
            event("medicine = 'erythromycin'"),
            event("medicine = 'copper'"),
        ),
        (Cause::LightLong, event("lamp_changed = true"), read("")),
    ] {
        let (with, without) = (probability(&told, cause), probability(&untold, cause));
        assert!(with > 1.2 * without, "{cause:?}: {with} {without}: {told}");
    }
}

#[test]
fn a_depth_that_nobody_knows_is_drawn_and_not_judged() {
    let signs = "[signs]\nobserved = ['soil_plume']\n";
    let [known, unknown] = ["10 mm", "unknown"].map(|depth| {
        let design = tank(depth, "", signs);
        diagnose(&design, &[], FEW).expect("a diagnosis")
    });
    let judges = |found: &lentic::diagnosis::Diagnosis| {
        let mut codes = found.findings.iter().map(|finding| finding.code.text());
        codes.any(|code| code == "cap.thin")
    };
    assert!(judges(&known) && !judges(&unknown));
    let cautions = |found: &lentic::diagnosis::Diagnosis| {
        let mut codes = found.cautions.iter().map(|caution| caution.code);
        codes.any(|code| code == "range.depth")
    };
    assert!(!cautions(&known) && cautions(&unknown));
}
