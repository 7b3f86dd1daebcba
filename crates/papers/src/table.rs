//! Tables: rows that stay whole, under a head that is drawn again on every page.

use crate::document::{Cell, Table, Text};
use crate::lines::{Line, broken};
use crate::page::{Mark, Part, PartKind, Shape};
use crate::setting::{SMALL, Setting, Slab, TICK};

/// What is left free on each side of a cell.
const PAD: f32 = 3.0;
/// As many lines of a cell as one row may have; more go on in a further row.
const MOST_LINES: usize = 24;

/// How far the lines to write on stand apart: room for a hand with a pen. Common practice, no source.
const WRITTEN: f32 = 15.0;
/// A table of no more rows than this better stays on one page.
const SMALL_TABLE: usize = 8;

/// The table as slabs.
pub(crate) fn set(setting: &mut Setting, table: &Table, under: Option<Part>) -> Vec<Slab> {
    let all = setting.structure.add(under, PartKind::Table);
    let whole: f32 = table.columns.iter().map(|(_, wide)| wide).sum();
    let widths: Vec<f32> = table.columns.iter().map(|(_, wide)| setting.width * wide / whole).collect();
    let heads: Vec<Cell> = table.columns.iter().map(|(head, _)| Cell::Words(Text::bold(head.as_str()))).collect();
    let mut slabs = row(setting, &heads, &widths, (all, PartKind::Head, 0.0));
    for slab in &mut slabs {
        slab.with_next = true;
    }
    if let Some(last) = slabs.last_mut() {
        let line = Shape::line((0.0, last.height), (setting.width, last.height), 1.2, 0);
        last.marks.push(Mark::Shape(line));
    }
    let head = slabs.first().map(|slab| Box::new(said_again(slab)));
    if let Some(first) = slabs.first_mut() {
        first.before = 5.0;
    }
    let count = table.rows.len();
    for (number, cells) in table.rows.iter().enumerate() {
        for mut slab in row(setting, cells, &widths, (all, PartKind::Cell, table.row_height)) {
            slab.head.clone_from(&head);
            // Neither the first nor the last row of several stands alone on a page.
            slab.with_next = number + 1 < count && (number == 0 || number + 2 == count);
            slab.better_with_next = count <= SMALL_TABLE && number + 1 < count;
            slabs.push(slab);
        }
    }
    slabs
}

/// What stands in front of a line to write on.
fn one_line(setting: &Setting, name: &str) -> Option<Line> {
    broken(setting.faces, &format!("{name} ").into(), f32::INFINITY, SMALL.size).into_iter().next()
}

/// The head as it is drawn again: nobody hears it twice.
fn said_again(slab: &Slab) -> Slab {
    let mut again = Slab { before: 0.0, with_next: false, ..slab.clone() };
    for mark in &mut again.marks {
        if let Mark::Words(words) = mark {
            words.part = None;
        }
    }
    again
}

fn row(
    setting: &mut Setting,
    cells: &[Cell],
    widths: &[f32],
    (table, kind, least): (Part, PartKind, f32),
) -> Vec<Slab> {
    let part = setting.structure.add(Some(table), PartKind::Row);
    let parts: Vec<Part> = widths.iter().map(|_| setting.structure.add(Some(part), kind.clone())).collect();
    let lines: Vec<Vec<Line>> = cells
        .iter()
        .zip(widths)
        .map(|(cell, wide)| match cell {
            Cell::Words(text) if !text.is_empty() => broken(setting.faces, text, wide - 2.0 * PAD, SMALL.size),
            Cell::Lines(names) => names.iter().filter_map(|name| one_line(setting, name)).collect(),
            // What is empty is heard as empty.
            Cell::Words(_) | Cell::Tick => broken(setting.faces, &" ".into(), *wide, SMALL.size),
        })
        .collect();
    let to_write =
        cells.iter().map(|cell| if let Cell::Lines(names) = cell { names.len() } else { 0 }).max().unwrap_or(0);
    let written = WRITTEN * f32::from(u16::try_from(to_write).unwrap_or(0)) + PAD;
    let least = if to_write > 0 { least.max(written) } else { least };
    let most = lines.iter().map(Vec::len).max().unwrap_or(0);
    let mut slabs = Vec::new();
    for from in (0..most.max(1)).step_by(MOST_LINES) {
        let count = u16::try_from((most - from).min(MOST_LINES)).unwrap_or(0);
        let height = (SMALL.leading * f32::from(count) + 2.0 * PAD).max(least);
        let mut marks = vec![Mark::Shape(Shape::line((0.0, height), (setting.width, height), 0.4, 60))];
        let mut left = 0.0_f32;
        for (((cell, lines), wide), part) in cells.iter().zip(&lines).zip(widths).zip(&parts) {
            let written = matches!(cell, Cell::Lines(_));
            for (number, line) in (0_u16..).zip(lines.iter().skip(from).take(MOST_LINES)) {
                let apart = if written { WRITTEN } else { SMALL.leading };
                let top = if written { WRITTEN - SMALL.leading } else { PAD } + apart * f32::from(number);
                marks.extend(line.marks((left + PAD, top), SMALL, Some(*part)));
                if written {
                    let base = top + SMALL.leading;
                    let from = (left + PAD + line.width, base);
                    marks.push(Mark::Shape(Shape::line(from, (left + wide - PAD, base), 0.4, 60)));
                }
            }
            let is_empty = matches!(cell, Cell::Words(text) if text.is_empty());
            if written || (is_empty && least > 0.0) {
                for side in [left, left + wide] {
                    marks.push(Mark::Shape(Shape::line((side, 0.0), (side, height), 0.4, 60)));
                }
            }
            if matches!(cell, Cell::Tick) && from == 0 {
                let tick = Shape::area(left + PAD, PAD + (SMALL.leading - TICK) / 2.0, TICK, TICK);
                marks.push(Mark::Shape(tick.lined(0.8, 0)));
            }
            left += wide;
        }
        slabs.push(Slab { height, marks, ..Slab::default() });
    }
    slabs
}
