//! A tank seen from one side, drawn in characters beside the depths of what it holds.

use super::document::Sheet;
use crate::catalogue::PlantGroup;
use crate::geometry::{Elevation, Layer, Spot, edges_at};
use crate::plan::Drawing;
use crate::units::Length;

/// The most columns and rows inside the walls.
const MOST_COLUMNS: f64 = 36.0;
const MOST_ROWS: f64 = 9.0;
/// Rows for a bed that slopes, which fewer would not show.
const MOST_ROWS_SLOPED: f64 = 11.0;
/// A character is about twice as high as wide.
const HIGH_OVER_WIDE: f64 = 2.0;
/// Columns for the labels beside the drawing.
const LABELS: usize = 38;
/// Columns of blanks before the drawing.
const INDENT: usize = 2;

/// What a character shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawnPart {
    /// Nothing, or a label.
    Plain,
    /// The vessel.
    Wall,
    /// Water and its surface.
    Water,
    /// Floaters and stems.
    Plant,
    /// The cap.
    Cap,
    /// The soil.
    Soil,
    /// Stones.
    Stone,
}

/// A line of characters with what each shows.
pub type Line = Vec<(char, DrawnPart)>;

/// Draws a tank in at most `width` columns; nothing where there is no room for it.
pub fn lines(sheet: &Sheet, width: usize, unicode: bool) -> Vec<Line> {
    let drawing = &sheet.drawing;
    let room = width.saturating_sub(INDENT + 2 + LABELS) as f64;
    if room < MOST_COLUMNS / 2.0 {
        return Vec::new();
    }
    let slopes_to_front = rises(&drawing.side) > rises(&drawing.front);
    let view = if slopes_to_front {
        &drawing.side
    } else {
        &drawing.front
    };
    let raster = Raster::of(drawing, view, room.min(MOST_COLUMNS), unicode);
    let mut lines = raster.lines();
    lines.push(caption(&raster, slopes_to_front));
    for (row, label) in labels(sheet, &raster) {
        let last = lines.len().max(row + 1);
        lines.resize(last, Line::new());
        if let Some(line) = lines.get_mut(row) {
            line.resize(INDENT + raster.columns + 4, (' ', DrawnPart::Plain));
            line.extend(label.chars().map(|c| (c, DrawnPart::Plain)));
        }
    }
    lines
}

/// What the characters of plants and stones stand for.
fn key(drawing: &Drawing) -> impl Iterator<Item = String> {
    let marks = [
        (drawing.floating.fraction(), "o floaters"),
        (drawing.density(PlantGroup::Fast).fraction(), "} stems"),
        (
            drawing.density(PlantGroup::Slow).fraction(),
            "w slow growers",
        ),
        (drawing.stones.len() as f64, "O stones"),
    ];
    let there = marks.into_iter().filter(|(amount, _)| *amount > 0.0);
    let words: Vec<&str> = there.map(|(_, words)| words).collect();
    let lines: Vec<String> = words.chunks(2).map(|pair| pair.join(", ")).collect();
    lines.into_iter()
}

fn caption(raster: &Raster<'_>, from_right: bool) -> Line {
    let (left, right) = if from_right {
        ("front", "back")
    } else {
        ("left", "right")
    };
    let room = (raster.columns + 2).saturating_sub(left.len());
    let text = format!("{:INDENT$}{left}{right:>room$}", "");
    text.chars().map(|c| (c, DrawnPart::Plain)).collect()
}

/// By how much the bed rises across a view, m.
fn rises(view: &Elevation) -> f64 {
    let surfaces = [&view.soil, &view.cap].map(|outline| {
        let [left, right] = span(outline);
        (top_m(outline, left + 1e-6) - top_m(outline, right - 1e-6)).abs()
    });
    surfaces[0].max(surfaces[1])
}

/// A view cut into characters.
struct Raster<'a> {
    drawing: &'a Drawing,
    view: &'a Elevation,
    unicode: bool,
    left_m: f64,
    column_m: f64,
    row_m: f64,
    columns: usize,
    rows: usize,
}

/// The rows, counted from the lowest, at which a column's parts end; the floor's where they begin.
struct Column {
    floor: usize,
    soil: usize,
    bed: usize,
    level: usize,
    rim: usize,
}

impl<'a> Raster<'a> {
    fn of(drawing: &'a Drawing, view: &'a Elevation, room: f64, unicode: bool) -> Self {
        let [left, right] = span(&view.inner);
        let (length_m, height_m) = (right - left, drawing.height.m());
        let most_rows = if drawing.is_sloped() {
            MOST_ROWS_SLOPED
        } else {
            MOST_ROWS
        };
        let column_m = (length_m / room).max(height_m / (most_rows * HIGH_OVER_WIDE));
        let row_m = column_m * HIGH_OVER_WIDE;
        Self {
            drawing,
            view,
            unicode,
            left_m: left,
            column_m,
            row_m,
            columns: (length_m / column_m).round().max(1.0) as usize,
            rows: (height_m / row_m).round().max(4.0) as usize,
        }
    }

    fn glyph(&self, unicode: char, ascii: char) -> char {
        if self.unicode { unicode } else { ascii }
    }

    fn row_of(&self, up_m: f64) -> usize {
        (up_m / self.row_m).round().max(0.0) as usize
    }

    /// Each layer that is there has a row at least.
    fn column(&self, column: usize) -> Column {
        let across_m = self.left_m + (column as f64 + 0.5) * self.column_m;
        let [floor_m, rim_m] = edges_m(&self.view.inner, across_m);
        let [soil_m, bed_m] = self.heights_m(across_m);
        let thick = |from_m: f64, to_m: f64| usize::from(to_m - from_m > 1e-3);
        let soil = self.row_of(soil_m).max(thick(0.0, soil_m));
        let bed = self.row_of(bed_m).max(soil + thick(soil_m, bed_m));
        Column {
            floor: self.row_of(floor_m),
            soil,
            bed,
            level: self.row_of(self.drawing.water_level.m()).max(bed + 1),
            rim: self.row_of(rim_m).min(self.rows),
        }
    }

    /// Heights of the soil's and the bed's surface at a place across; a bowl's are level,
    /// and its floor curves up to them.
    fn heights_m(&self, across_m: f64) -> [f64; 2] {
        let view = self.view;
        if !self.drawing.is_sloped() {
            let (soil_m, cap_m) = (self.drawing.soil.mean.m(), self.drawing.cap.mean.m());
            return [soil_m, soil_m + cap_m];
        }
        let soil_m = top_m(&view.soil, across_m);
        [soil_m, top_m(&view.cap, across_m).max(soil_m)]
    }

    fn lines(&self) -> Vec<Line> {
        let mut rows: Vec<Line> = (0..self.rows).rev().map(|row| self.line(row)).collect();
        let [left, right] = span(&self.floor());
        let before = ((left - self.left_m) / self.column_m).round().max(0.0) as usize;
        let across = ((right - left) / self.column_m).round().max(1.0) as usize;
        let mut floor: Line = vec![(' ', DrawnPart::Plain); INDENT + before];
        floor.push((self.glyph('└', '+'), DrawnPart::Wall));
        floor.extend(vec![(self.glyph('─', '-'), DrawnPart::Wall); across]);
        floor.push((self.glyph('┘', '+'), DrawnPart::Wall));
        rows.push(floor);
        rows
    }

    /// The part of the outline that lies on the floor.
    fn floor(&self) -> Vec<Spot> {
        let spots = self.view.inner.iter();
        spots.filter(|spot| spot.up.m() < 1e-6).copied().collect()
    }

    fn line(&self, row: usize) -> Line {
        let columns: Vec<Column> = (0..self.columns)
            .map(|column| self.column(column))
            .collect();
        let inside = |column: &Column| row >= column.floor && row < column.rim;
        let first = columns.iter().position(&inside).unwrap_or(0);
        let last = columns.iter().rposition(&inside).unwrap_or(0);
        let mut line: Line = vec![(' ', DrawnPart::Plain); INDENT + first];
        line.push((self.glyph('│', '|'), DrawnPart::Wall));
        let held = columns.iter().enumerate().take(last + 1).skip(first);
        line.extend(held.map(|(i, column)| self.cell(row, i, column)));
        line.push((self.glyph('│', '|'), DrawnPart::Wall));
        line
    }

    fn cell(&self, row: usize, place: usize, column: &Column) -> (char, DrawnPart) {
        if row < column.soil {
            return (self.glyph('▓', '#'), DrawnPart::Soil);
        }
        if row < column.bed {
            return (self.glyph('░', '.'), DrawnPart::Cap);
        }
        if row >= column.level {
            return (' ', DrawnPart::Plain);
        }
        let drawing = self.drawing;
        let depth = column.level - column.bed;
        let over_bed = row - column.bed;
        if row + 1 == column.level {
            return if stands(place, drawing.floating.fraction().min(1.0)) {
                ('o', DrawnPart::Plant)
            } else {
                ('~', DrawnPart::Water)
            };
        }
        let is_stone = self.is_stone(place, over_bed);
        let [fast, slow] =
            [PlantGroup::Fast, PlantGroup::Slow].map(|group| drawing.density(group).fraction());
        if is_stone {
            ('O', DrawnPart::Stone)
        } else if place % 2 == 1 && stands(place / 2, planted(fast)) && over_bed * 4 < depth * 3 {
            (
                if over_bed.is_multiple_of(2) { '}' } else { '{' },
                DrawnPart::Plant,
            )
        } else if place.is_multiple_of(2) && over_bed == 0 && stands(place / 2, planted(slow)) {
            ('w', DrawnPart::Plant)
        } else {
            (' ', DrawnPart::Plain)
        }
    }

    /// Whether a stone fills a place over the bed: each as wide and high as the ball of its
    /// volume, a character at least, and apart from the next.
    fn is_stone(&self, place: usize, over_bed: usize) -> bool {
        let stones = &self.drawing.stones;
        stones.iter().enumerate().any(|(i, ball)| {
            let share = (i as f64 + 0.5) / stones.len() as f64;
            let wide = (ball.m() / self.column_m).round().max(1.0);
            let high = (ball.m() / self.row_m).round().max(1.0);
            let from = (share * self.columns as f64 - wide / 2.0).round().max(0.0) as usize;
            (from..from + wide as usize).contains(&place) && over_bed < high as usize
        })
    }
}

/// A group that is there is seen.
fn planted(density: f64) -> f64 {
    if density > 0.0 {
        density.clamp(0.1, 1.0)
    } else {
        0.0
    }
}

/// Whether one of many evenly spread places is filled at a share.
fn stands(place: usize, share: f64) -> bool {
    let before = (place as f64 * share + 0.5).floor();
    ((place + 1) as f64 * share + 0.5).floor() > before
}

/// Each label beside the row it is about, none over another, and what else is told in the
/// rows between them.
fn labels(sheet: &Sheet, raster: &Raster<'_>) -> Vec<(usize, String)> {
    let (drawing, units) = (&sheet.drawing, sheet.units);
    let end = raster.column(raster.columns - 1);
    let from_top = |row: usize| raster.rows.saturating_sub(row + 1);
    let middle = |from: usize, to: usize| from_top(usize::midpoint(from, to.max(from + 1) - 1));
    let depths = |layer: &Layer| units.depths([layer.thinnest.depth, layer.deepest.depth]);
    let freeboard = Length::from_m(drawing.height.m() - drawing.water_level.m());
    let desired = [
        (0, format!("freeboard {}", units.dimension(freeboard))),
        (
            middle(end.bed, end.level),
            format!("water {}", units.dimension(drawing.water_depth)),
        ),
        (
            middle(end.soil, end.bed),
            format!("cap {}", depths(&drawing.cap)),
        ),
        (
            middle(0, end.soil),
            format!("soil {}", depths(&drawing.soil)),
        ),
    ];
    let mut next = 0;
    let mut placed: Vec<(usize, String)> = desired
        .into_iter()
        .map(|(row, label)| {
            let row = row.max(next);
            next = row + 1;
            (row, label)
        })
        .collect();
    let taken: Vec<usize> = placed.iter().map(|(row, _)| *row).collect();
    let free = (0..).filter(|row| !taken.contains(row));
    placed.extend(free.zip(sheet.beside.iter().cloned().chain(key(drawing))));
    placed
}

/// From where to where an outline reaches, m.
fn span(outline: &[Spot]) -> [f64; 2] {
    let across = outline.iter().map(|spot| spot.across.m());
    [
        across.clone().fold(f64::INFINITY, f64::min),
        across.fold(f64::NEG_INFINITY, f64::max),
    ]
}

/// Height of an outline's upper edge at a place across, m; zero beside it.
fn top_m(outline: &[Spot], across_m: f64) -> f64 {
    edges_m(outline, across_m)[1]
}

/// Height of an outline's lower and upper edge at a place across, m; zero beside it.
fn edges_m(outline: &[Spot], across_m: f64) -> [f64; 2] {
    edges_at(outline, Length::from_m(across_m)).map_or([0.0; 2], |edges| edges.map(Length::m))
}
