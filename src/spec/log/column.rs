//! What a column of a log holds, told by its head.

use crate::diagnosis::Measurand;

/// What a column holds.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum LogColumn {
    Day,
    Date,
    Of(Measurand, String),
}

/// Heads that people write, without their unit.
const HEADS: &[(&[&str], Measurand)] = &[
    (
        &[
            "ammonia",
            "ammonium",
            "total ammonia",
            "tan",
            "nh3",
            "nh4",
            "nh4+",
            "nh3/nh4",
            "nh3 nh4",
            "nh3-n",
            "nh4-n",
        ],
        Measurand::Ammonia,
    ),
    (
        &["nitrite", "nitrites", "no2", "no2-", "no2-n"],
        Measurand::Nitrite,
    ),
    (
        &["nitrate", "nitrates", "no3", "no3-", "no3-n"],
        Measurand::Nitrate,
    ),
    (
        &["phosphate", "phosphates", "po4", "po4-p"],
        Measurand::Phosphate,
    ),
    (&["ph"], Measurand::Ph),
    (
        &["temperature", "temp", "water temperature", "t"],
        Measurand::Temperature,
    ),
    (
        &["oxygen", "o2", "do", "dissolved oxygen"],
        Measurand::Oxygen,
    ),
    (
        &[
            "hardness",
            "general hardness",
            "total hardness",
            "gh",
            "dgh",
        ],
        Measurand::Hardness,
    ),
    (
        &["alkalinity", "carbonate hardness", "kh", "dkh"],
        Measurand::Alkalinity,
    ),
    (&["conductivity", "ec", "us/cm"], Measurand::Conductivity),
    (&["potassium", "k", "k+"], Measurand::Potassium),
    (&["iron", "fe"], Measurand::Iron),
];
/// Heads that name a scale; "nh3/nh4" does not say which.
const SCALES: [&str; 9] = [
    "nh3", "nh4", "nh4+", "nh3-n", "nh4-n", "tan", "no2-n", "no3-n", "po4-p",
];

impl LogColumn {
    /// Whether another column holds the same, be it on another scale.
    pub(super) fn holds_the_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Of(one, _), Self::Of(another, _)) => one == another,
            _ => self == other,
        }
    }

    /// The column of a head, whatever its case, brackets and unit.
    pub(super) fn of(head: &str) -> Option<Self> {
        let plain = head
            .trim()
            .to_lowercase()
            .replace(['_', '(', ')', '[', ']'], " ");
        let words: Vec<&str> = plain.split_whitespace().collect();
        let joined = words.join(" ");
        match joined.as_str() {
            "day" | "days" | "day no" | "day number" | "age" | "tank day" => {
                return Some(Self::Day);
            }
            "date" | "when" | "tested on" | "test date" => return Some(Self::Date),
            _ => {}
        }
        (1..=words.len()).rev().find_map(|count| {
            let name = words[..count].join(" ");
            let (_, subject) = HEADS
                .iter()
                .find(|(names, _)| names.contains(&name.as_str()))?;
            let rest = words[count..].join(" ");
            Some(Self::Of(*subject, unit_of(*subject, &name, &rest)))
        })
    }
}

/// The unit that cells of a column have where they say none.
fn unit_of(subject: Measurand, name: &str, rest: &str) -> String {
    let rest = rest.replace("mg l", "mg/l");
    match subject {
        Measurand::Ph => String::new(),
        Measurand::Temperature => rest.trim_start_matches(['°', 'º']).to_owned(),
        Measurand::Hardness if ["gh", "dgh"].contains(&name) && rest.is_empty() => "dGH".to_owned(),
        Measurand::Alkalinity if ["kh", "dkh"].contains(&name) && rest.is_empty() => {
            "dKH".to_owned()
        }
        Measurand::Conductivity if rest.is_empty() => "uS/cm".to_owned(),
        Measurand::Hardness | Measurand::Alkalinity | Measurand::Conductivity => rest,
        Measurand::Oxygen | Measurand::Potassium | Measurand::Iron => {
            if rest.is_empty() {
                "mg/L".to_owned()
            } else {
                rest
            }
        }
        _ if rest.is_empty() && SCALES.contains(&name) => {
            format!("mg/L {}", if name == "tan" { "N" } else { name })
        }
        _ if rest.is_empty() => "mg/L".to_owned(),
        _ if SCALES.contains(&name) && matches!(rest.as_str(), "mg/l" | "ppm") => {
            format!("{rest} {}", if name == "tan" { "n" } else { name })
        }
        _ => rest,
    }
}
