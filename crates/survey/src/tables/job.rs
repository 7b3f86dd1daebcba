//! The job: whose dwelling, how old, and which code stands where it stands.

use crate::mistakes::{built_not_plausible, edition_not_plausible};
use crate::notes::Notes;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::tables::names::{DWELLING_USES, PLAN_UNITS};
use dwelling::{DwellingUse, Job};

pub(crate) static SHAPE: Shape = Shape {
    title: "[job]",
    name: "job",
    meaning: "The job as a whole.",
    fields: &[
        field!(must "name", FieldKind::Text, "what the job is called", "\"Larch Street bungalow\""),
        field!(may "built", FieldKind::Year, "the year the dwelling was built", "1956"),
        field!(may "use", FieldKind::Name(&DWELLING_USES), "the kind of dwelling", "\"one-family\""),
        field!(may "edition", FieldKind::Year, "the edition of the NEC in force where the dwelling stands", "2020"),
        field!(may "place", FieldKind::Text, "the place whose adoption of the code counts, as `thirdwire places` names it", "\"south-carolina\""),
        field!(may "permit_date", FieldKind::Day, "the day of the permit, which picks the adoption", "\"2025-07-01\""),
        field!(may "outlets_behind_one_device", FieldKind::Count(1, 100), "how many outlets the load side of one feed-through device may protect by its instructions, its own not counted; no limit if left out", "8"),
        field!(may "leakage_percent", FieldKind::Count(1, 100), "how many percent of the 4 mA at which a GFCI may begin to trip are planned as standing leakage behind one; 100 if left out", "75"),
        field!(may "amendments", FieldKind::Text, "the file of local changes to that edition", "\"larch-county.toml\""),
        field!(may "units", FieldKind::Name(&PLAN_UNITS), "what coordinates on the plan are in; feet if left out", "\"feet\""),
    ],
};

/// Dwellings that are still lived in, and years that a survey can be about. Common practice, no source.
const BUILT: std::ops::RangeInclusive<i128> = 1800..=2100;
/// From memory: the first edition of the NEC was that of 1897.
pub(crate) const EDITIONS: std::ops::RangeInclusive<i128> = 1897..=2100;

/// What coordinates on the plan are in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum PlanUnit {
    Feet,
    Metres,
}

pub(crate) fn read(notes: &mut Notes, row: &Row<'_>) -> (Job, PlanUnit) {
    let built = row.whole(notes, "built");
    if let Some(year) = built.filter(|year| !BUILT.contains(year)) {
        notes.push(built_not_plausible::mistake(year, &BUILT, row.place_of("built")));
    }
    let edition = row.whole(notes, "edition");
    if let Some(year) = edition.filter(|year| !EDITIONS.contains(year)) {
        notes.push(edition_not_plausible::mistake(year, &EDITIONS, row.place_of("edition")));
    }
    let job = Job {
        name: row.text(notes, "name").unwrap_or_default(),
        built: built.and_then(|year| u16::try_from(year).ok()),
        dwelling_use: row.name(notes, "use", DwellingUse::from_name),
        edition: edition.and_then(|year| u16::try_from(year).ok()),
        place: row.text(notes, "place"),
        permit_day: row.day(notes, "permit_date"),
        outlets_behind_one_device: row.count(notes, "outlets_behind_one_device"),
        leakage_percent: row.count(notes, "leakage_percent"),
        amendments: row.text(notes, "amendments"),
    };
    let units = row.name(notes, "units", |name| match name {
        "feet" => Some(PlanUnit::Feet),
        "metres" => Some(PlanUnit::Metres),
        _ => None,
    });
    (job, units.unwrap_or(PlanUnit::Feet))
}
