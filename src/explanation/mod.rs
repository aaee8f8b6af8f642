//! What stands behind each finding and each figure, and how far it was held against what
//! others observed.

mod tested;

pub use tested::tested;

use std::sync::OnceLock;

use crate::catalogue::{Topic, figures};
use crate::finding::{Code, Explanation};
use crate::{diagnosis, plan};

/// Every topic: the rules of a plan, those of a check, then the formulas behind figures.
pub fn topics() -> &'static [Topic] {
    static TOPICS: OnceLock<Vec<Topic>> = OnceLock::new();
    TOPICS.get_or_init(|| {
        let rules = plan::rule::explanations().chain(diagnosis::explanations());
        let rules = rules.map(|(code, explanation)| of_rule(code, explanation));
        rules.chain(figures().iter().cloned()).collect()
    })
}

/// The topic of a code.
pub fn topic(code: &str) -> Option<&'static Topic> {
    topics().iter().find(|topic| topic.code == code)
}

/// An explanation with its numbers filled in.
fn of_rule(code: Code, explanation: &Explanation) -> Topic {
    let symbols = explanation.symbols.iter();
    Topic {
        code: code.text().to_owned(),
        asks: explanation.asks.to_owned(),
        rule: (explanation.limits)(),
        formula: (explanation.formula)(),
        symbols: symbols.map(|symbol| (*symbol).to_owned()).collect(),
        range: (explanation.range)(),
        basis: explanation.basis,
        source: explanation.sources.to_vec(),
    }
}
