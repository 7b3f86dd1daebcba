//! The enclosure of an opening.

use crate::mistakes::{size_of_nonmetallic_box, volume_and_size_contradict};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::CLAMPS;
use dwelling::{Body, Clamps, TradeSize};
use electrical::Volume;

pub(crate) static SHAPE: Shape = Shape {
    title: "body = { … }",
    name: "body",
    meaning: "The enclosure of an opening.",
    fields: &[
        field!(may "metal", FieldKind::Flag, "whether it is metal", "true"),
        field!(may "size", FieldKind::TradeSize, "the trade size of a metal box, which gives its volume", "\"3x2x2-1/2\""),
        field!(may "volume", FieldKind::Quantity(Quantity::Volume), "the volume marked on it", "\"20 in3\""),
        field!(may "added_volume", FieldKind::Quantity(Quantity::Volume), "the volume marked on extension rings, raised covers and plaster rings", "\"4 in3\""),
        field!(may "clamps", FieldKind::Name(&CLAMPS), "where cables are clamped", "\"inside\""),
        field!(may "gangs", FieldKind::Count(1, 10), "how many gangs wide it is; 1 if left out", "2"),
        field!(may "support_fittings", FieldKind::Count(0, 10), "how many kinds of support fittings (stud, hickey) are inside; 0 if left out", "1"),
    ],
};

/// A marked volume may be up to this many times the table's; more is a slip of the pen. Common practice, no source.
const MARKED_AT_MOST: i64 = 2;
/// A marked volume is rounded: this little less than the table's is the same. Common practice, no source.
const ROUNDING: Volume = Volume::hundredths(10);

/// The enclosure of which nothing is known.
pub(crate) const fn unknown() -> Body {
    Body { metal: None, size: None, volume: None, added_volume: None, clamps: None, gangs: 1, support_fittings: 0 }
}

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>) -> Body {
    let gangs = row.count(notes, "gangs").unwrap_or(1);
    let size = row.trade_size(notes, "size");
    let marked = row.volume(notes, "volume");
    let of_size = size.map(|size| volume_of(size, gangs));
    if let (Some(size), Some(marked), Some(of_size)) = (size, marked, of_size)
        && (marked + ROUNDING < of_size || marked > of_size * MARKED_AT_MOST)
    {
        let places = (row.place_of("volume"), row.place_of("size"));
        notes.push(volume_and_size_contradict::mistake(marked, of_size, size.name, places));
    }
    let metal = row.flag(notes, "metal");
    if metal == Some(false) && size.is_some() {
        notes.push(size_of_nonmetallic_box::mistake(row.place_of("size"), row.place_of("metal")));
    }
    Body {
        metal,
        size: size.map(|size| size.name.to_string()),
        volume: marked.or(of_size),
        added_volume: row.volume(notes, "added_volume"),
        clamps: row.name(notes, "clamps", Clamps::from_name),
        gangs,
        support_fittings: row.count(notes, "support_fittings").unwrap_or(0),
    }
}

/// The volume of so many gangs of a trade size.
fn volume_of(size: &TradeSize, gangs: u32) -> Volume {
    if size.by_gang { size.volume * i64::from(gangs) } else { size.volume }
}
