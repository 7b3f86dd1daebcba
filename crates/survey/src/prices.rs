//! A price book: a file of its own, read by the same rules as a survey.

use crate::decimal::Decimal;
use crate::diagnostic::Diagnostic;
use crate::document::read_document;
use crate::mistakes::{count_out_of_range, not_a_quantity, wrong_type};
use crate::notes::Notes;
use crate::row::Row;
use crate::shape::{FieldKind, Shape, field};
use crate::value::ValueKind;
use estimate::{Cents, Material, PriceBook, Task};

const CENTS: i128 = 100;
/// A single thing or an hour that costs more is a slip of the pen, in dollars. Common practice, no source.
const DEAREST: i64 = 10_000;
/// The longest task, in minutes.
const LONGEST: i64 = 10_000;

pub(crate) static SHAPE: Shape = Shape {
    title: "the file",
    name: "prices",
    meaning: "What a contractor pays and charges.",
    fields: &[
        field!(own "format", FieldKind::Format, "the number of this format", "1"),
        field!(must "hour", FieldKind::Money, "one hour of work", "95.00"),
        field!(may "material", FieldKind::Table(&MATERIAL), "what things cost", "{ gfci = 24.00 }"),
        field!(may "minutes", FieldKind::Table(&MINUTES), "how long work takes", "{ fit-device = 20 }"),
    ],
};

static MATERIAL: Shape = Shape {
    title: "[material]",
    name: "material",
    meaning: "What things cost, by the piece or by the foot; what is left out costs what the demo book says.",
    fields: &[
        field!(may "two-slot", FieldKind::Money, "two-slot receptacle", "24.00"),
        field!(may "three-slot", FieldKind::Money, "tamper-resistant three-slot receptacle", "24.00"),
        field!(may "three-slot-outdoors", FieldKind::Money, "tamper- and weather-resistant three-slot receptacle with its in-use cover", "24.00"),
        field!(may "gfci", FieldKind::Money, "GFCI receptacle", "24.00"),
        field!(may "gfci-outdoors", FieldKind::Money, "weather-resistant GFCI receptacle with its in-use cover", "24.00"),
        field!(may "afci", FieldKind::Money, "AFCI receptacle", "24.00"),
        field!(may "dual", FieldKind::Money, "receptacle that is GFCI and AFCI in one", "24.00"),
        field!(may "dead-front-gfci", FieldKind::Money, "GFCI device without slots", "24.00"),
        field!(may "dead-front-dual", FieldKind::Money, "device without slots that is GFCI and AFCI in one", "24.00"),
        field!(may "panel-side-box", FieldKind::Money, "box and fittings for a device beside the panel", "24.00"),
        field!(may "plate", FieldKind::Money, "nonmetallic cover plate", "24.00"),
        field!(may "label", FieldKind::Money, "label with the words the code asks for", "24.00"),
        field!(may "old-work-box", FieldKind::Money, "single-gang old-work box marked 20 cubic inches", "24.00"),
        field!(may "surface-extension", FieldKind::Money, "single-gang surface extension box marked 12 cubic inches", "18.50"),
        field!(may "wide-old-work-box", FieldKind::Money, "two-gang old-work box marked 34 cubic inches, with a cover for one device", "24.00"),
        field!(may "breaker-gfci", FieldKind::Money, "single-pole GFCI breaker", "24.00"),
        field!(may "breaker-afci", FieldKind::Money, "single-pole AFCI breaker", "24.00"),
        field!(may "breaker-dual", FieldKind::Money, "single-pole dual-function breaker", "24.00"),
        field!(may "breaker-gfci-2p", FieldKind::Money, "two-pole GFCI breaker", "24.00"),
        field!(may "breaker-afci-2p", FieldKind::Money, "two-pole AFCI breaker", "24.00"),
        field!(may "breaker-dual-2p", FieldKind::Money, "two-pole dual-function breaker", "24.00"),
        field!(may "ground-wire-14-ft", FieldKind::Money, "A foot of 14 AWG green conductor", "24.00"),
        field!(may "ground-wire-12-ft", FieldKind::Money, "A foot of 12 AWG green conductor", "24.00"),
        field!(may "ground-wire-10-ft", FieldKind::Money, "A foot of 10 AWG green conductor", "24.00"),
        field!(may "cable-14-ft", FieldKind::Money, "A foot of 14 AWG two-wire cable with ground", "24.00"),
        field!(may "cable-12-ft", FieldKind::Money, "A foot of 12 AWG two-wire cable with ground", "24.00"),
        field!(may "cable-10-ft", FieldKind::Money, "A foot of 10 AWG two-wire cable with ground", "24.00"),
        field!(may "ground-fittings", FieldKind::Money, "ground screw, pigtail and connectors for one end of a conductor", "24.00"),
        field!(may "aluminium-splice", FieldKind::Money, "listed copper-to-aluminium splice for one conductor", "24.00"),
        field!(may "blank-cover", FieldKind::Money, "nonmetallic blank cover, with connectors for the splices behind it", "24.00"),
        field!(may "patch", FieldKind::Money, "patching material for one opening in a finished surface", "24.00"),
        field!(may "branch-box", FieldKind::Money, "accessible box with its cover and a connector, in which a branch is joined", "24.00"),
        field!(may "raceway-ft", FieldKind::Money, "A foot of surface raceway", "24.00"),
        field!(may "raceway-ends", FieldKind::Money, "the two end boxes and fittings of a run of surface raceway", "24.00"),
    ],
};

static MINUTES: Shape = Shape {
    title: "[minutes]",
    name: "minutes",
    meaning: "How long work takes, in minutes; what is left out takes what the demo book says.",
    fields: &[
        field!(may "fit-device", FieldKind::Count(0, LONGEST), "take out a device and fit another in the same box", "20"),
        field!(may "sort-load-side", FieldKind::Count(0, LONGEST), "join the load side of a protective device to what is fed from it, having found which pair that is", "20"),
        field!(may "label-and-test", FieldKind::Count(0, LONGEST), "put a label on a plate and check the reading", "20"),
        field!(may "restore-ground", FieldKind::Count(0, LONGEST), "restore a grounding conductor that is in the box but loose or not connected", "20"),
        field!(may "trace-poor-ground", FieldKind::Count(0, LONGEST), "find and mend the bad joint of a poor ground", "20"),
        field!(may "remove-false-ground", FieldKind::Count(0, LONGEST), "take out a jumper or a false ground", "20"),
        field!(may "correct-polarity", FieldKind::Count(0, LONGEST), "put the conductors of a reversed receptacle right", "20"),
        field!(may "part-ground", FieldKind::Count(0, LONGEST), "part a grounding conductor that joins openings without a ground", "6"),
        field!(may "replace-box", FieldKind::Count(0, LONGEST), "cut out a box and fit a larger old-work box", "20"),
        field!(may "extend-box", FieldKind::Count(0, LONGEST), "fit a surface extension box onto a box", "40"),
        field!(may "replace-box-wide", FieldKind::Count(0, LONGEST), "cut out a box and fit a two-gang old-work box", "20"),
        field!(may "connect-ground", FieldKind::Count(0, LONGEST), "connect a device that stays to a ground that has come into its box", "20"),
        field!(may "change-breaker", FieldKind::Count(0, LONGEST), "change a breaker", "20"),
        field!(may "fit-panel-side-device", FieldKind::Count(0, LONGEST), "fit a box and a device without slots beside the panel", "20"),
        field!(may "fish-setup", FieldKind::Count(0, LONGEST), "set up for one fished conductor and end it at both ends", "20"),
        field!(may "fish-foot", FieldKind::Count(0, LONGEST), "fish one foot of conductor or cable", "20"),
        field!(may "patch-opening", FieldKind::Count(0, LONGEST), "patch one opening in a finished surface", "20"),
        field!(may "take-out", FieldKind::Count(0, LONGEST), "take out a receptacle, splice its conductors and close the box with a blank cover", "15"),
        field!(may "splice-aluminium", FieldKind::Count(0, LONGEST), "make one copper-to-aluminium splice", "20"),
        field!(may "end-conductor", FieldKind::Count(0, LONGEST), "end a conductor at a box, a panel or a source", "20"),
        field!(may "join-branch", FieldKind::Count(0, LONGEST), "join a branch in an accessible box where it leaves an attic, a crawl space or a basement", "20"),
        field!(may "drill-plate", FieldKind::Count(0, LONGEST), "drill one plate from an attic, a crawl space or a basement", "20"),
        field!(may "fish-bay", FieldKind::Count(0, LONGEST), "fish one bay of a wall", "20"),
        field!(may "past-insulation", FieldKind::Count(0, LONGEST), "get through one bay that is full of insulation", "20"),
        field!(may "past-fire-block", FieldKind::Count(0, LONGEST), "get past one fire block in a wall", "20"),
        field!(may "through-floor", FieldKind::Count(0, LONGEST), "get through the floor between two storeys inside a wall", "20"),
        field!(may "through-stud", FieldKind::Count(0, LONGEST), "get through one stud inside a wall", "20"),
        field!(may "through-wall", FieldKind::Count(0, LONGEST), "go through a wall into the back of the box on its other side", "20"),
        field!(may "attic-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable in an attic", "20"),
        field!(may "crawl-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable in a crawl space", "20"),
        field!(may "basement-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable under the open ceiling of a basement", "20"),
        field!(may "set-up-raceway", FieldKind::Count(0, LONGEST), "set up one run of surface raceway with its end boxes", "20"),
        field!(may "raceway-foot", FieldKind::Count(0, LONGEST), "fasten one foot of surface raceway", "20"),
        field!(may "patch-with-care", FieldKind::Count(0, LONGEST), "patch plaster, tile or panelling rather than board, on top of patching one opening", "20"),
    ],
};

/// Reads a price book in TOML. It never fails: whatever is wrong is in the diagnostics.
///
/// The book is there where no mistake is an error.
#[must_use]
pub fn read_prices(bytes: &[u8]) -> (Option<PriceBook>, Vec<Diagnostic>) {
    read_document(bytes, &SHAPE, book_of)
}

fn book_of(row: &Row<'_>, notes: &mut Notes) -> PriceBook {
    let hour = money(row, notes, "hour");
    let mut costs = Vec::new();
    if let Some(material) = row.get("material").and_then(|_| row.inner(notes, "material")) {
        costs.extend(Material::ALL.iter().filter_map(|thing| Some((*thing, money(&material, notes, thing.name())?))));
    }
    let mut times = Vec::new();
    if let Some(minutes) = row.get("minutes").and_then(|_| row.inner(notes, "minutes")) {
        times.extend(Task::ALL.iter().filter_map(|task| Some((*task, minutes.count(notes, task.name())?))));
    }
    PriceBook::new(hour.unwrap_or_default(), &costs, &times)
}

/// Dollars as cents, rounded to the nearest.
fn money(row: &Row<'_>, notes: &mut Notes, key: &str) -> Option<Cents> {
    let (field, value) = row.get(key)?;
    let ValueKind::Number(written) = &value.kind else {
        notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
        return None;
    };
    let Some(dollars) = Decimal::parse(written) else {
        notes.push(not_a_quantity::mistake(key, written, &field.kind.expected(), value.span));
        return None;
    };
    let cents = dollars.times_rounded(CENTS);
    if !(0..=i128::from(DEAREST) * CENTS).contains(&cents) {
        notes.push(count_out_of_range::mistake(key, dollars.times_rounded(1), 0, DEAREST, value.span));
        return None;
    }
    i64::try_from(cents).ok().map(Cents)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_book_reads_back_as_itself() {
        let (book, diagnostics) = read_prices(PriceBook::demo().to_toml().as_bytes());
        assert_eq!(diagnostics, []);
        let book = book.unwrap();
        assert!(Material::ALL.iter().all(|thing| book.cost(*thing) == PriceBook::demo().cost(*thing)));
        assert!(Task::ALL.iter().all(|task| book.minutes(*task) == PriceBook::demo().minutes(*task)));
    }

    #[test]
    fn every_thing_and_task_has_its_key() {
        assert!(MATERIAL.keys().eq(Material::NAMES.iter().copied()));
        assert!(MINUTES.keys().eq(Task::NAMES.iter().copied()));
    }

    #[test]
    fn all_mistakes_of_a_price_book_are_told_at_once() {
        let text = "format = 1\nhour = \"95\"\n[material]\ngfcii = 24.00\ndual = -3\n[minutes]\nfit-device = 20000\n";
        let (book, diagnostics) = read_prices(text.as_bytes());
        assert_eq!(book, None);
        let codes: Vec<&str> = diagnostics.iter().map(|diagnostic| diagnostic.code).collect();
        assert_eq!(codes, ["wrong-type", "unknown-key", "count-out-of-range", "count-out-of-range"]);
    }
}
