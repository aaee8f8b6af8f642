//! Designs of one theme, and how the findings on them stand.

use lentic::design::Design;
use lentic::finding::{Finding, Status};
use lentic::plan::{Check, Options, PlanPart, check, partial};

/// The central numbers alone: enough for a bed and a planting.
pub(crate) const CENTRAL: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};

/// A 60 cm tank, well planted, with this soil and cap and what else is given.
pub(crate) fn sixty(
    soil: &str,
    soil_depth: &str,
    cap: &str,
    cap_depth: &str,
    more: &str,
) -> Design {
    design(&format!(
        r#"
[tank]
shape = "box"
size = "60 x 30 x 36 cm"
wall = "6 mm"
[soil]
material = "{soil}"
depth = {soil_depth}
[cap]
material = "{cap}"
depth = {cap_depth}
bags = [{{ size = "5 kg" }}, {{ size = "25 kg" }}]
[[plants]]
name = "limnobium_laevigatum"
amount = "40 %"
[[plants]]
name = "hygrophila_difformis"
amount = "16 bunches"
[light]
par = "90 umol/m2/s"
hours = 10
{more}
"#
    ))
}

/// The design of a spec.
pub(crate) fn design(spec: &str) -> Design {
    lentic::spec::parse(spec).unwrap_or_else(|faults| panic!("{faults}"))
}

/// How one finding on a design stands, by as much of its plan as that takes.
pub(crate) fn status(design: &Design, code: &str) -> Status {
    let part = PlanPart::of(&format!("findings.{code}"));
    let standing = partial(design, CENTRAL, &[part]).expect("a plan").standing;
    let found = standing.iter().find(|(own, _)| own.text() == code);
    found.unwrap_or_else(|| panic!("no finding {code}")).1
}

/// What is found of a bed.
pub(crate) fn checked(design: &Design) -> Check {
    check(design, CENTRAL).expect("a check")
}

/// One finding.
pub(crate) fn finding<'a>(findings: &'a [Finding], code: &str) -> &'a Finding {
    let found = findings.iter().find(|finding| finding.code.text() == code);
    found.unwrap_or_else(|| panic!("no finding {code}"))
}
