//! A document as text for a terminal or a pipe.

use std::borrow::Cow;

use anstyle::{AnsiColor, Style};
use unicode_width::UnicodeWidthStr;

use super::chart::{self, Glyphs};
use super::document::{Align, Block, Checklist, Document, Fact, FindingEntry, Sheet, Table};
use super::profile::{self, DrawnPart};
use super::{bars, scatter};
use crate::finding::Status;
use crate::units::printable;

/// How text is laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layout {
    /// Columns to fill.
    pub width: usize,
    /// Whether escape codes for colour may be used.
    pub color: bool,
    /// The characters that charts are drawn in.
    pub glyphs: Glyphs,
}

/// Blanks between two columns.
const GAP: usize = 2;
/// Blanks before facts, tables and findings.
const INDENT: usize = 2;
/// A column of words is not made narrower than this.
const NARROWEST: usize = 16;
/// The status words are set in a column this wide.
const STATUS_WIDTH: usize = 7;

/// Renders a document.
pub fn render(document: &Document, layout: Layout) -> String {
    let mut out = String::new();
    if !document.title.is_empty() {
        push_line(&mut out, &layout.paint(BOLD, &printable(&document.title)));
    }
    for block in &document.blocks {
        add(&mut out, block, layout);
    }
    out
}

/// Writes one block.
fn add(out: &mut String, block: &Block, layout: Layout) {
    match block {
        Block::Verdict(status, text) => verdict(out, *status, text, layout),
        Block::Heading(text) => {
            out.push('\n');
            push_line(out, &layout.paint(BOLD, &printable(text)));
        }
        Block::Gap => out.push('\n'),
        Block::Text(text) => push_wrapped(out, &printable(text), "", "", layout),
        Block::Facts(facts) => fact_lines(out, facts, layout),
        Block::Table(table) => table_lines(out, table, layout),
        Block::Checklist(list) => checklist(out, list, layout),
        Block::Drawing(sheet) => drawing(out, sheet, layout),
        Block::Chart(chart) => {
            push_lines(out, chart::lines(chart, layout.width, layout.glyphs));
        }
        Block::Bars(shares) => {
            let unicode = layout.glyphs.are_unicode();
            push_lines(out, bars::lines(shares, layout.width, unicode));
        }
        Block::Scatter(dots) => push_lines(out, scatter::lines(dots, layout.width)),
        Block::Findings(findings) => {
            for judged in findings {
                finding_lines(out, judged, layout);
            }
        }
        Block::OnPage(_) | Block::Timeline(_) | Block::Fleet(_) | Block::Grid(_) => {}
        Block::Balance(weights) => {
            for (head, says) in bars::balance(weights, layout.glyphs.are_unicode()) {
                let blank = " ".repeat(head.width());
                push_wrapped(out, &printable(says), &head, &blank, layout);
            }
        }
        Block::Sortable(sortable) => table_lines(out, &sortable.table, layout),
        Block::Folded(folded) => {
            for block in &folded.blocks {
                add(out, block, layout);
            }
        }
        Block::InText(block) => add(out, block, layout),
        Block::Items(items) => {
            for item in items {
                push_wrapped(out, &printable(item), "- ", "  ", layout);
            }
        }
    }
}

const BOLD: Style = Style::new().bold();
const DIM: Style = Style::new().dimmed();

/// The colour of a status; the word says the same without it.
const fn status_style(status: Status) -> Style {
    match status {
        Status::Ok => AnsiColor::Green.on_default(),
        Status::Note => AnsiColor::Blue.on_default(),
        Status::Watch => AnsiColor::Yellow.on_default().bold(),
        Status::Act => AnsiColor::Red.on_default().bold(),
    }
}

impl Layout {
    fn paint(self, style: Style, text: &str) -> String {
        if self.color {
            format!("{style}{text}{style:#}")
        } else {
            text.to_owned()
        }
    }
}

fn push_lines(out: &mut String, lines: Vec<String>) {
    for line in lines {
        push_line(out, &printable(&line));
    }
}

fn push_line(out: &mut String, line: &str) {
    out.push_str(line.trim_end());
    out.push('\n');
}

fn push_wrapped(out: &mut String, text: &str, first: &str, rest: &str, layout: Layout) {
    let options = textwrap::Options::new(layout.width)
        .initial_indent(first)
        .subsequent_indent(rest)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(text, options) {
        push_line(out, &line);
    }
}

fn verdict(out: &mut String, status: Status, text: &str, layout: Layout) {
    let mut lines = String::new();
    push_wrapped(&mut lines, &printable(text), "", "", layout);
    push_line(out, &layout.paint(status_style(status), lines.trim_end()));
}

/// Values longer than this do not widen their column; their note goes below.
const VALUE_WIDTH: usize = 24;

/// A label wider than half a line does not widen its column; its value goes below.
fn fact_lines(out: &mut String, facts: &[Fact], layout: Layout) {
    let labels = facts.iter().map(|fact| fact.label.as_str());
    let label_width = widest(labels.filter(|label| label.width() <= layout.width / 2));
    let value_width = widest(facts.iter().map(|fact| fact.value.as_str())).min(VALUE_WIDTH);
    let value_column = INDENT + label_width + GAP;
    let note_column = value_column + value_width + GAP;
    let hang = " ".repeat(note_column);
    for fact in facts {
        let label = fact_label(out, &printable(&fact.label), value_column, layout);
        let value = printable(&fact.value);
        if value.width() > value_width || fact.note.is_empty() {
            let under = " ".repeat(value_column);
            push_wrapped(out, &value, &label, &under, layout);
            if !fact.note.is_empty() {
                push_wrapped(out, &printable(&fact.note), &hang, &hang, layout);
            }
        } else {
            let head = padded(&format!("{label}{value}"), note_column, Align::Left);
            push_wrapped(out, &printable(&fact.note), &head, &hang, layout);
        }
    }
}

/// What a value's line begins with: its label, or blanks below a label that is too wide.
fn fact_label(out: &mut String, label: &str, value_column: usize, layout: Layout) -> String {
    let indent = " ".repeat(INDENT);
    if INDENT + label.width() + GAP > value_column {
        push_wrapped(out, label, &indent, &indent, layout);
        return " ".repeat(value_column);
    }
    padded(&format!("{indent}{label}"), value_column, Align::Left)
}

/// The colour of a part of a drawing; its character says the same without it.
const fn part_style(part: DrawnPart) -> Option<Style> {
    match part {
        DrawnPart::Plain => None,
        DrawnPart::Wall => Some(DIM),
        DrawnPart::Water => Some(AnsiColor::Cyan.on_default()),
        DrawnPart::Plant => Some(AnsiColor::Green.on_default()),
        DrawnPart::Cap => Some(AnsiColor::Yellow.on_default()),
        DrawnPart::Soil => Some(AnsiColor::Red.on_default().dimmed()),
        DrawnPart::Stone => Some(AnsiColor::White.on_default()),
    }
}

fn drawing(out: &mut String, sheet: &Sheet, layout: Layout) {
    for line in profile::lines(sheet, layout.width, layout.glyphs.are_unicode()) {
        let runs = line.chunk_by(|a, b| a.1 == b.1);
        let painted: String = runs
            .map(|run| {
                let text: String = run.iter().map(|(c, _)| *c).collect();
                let style = run.first().and_then(|(_, part)| part_style(*part));
                style.map_or_else(|| text.clone(), |style| layout.paint(style, &text))
            })
            .collect();
        push_line(out, &painted);
    }
}

/// The rows, and under them what they come to.
fn checklist(out: &mut String, list: &Checklist, layout: Layout) {
    let mut table = list.table.clone();
    if !list.total.is_empty() {
        table.rows.push(list.total.clone());
    }
    table_lines(out, &table, layout);
}

fn table_lines(out: &mut String, table: &Table, layout: Layout) {
    let widths = column_widths(table, layout.width);
    let stretches = stretches(&widths, layout.width);
    for (place, columns) in stretches.iter().enumerate() {
        if place > 0 {
            out.push('\n');
        }
        let heads = head_lines(table, &widths, columns);
        for line in heads {
            push_line(out, &layout.paint(DIM, line.trim_end()));
        }
        for row in &table.rows {
            for line in row_lines(row, &widths, columns, table) {
                push_line(out, &line);
            }
        }
    }
}

/// Each column as wide as its widest cell; where they do not fit, the widest columns of
/// words give way, then the heads of numbers are set in several lines, then words have
/// as little as their longest one.
fn column_widths(table: &Table, width: usize) -> Vec<usize> {
    let cells = |i: usize| table.rows.iter().filter_map(move |row| row.get(i));
    let columns = || table.columns.iter().enumerate();
    let mut widths: Vec<usize> = columns()
        .map(|(i, column)| widest(cells(i).map(String::as_str)).max(column.head.width()))
        .collect();
    let heads = columns().map(|(_, column)| widest(pieces(&column.head)));
    let heads: Vec<usize> = heads.collect();
    let numbers = columns().map(|(i, _)| widest(cells(i).map(String::as_str)).max(heads[i]));
    let numbers: Vec<usize> = numbers.collect();
    let words = columns().map(|(i, _)| {
        let words = cells(i).flat_map(|cell| cell.split_whitespace());
        widest(words).max(heads[i])
    });
    let words: Vec<usize> = words.collect();
    // A name that is broken is no longer found.
    let are_names = |i: usize| cells(i).all(|cell| !cell.trim().contains(' '));
    let readable = columns().map(|(i, _)| if are_names(i) { words[i] } else { NARROWEST });
    let readable: Vec<usize> = readable.collect();
    for (align, least) in [
        (Align::Left, readable),
        (Align::Right, numbers),
        (Align::Left, words),
    ] {
        while taken(&widths) > width {
            let widest = (0..widths.len())
                .filter(|i| table.columns[*i].align == align && widths[*i] > least[*i])
                .max_by_key(|i| widths[*i]);
            let Some(column) = widest else { break };
            widths[column] -= 1;
        }
    }
    widths
}

/// The columns that a line with these takes.
fn taken(widths: &[usize]) -> usize {
    INDENT + GAP * widths.len().saturating_sub(1) + widths.iter().sum::<usize>()
}

/// Columns that stand beside each other; where not all fit, the first leads each stretch.
fn stretches(widths: &[usize], width: usize) -> Vec<Vec<usize>> {
    let mut stretches: Vec<Vec<usize>> = vec![Vec::new()];
    for column in 0..widths.len() {
        let stretch = stretches.last().map_or(&[][..], Vec::as_slice);
        let with: Vec<usize> = stretch
            .iter()
            .chain([&column])
            .map(|i| widths[*i])
            .collect();
        if taken(&with) > width && stretch.len() > 1 {
            stretches.push(vec![0]);
        }
        if let Some(stretch) = stretches.last_mut() {
            stretch.push(column);
        }
    }
    stretches
}

/// The parts of a head between which it may be broken.
fn pieces(head: &str) -> impl Iterator<Item = &str> {
    head.split_inclusive(['.', '_', ' '])
}

/// The heads, each in as many lines as its column is narrow, all ending on the last.
fn head_lines(table: &Table, widths: &[usize], columns: &[usize]) -> Vec<String> {
    let heads: Vec<Vec<String>> = columns
        .iter()
        .map(|i| broken(&printable(&table.columns[*i].head), widths[*i]))
        .collect();
    let height = heads.iter().map(Vec::len).max().unwrap_or(0);
    (0..height)
        .map(|line| {
            let set = heads.iter().zip(columns).map(|(head, i)| {
                let place = (line + head.len()).checked_sub(height);
                let text = place.and_then(|place| head.get(place));
                let text = text.map_or("", String::as_str);
                padded(text, widths[*i], table.columns[*i].align)
            });
            let set: Vec<String> = set.collect();
            format!("{}{}", " ".repeat(INDENT), set.join(&" ".repeat(GAP)))
        })
        .collect()
}

fn broken(head: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for piece in pieces(head) {
        let line_width = lines.last().map_or(0, |line| line.width());
        if line_width > 0 && line_width + piece.trim_end().width() > width {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            line.push_str(piece);
        }
    }
    for line in &mut lines {
        line.truncate(line.trim_end().len());
    }
    lines
}

/// The lines of one row; a cell wider than its column is wrapped.
fn row_lines(row: &[String], widths: &[usize], columns: &[usize], table: &Table) -> Vec<String> {
    let cells: Vec<Vec<String>> = columns
        .iter()
        .map(|i| {
            let cell = printable(row.get(*i).map_or("", String::as_str));
            let lines = textwrap::wrap(&cell, widths[*i].max(1));
            lines.into_iter().map(Cow::into_owned).collect()
        })
        .collect();
    let height = cells.iter().map(Vec::len).max().unwrap_or(0);
    (0..height)
        .map(|line| {
            let set = cells.iter().zip(columns).map(|(cell, i)| {
                let text = cell.get(line).map_or("", String::as_str);
                padded(text, widths[*i], table.columns[*i].align)
            });
            let set: Vec<String> = set.collect();
            format!("{}{}", " ".repeat(INDENT), set.join(&" ".repeat(GAP)))
        })
        .collect()
}

fn finding_lines(out: &mut String, judged: &FindingEntry, layout: Layout) {
    let hang = " ".repeat(INDENT + STATUS_WIDTH);
    let mut body = String::new();
    let says = if judged.says.is_empty() {
        judged.code.clone()
    } else {
        format!("{}: {}", judged.code, printable(&judged.says))
    };
    push_wrapped(&mut body, &says, &hang, &hang, layout);
    if !judged.remedy.is_empty() {
        let remedy = format!("do: {}", printable(&judged.remedy));
        push_wrapped(&mut body, &remedy, &hang, &format!("{hang}    "), layout);
    }
    let word = judged.status.word();
    let painted = layout.paint(status_style(judged.status), word);
    let blank = " ".repeat(STATUS_WIDTH - word.len());
    push_line(
        out,
        &format!("  {painted}{blank}{}", body[hang.len()..].trim_end()),
    );
    if !judged.basis.is_empty() {
        let mut basis = String::new();
        push_wrapped(&mut basis, &printable(&judged.basis), &hang, &hang, layout);
        push_line(out, &layout.paint(DIM, basis.trim_end()));
    }
}

fn widest<'a>(texts: impl Iterator<Item = &'a str>) -> usize {
    texts.map(UnicodeWidthStr::width).max().unwrap_or(0)
}

fn padded(text: &str, width: usize, align: Align) -> String {
    let blank = " ".repeat(width.saturating_sub(text.width()));
    match align {
        Align::Left | Align::Status => format!("{text}{blank}"),
        Align::Right => format!("{blank}{text}"),
    }
}
