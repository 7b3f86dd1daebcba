//! A file of local changes to the code, as a contractor writes it: read by the same rules as a survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::document::read_document;
use crate::mistakes::{edition_not_plausible, local_code_names_nothing};
use crate::notes::Notes;
use crate::quantity::Quantity;
use crate::row::Row;
use crate::shape::{Field, FieldKind, NameList, Shape, field, name_list};
use crate::tables::job::EDITIONS;
use crate::value::ValueKind;
use rulebook::{Amendment, AmendmentFault, Change, Dated, List, Question, Remedy, check_amendments};

/// What a place changes in the code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LocalCode {
    /// The edition in force there, where the file says so.
    pub edition: Option<u16>,
    /// The changes with their authority.
    pub amendment: Amendment,
    /// The authority's answers where the trade is divided: the question, and whether it says yes.
    pub answers: Vec<(Question, bool)>,
}

name_list!(LISTS_OF_THE_CODE, List, "lists of the code");
name_list!(DATES, Dated, "dates in the code");
name_list!(REMEDIES, Remedy, "remedies");
name_list!(QUESTIONS, Question, "questions");

/// Every list, in the order of the page for users.
pub(crate) static LISTS: &[&NameList] = &[&LISTS_OF_THE_CODE, &DATES, &REMEDIES, &QUESTIONS];

pub(crate) static SHAPE: Shape = Shape {
    title: "the file",
    name: "local-code",
    meaning: "What one authority changes in the code. A later table of a kind overrides an earlier one.",
    fields: &[
        field!(own "format", FieldKind::Format, "the number of this format", "1"),
        field!(must "authority", FieldKind::Text, "who made the changes", "\"Larch County\""),
        field!(must "source", FieldKind::Text, "where they are written", "\"Ordinance 2024-17, section 3\""),
        field!(may "edition", FieldKind::Year, "the edition in force, in place of the one the survey states", "2020"),
        field!(may "since", FieldKind::Day, "the first permit day they hold for", "\"2024-07-01\""),
        field!(may "until", FieldKind::Day, "the first permit day they no longer hold for", "\"2027-01-01\""),
        field!(may "switch_off", FieldKind::Tables(&SWITCH_OFF), "rules that are not applied", "[{ rule = \"replacement.afci\" }]"),
        field!(may "narrow", FieldKind::Tables(&NARROW), "items taken out of lists", "[{ list = \"afci-rooms\", items = [\"kitchen\"] }]"),
        field!(may "widen", FieldKind::Tables(&WIDEN), "items added to lists", "[{ list = \"gfci-places\", items = [\"utility\"] }]"),
        field!(may "date", FieldKind::Tables(&DATE), "dates in the code that are others", "[{ of = \"afci-on-replacement\", day = \"2016-01-01\" }]"),
        field!(may "volts", FieldKind::Tables(&VOLTS), "the voltage up to which a list reaches", "[{ list = \"gfci-places\", up_to = 125 }]"),
        field!(may "marking", FieldKind::Tables(&MARKING), "words of the authority's own on a remedy", "[{ remedy = \"gfci-breaker\", words = \"Reset at panel\" }]"),
        field!(may "note", FieldKind::Tables(&NOTE), "what is said wherever a rule speaks", "[{ rule = \"replacement.afci\", words = \"ask for form 12\" }]"),
        field!(may "answer", FieldKind::Tables(&ANSWER), "the authority's answers where the trade is divided", "[{ question = \"reduced-ground\", yes = true }]"),
    ],
};

static SWITCH_OFF: Shape = Shape {
    title: "[[switch_off]]",
    name: "switch-off",
    meaning: "A rule that is not applied.",
    fields: &[
        field!(must "rule", FieldKind::Reference("a rule"), "its id, as `thirdwire rule` lists it", "\"replacement.afci\""),
    ],
};

static NARROW: Shape = Shape {
    title: "[[narrow]]",
    name: "narrow",
    meaning: "Items taken out of a list of the code.",
    fields: LIST_AND_ITEMS,
};

static WIDEN: Shape =
    Shape { title: "[[widen]]", name: "widen", meaning: "Items added to a list of the code.", fields: LIST_AND_ITEMS };

const LIST_AND_ITEMS: &[Field] = &[
    field!(must "list", FieldKind::Name(&LISTS_OF_THE_CODE), "the list", "\"afci-rooms\""),
    field!(must "items", FieldKind::Texts, "the items", "[\"kitchen\"]"),
];

static DATE: Shape = Shape {
    title: "[[date]]",
    name: "date",
    meaning: "A date in the code that is another one.",
    fields: &[
        field!(must "of", FieldKind::Name(&DATES), "which date", "\"afci-on-replacement\""),
        field!(must "day", FieldKind::Day, "the day in its place", "\"2016-01-01\""),
    ],
};

static VOLTS: Shape = Shape {
    title: "[[volts]]",
    name: "volts",
    meaning: "The voltage up to which a list reaches.",
    fields: &[
        field!(must "list", FieldKind::Name(&LISTS_OF_THE_CODE), "the list", "\"gfci-places\""),
        field!(must "up_to", FieldKind::Quantity(Quantity::Volts), "the highest voltage", "125"),
    ],
};

static MARKING: Shape = Shape {
    title: "[[marking]]",
    name: "marking",
    meaning: "Words of the authority's own on a remedy.",
    fields: &[
        field!(must "remedy", FieldKind::Name(&REMEDIES), "the remedy", "\"gfci-breaker\""),
        field!(must "words", FieldKind::Text, "the words", "\"Reset at panel\""),
    ],
};

static NOTE: Shape = Shape {
    title: "[[note]]",
    name: "note",
    meaning: "What is said wherever a rule speaks.",
    fields: &[
        field!(must "rule", FieldKind::Reference("a rule"), "the rule's id", "\"replacement.afci\""),
        field!(must "words", FieldKind::Text, "what is said", "\"ask for form 12\""),
    ],
};

static ANSWER: Shape = Shape {
    title: "[[answer]]",
    name: "answer",
    meaning: "The authority's answer to a question on which the trade is divided.",
    fields: &[
        field!(must "question", FieldKind::Name(&QUESTIONS), "the question", "\"reduced-ground\""),
        field!(must "yes", FieldKind::Flag, "whether it says yes", "true"),
    ],
};

/// Reads a file of local code in TOML. It never fails: whatever is wrong is in the diagnostics.
///
/// The code is there where no mistake is an error.
#[must_use]
pub fn read_local_code(bytes: &[u8]) -> (Option<LocalCode>, Vec<Diagnostic>) {
    read_document(bytes, &SHAPE, code_of)
}

fn code_of(row: &Row<'_>, notes: &mut Notes) -> LocalCode {
    let edition = row.whole(notes, "edition");
    if let Some(year) = edition.filter(|year| !EDITIONS.contains(year)) {
        notes.push(edition_not_plausible::mistake(year, &EDITIONS, row.place_of("edition")));
    }
    let errors_before = notes.has_errors();
    let mut changes = Vec::new();
    let mut rows = Vec::new();
    for (key, read) in READERS {
        for row in row.inners(notes, key) {
            if let Some(change) = read(&row, notes) {
                changes.push(change);
                rows.push(row);
            }
        }
    }
    let answers = row.inners(notes, "answer");
    let answers = answers
        .iter()
        .filter_map(|row| Some((row.name(notes, "question", Question::from_name)?, row.flag(notes, "yes")?)));
    let answers = answers.collect();
    let amendment = Amendment {
        authority: row.text(notes, "authority").unwrap_or_default(),
        source: row.text(notes, "source").unwrap_or_default(),
        since: row.day(notes, "since"),
        until: row.day(notes, "until"),
        changes,
    };
    if !errors_before && !notes.has_errors() {
        for fault in check_amendments(std::slice::from_ref(&amendment)) {
            let place = fault
                .change
                .and_then(|change| rows.get(change))
                .map_or_else(|| row.place_of("until"), |row| place_of(row, &fault));
            notes.push(local_code_names_nothing::mistake(&fault.message, fault.nearest.as_deref(), place));
        }
    }
    LocalCode { edition: edition.and_then(|year| u16::try_from(year).ok()), amendment, answers }
}

type Reader = fn(&Row<'_>, &mut Notes) -> Option<Change>;

/// How each kind of table becomes a change.
const READERS: &[(&str, Reader)] = &[
    ("switch_off", |row, notes| Some(Change::SwitchOff { rule: row.text(notes, "rule")? })),
    ("narrow", |row, notes| {
        Some(Change::Narrow { list: row.name(notes, "list", List::from_name)?, items: row.texts(notes, "items")? })
    }),
    ("widen", |row, notes| {
        Some(Change::Widen { list: row.name(notes, "list", List::from_name)?, items: row.texts(notes, "items")? })
    }),
    ("date", |row, notes| {
        Some(Change::Date { of: row.name(notes, "of", Dated::from_name)?, day: row.day(notes, "day")? })
    }),
    ("volts", |row, notes| {
        let up_to = row.volts(notes, "up_to")?.as_millivolts() / 1_000;
        Some(Change::Volts { list: row.name(notes, "list", List::from_name)?, up_to: u32::try_from(up_to).ok()? })
    }),
    ("marking", |row, notes| {
        Some(Change::Marking {
            remedy: row.name(notes, "remedy", Remedy::from_name)?,
            words: row.text(notes, "words")?,
        })
    }),
    ("note", |row, notes| Some(Change::Note { rule: row.text(notes, "rule")?, words: row.text(notes, "words")? })),
];

/// Where in its table a fault stands: at the text that names nothing, else at the table.
fn place_of(row: &Row<'_>, fault: &AmendmentFault) -> Span {
    for entry in &row.table.entries {
        let values = match &entry.value.kind {
            ValueKind::List(items) => items.as_slice(),
            _ => std::slice::from_ref(&entry.value),
        };
        for value in values {
            if matches!(&value.kind, ValueKind::Text(text) | ValueKind::Number(text) if *text == fault.written) {
                return value.span;
            }
        }
    }
    row.span
}

#[cfg(test)]
mod tests {
    use super::*;
    use dwelling::Day;

    const SOUND: &str = r#"format = 1
authority = "Larch County"
source = "Ordinance 2024-17"
edition = 2020
since = "2024-07-01"

[[switch_off]]
rule = "replacement.afci"

[[narrow]]
list = "afci-rooms"
items = ["kitchen", "laundry"]

[[volts]]
list = "gfci-places"
up_to = 125

[[marking]]
remedy = "gfci-breaker"
words = "Reset at panel"

[[answer]]
question = "reduced-ground"
yes = true
"#;

    #[test]
    fn a_file_of_local_code_is_read_whole() {
        let (code, diagnostics) = read_local_code(SOUND.as_bytes());
        assert_eq!(diagnostics, []);
        let code = code.unwrap();
        assert_eq!(code.edition, Some(2020));
        assert_eq!(code.amendment.since, Day::new(2024, 7, 1));
        assert_eq!(code.amendment.changes.len(), 4);
        assert!(code.amendment.changes.contains(&Change::Volts { list: List::GfciPlaces, up_to: 125 }));
        assert_eq!(code.answers, [(Question::ReducedGround, true)]);
    }

    #[test]
    fn every_mistake_of_a_file_of_local_code_is_told_at_once() {
        let text =
            SOUND.replace("afci-rooms", "afci-room").replace("2024-07-01", "2024-13-01").replace("up_to", "upto");
        let (code, diagnostics) = read_local_code(text.as_bytes());
        assert_eq!(code, None);
        let codes: Vec<&str> = diagnostics.iter().map(|diagnostic| diagnostic.code).collect();
        assert_eq!(codes, ["day-not-real", "unknown-name", "key-missing", "unknown-key"]);
    }

    #[test]
    fn a_change_that_names_no_rule_is_told_with_the_nearest() {
        let (code, diagnostics) = read_local_code(SOUND.replace("replacement.afci", "replacement.afic").as_bytes());
        assert_eq!(code, None);
        assert_eq!(diagnostics[0].help.as_deref(), Some("did you mean `replacement.afci`?"));
    }
}
