//! Plans at the ends of what a spec may say: every number is there and finite.

use lentic::plan::{Options, plan, startup};
use serde_json::Value;

/// One tank at some corner of the allowed values.
#[derive(Debug, Clone, Copy)]
struct Corner {
    celsius: f64,
    ph: f64,
    nitrate_mg_l: f64,
    light_hours: f64,
    planted: bool,
    emptied_on_day_0: bool,
}

impl Corner {
    fn spec(self) -> String {
        let plants = "[[plants]]\nname = \"duckweed\"\namount = \"30 %\"\n\
                      [[plants]]\nname = \"ludwigia_repens\"\namount = \"20 stems\"\n";
        let change = "[[events]]\nday = 0\nwater_change = \"100 %\"\n";
        format!(
            "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n\
             [soil]\nmaterial = \"organic_potting_mix\"\ndepth = \"25 mm\"\n\
             [cap]\nmaterial = \"filter_sand\"\ndepth = \"35 mm\"\n\
             [water]\ntemperature = \"{} C\"\nph = {}\nnitrate = \"{} mg/L\"\n\
             [light]\nclass = \"medium\"\nhours = {}\n{}{}",
            self.celsius,
            self.ph,
            self.nitrate_mg_l,
            self.light_hours,
            if self.planted { plants } else { "" },
            if self.emptied_on_day_0 { change } else { "" },
        )
    }
}

fn corners() -> Vec<Corner> {
    let mut corners = Vec::new();
    for celsius in [0.0, 24.0, 40.0] {
        for ph in [4.0, 7.0, 10.0] {
            for nitrate_mg_l in [0.0, 500.0] {
                for light_hours in [0.0, 9.0] {
                    for planted in [false, true] {
                        for emptied_on_day_0 in [false, true] {
                            corners.push(Corner {
                                celsius,
                                ph,
                                nitrate_mg_l,
                                light_hours,
                                planted,
                                emptied_on_day_0,
                            });
                        }
                    }
                }
            }
        }
    }
    corners
}

/// Paths of everything that is no number where one belongs, and of words that say so.
fn odd(value: &Value, path: &str, found: &mut Vec<String>) {
    // a tank that is never ready has no day
    const MAY_LACK: [&str; 2] = [".ready_day", ".ready_day_advised"];
    match value {
        Value::Null if !MAY_LACK.iter().any(|end| path.ends_with(end)) => {
            found.push(path.to_owned());
        }
        Value::String(text) => {
            let mut words = text.split(|c: char| !c.is_alphanumeric());
            if words.any(|word| word == "NaN" || word == "inf") {
                found.push(format!("{path}: {text}"));
            }
        }
        Value::Array(items) => {
            for (place, item) in items.iter().enumerate() {
                odd(item, &format!("{path}[{place}]"), found);
            }
        }
        Value::Object(fields) => {
            for (name, field) in fields {
                odd(field, &format!("{path}.{name}"), found);
            }
        }
        _ => {}
    }
}

/// What is odd in everything that a tank's start gives.
fn oddities(spec: &str, members: u32) -> Vec<String> {
    let design = lentic::spec::parse(spec).unwrap_or_else(|faults| panic!("{faults}\n{spec}"));
    let options = Options {
        members,
        days: 60,
        ..Options::default()
    };
    let plan = plan(&design, options).unwrap_or_else(|error| panic!("{error}\n{spec}"));
    let (course, findings) = startup(&design, options, &|_| ()).expect("a run");
    let mut found = Vec::new();
    for finding in plan.findings.iter().chain(&findings) {
        let quantity = finding.remedy.as_ref().and_then(|remedy| remedy.quantity);
        let numbers = [finding.value, finding.low, finding.high, quantity];
        if numbers
            .into_iter()
            .flatten()
            .any(|number| !number.is_finite())
        {
            found.push(format!("{finding:?}"));
        }
        odd(
            &Value::from(finding.says.as_str()),
            finding.code.text(),
            &mut found,
        );
    }
    let mut plan = plan;
    plan.findings.clear();
    plan.cautions.clear();
    for value in [serde_json::to_value(plan), serde_json::to_value(course)] {
        odd(&value.expect("JSON"), "", &mut found);
    }
    found
}

#[test]
fn every_corner_of_the_allowed_values_gives_finite_numbers() {
    for corner in corners() {
        let found = oddities(&corner.spec(), 0);
        assert!(found.is_empty(), "{corner:?}: {found:?}");
    }
}

#[test]
fn an_ensemble_at_the_ends_gives_finite_numbers() {
    for (celsius, ph) in [(0.0, 4.0), (24.0, 7.0), (40.0, 10.0)] {
        for planted in [false, true] {
            let corner = Corner {
                celsius,
                ph,
                nitrate_mg_l: 500.0,
                light_hours: if planted { 9.0 } else { 0.0 },
                planted,
                emptied_on_day_0: true,
            };
            for members in [1, 9] {
                let found = oddities(&corner.spec(), members);
                assert!(found.is_empty(), "{corner:?}: {found:?}");
            }
        }
    }
}

/// The search itself has to find what it is for.
#[test]
fn a_missing_number_is_found_out() {
    let mut found = Vec::new();
    let broken = serde_json::json!({ "bed": [{ "release": f64::NAN }], "ready_day": null,
        "says": "inf mg/L", "name": "infant" });
    odd(&broken, "", &mut found);
    assert_eq!(found, [".bed[0].release", ".says: inf mg/L"]);
}
