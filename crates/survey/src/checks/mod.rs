//! What only the whole survey shows: rings, contradictions, and things that cannot be together.

mod after_work;
mod boxes;
mod circuits;
mod feeding;
mod outlines;
mod readings;

use crate::notes::Notes;
use crate::tables::survey::Rows;
use dwelling::Dwelling;

/// Checks a draft, in which positions may point at nothing where an error was reported.
pub(crate) fn run(notes: &mut Notes, draft: &Dwelling, rows: &Rows<'_>) {
    circuits::check(notes, draft, &rows.circuits);
    outlines::check(notes, draft, rows);
    feeding::check(notes, draft, &rows.boxes);
    boxes::check(notes, draft, &rows.boxes);
    readings::check(notes, draft, &rows.boxes);
    after_work::check(notes, draft, &rows.boxes);
}
