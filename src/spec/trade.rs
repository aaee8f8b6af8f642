//! What keepers and test kits write for keys.

/// A key by another name.
const MEANT: &[(&str, &str)] = &[
    ("kh", "alkalinity"),
    ("carbonate_hardness", "alkalinity"),
    ("gh", "hardness"),
    ("general_hardness", "hardness"),
    ("temp", "temperature"),
    ("nh3", "ammonia"),
    ("nh4", "ammonia"),
    ("nh3_nh4", "ammonia"),
    ("ammonium", "ammonia"),
    ("tan", "ammonia"),
    ("no2", "nitrite"),
    ("no3", "nitrate"),
    ("po4", "phosphate"),
    ("o2", "oxygen"),
    ("dissolved_oxygen", "oxygen"),
    ("ec", "conductivity"),
    ("fe", "iron"),
    ("photoperiod", "hours"),
    ("glass", "wall"),
    ("aquarium", "tank"),
    ("sand", "cap"),
    ("lamp", "light"),
    ("fish", "animals"),
    ("livestock", "animals"),
    ("stones", "hardscape"),
    ("rocks", "hardscape"),
    ("food", "feed"),
];

/// What no key takes, and what stands for it.
const NOT_TAKEN: &[(&str, &str)] = &[
    (
        "tds",
        "no key takes it: give conductivity, or hardness and alkalinity",
    ),
    ("co2", "carbon dioxide is computed: give ph and alkalinity"),
];

/// The last part of the key that a trade word means.
pub(super) fn meant(word: &str) -> Option<&'static str> {
    look_up(MEANT, word)
}

/// What to give for a measure that no key takes.
pub(super) fn not_taken(word: &str) -> Option<&'static str> {
    look_up(NOT_TAKEN, word)
}

fn look_up(table: &[(&str, &'static str)], word: &str) -> Option<&'static str> {
    let word = word.to_lowercase().replace(['-', ' ', '/'], "_");
    let found = table.iter().find(|(known, _)| *known == word);
    found.map(|(_, says)| *says)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::KEYS;

    #[test]
    fn every_trade_word_means_a_key_and_is_none() {
        let is_key = |word: &str| KEYS.iter().any(|key| key.leaf() == word);
        for (word, key) in MEANT {
            assert!(is_key(key), "{key}");
            assert!(!is_key(word), "{word}");
        }
        for (word, _) in NOT_TAKEN {
            assert!(!is_key(word), "{word}");
        }
    }
}
