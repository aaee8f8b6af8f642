//! A picture under way: elements with classes, coordinates to a tenth of a pixel.

use std::fmt::Write;

use crate::units::show::fixed;

/// A place in the picture, from the upper left corner.
pub(super) type At = (f64, f64);

/// Where a text stands with respect to its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A picture under way.
#[derive(Debug)]
pub(super) struct Canvas {
    width: f64,
    height: f64,
    body: String,
}

impl Canvas {
    /// An empty picture with its name and what it shows in words.
    pub(super) fn new(width: f64, height: f64, title: &str, description: &str) -> Self {
        let body = format!(
            "<title>{}</title><desc>{}</desc>\n",
            escaped(title),
            escaped(description)
        );
        Self {
            width,
            height,
            body,
        }
    }

    pub(super) fn polygon(&mut self, class: &str, points: &[At]) {
        self.many("polygon", class, points);
    }

    pub(super) fn polyline(&mut self, class: &str, points: &[At]) {
        self.many("polyline", class, points);
    }

    fn many(&mut self, element: &str, class: &str, points: &[At]) {
        let places: Vec<String> = points
            .iter()
            .map(|(x, y)| format!("{},{}", tenth(*x), tenth(*y)))
            .collect();
        self.add(format_args!(
            "<{element} class=\"{class}\" points=\"{}\"/>",
            places.join(" ")
        ));
    }

    pub(super) fn line(&mut self, class: &str, from: At, to: At) {
        self.add(format_args!(
            "<line class=\"{class}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>",
            tenth(from.0),
            tenth(from.1),
            tenth(to.0),
            tenth(to.1)
        ));
    }

    pub(super) fn circle(&mut self, class: &str, at: At, radius: f64) {
        self.add(format_args!(
            "<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
            tenth(at.0),
            tenth(at.1),
            tenth(radius)
        ));
    }

    pub(super) fn rectangle(&mut self, class: &str, corner: At, size: At) {
        self.add(format_args!(
            "<rect class=\"{class}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
            tenth(corner.0),
            tenth(corner.1),
            tenth(size.0),
            tenth(size.1)
        ));
    }

    pub(super) fn path(&mut self, class: &str, data: &str) {
        self.add(format_args!("<path class=\"{class}\" d=\"{data}\"/>"));
    }

    /// A line of a width; dashed where a dash is given.
    pub(super) fn stroke(&mut self, class: &str, data: &str, width: f64, dash: [f64; 2]) {
        let [long, gap] = dash.map(tenth);
        let dashed = if dash[1] > 0.0 {
            format!(" stroke-dasharray=\"{long} {gap}\"")
        } else {
            String::new()
        };
        self.add(format_args!(
            "<path class=\"{class}\" stroke-width=\"{}\"{dashed} d=\"{data}\"/>",
            tenth(width)
        ));
    }

    pub(super) fn text(&mut self, class: &str, at: At, anchor: Anchor, words: &str) {
        self.add(format_args!(
            "<text class=\"{class}\" x=\"{}\" y=\"{}\" text-anchor=\"{}\">{}</text>",
            tenth(at.0),
            tenth(at.1),
            anchor.word(),
            escaped(words)
        ));
    }

    /// A text that runs upwards, its middle at a place.
    pub(super) fn upright(&mut self, class: &str, at: At, words: &str) {
        let (x, y) = (tenth(at.0), tenth(at.1));
        self.add(format_args!(
            "<text class=\"{class}\" transform=\"translate({x} {y}) rotate(-90)\" text-anchor=\"middle\">{}</text>",
            escaped(words)
        ));
    }

    fn add(&mut self, element: std::fmt::Arguments<'_>) {
        // Writing to a string cannot fail.
        let _ = writeln!(self.body, "{element}");
    }

    /// The picture as an element of a page.
    pub(super) fn finish(self) -> String {
        let (width, height) = (tenth(self.width), tenth(self.height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\">\n{}</svg>",
            self.body
        )
    }
}

/// A coordinate to a tenth of a pixel.
pub(super) fn tenth(value: f64) -> String {
    fixed(value, 1)
}

/// A line without the points that lie within a distance of what is left of it (Douglas and
/// Peucker's way).
pub(super) fn thinned(points: &[At], within: f64) -> Vec<At> {
    let [first, middle @ .., last] = points else {
        return points.to_vec();
    };
    let (dx, dy) = (last.0 - first.0, last.1 - first.1);
    let length = dx.hypot(dy).max(f64::MIN_POSITIVE);
    let off = |at: &At| ((at.0 - first.0) * dy - (at.1 - first.1) * dx).abs() / length;
    let furthest = middle
        .iter()
        .enumerate()
        .max_by(|a, b| off(a.1).total_cmp(&off(b.1)));
    match furthest {
        Some((i, at)) if off(at) > within => {
            let mut kept = thinned(&points[..=i + 1], within);
            kept.pop();
            kept.extend(thinned(&points[i + 1..], within));
            kept
        }
        _ => vec![*first, *last],
    }
}

/// A text with the characters that mark elements written out.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_looks_like_an_element_is_drawn_as_text() {
        let mut canvas = Canvas::new(10.0, 10.0, "a & b", "");
        canvas.text("label", (1.0, 2.04), Anchor::Start, "<b>\"it's\"</b>");
        let picture = canvas.finish();
        assert!(picture.contains("<title>a &amp; b</title>"));
        assert!(picture.contains(
            "x=\"1\" y=\"2\" text-anchor=\"start\">&lt;b&gt;&quot;it&#39;s&quot;&lt;/b&gt;</text>"
        ));
    }
}
