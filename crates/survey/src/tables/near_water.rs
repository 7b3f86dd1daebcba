//! How far an opening is from a sink, tub or shower.

use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::OBSTACLES;
use crate::value::ValueKind;
use dwelling::{NearWater, PathObstacle};

pub(crate) static SHAPE: Shape = Shape {
    title: "{ distance = …, passes = […] }",
    name: "near_water",
    meaning: "A distance to a sink, tub or shower, and what lies on the way.",
    fields: &[
        field!(must "distance", FieldKind::Quantity(Quantity::Distance), "the shortest path to the nearest edge", "\"4 ft\""),
        field!(may "passes", FieldKind::Names(&OBSTACLES), "what that path passes through", "[\"cabinet-door\"]"),
    ],
};

/// The distance under a key, written alone or with what is passed.
pub(crate) fn read(notes: &mut Notes, row: &Row<'_>, key: &str) -> Option<NearWater> {
    let (_, value) = row.get(key)?;
    if !matches!(value.kind, ValueKind::Table(_)) {
        return Some(NearWater { distance: row.distance(notes, key)?, passes: Vec::new() });
    }
    let inner = row.inner(notes, key)?;
    let distance = inner.distance(notes, "distance");
    let passes = inner.names(notes, "passes", PathObstacle::from_name).unwrap_or_default();
    Some(NearWater { distance: distance?, passes })
}
