//! Shares side by side as bars, and their drawing in characters.

use unicode_width::UnicodeWidthStr;

use crate::units::show::fixed;

/// Shares side by side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Bars {
    /// What they are shares of.
    pub title: String,
    /// The bars, in order.
    pub bars: Vec<Bar>,
}

/// One share.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// Of what.
    pub label: String,
    /// From 0 to 1.
    pub share: f64,
    /// What speaks for it; may be empty.
    pub says: String,
}

/// What speaks for or against something.
#[derive(Debug, Clone, PartialEq)]
pub struct Weight {
    /// What is known.
    pub says: String,
    /// How many times as likely it makes it, by the logarithm to base ten; below 0 less.
    pub weight: f64,
    /// The same in words.
    pub words: String,
}

impl Bar {
    /// "42 %".
    pub fn value(&self) -> String {
        format!("{} %", fixed(self.share * 100.0, 0))
    }
}

/// The most columns of a full bar.
const MOST_COLUMNS: usize = 40;
/// Blanks and digits around a bar.
const AROUND: usize = 9;

/// Draws a bar a line in at most `width` columns.
pub fn lines(bars: &Bars, width: usize, unicode: bool) -> Vec<String> {
    let fill = if unicode { '█' } else { '#' };
    let labels = bars.bars.iter().map(|bar| bar.label.width()).max();
    let label_width = labels.unwrap_or(0);
    let columns = width
        .saturating_sub(label_width + AROUND)
        .clamp(1, MOST_COLUMNS);
    let mut lines = vec![bars.title.clone()];
    lines.extend(bars.bars.iter().map(|bar| {
        let count = (bar.share.clamp(0.0, 1.0) * columns as f64).round() as usize;
        let filled: String = std::iter::repeat_n(fill, count).collect();
        let blank = " ".repeat(label_width - bar.label.width());
        format!(
            "  {}{blank}  {} {filled}",
            bar.label,
            in_column(&bar.value())
        )
    }));
    lines
}

/// Columns of the longest bar of a balance.
const BALANCE_COLUMNS: f64 = 8.0;

/// What stands before each weight of a balance, a bar as long as it weighs, with what it says.
pub fn balance(weights: &[Weight], unicode: bool) -> Vec<(String, &str)> {
    let (heavy, light) = if unicode { ('█', '░') } else { ('#', '-') };
    let most = weights.iter().map(|one| one.weight.abs());
    let most = most.fold(f64::MIN_POSITIVE, f64::max);
    let words = weights.iter().map(|one| one.words.width()).max();
    weights
        .iter()
        .map(|one| {
            let columns = (one.weight.abs() / most * BALANCE_COLUMNS).round() as usize;
            let fill = if one.weight < 0.0 { light } else { heavy };
            let bar: String = std::iter::repeat_n(fill, columns.max(1)).collect();
            let head = format!(
                "  {:<words$}  {bar:<width$}  ",
                one.words,
                words = words.unwrap_or(0),
                width = BALANCE_COLUMNS as usize
            );
            (head, one.says.as_str())
        })
        .collect()
}

/// Right-aligned under "100 %".
fn in_column(value: &str) -> String {
    format!("{value:>5}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_is_as_long_as_its_share() {
        let bar = |label: &str, share| Bar {
            label: label.to_owned(),
            share,
            says: String::new(),
        };
        let bars = Bars {
            title: "likely causes".to_owned(),
            bars: vec![
                bar("few plants", 0.5),
                bar("soil rich", 0.13),
                bar("heat", 0.0),
            ],
        };
        insta::assert_snapshot!(lines(&bars, 80, false).join("\n"), @r"
        likely causes
          few plants   50 % ####################
          soil rich    13 % #####
          heat          0 %
        ");
    }
}
