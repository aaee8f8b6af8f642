//! The JSON Schema takes what the reader takes and refuses its slips.
//!
//! `UPDATE_SCHEMA=1 cargo test --test specs schema` writes the file anew.

use std::fs;
use std::path::PathBuf;

use boon::{Compiler, SchemaIndex, Schemas};
use lentic::spec::{self, KEYS, KeyKind, starter};
use lentic::units::{
    Alkalinity, Analyte, ArealDensity, Concentration, Content, Density, Duration, Flow, Hardness,
    Length, Mass, PhotonFlux, Quantity, Share, Sorption, Temperature, UnitSystem, Volume,
};
use serde_json::Value;

use crate::base;
use crate::slips::{Slip, slipped};

/// The name that the schema is compiled under.
const NAME: &str = "lentic.schema.json";

/// The schema, or a part of it, compiled by a validator that is not ours.
struct Compiled {
    schemas: Schemas,
    index: SchemaIndex,
}

impl Compiled {
    /// The part at a pointer; the whole for an empty one.
    fn part(pointer: &str) -> Self {
        let mut schemas = Schemas::new();
        let mut compiler = Compiler::new();
        compiler.enable_format_assertions();
        compiler
            .add_resource(NAME, Value::Object(spec::schema()))
            .expect("a resource");
        let index = compiler
            .compile(&format!("{NAME}#{pointer}"), &mut schemas)
            .expect("a schema");
        Self { schemas, index }
    }

    /// What it says against a value.
    fn complaint(&self, value: &Value) -> Option<String> {
        let result = self.schemas.validate(value, self.index);
        result.err().map(|error| error.to_string())
    }

    /// What it says against a spec.
    fn complaint_of(&self, text: &str) -> Option<String> {
        let table: toml::Table = text.parse().expect("TOML");
        self.complaint(&as_json(toml::Value::Table(table)))
    }
}

/// As editors show a TOML file to a schema: dates are texts.
fn as_json(value: toml::Value) -> Value {
    match value {
        toml::Value::Datetime(moment) => Value::from(moment.to_string()),
        toml::Value::Array(items) => items.into_iter().map(as_json).collect(),
        toml::Value::Table(table) => table
            .into_iter()
            .map(|(key, value)| (key, as_json(value)))
            .collect(),
        scalar => serde_json::to_value(scalar).expect("a scalar"),
    }
}

#[test]
fn the_kept_schema_is_the_one_of_the_table_of_keys() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("src/spec/lentic.schema.json");
    let now = lentic::report::json::pretty(&spec::schema());
    if std::env::var_os("UPDATE_SCHEMA").is_some() {
        fs::write(&path, &now).expect("the schema is written");
    }
    let kept = fs::read_to_string(&path).expect("the schema");
    assert!(kept == now, "{} is not what the code makes", path.display());
}

#[test]
fn every_demo_tank_starter_and_good_spec_fits() {
    let schema = Compiled::part("");
    let demos = fs::read_dir(PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("demo-tanks"))
        .expect("a folder")
        .map(|entry| fs::read_to_string(entry.expect("an entry").path()).expect("text"));
    let starters = [UnitSystem::Metric, UnitSystem::Us].map(starter::text);
    let good = base::files("good").into_iter().map(|file| file.text);
    let mut count = 0;
    for text in demos.chain(starters).chain(good) {
        count += 1;
        assert_eq!(schema.complaint_of(&text), None, "{text}");
    }
    assert!(count > 20);
}

#[test]
fn every_example_word_and_default_fits() {
    let schema = Compiled::part("");
    let files = base::files("good");
    for key in KEYS {
        let (file, line) = base::with_key(&files, key).expect("a good spec");
        if file
            .text
            .lines()
            .nth(line)
            .expect("a line")
            .starts_with('[')
        {
            continue;
        }
        if key.path == "tank.shape" {
            // Another shape has other dimensions.
            continue;
        }
        let mut values = vec![key.example_value()];
        if let KeyKind::Word(words) = key.kind {
            for mark in ["_", " ", "-"] {
                let parted = words.iter().map(|word| word.replace('_', mark));
                values.extend(parted.map(|word| format!("\"{word}\"")));
            }
        }
        values.extend(key.default.map(|default| default.written.to_owned()));
        for value in values {
            let written = format!("{} = {value}", key.leaf());
            let text = base::replaced(&file.text, line, std::slice::from_ref(&written));
            // A layer with one depth has none at its edges.
            if key.leaf() == "depth" && file.text.contains(&format!("[{}]", key.path)) {
                continue;
            }
            assert_eq!(schema.complaint_of(&text), None, "{}: {written}", key.path);
        }
    }
}

#[test]
fn what_the_reader_takes_for_a_device_or_a_shape_fits() {
    let schema = Compiled::part("");
    for device in ["sponge filter", "powerhead", "air pump", "hang-on filter"] {
        let air = format!("[air]\ndevice = \"{device}\"\nflow = \"60 L/h\"\ndepth = \"20 cm\"\n");
        let text = base::good("minimal.toml") + &air;
        assert!(spec::parse(&text).is_ok(), "{device}");
        assert_eq!(schema.complaint_of(&text), None, "{device}");
    }
    let bowed = base::good("bow-front.toml");
    for word in ["bow-front", "bow front"] {
        let text = bowed.replace("bow_front", word);
        assert!(text != bowed && spec::parse(&text).is_ok(), "{word}");
        assert_eq!(schema.complaint_of(&text), None, "{word}");
        let lacking = text.replace("width_end", "# width_end");
        assert!(schema.complaint_of(&lacking).is_some(), "{word}");
    }
}

#[test]
fn every_slip_that_one_key_shows_is_refused() {
    let schema = Compiled::part("");
    let files = base::files("good");
    let mut refused = 0;
    for key in KEYS {
        let (file, index) = base::with_key(&files, key).expect("a good spec");
        let line = file.text.lines().nth(index).expect("a line");
        if line.starts_with('[') {
            continue;
        }
        let mut slips = vec![
            Slip::Missing,
            Slip::WrongType,
            Slip::WrongUnit,
            Slip::Misspelt,
        ];
        if matches!(key.kind, KeyKind::Number | KeyKind::Count) {
            slips.extend([Slip::TooLow, Slip::TooHigh]);
        }
        for slip in slips {
            let Some(lines) = slipped(slip, key, line) else {
                continue;
            };
            let text = base::replaced(&file.text, index, &lines);
            assert!(
                schema.complaint_of(&text).is_some(),
                "{slip:?} {}",
                key.path
            );
            refused += 1;
        }
    }
    assert!(refused > 300, "{refused}");
}

#[test]
fn unknown_names_and_missing_dimensions_are_refused() {
    let schema = Compiled::part("");
    let minimal = base::good("minimal.toml");
    assert_eq!(schema.complaint_of(&minimal), None);
    for (from, to) in [
        ("loam_topsoil", "moon_dust"),
        ("size = ", "mouth = "),
        ("\"box\"", "\"bowl\""),
    ] {
        assert!(minimal.contains(from), "{from}");
        let slipped = minimal.replacen(from, to, 1);
        assert!(schema.complaint_of(&slipped).is_some(), "{to}");
    }
}

#[test]
fn one_edge_of_a_slope_needs_the_other() {
    let schema = Compiled::part("");
    let sloped = base::good("sloped.toml");
    assert_eq!(schema.complaint_of(&sloped), None);
    let minimal = base::good("minimal.toml");
    let soil = "[soil]\nmaterial = \"loam_topsoil\"\ndepth = { back = \"4 cm\" }\n";
    let cap = minimal.split_once("[cap]").expect("a cap").1;
    let tank = minimal.split_once("[soil]").expect("a soil").0;
    let text = format!("{tank}{soil}[cap]{cap}");
    assert!(schema.complaint_of(&text).is_some());
}

/// Every unit, in the spellings an editor is to take, is read and fits its pattern.
fn spellings_fit<Q: Quantity>() {
    let name = Q::NAME.trim_start_matches("an ").trim_start_matches("a ");
    let pattern = Compiled::part(&format!("/$defs/{}", name.replace(' ', "_")));
    for unit in Q::UNITS {
        let lower = unit.name.to_lowercase();
        for spelling in unit.also.iter().copied().chain([unit.name, &lower]) {
            for number in ["2", "2.5", ".5", "1/2", "1 1/2", "2e1"] {
                for text in [
                    format!("{number} {spelling}"),
                    format!(" {number}{spelling} "),
                ] {
                    assert!(Q::parse(&text).is_ok(), "{text}");
                    assert_eq!(pattern.complaint(&Value::from(text)), None);
                }
            }
        }
    }
    for text in ["", "2", "2 parsec", "two cm", "2,5 cm", "-2 cm", "2 gal"] {
        assert!(
            pattern.complaint(&Value::from(text)).is_some(),
            "{name}: {text}"
        );
        assert!(Q::parse(text).is_err(), "{name}: {text}");
    }
}

#[test]
fn every_spelling_of_every_unit_fits_the_pattern_of_its_quantity() {
    spellings_fit::<Length>();
    spellings_fit::<Volume>();
    spellings_fit::<Mass>();
    spellings_fit::<Share>();
    spellings_fit::<Density>();
    spellings_fit::<Content>();
    spellings_fit::<Sorption>();
    spellings_fit::<ArealDensity>();
    spellings_fit::<Temperature>();
    spellings_fit::<Alkalinity>();
    spellings_fit::<Hardness>();
    spellings_fit::<Concentration>();
    spellings_fit::<Duration>();
    spellings_fit::<PhotonFlux>();
    spellings_fit::<Flow>();
}

#[test]
fn a_reading_fits_with_and_without_its_scale() {
    for (analyte, name, texts) in [
        (
            Analyte::Ammonia,
            "ammonia_concentration",
            ["0.5 mg/L NH4", "0.5 ppm", "0.5 mg/L as NH3", "0.5 mg N/L"],
        ),
        (
            Analyte::Nitrite,
            "nitrite_concentration",
            ["0.25 mg/L", "0.25 mg/L NO2-N", "250 ug/L", "0.25 mg NO2/L"],
        ),
        (
            Analyte::Nitrate,
            "nitrate_concentration",
            ["20 mg/L NO3-N", "20 mg/l", "20ppm", "20 mg/L NO3"],
        ),
        (
            Analyte::Phosphate,
            "phosphate_concentration",
            ["0.5 mg/L", "0.5 mg/L PO4-P", "0.5 mg/L PO4", "500 ppb"],
        ),
    ] {
        let pattern = Compiled::part(&format!("/$defs/{name}"));
        for text in texts {
            assert!(analyte.parse(text).is_ok(), "{text}");
            assert_eq!(pattern.complaint(&Value::from(text)), None);
        }
        for text in ["0.5", "0.5 mg", "0.5 mg/L Fe", "0.5 cm"] {
            assert!(analyte.parse(text).is_err(), "{text}");
            assert!(pattern.complaint(&Value::from(text)).is_some(), "{text}");
        }
    }
}
