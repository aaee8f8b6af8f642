//! One published set-up: its spec, what was observed, and where each input comes from.

use std::path::Path;

use lentic::catalogue::ObservedComparison;
use lentic::design::Design;
use lentic::numerics::sobol::Sobol;
use lentic::source::Band;
use toml::{Table, Value};

/// A case as its three files say it.
pub(crate) struct Case {
    pub(crate) name: String,
    /// What the observations are of, in words, in their order.
    words: Vec<String>,
    /// The sections of results that they are about.
    sections: Vec<String>,
    /// Whether a parameter was set with the observations in view: shown, not counted.
    pub(crate) in_view: bool,
    /// What is run: `night`, `startup`, `growth` for stands that are left to grow, or
    /// `parameters` for bands as they stand.
    pub(crate) run: String,
    /// The day of a night, the days of a start-up.
    pub(crate) day: u32,
    pub(crate) observations: Vec<Observation>,
    spec: Table,
    inputs: Vec<Input>,
}

/// An input that the source does not give, with the range that it is drawn from.
struct Input {
    key: String,
    drawn: Option<(f64, f64, String)>,
}

/// One row of `observed.csv`.
pub(crate) struct Observation {
    /// JSON path of the result.
    pub(crate) path: String,
    /// The day of a row of `days`, where the path leads there.
    pub(crate) day: Option<f64>,
    /// The hour of a row of `hours`, or `max`, `min`, `mean` or `most a day in a week` over
    /// them or over the days.
    pub(crate) hour: String,
    pub(crate) value: f64,
    pub(crate) low: f64,
    pub(crate) high: f64,
    pub(crate) unit: String,
    /// Compared as a ratio or as a difference.
    pub(crate) kind: Kind,
}

/// How a prediction is held against an observation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    Ratio,
    Difference,
}

impl Case {
    /// The case in a folder.
    pub(crate) fn read(folder: &Path) -> Self {
        let text = |name: &str| {
            std::fs::read_to_string(folder.join(name))
                .unwrap_or_else(|error| panic!("{}/{name}: {error}", folder.display()))
        };
        let about: Table = text("case.toml").parse().expect("case.toml");
        let word = |key: &str| about[key].as_str().expect(key).to_owned();
        for said in ["source", "read", "remark"] {
            assert!(!word(said).is_empty(), "{}: {said}", folder.display());
        }
        let words = |key: &str| -> Vec<String> {
            let list = about[key].as_array().expect(key).iter();
            list.map(|word| word.as_str().expect(key).to_owned())
                .collect()
        };
        let inputs = about["inputs"].as_table().expect("inputs");
        Self {
            words: words("words"),
            sections: words("sections"),
            name: folder.file_name().unwrap().to_string_lossy().into_owned(),
            in_view: about["in_view"].as_bool().expect("in_view"),
            run: word("run"),
            day: u32::try_from(about["day"].as_integer().expect("day")).expect("a day"),
            observations: text("observed.csv")
                .lines()
                .skip(1)
                .map(Observation::read)
                .collect(),
            spec: text("spec.toml").parse().expect("spec.toml"),
            inputs: inputs
                .iter()
                .map(|(key, said)| Input::read(key, said))
                .collect(),
        }
    }

    /// A prediction beside one of its observations, in four digits.
    pub(crate) fn compared(&self, observed: &Observation, predicted: Band) -> ObservedComparison {
        let same = |other: &Observation| std::ptr::eq(other, observed);
        let place = self.observations.iter().position(same).expect("its own");
        ObservedComparison {
            case: self.name.clone(),
            quantity: observed.quantity(),
            what: self.words[place].clone(),
            sections: self.sections.clone(),
            unit: observed.unit.clone(),
            observed: [observed.low, observed.value, observed.high],
            predicted: [predicted.low, predicted.typical, predicted.high].map(four_digits),
            is_ratio: observed.kind == Kind::Ratio,
            in_view: self.in_view,
        }
    }

    /// Keys of the spec that say nothing of where they come from.
    pub(crate) fn silent_keys(&self) -> Vec<String> {
        let mut keys = Vec::new();
        gather(&Value::Table(self.spec.clone()), "", &mut keys);
        keys.retain(|key| self.inputs.iter().all(|input| input.key != *key));
        keys
    }

    /// The design with each assumed input drawn from its range.
    pub(crate) fn drawn(&self, points: Sobol, member: u32) -> Design {
        let mut spec = Value::Table(self.spec.clone());
        let ranges = self
            .inputs
            .iter()
            .filter_map(|input| Some((&input.key, input.drawn.as_ref()?)));
        for ((key, (low, high, unit)), dimension) in ranges.zip(0..) {
            let value = low + (high - low) * points.coordinate(member, dimension);
            let said = if unit.is_empty() {
                Value::Float(value)
            } else {
                Value::String(format!("{value:.6} {unit}"))
            };
            *at(&mut spec, key) = said;
        }
        let text = toml::to_string(&spec).expect("a spec");
        lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{}: {faults}", self.name))
    }
}

impl Input {
    /// `"given"`, `"derived: how"`, `"assumed: why"`, or a table with `low`, `high`,
    /// `unit` and `why`.
    fn read(key: &str, said: &Value) -> Self {
        let number = |value: &Value| value.as_float().expect("a number with a point");
        let drawn = said.as_table().map(|range| {
            assert!(range["why"].as_str().is_some(), "{key} says no why");
            let unit = range["unit"].as_str().expect("a unit").to_owned();
            (number(&range["low"]), number(&range["high"]), unit)
        });
        let kinds = ["given", "derived", "assumed"];
        let plain = said
            .as_str()
            .is_some_and(|said| kinds.iter().any(|kind| said.starts_with(kind)));
        assert!(
            plain || drawn.is_some(),
            "{key}: given, derived or assumed?"
        );
        Self {
            key: key.to_owned(),
            drawn,
        }
    }
}

impl Observation {
    fn read(line: &str) -> Self {
        let cells: Vec<&str> = line.split(',').map(str::trim).collect();
        let &[path, day, hour, value, low, high, unit, kind] = cells.as_slice() else {
            panic!("{line}: eight cells");
        };
        let number = |cell: &str| {
            cell.parse::<f64>()
                .unwrap_or_else(|_| panic!("{line}: {cell}"))
        };
        Self {
            path: path.to_owned(),
            day: day.parse().ok(),
            hour: hour.to_owned(),
            value: number(value),
            low: number(low),
            high: number(high),
            unit: unit.to_owned(),
            kind: match kind {
                "ratio" => Kind::Ratio,
                "difference" => Kind::Difference,
                other => panic!("{line}: {other}"),
            },
        }
    }

    /// The path, with when it is looked at.
    fn quantity(&self) -> String {
        match (self.hour.as_str(), self.day) {
            ("", None) => self.path.clone(),
            ("", Some(day)) => format!("{} day {day}", self.path),
            (hour, _) => format!("{} {hour}", self.path),
        }
    }
}

/// As it is recorded.
fn four_digits(value: f64) -> f64 {
    format!("{value:.3e}").parse().expect("a number")
}

/// The value at a dotted key; numbers count the entries of a list.
fn at<'a>(value: &'a mut Value, key: &str) -> &'a mut Value {
    key.split('.')
        .fold(value, |value, step| match step.parse::<usize>() {
            Ok(place) => &mut value.as_array_mut().expect(key)[place],
            Err(_) => value
                .as_table_mut()
                .expect(key)
                .entry(step)
                .or_insert(Value::Boolean(false)),
        })
}

/// Every key with a value of its own.
fn gather(value: &Value, key: &str, keys: &mut Vec<String>) {
    let below = |step: &str| {
        if key.is_empty() {
            step.to_owned()
        } else {
            format!("{key}.{step}")
        }
    };
    match value {
        Value::Table(table) => table
            .iter()
            .for_each(|(step, value)| gather(value, &below(step), keys)),
        Value::Array(list) => list
            .iter()
            .enumerate()
            .for_each(|(place, value)| gather(value, &below(&place.to_string()), keys)),
        _ => keys.push(key.to_owned()),
    }
}
