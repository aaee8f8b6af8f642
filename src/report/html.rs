//! A document as one page that needs nothing but itself: no script, no network.

use askama::Template;

use super::document::{Align, Block, Checklist, Column, Document, Fact, Judged, Reason, Table};
use super::svg::{self, Scale};
use crate::finding::Status;
use crate::geometry::Seen;

/// The page as its template sees it.
#[derive(Template)]
#[template(path = "page.html", config = "src/report/page/askama.toml")]
struct Page<'a> {
    title: &'a str,
    verdict: Option<(Status, &'a str)>,
    groups: Vec<Group<'a>>,
    reasons: &'a [Reason],
}

/// Sections that stand in columns, or one that takes the whole width.
struct Group<'a> {
    is_wide: bool,
    sections: Vec<Section<'a>>,
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
    Facts(&'a [Fact]),
    Table(&'a Table),
    Checklist(&'a Checklist),
    Figures(Vec<Figure<'a>>),
    Findings(&'a [Judged]),
    Items(&'a [String]),
}

/// A picture with its caption and, below it, what it cannot show.
struct Figure<'a> {
    caption: &'a str,
    svg: String,
    notes: Vec<[&'a str; 2]>,
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
            match block {
                Block::Verdict(status, text) => verdict = Some((*status, text.as_str())),
                Block::Heading(text) => sections.push(Section {
                    heading: text,
                    parts: Vec::new(),
                }),
                other => {
                    if let Some(section) = sections.last_mut() {
                        section.add(other);
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
}

impl<'a> Section<'a> {
    fn add(&mut self, block: &'a Block) {
        let part = match block {
            Block::OnPage(block) => return self.add(block),
            Block::InText(_) | Block::Verdict(..) | Block::Heading(_) => return,
            Block::Text(text) => Part::Text(text),
            Block::Facts(facts) => Part::Facts(facts),
            Block::Table(table) => Part::Table(table),
            Block::Checklist(list) => Part::Checklist(list),
            Block::Findings(findings) => Part::Findings(findings),
            Block::Items(items) => Part::Items(items),
            Block::Drawing(_) | Block::Chart(_) | Block::Bars(_) | Block::Scatter(_) => {
                return self.add_figures(figures(block));
            }
        };
        self.parts.push(part);
    }

    fn add_figures(&mut self, figures: Vec<Figure<'a>>) {
        let shown = figures.into_iter().filter(|figure| !figure.svg.is_empty());
        match self.parts.last_mut() {
            Some(Part::Figures(before)) => before.extend(shown),
            _ => self.parts.push(Part::Figures(shown.collect())),
        }
    }

    /// Several figures stand beside each other.
    fn is_wide(&self) -> bool {
        self.parts.iter().any(|part| match part {
            Part::Figures(figures) => figures.len() > 1,
            Part::Table(table) => table.columns.len() > MOST_IN_COLUMN,
            _ => false,
        })
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

fn figures(block: &Block) -> Vec<Figure<'_>> {
    let figure = |caption, svg| Figure {
        caption,
        svg,
        notes: Vec::new(),
    };
    match block {
        Block::Drawing(sheet) => {
            let scale = Scale::of(&sheet.drawing);
            vec![
                figure("From the front", svg::elevation(sheet, Seen::Front, scale)),
                figure("From the right", svg::elevation(sheet, Seen::Right, scale)),
                figure("From above", svg::above(sheet, scale)),
            ]
        }
        Block::Chart(chart) => vec![figure(&chart.title, svg::chart(chart))],
        Block::Bars(bars) => {
            let said = bars.bars.iter().filter(|bar| !bar.says.is_empty());
            vec![Figure {
                caption: &bars.title,
                svg: svg::bars(bars),
                notes: said.map(|bar| [bar.label.as_str(), &bar.says]).collect(),
            }]
        }
        Block::Scatter(scatter) => vec![figure("Two results of each tank", svg::scatter(scatter))],
        _ => Vec::new(),
    }
}

/// Wide sections by themselves, the others together as long as they follow each other.
fn grouped(sections: Vec<Section<'_>>) -> Vec<Group<'_>> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    for section in sections {
        let is_wide = section.is_wide();
        match groups.last_mut() {
            Some(group) if !is_wide && !group.is_wide => group.sections.push(section),
            _ => groups.push(Group {
                is_wide,
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

fn class_of(column: &Column) -> &'static str {
    match column.align {
        Align::Left => "words",
        Align::Right => "numbers",
    }
}
