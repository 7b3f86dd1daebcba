//! What breaks the walls of a room along the floor line.

use crate::notes::Notes;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::job::PlanUnit;
use crate::tables::names::WALL_BREAKS;
use crate::tables::room::point;
use dwelling::{WallBreak, WallBreakKind};

pub(crate) static SHAPE: Shape = Shape {
    title: "{ kind = …, from = …, to = … }",
    name: "wall_break",
    meaning: "A part of a room's walls that is no wall at the floor: a doorway, a fireplace, a fixed cabinet.",
    fields: &[
        field!(must "kind", FieldKind::Name(&WALL_BREAKS), "what is there", "\"opening\""),
        field!(must "from", FieldKind::Point, "where it begins on the plan", "[3, 0]"),
        field!(must "to", FieldKind::Point, "where it ends", "[5.5, 0]"),
    ],
};

/// The breaks of a room's walls; nothing where nobody looked, or where one of them could not be read.
pub(crate) fn read_all(notes: &mut Notes, row: &Row<'_>, units: PlanUnit) -> Option<Vec<WallBreak>> {
    row.get("wall_breaks")?;
    let rows = row.inners(notes, "wall_breaks");
    rows.iter().map(|row| read(notes, row, units)).collect()
}

fn read(notes: &mut Notes, row: &Row<'_>, units: PlanUnit) -> Option<WallBreak> {
    let kind = row.name(notes, "kind", WallBreakKind::from_name);
    let mut end = |key| row.get(key).and_then(|(field, value)| point(notes, field, value, units));
    let (from, to) = (end("from"), end("to"));
    Some(WallBreak { kind: kind?, from: from?, to: to? })
}
