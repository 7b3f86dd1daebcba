//! Rooms, with their outlines on the plan.

use crate::decimal::Decimal;
use crate::ids::Ids;
use crate::mistakes::{coordinate_not_possible, no_such_room, wrong_type};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::{Row, items_of};
use crate::shape::{Field, FieldKind, Shape, field};
use crate::tables::job::PlanUnit;
use crate::tables::names::{ROOM_USES, SPACES, WALL_FINISHES};
use crate::tables::wall_break;
use crate::value::{Value, ValueKind};
use dwelling::{Point, Room, RoomIndex, RoomUse, Space, WallFinish};
use electrical::Length;

pub(crate) static SHAPE: Shape = Shape {
    title: "[[room]]",
    name: "room",
    meaning: "A room, or another place that holds boxes.",
    fields: &[
        field!(must "id", FieldKind::Id, "its name in this survey", "\"bed-2\""),
        field!(may "title", FieldKind::Text, "what people call it", "\"back bedroom\""),
        field!(may "use", FieldKind::Name(&ROOM_USES), "what it is used for", "\"bedroom\""),
        field!(may "floor", FieldKind::Count(-5, 100), "the floor it lies on: 0 the basement or ground, 1 the first floor", "1"),
        field!(may "outline", FieldKind::Outline, "its corners in order, on one plan for the whole floor", "[[0, 0], [11, 0], [11, 12], [0, 12]]"),
        field!(may "wall_breaks", FieldKind::Tables(&wall_break::SHAPE), "what breaks its walls along the floor, so that the spacing of receptacles can be judged; `[]` where nothing does", "[{ kind = \"opening\", from = [3, 0], to = [5.5, 0] }]"),
        field!(may "above", FieldKind::Name(&SPACES), "what lies above", "\"attic\""),
        field!(may "below", FieldKind::Name(&SPACES), "what lies below", "\"crawl space\""),
        field!(may "ceiling", FieldKind::Quantity(Quantity::Height), "how high its ceiling is", "\"8 ft\""),
        field!(may "walls", FieldKind::Name(&WALL_FINISHES), "what its walls are finished with", "\"plaster\""),
        field!(may "insulated", FieldKind::Flag, "whether there is insulation in its outside walls", "true"),
        field!(may "fire_blocks", FieldKind::Flag, "whether there are fire blocks across the bays of its walls", "false"),
    ],
};

/// Farther than this from the plan's origin is no dwelling. Common practice, no source.
const FARTHEST: Length = Length::feet(2_000);
const MICROMETRES_PER_FOOT: i128 = 304_800;
const MICROMETRES_PER_METRE: i128 = 1_000_000;

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, units: PlanUnit) -> Room {
    Room {
        id: row.text_kept("id"),
        title: row.text(notes, "title"),
        room_use: row.name(notes, "use", RoomUse::from_name).unwrap_or(RoomUse::Unknown),
        floor: floor(notes, row),
        outline: outline(notes, row, units),
        wall_breaks: wall_break::read_all(notes, row, units),
        above: row.name(notes, "above", Space::from_name),
        below: row.name(notes, "below", Space::from_name),
        ceiling: row.height(notes, "ceiling"),
        walls: row.name(notes, "walls", WallFinish::from_name),
        insulated: row.flag(notes, "insulated"),
        fire_blocks: row.flag(notes, "fire_blocks"),
    }
}

fn floor(notes: &mut Notes, row: &Row<'_>) -> Option<i8> {
    let (field, value) = row.get("floor")?;
    let number = row.whole(notes, "floor")?;
    let FieldKind::Count(least, most) = field.kind else {
        return None;
    };
    if number < i128::from(least) || number > i128::from(most) {
        notes.push(crate::mistakes::floor_not_possible::mistake(number, least, most, value.span));
        return None;
    }
    i8::try_from(number).ok()
}

fn outline(notes: &mut Notes, row: &Row<'_>, units: PlanUnit) -> Vec<Point> {
    let Some((field, value)) = row.get("outline") else {
        return Vec::new();
    };
    let items = items_of(notes, field, value).unwrap_or(&[]);
    let corners: Vec<Option<Point>> = items.iter().map(|item| point(notes, field, item, units)).collect();
    // An outline with a corner that cannot be read is no outline.
    corners.into_iter().collect::<Option<Vec<Point>>>().unwrap_or_default()
}

/// The room that a panel or a source is in.
pub(crate) fn reference(notes: &mut Notes, row: &Row<'_>, rooms: &Ids) -> Option<RoomIndex> {
    rooms.find(notes, row, "room", no_such_room::mistake).map(RoomIndex)
}

/// Where a panel, a source or a box is on the plan.
pub(crate) fn place(notes: &mut Notes, row: &Row<'_>, units: PlanUnit) -> Option<Point> {
    row.get("at").and_then(|(field, value)| point(notes, field, value, units))
}

/// A place on the plan: two numbers in the plan's units, or two lengths.
pub(crate) fn point(notes: &mut Notes, field: &Field, value: &Value, units: PlanUnit) -> Option<Point> {
    match &value.kind {
        ValueKind::List(items) if items.len() == 2 => {
            let x = coordinate(notes, field.key, &items[0], units);
            let y = coordinate(notes, field.key, &items[1], units);
            Some(Point { x: x?, y: y? })
        }
        _ => {
            notes.push(wrong_type::mistake(
                &format!("a place in `{}`", field.key),
                "two numbers, such as `[11.0, 4.5]`",
                value,
            ));
            None
        }
    }
}

fn coordinate(notes: &mut Notes, key: &str, value: &Value, units: PlanUnit) -> Option<Length> {
    let micrometres = match &value.kind {
        ValueKind::Number(number) => match (Decimal::parse(number), units) {
            (Some(number), PlanUnit::Feet) => number.times_rounded(MICROMETRES_PER_FOOT),
            (Some(number), PlanUnit::Metres) => number.times_rounded(MICROMETRES_PER_METRE),
            (None, _) => {
                notes.push(crate::mistakes::not_a_quantity::mistake(
                    key,
                    number,
                    "two numbers, such as `[11.0, 4.5]`",
                    value.span,
                ));
                return None;
            }
        },
        _ => Quantity::Distance.read(notes, key, value)?,
    };
    if micrometres.abs() > i128::from(FARTHEST.as_micrometres()) {
        notes.push(coordinate_not_possible::mistake(FARTHEST, value.span));
        return None;
    }
    i64::try_from(micrometres).ok().map(Length::micrometres)
}
