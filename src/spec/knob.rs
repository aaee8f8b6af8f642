//! Key paths to knobs, and texts to what a knob is turned to.

use toml::de::DeValue;

use super::catalogued::row;
use super::key::{self, Key, Kind};
use super::misfit::{Misfit, nearest};
use super::value::{Entry, analyte, count, flag, number, quantity, word};
use super::{living, surroundings, tank};
use crate::catalogue;
use crate::design::{Knob, KnobKind, Value, Violation};
use crate::units::{
    Alkalinity, Analyte, Content, Density, Duration, Flow, Hardness, Length, Mass, PhotonFlux,
    Quantity, Share, Sorption, Temperature,
};

/// The knob that turns the key at a path: `cap.depth`, `plants[1].amount`.
///
/// # Errors
/// When no such key may be varied; the nearest that may is suggested.
///
/// # Example
/// ```
/// let knob = lentic::spec::knob("plants[1].amount")?;
/// assert_eq!(knob.path(), "plants[1].amount");
/// let wrong = lentic::spec::knob("cap.dpeth").unwrap_err();
/// assert_eq!(wrong.help, "did you mean cap.depth?");
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn knob(path: &str) -> Result<Knob, Violation> {
    let path = path.trim();
    let pattern = key::pattern(path);
    let kind = KnobKind::find(&pattern).ok_or_else(|| unknown(path, &pattern))?;
    let item = item(path, &pattern).ok_or_else(|| Violation {
        key: path.to_owned(),
        other: None,
        found: "no item is named".to_owned(),
        rule: "an item of a list is counted from 0".to_owned(),
        help: format!("for example {}", pattern.replace("[]", "[0]")),
    })?;
    Ok(Knob { kind, item })
}

/// The number in the brackets; 0 where a path has none.
fn item(path: &str, pattern: &str) -> Option<usize> {
    if !pattern.contains("[]") {
        return Some(0);
    }
    let (_, after) = path.split_once('[')?;
    after.split_once(']')?.0.trim().parse().ok()
}

fn unknown(path: &str, pattern: &str) -> Violation {
    let help = if key::find(pattern).is_some() {
        format!("{path} is a key of a spec, but not one that can be varied")
    } else {
        suggestion(pattern)
    };
    Violation {
        key: path.to_owned(),
        other: None,
        found: "no such key".to_owned(),
        rule: "what is varied is a key of the spec".to_owned(),
        help,
    }
}

fn suggestion(pattern: &str) -> String {
    let patterns = || KnobKind::ALL.iter().map(|kind| kind.pattern());
    let leaf = pattern.rsplit('.').next().unwrap_or(pattern);
    let same_leaf: Vec<&str> = patterns()
        .filter(|known| known.rsplit('.').next() == Some(leaf))
        .collect();
    let near = nearest(pattern, patterns());
    let shown = |known: &str| known.replace("[]", "[0]");
    match (near, same_leaf.as_slice()) {
        (Some(near), _) => format!("did you mean {}?", shown(near)),
        (None, []) => "the command schema lists all keys".to_owned(),
        (None, known) => {
            let known: Vec<String> = known.iter().map(|known| shown(known)).collect();
            format!("did you mean {}?", known.join(" or "))
        }
    }
}

/// What a text sets a knob to, as it would stand in a spec, without quotes.
///
/// # Errors
/// When a spec would refuse it too.
///
/// # Example
/// ```
/// use lentic::design::Value;
/// let knob = lentic::spec::knob("water.ph")?;
/// assert_eq!(lentic::spec::value(knob, "7.4")?, Value::Number(7.4));
/// assert!(lentic::spec::value(knob, "12").is_err());
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn value(knob: Knob, text: &str) -> Result<Value, Violation> {
    let refused = |misfit: Misfit| Violation {
        key: knob.path(),
        other: None,
        found: misfit.found,
        rule: misfit.rule,
        help: misfit.help,
    };
    let text = text.trim();
    let Some(key) = key::find(knob.kind.pattern()) else {
        return Err(unknown(&knob.path(), knob.kind.pattern()));
    };
    let quoted = DeValue::String(text.into());
    if key.kind.is_quoted() {
        return read(key, &quoted).map_err(refused);
    }
    match DeValue::parse(text) {
        Ok(bare) => read(key, bare.get_ref()).map_err(refused),
        Err(_) => read(key, &quoted).map_err(refused),
    }
}

fn read(key: &'static Key, value: &DeValue<'_>) -> Result<Value, Misfit> {
    let entry = &Entry { key, value };
    match key.kind {
        Kind::Number => number(entry).map(Value::Number),
        Kind::Count => count(entry).map(Value::Count),
        Kind::Flag => flag(entry).map(Value::Flag),
        Kind::Size => tank::size(entry).map(Value::Size),
        Kind::Depth => quantity::<Length>(entry).map(Value::Length),
        Kind::Amount => living::amount(entry).map(Value::Amount),
        Kind::Name(list) => named(list, entry),
        Kind::Word(_) => chosen(entry),
        Kind::Quantity(name) => measured(name, entry),
        _ => Err(entry.wrong_type()),
    }
}

fn named(list: &str, entry: &Entry<'_>) -> Result<Value, Misfit> {
    match list {
        "soils" => row::<catalogue::Soil>(entry).map(Value::Soil),
        "caps" => row::<catalogue::Cap>(entry).map(Value::Cap),
        "stones" => row::<catalogue::Stone>(entry).map(Value::Stone),
        "plants" => row::<catalogue::Plant>(entry).map(Value::Plant),
        "devices" => surroundings::device(entry).map(Value::Device),
        _ => row::<catalogue::Animal>(entry).map(Value::Animal),
    }
}

fn chosen(entry: &Entry<'_>) -> Result<Value, Misfit> {
    match entry.key.path {
        "tank.material" => word(tank::material)(entry).map(Value::Material),
        "tank.rim" => word(tank::rim)(entry).map(Value::Rim),
        "light.class" => word(surroundings::light_class)(entry).map(Value::LightClass),
        _ => word(surroundings::duty_hours)(entry).map(Value::DutyHours),
    }
}

fn measured(name: &str, entry: &Entry<'_>) -> Result<Value, Misfit> {
    match name {
        Length::NAME => quantity::<Length>(entry).map(Value::Length),
        Mass::NAME => quantity::<Mass>(entry).map(Value::Mass),
        Share::NAME => quantity::<Share>(entry).map(Value::Share),
        Density::NAME => quantity::<Density>(entry).map(Value::Density),
        Content::NAME => quantity::<Content>(entry).map(Value::Content),
        Sorption::NAME => quantity::<Sorption>(entry).map(Value::Sorption),
        Temperature::NAME => quantity::<Temperature>(entry).map(Value::Temperature),
        Alkalinity::NAME => quantity::<Alkalinity>(entry).map(Value::Alkalinity),
        Hardness::NAME => quantity::<Hardness>(entry).map(Value::Hardness),
        Duration::NAME => quantity::<Duration>(entry).map(Value::Duration),
        PhotonFlux::NAME => quantity::<PhotonFlux>(entry).map(Value::PhotonFlux),
        Flow::NAME => quantity::<Flow>(entry).map(Value::Flow),
        _ => concentration(entry),
    }
}

/// A nutrient on its own scale, or oxygen.
fn concentration(entry: &Entry<'_>) -> Result<Value, Misfit> {
    let of = |kind| analyte(kind)(entry);
    let read = match entry.key.leaf() {
        "ammonia" => of(Analyte::Ammonia),
        "nitrite" => of(Analyte::Nitrite),
        "nitrate" => of(Analyte::Nitrate),
        "phosphate" => of(Analyte::Phosphate),
        _ => quantity(entry),
    };
    read.map(Value::Concentration)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_knob_has_a_key_and_takes_its_example() {
        for &kind in KnobKind::ALL {
            let key = key::find(kind.pattern()).expect("a key");
            let knob = Knob::of(kind);
            assert!(value(knob, key.example).is_ok(), "{}", kind.pattern());
            assert_eq!(super::knob(&knob.path()), Ok(knob));
        }
    }

    #[test]
    fn every_key_is_a_knob_but_those_that_only_name_or_list() {
        let apart = ["name", "units", "start", "tank.shape", "signs.observed"];
        for key in super::super::KEYS {
            let is_value = !matches!(key.kind, Kind::Section | Kind::Sections);
            let is_apart = apart.contains(&key.path)
                || key.path.contains("bags[]")
                || key.path.contains("readings[]")
                || key.path.contains("plants_");
            assert_eq!(
                KnobKind::find(key.path).is_some(),
                is_value && !is_apart,
                "{}",
                key.path
            );
        }
    }
}
