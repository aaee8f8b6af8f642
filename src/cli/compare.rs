//! `lentic compare`.

use std::io::{self, IsTerminal};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

use rayon::prelude::*;
use serde_json::Map;

use super::args::CompareOptions;
use super::choice::RowFormat;
use super::failure::Failure;
use super::progress::Progress;
use super::request::RowRequest;
use super::rows::{FailedRow, RowWriter};
use super::{Outcome, input, output};
use crate::design::Design;
use crate::finding::Status;
use crate::report::document::Sheet;
use crate::report::{compose, html, row, text};
use crate::study::{
    Aim, BaseTank, Cell, Condition, Front, KeyInfluence, Sensitivity, TankRow, compare,
};
use crate::units::UnitSystem;

/// Files read at a time.
const FILES: usize = 256;
/// Tanks that are drawn beside each other at most.
const DRAWN: usize = 24;
/// Rows that are held until the others are done, sorted or to be laid out in a table.
const HELD: usize = 1_000_000;
/// The most squares of a field that are shown though they miss what is asked.
const MISSED: usize = 256;
/// Rows that are no tank and are named one by one; of more, the number is told.
const NAMED: usize = 100;

pub(super) fn run(options: &CompareOptions) -> Result<Outcome, Failure> {
    let request = RowRequest::of(options)?;
    let files = files(&options.specs)?;
    let out = options.common.out.as_deref();
    let rows = if options.format.is_for_people() {
        None
    } else {
        let stream = output::Stream::open(out)?;
        let (axes, shown) = (request.question.space.axes(), request.shown_columns());
        Some(RowWriter::begin(options.format, axes, shown, stream)?)
    };
    let mut run = Run {
        options,
        request: &request,
        files: &files,
        progress: Progress::of(rows_of(&request, files.len()), "rows")
            .beside(rows.as_ref().is_some_and(|_| is_seen(out))),
        rows,
        kept: Vec::new(),
        missed: Vec::new(),
        front: Front::new(request.aims.iter().map(|(_, aim)| *aim).collect()),
        sensitivity: Sensitivity::new(&request.question.space),
        worst: Status::Ok,
        good: 0,
        bad_files: Vec::new(),
        no_tanks: Vec::new(),
        more_no_tanks: 0,
    };
    let flow = run.all();
    run.progress.finish();
    if flow?.is_break() {
        return Ok(Outcome::Done);
    }
    run.finish()
}

/// How many rows the wanted share of some files has.
fn rows_of(request: &RowRequest, files: usize) -> u64 {
    let all = request.question.space.points().saturating_mul(files as u64);
    all.div_ceil(request.question.shard.of)
}

/// Whether what is written to a file, or else to standard output, shows on a terminal.
fn is_seen(out: Option<&Path>) -> bool {
    out.is_none() && io::stdout().is_terminal()
}

/// The files named, and those of the folders named, in order of name.
fn files(specs: &[PathBuf]) -> Result<Vec<PathBuf>, Failure> {
    let mut files = Vec::new();
    for path in specs {
        if path.is_dir() {
            let mut within = input::specs_in(path)?;
            within.sort();
            files.extend(within);
        } else {
            files.push(path.clone());
        }
    }
    Ok(files)
}

/// A comparison under way.
struct Run<'a> {
    options: &'a CompareOptions,
    request: &'a RowRequest,
    files: &'a [PathBuf],
    progress: Progress,
    /// Where rows go at once, for scripts.
    rows: Option<RowWriter<'a>>,
    /// Rows that wait for the others, with their file.
    kept: Vec<(TankRow, usize)>,
    /// Rows that do not meet what is asked, for the field that a page shows.
    missed: Vec<TankRow>,
    front: Front<(TankRow, usize)>,
    sensitivity: Sensitivity,
    worst: Status,
    good: u64,
    bad_files: Vec<FailedRow>,
    no_tanks: Vec<FailedRow>,
    more_no_tanks: u64,
}

impl<'a> Run<'a> {
    /// Every row of every file, in order.
    fn all(&mut self) -> Result<ControlFlow<()>, Failure> {
        for (place, chunk) in self.files.chunks(FILES).enumerate() {
            let first = place * FILES;
            let read: Vec<Result<Design, Failure>> = chunk
                .par_iter()
                .map(|path| input::design(path, &self.options.common))
                .collect();
            let mut bases = Vec::new();
            let mut numbers = Vec::new();
            for (offset, design) in read.into_iter().enumerate() {
                let number = first + offset;
                match design {
                    Ok(design) => {
                        bases.push(BaseTank::of(number as u64, design.into_draft()));
                        numbers.push(number);
                    }
                    Err(failure) => self.bad_file(number, &failure),
                }
            }
            let request = self.request;
            for row in compare(&request.question, &bases) {
                let file = numbers[row.base];
                if self.take(row, file)?.is_break() {
                    return Ok(ControlFlow::Break(()));
                }
            }
        }
        Ok(ControlFlow::Continue(()))
    }

    /// A file that holds no tank is told of by the share that its first row falls to.
    fn bad_file(&mut self, number: usize, failure: &Failure) {
        let question = &self.request.question;
        self.progress.advance(rows_of(self.request, 1));
        if !question
            .shard
            .holds(number as u64 * question.space.points())
        {
            return;
        }
        self.bad_files.push(FailedRow {
            file: input::file_name(&self.files[number]),
            vary: Map::new(),
            // What goes into a result carries no colour.
            error: anstream::adapter::strip_str(&failure.to_string()).to_string(),
        });
    }

    fn take(&mut self, row: TankRow, file: usize) -> Result<ControlFlow<()>, Failure> {
        self.progress.advance(1);
        let cells = match &row.cells {
            Ok(cells) => cells,
            Err(failed) => {
                if self.no_tanks.len() < NAMED {
                    let failed = FailedRow {
                        file: input::file_name(&self.files[file]),
                        vary: row::varied(&row, self.request.question.space.axes()),
                        error: failed.to_string(),
                    };
                    self.no_tanks.push(failed);
                } else {
                    self.more_no_tanks += 1;
                }
                return Ok(ControlFlow::Continue(()));
            }
        };
        self.good += 1;
        let request = self.request;
        if let Some(place) = request.sensitivity {
            self.sensitivity.add(&row.levels, number(cells, place));
        }
        let meets =
            |(place, condition): &(usize, Condition)| condition.holds(cells[*place].as_ref());
        if !request.conditions.iter().all(meets) {
            if self.is_field() && self.missed.len() < MISSED {
                self.missed.push(row);
            }
            return Ok(ControlFlow::Continue(()));
        }
        if let Some(Cell::Word(word)) = request.status.and_then(|place| cells[place].as_ref()) {
            self.worst = self.worst.max(status(word));
        }
        if !request.aims.is_empty() {
            let values: Vec<Option<f64>> = request
                .aims
                .iter()
                .map(|(place, _)| number(cells, *place))
                .collect();
            self.front.add((row, file), &values);
            return Ok(ControlFlow::Continue(()));
        }
        match &mut self.rows {
            Some(rows) if request.sort.is_none() => {
                rows.write(&row, &input::file_name(&self.files[file]))
            }
            _ => {
                if self.kept.len() == HELD {
                    return Err(too_many_to_hold());
                }
                self.kept.push((row, file));
                Ok(ControlFlow::Continue(()))
            }
        }
    }

    /// Writes what waited, then tells what could not be compared.
    fn finish(mut self) -> Result<Outcome, Failure> {
        let front = std::mem::replace(&mut self.front, Front::new(Vec::new()));
        self.kept.extend(front.into_items());
        if let Some((place, aim)) = self.request.sort {
            sort(&mut self.kept, place, aim);
        }
        let influences = self.request.sensitivity.map(|place| {
            let result = self.request.question.columns[place].name();
            (result, self.sensitivity.influences())
        });
        match self.rows.take() {
            Some(rows) => self.write_kept(rows, influences.as_ref())?,
            None => self.write_text(influences)?,
        }
        self.complain();
        if !self.bad_files.is_empty() || (self.good == 0 && !self.no_tanks.is_empty()) {
            return Ok(Outcome::PartlyBad);
        }
        let fail_on = self.options.common.fail_on.map(Status::from);
        Ok(Outcome::of(self.worst, fail_on))
    }

    fn write_kept(
        &self,
        mut rows: RowWriter<'a>,
        influences: Option<&(&str, Vec<KeyInfluence>)>,
    ) -> Result<(), Failure> {
        for (row, file) in &self.kept {
            let file = input::file_name(&self.files[*file]);
            if rows.write(row, &file)?.is_break() {
                return Ok(());
            }
        }
        rows.end(self.bad_files.iter().chain(&self.no_tanks), influences)
    }

    fn write_text(&self, influences: Option<(&str, Vec<KeyInfluence>)>) -> Result<(), Failure> {
        let common = &self.options.common;
        let rows: Vec<TankRow> = self.kept.iter().map(|(row, _)| row.clone()).collect();
        let of_first_file = self.kept.iter().min_by_key(|(_, file)| *file);
        let conditions = self.request.conditions.iter();
        let asked = conditions.map(|(_, condition)| compose::condition_in_words(condition));
        let compared = compose::Compared {
            axes: self.request.question.space.axes(),
            columns: &self.request.question.columns,
            shown: self.request.shown,
            standard: self.request.standard,
            rows: &rows,
            missed: &self.missed,
            asked: asked.collect::<Vec<_>>().join(" and "),
            units: of_first_file.map_or(UnitSystem::default(), |(row, _)| row.units),
            chosen: !self.request.aims.is_empty(),
            remark: self.remark(),
            sheets: self.sheets(),
            influences,
        };
        let mut document = compose::compare(&compared);
        let out = common.out.as_deref();
        let written = if self.options.format == RowFormat::Html {
            document.title = compose::compared_title(&compared);
            html::render(&document)
        } else {
            text::render(&document, output::layout(common.color, out))
        };
        output::write(&written, out)
    }

    /// Whether a page shows the rows as a field over two keys.
    fn is_field(&self) -> bool {
        let axes = self.request.question.space.axes();
        self.options.format == RowFormat::Html && axes.len() == 2 && self.request.aims.is_empty()
    }

    /// The tanks for a page, where each is compared as it is and they are few.
    fn sheets(&self) -> Vec<Sheet> {
        let is_page = self.options.format == RowFormat::Html;
        let varies = !self.request.question.space.axes().is_empty();
        if !is_page || varies || self.kept.len() > DRAWN {
            return Vec::new();
        }
        let files = self.kept.iter().map(|(_, file)| &self.files[*file]);
        let designs = files.map(|path| input::design(path, &self.options.common));
        designs
            .flatten()
            .map(|design| compose::sheet(&design))
            .collect()
    }

    /// How many rows are left of how many.
    fn remark(&self) -> String {
        let (left, all) = (self.kept.len(), self.good);
        match (self.request.aims.len(), self.request.conditions.is_empty()) {
            (0, true) => String::new(),
            (0, false) => format!("{left} of {all} rows meet the conditions."),
            (1, _) => format!("Best of {all} rows."),
            _ => format!("{left} of {all} rows are beaten by no other."),
        }
    }

    fn complain(&self) {
        for failed in &self.bad_files {
            output::complain(&failed.error);
        }
        for failed in &self.no_tanks {
            let vary: Vec<String> = failed
                .vary
                .iter()
                .map(|(key, value)| format!("{key} = {value}"))
                .collect();
            output::complain(&format!(
                "error: {} with {}: {}",
                failed.file,
                vary.join(", "),
                failed.error
            ));
        }
        if self.more_no_tanks > 0 {
            output::complain(&format!(
                "error: {} more rows are no tank",
                self.more_no_tanks
            ));
        }
    }
}

fn too_many_to_hold() -> Failure {
    Failure::BadInput(format!(
        "error: more than {HELD} rows would have to be held to be sorted or laid out\n\
         help: write them as they come with --format csv or jsonl without --sort, or keep fewer with --subject-to"
    ))
}

fn number(cells: &[Option<Cell>], place: usize) -> Option<f64> {
    cells.get(place)?.as_ref()?.number()
}

pub(super) fn status(word: &str) -> Status {
    let all = [Status::Act, Status::Watch, Status::Note];
    let found = all.into_iter().find(|status| status.word() == word);
    found.unwrap_or(Status::Ok)
}

/// Sorts rows by a result; those without it come last, equals stay in order.
fn sort(rows: &mut [(TankRow, usize)], place: usize, aim: Aim) {
    let key = |row: &TankRow| -> Option<Cell> { row.cells.as_ref().ok()?.get(place)?.clone() };
    rows.sort_by(|(one, _), (other, _)| {
        let (one, other) = (key(one), key(other));
        let absent = one.is_none().cmp(&other.is_none());
        let order = match (&one, &other) {
            (Some(Cell::Word(one)), Some(Cell::Word(other))) if status(one) == status(other) => {
                one.cmp(other)
            }
            (Some(one), Some(other)) => one
                .number()
                .partial_cmp(&other.number())
                .unwrap_or(std::cmp::Ordering::Equal),
            _ => std::cmp::Ordering::Equal,
        };
        absent.then(if aim == Aim::Most {
            order.reverse()
        } else {
            order
        })
    });
}
