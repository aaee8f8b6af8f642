//! Specs of one theme, planned by the real command.

use serde_json::Value;

use crate::command;

/// A 60 cm tank, well planted, with this soil and cap and what else is given.
pub(crate) fn sixty(
    soil: &str,
    soil_depth: &str,
    cap: &str,
    cap_depth: &str,
    more: &str,
) -> String {
    format!(
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
    )
}

/// What the command makes of a spec.
pub(crate) fn planned(command_name: &str, spec: &str) -> Value {
    let ran = command::lentic(&[command_name, "-", "--format", "json"], spec);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    serde_json::from_str(&ran.stdout).expect("JSON")
}

/// The status of one finding.
pub(crate) fn status(plan: &Value, code: &str) -> String {
    finding(plan, code)["status"]
        .as_str()
        .expect("a status")
        .to_owned()
}

/// One finding.
pub(crate) fn finding<'a>(plan: &'a Value, code: &str) -> &'a Value {
    plan["findings"]
        .as_array()
        .expect("findings")
        .iter()
        .find(|finding| finding["code"] == code)
        .unwrap_or_else(|| panic!("no finding {code}"))
}

/// The statuses worse than a note, with their codes.
pub(crate) fn troubles(plan: &Value) -> Vec<String> {
    plan["findings"]
        .as_array()
        .expect("findings")
        .iter()
        .filter(|finding| finding["status"] == "watch" || finding["status"] == "act")
        .map(|finding| format!("{} {}", finding["status"], finding["code"]))
        .collect()
}
