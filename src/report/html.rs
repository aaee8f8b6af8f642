//! A document as one page that needs nothing but itself: no script, no network.

use std::cell::RefCell;
use std::collections::BTreeSet;

use askama::Template;

use super::bars::Weight;
use super::document::{
    Align, Block, Checklist, Document, Fact, FindingEntry, Reason, Sortable, Table, TableColumn,
    Timeline,
};
use super::figure::{FRONT, Figure, figures};
use super::svg;
use crate::finding::Status;
use crate::units::show::fixed;

/// The page as its template sees it.
#[derive(Template)]
#[template(path = "page.html", config = "src/report/page/askama.toml")]
struct Page<'a> {
    title: &'a str,
    verdict: Option<(Status, &'a str)>,
    groups: Vec<Group<'a>>,
    reasons: &'a [Reason],
    /// Rules that some place above has been marked for, so that one finds back to it.
    marked: RefCell<BTreeSet<String>>,
}

/// How sections stand on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Layout {
    /// What one looks at first: words and lists beside the drawing.
    First,
    /// In columns.
    Columns,
    /// One across the whole width.
    Wide,
}

impl Layout {
    const fn class(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Columns => "columns",
            Self::Wide => "wide",
        }
    }
}

/// Sections that stand together.
struct Group<'a> {
    layout: Layout,
    sections: Vec<Section<'a>>,
}

impl Group<'_> {
    /// The sections by the side on which they stand, each with its place in the order of
    /// reading: beside the drawing, and with it where there is a drawing.
    fn sides(&self) -> Vec<Vec<(usize, &Section<'_>)>> {
        let numbered = self.sections.iter().enumerate();
        if self.layout != Layout::First {
            return vec![numbered.collect()];
        }
        let beside = numbered
            .clone()
            .filter(|(_, section)| !section.draws() && !section.is_table());
        let is_full = beside.map(|(_, section)| section.lines()).sum::<usize>() > MOST_LINES;
        let is_right = |(_, section): &(usize, &Section<'_>)| {
            section.draws() || (is_full && section.is_table())
        };
        let (right, left) = numbered.partition(is_right);
        vec![left, right]
    }
}

/// A heading and what follows it.
#[derive(Default)]
struct Section<'a> {
    heading: &'a str,
    parts: Vec<Part<'a>>,
}

/// What a section is made of.
enum Part<'a> {
    Text(&'a str),
    Key(&'a str),
    Facts(&'a [Fact]),
    Table(&'a Table),
    Sortable(&'a Sortable),
    Checklist(&'a Checklist),
    Figures(Vec<Figure<'a>>),
    Findings(&'a [FindingEntry]),
    Items(&'a [String]),
    Timeline(&'a Timeline),
    Balance(&'a [Weight]),
    Folded {
        summary: &'a str,
        is_open: bool,
        parts: Vec<Part<'a>>,
    },
}

/// The page of a document.
pub fn render(document: &Document) -> String {
    let page = Page::of(document);
    // Writing to a string cannot fail.
    let text = page.render().unwrap_or_default();
    text.chars().map(shown).collect()
}

/// Characters that neither a page nor XML may hold are shown as the mark for them.
fn shown(c: char) -> char {
    let is_control = c.is_control() && c != '\n';
    if is_control || matches!(c, '\u{FFFE}' | '\u{FFFF}') {
        char::REPLACEMENT_CHARACTER
    } else {
        c
    }
}

impl<'a> Page<'a> {
    fn of(document: &'a Document) -> Self {
        let mut verdict = None;
        let mut sections: Vec<Section<'a>> = vec![Section::default()];
        for block in &document.blocks {
            let block = match block {
                Block::OnPage(heading) if matches!(**heading, Block::Heading(_)) => heading,
                block => block,
            };
            match block {
                Block::Verdict(status, text) => verdict = Some((*status, text.as_str())),
                Block::Heading(text) => sections.push(Section {
                    heading: text,
                    parts: Vec::new(),
                }),
                other => {
                    if let Some(section) = sections.last_mut() {
                        add(&mut section.parts, other);
                    }
                }
            }
        }
        sections.retain(|section| !section.parts.is_empty());
        Self {
            title: &document.title,
            verdict,
            groups: grouped(sections),
            reasons: &document.reasons,
            marked: RefCell::default(),
        }
    }

    fn name(&self) -> &str {
        if self.title.is_empty() {
            "Tanks side by side"
        } else {
            self.title
        }
    }

    /// Whether the page says what a rule rests on.
    fn explains(&self, code: &str) -> bool {
        self.reasons.iter().any(|reason| reason.topic.code == code)
    }

    fn reason_of(&self, fact: &Fact) -> Option<&'static str> {
        fact.reason.filter(|code| self.explains(code))
    }

    /// Whether this is the first place that rests on a rule.
    fn marks(&self, code: &str) -> bool {
        self.marked.borrow_mut().insert(code.to_owned())
    }

    fn is_marked(&self, code: &str) -> bool {
        self.marked.borrow().contains(code)
    }
}

/// Adds what a page shows of a block.
fn add<'a>(parts: &mut Vec<Part<'a>>, block: &'a Block) {
    let part = match block {
        Block::OnPage(block) => match &**block {
            Block::Text(text) => Part::Key(text),
            block => return add(parts, block),
        },
        Block::InText(_) | Block::Verdict(..) | Block::Heading(_) | Block::Gap => return,
        Block::Text(text) => Part::Text(text),
        Block::Facts(facts) => Part::Facts(facts),
        Block::Table(table) => Part::Table(table),
        Block::Sortable(sortable) => Part::Sortable(sortable),
        Block::Checklist(list) => Part::Checklist(list),
        Block::Findings(findings) if findings.is_empty() => return,
        Block::Findings(findings) => Part::Findings(findings),
        Block::Items(items) => Part::Items(items),
        Block::Balance(weights) => Part::Balance(weights),
        Block::Timeline(timeline) => Part::Timeline(timeline),
        Block::Folded(folded) => {
            let mut inner = Vec::new();
            for block in &folded.blocks {
                add(&mut inner, block);
            }
            Part::Folded {
                summary: &folded.summary,
                is_open: folded.is_open,
                parts: inner,
            }
        }
        Block::Drawing(_)
        | Block::Fleet(_)
        | Block::Chart(_)
        | Block::Grid(_)
        | Block::Bars(_)
        | Block::Scatter(_) => {
            let shown = figures(block).into_iter();
            let mut shown = shown.filter(|figure| !figure.svg.is_empty());
            match parts.last_mut() {
                Some(Part::Figures(before)) => before.extend(shown),
                _ => parts.push(Part::Figures(shown.by_ref().collect())),
            }
            return;
        }
    };
    parts.push(part);
}

impl Section<'_> {
    fn figures(&self) -> impl Iterator<Item = &Figure<'_>> {
        self.parts.iter().flat_map(|part| match part {
            Part::Figures(figures) => figures.as_slice(),
            _ => &[],
        })
    }

    /// Whether it shows the tank.
    fn draws(&self) -> bool {
        self.figures().any(|figure| figure.class == FRONT)
    }

    /// Whether it holds things to get.
    fn lists(&self) -> bool {
        let mut parts = self.parts.iter();
        parts.any(|part| matches!(part, Part::Checklist(_)))
    }

    /// About how many lines its findings and lists take, where they are seen at once.
    fn lines(&self) -> usize {
        let lines = |judged: &FindingEntry| 2 + usize::from(!judged.remedy.is_empty()) * 3;
        let findings = |findings: &[FindingEntry]| findings.iter().map(lines).sum::<usize>();
        let lines = self.parts.iter().map(|part| match part {
            Part::Findings(shown) => findings(shown),
            Part::Folded {
                is_open: true,
                parts,
                ..
            } => {
                let shown = parts.iter().filter_map(|part| match part {
                    Part::Findings(shown) => Some(findings(shown)),
                    _ => None,
                });
                shown.sum()
            }
            Part::Checklist(list) => list.table.rows.len(),
            _ => 1,
        });
        lines.sum()
    }

    /// Whether it is one narrow table.
    fn is_table(&self) -> bool {
        matches!(self.parts.as_slice(), [Part::Table(_)]) && !self.is_wide()
    }

    /// Several figures stand beside each other; a table of many columns has room.
    fn is_wide(&self) -> bool {
        self.figures().count() > 1
            || self.is_beside()
            || self.parts.iter().any(|part| match part {
                Part::Table(table) => table.columns.len() > MOST_IN_COLUMN,
                Part::Timeline(_) | Part::Sortable(_) => true,
                _ => false,
            })
    }

    /// Whether its words and facts stand beside its figures: all but a table that needs the
    /// width.
    fn is_beside(&self) -> bool {
        let has_words = self
            .parts
            .iter()
            .any(|part| matches!(part, Part::Facts(_) | Part::Text(_) | Part::Items(_)));
        let mut parts = self.parts.iter();
        let has_table = parts.any(|part| matches!(part, Part::Table(_) | Part::Sortable(_)));
        let charts = || self.figures().any(|figure| figure.class == "chart");
        has_words && !has_table && charts()
    }

    /// What is scrolled where a table is wider than the page.
    fn label(&self) -> &str {
        if self.heading.is_empty() {
            "Table"
        } else {
            self.heading
        }
    }
}

/// Tables with more columns take the whole width.
const MOST_IN_COLUMN: usize = 5;
/// Lines beside a drawing from which on a table stands under it.
const MOST_LINES: usize = 20;
/// Sections that may stand beside the drawing, before it.
const MOST_BEFORE_DRAWING: usize = 2;

/// What stands around a drawing first; then wide sections by themselves, the others together
/// as long as they follow each other.
fn grouped(sections: Vec<Section<'_>>) -> Vec<Group<'_>> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    let drawn = sections.iter().position(Section::draws);
    let mut first = match drawn {
        Some(drawn) if drawn <= MOST_BEFORE_DRAWING => {
            let after = sections.iter().skip(drawn + 1);
            let joins = |section: &&Section<'_>| section.lists() || section.is_table();
            drawn + 1 + after.take_while(joins).count()
        }
        _ => 0,
    };
    for section in sections {
        let layout = if first > 0 {
            Layout::First
        } else if section.is_wide() {
            Layout::Wide
        } else {
            Layout::Columns
        };
        first = first.saturating_sub(1);
        match groups.last_mut() {
            Some(group) if layout != Layout::Wide && group.layout == layout => {
                group.sections.push(section);
            }
            _ => groups.push(Group {
                layout,
                sections: vec![section],
            }),
        }
    }
    groups
}

/// A head in parts between which a line may break: after the dots and underscores of a
/// result's path.
fn breakable(head: &str) -> impl Iterator<Item = &str> {
    head.split_inclusive(['.', '_'])
}

fn class_of(column: &TableColumn) -> &'static str {
    match column.align {
        Align::Left => "words",
        Align::Right => "numbers",
        Align::Status => "status",
    }
}

/// The status that a cell tells.
fn status_of(column: &TableColumn, cell: &str) -> Option<Status> {
    let all = [Status::Ok, Status::Note, Status::Watch, Status::Act];
    let is_status = column.align == Align::Status;
    all.into_iter()
        .find(|status| is_status && status.word() == cell)
}

/// Weight that fills its side of the scales: a hundred times as likely.
const FULL: f64 = 2.0;

impl Weight {
    /// How far its bar reaches, % of the scales.
    fn reach(&self) -> String {
        fixed((self.weight.abs() / FULL).min(1.0) * 50.0, 1)
    }

    const fn side(&self) -> &'static str {
        if self.weight > 0.0 { "for" } else { "against" }
    }
}

impl Timeline {
    fn from(&self) -> f64 {
        let days = self.rows.iter().flat_map(|(_, days)| days);
        days.copied().fold(0.0, f64::min)
    }

    /// How far along a day lies, %.
    fn place(&self, day: f64) -> String {
        let from = self.from();
        fixed((day - from) / (self.until - from).max(1.0) * 100.0, 1)
    }

    /// Days that are counted at its head, and where they lie.
    fn ticks(&self) -> Vec<[String; 2]> {
        let days = svg::day_ticks(self.from(), self.until).into_iter();
        days.map(|day| [self.place(day), fixed(day, 0)]).collect()
    }

    /// Where some days lie.
    fn places(&self, days: &[f64]) -> Vec<String> {
        days.iter().map(|day| self.place(*day)).collect()
    }
}
