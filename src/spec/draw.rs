//! Faults drawn beneath the lines they stand in.

use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};

use super::fault::{Fault, Faults, TextPosition, boundary};
use super::syntax::line;
use crate::units::{is_printable, printable};

/// Faults drawn before the rest is only counted: a file with more has one cause.
const MOST_DRAWN: usize = 50;
/// Columns a drawn line may take.
const WIDTH: usize = 100;
/// Characters of a sentence before it is cut: no key and no value that is meant is so long.
const LONGEST: usize = 600;

/// Draws faults beneath their lines: key and finding, file with line and
/// column, the line with the rule under a caret, both places where two
/// disagree, and a way out; in colours where `color`.
pub fn draw(faults: &Faults, text: &str, file: &str, color: bool) -> String {
    let renderer = if color {
        Renderer::styled()
    } else {
        Renderer::plain()
    }
    .term_width(WIDTH);
    let mut drawn: Vec<String> = faults
        .0
        .iter()
        .take(MOST_DRAWN)
        .map(|fault| without_trailing_blanks(&renderer.render(&[group(fault, text, file)])))
        .collect();
    let rest = faults.0.len().saturating_sub(MOST_DRAWN);
    if rest > 0 {
        drawn.push(format!("and {rest} more faults in {}", printable(file)));
    }
    drawn.join("\n\n") + "\n"
}

fn without_trailing_blanks(text: &str) -> String {
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n")
}

/// One fault with the lines between its places.
fn group<'a>(fault: &'a Fault, text: &'a str, file: &'a str) -> Group<'a> {
    let span = on_one_line(&fault.span, text);
    let other = fault
        .related
        .as_ref()
        .map(|(span, says)| (on_one_line(span, text), says));
    let first = other
        .as_ref()
        .map_or(span.start, |(other, _)| other.start.min(span.start));
    let last = other
        .as_ref()
        .map_or(span.end, |(other, _)| other.end.max(span.end));
    let window_start = line(first, text).start;
    let window = tame(&text[window_start..line(last, text).end]);
    let shifted = |span: Range<usize>| span.start - window_start..span.end - window_start;
    let mut snippet = Snippet::source(window)
        .line_start(TextPosition::of(window_start, text).line)
        .path(printable(file))
        .annotation(
            AnnotationKind::Primary
                .span(shifted(span))
                .label(sentence(&fault.rule)),
        );
    if let Some((span, says)) = other {
        snippet = snippet.annotation(
            AnnotationKind::Context
                .span(shifted(span))
                .label(sentence(says)),
        );
    }
    Level::ERROR
        .primary_title(sentence(&fault.heading()))
        .element(snippet)
        .element(Level::HELP.message(sentence(&fault.help)))
}

/// What is said of a fault, cut where the keeper's own text makes it long.
fn sentence(text: &str) -> String {
    let mut shown: String = printable(text).chars().take(LONGEST).collect();
    if text.chars().nth(LONGEST).is_some() {
        shown.push_str("...");
    }
    shown
}

/// Lines of which nothing drives the terminal; blanks keep every byte in its place.
fn tame(lines: &str) -> String {
    let mut tame = String::with_capacity(lines.len());
    for c in lines.chars() {
        if matches!(c, '\n' | '\t') || is_printable(c) {
            tame.push(c);
        } else {
            tame.extend(std::iter::repeat_n(' ', c.len_utf8()));
        }
    }
    tame
}

/// The part of a span that lies on its first line, on whole characters.
fn on_one_line(span: &Range<usize>, text: &str) -> Range<usize> {
    let start = boundary(span.start, text);
    let end = boundary(span.end, text).clamp(start, line(start, text).end);
    start..end
}
