//! One table of a file, read by its shape: every key known, none twice, each value of its kind.

use crate::decimal::Decimal;
use crate::diagnostic::Span;
use crate::mistakes::{
    control_character, count_out_of_range, day_not_real, empty_text, key_missing, key_twice, list_too_long, name_twice,
    not_a_quantity, number_not_whole, text_too_long, unknown_key, unknown_name, wrong_type,
};
use crate::notes::Notes;
use crate::shape::{Field, FieldKind, NameList, Need, Shape};
use crate::value::{Table, Value, ValueKind};
use dwelling::Day;
use std::collections::BTreeMap;

/// The word for what nobody knows yet.
pub(crate) const UNKNOWN: &str = "unknown";
/// The longest text a field takes, in characters.
const LONGEST_TEXT: usize = 2_000;
/// The most tables of one kind, and the most items of any other list.
const MOST_TABLES: usize = 5_000;
const MOST_ITEMS: usize = 500;

/// A table of the file with the shape it should have.
#[derive(Clone, Copy)]
pub(crate) struct Row<'a> {
    pub(crate) shape: &'static Shape,
    pub(crate) table: &'a Table,
    pub(crate) span: Span,
}

impl<'a> Row<'a> {
    /// Takes a table as a row and reports unknown, repeated and missing keys.
    pub(crate) fn new(notes: &mut Notes, shape: &'static Shape, table: &'a Table, span: Span) -> Self {
        let mut first_places: BTreeMap<&str, Span> = BTreeMap::new();
        for entry in &table.entries {
            let first = *first_places.entry(&entry.key).or_insert(entry.key_span);
            if first != entry.key_span {
                notes.push(key_twice::mistake(&entry.key, entry.key_span, Some(first)));
            } else if shape.field(&entry.key).is_none() {
                let nearest = notes.nearest(&entry.key, shape.keys());
                notes.push(unknown_key::mistake(&entry.key, shape, nearest, entry.key_span));
            }
        }
        for field in shape.fields {
            if field.need == Need::Required && table.entry(field.key).is_none() {
                notes.push(key_missing::mistake(shape, field, span));
            }
        }
        Self { shape, table, span }
    }

    /// A field with its value; nothing where it is left out or said to be unknown.
    pub(crate) fn get(&self, key: &str) -> Option<(&'static Field, &'a Value)> {
        let field = self.shape.field(key)?;
        let value = &self.table.entry(key)?.value;
        let unknown = matches!(&value.kind, ValueKind::Text(text) if text == UNKNOWN);
        if unknown && field.need == Need::Optional { None } else { Some((field, value)) }
    }

    /// Where the value of a key stands; where the table begins if the key is left out.
    pub(crate) fn place_of(&self, key: &str) -> Span {
        self.table.entry(key).map_or(self.span, |entry| entry.value.span)
    }

    pub(crate) fn text(&self, notes: &mut Notes, key: &str) -> Option<String> {
        let (field, value) = self.get(key)?;
        text_of(notes, field, value).map(str::to_string)
    }

    /// The text of a key as it stands, without looking for mistakes in it a second time.
    pub(crate) fn text_kept(&self, key: &str) -> String {
        match self.table.entry(key).map(|entry| &entry.value.kind) {
            Some(ValueKind::Text(text)) => text.clone(),
            _ => String::new(),
        }
    }

    pub(crate) fn flag(&self, notes: &mut Notes, key: &str) -> Option<bool> {
        let (field, value) = self.get(key)?;
        if let ValueKind::Flag(flag) = value.kind {
            return Some(flag);
        }
        notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
        None
    }

    /// A whole number as it is written, whatever its size.
    pub(crate) fn whole(&self, notes: &mut Notes, key: &str) -> Option<i128> {
        let (field, value) = self.get(key)?;
        let ValueKind::Number(number) = &value.kind else {
            notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
            return None;
        };
        let Some(decimal) = Decimal::parse(number) else {
            notes.push(not_a_quantity::mistake(key, number, &field.kind.expected(), value.span));
            return None;
        };
        if decimal.whole().is_none() {
            notes.push(number_not_whole::mistake(key, number, value.span));
        }
        decimal.whole()
    }

    /// A whole number within the range of its field.
    pub(crate) fn count(&self, notes: &mut Notes, key: &str) -> Option<u32> {
        let (field, value) = self.get(key)?;
        let number = self.whole(notes, key)?;
        let FieldKind::Count(least, most) = field.kind else {
            return None;
        };
        if number < i128::from(least) || number > i128::from(most) {
            notes.push(count_out_of_range::mistake(key, number, least, most, value.span));
            return None;
        }
        u32::try_from(number).ok()
    }

    pub(crate) fn name<T>(&self, notes: &mut Notes, key: &str, from_name: fn(&str) -> Option<T>) -> Option<T> {
        let (field, value) = self.table.entry(key).and_then(|entry| Some((self.shape.field(key)?, &entry.value)))?;
        let (FieldKind::Name(list) | FieldKind::Names(list)) = field.kind else {
            return None;
        };
        // A list that has a name for what is unknown gives it; any other leaves the field empty.
        if let ValueKind::Text(text) = &value.kind
            && text == UNKNOWN
            && field.need == Need::Optional
        {
            return from_name(text);
        }
        let text = text_of(notes, field, value)?;
        name_in(notes, key, list, text, value.span, from_name)
    }

    pub(crate) fn names<T: Copy + PartialEq>(
        &self,
        notes: &mut Notes,
        key: &str,
        from_name: fn(&str) -> Option<T>,
    ) -> Option<Vec<T>> {
        let (field, value) = self.get(key)?;
        let FieldKind::Names(list) = field.kind else {
            return None;
        };
        let items = items_of(notes, field, value)?;
        let mut found: Vec<T> = Vec::new();
        for item in items {
            let Some(text) = text_of(notes, field, item) else { continue };
            let Some(named) = name_in(notes, key, list, text, item.span, from_name) else { continue };
            if found.contains(&named) {
                notes.push(name_twice::mistake(key, text, item.span));
            } else {
                found.push(named);
            }
        }
        Some(found)
    }

    /// A list of texts.
    pub(crate) fn texts(&self, notes: &mut Notes, key: &str) -> Option<Vec<String>> {
        let (field, value) = self.get(key)?;
        let items = items_of(notes, field, value)?;
        Some(items.iter().filter_map(|item| text_of(notes, field, item).map(str::to_string)).collect())
    }

    /// A day of the calendar.
    pub(crate) fn day(&self, notes: &mut Notes, key: &str) -> Option<Day> {
        let (field, value) = self.get(key)?;
        let text = text_of(notes, field, value)?;
        let day = text.parse().ok();
        if day.is_none() {
            notes.push(day_not_real::mistake(key, text, value.span));
        }
        day
    }

    /// The table inside this one under a key.
    pub(crate) fn inner(&self, notes: &mut Notes, key: &str) -> Option<Row<'a>> {
        let (field, value) = self.get(key)?;
        match (&value.kind, field.kind) {
            (ValueKind::Table(table), FieldKind::Table(shape) | FieldKind::DistanceOrTable(shape)) => {
                Some(Row::new(notes, shape, table, value.span))
            }
            _ => {
                notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
                None
            }
        }
    }

    /// The tables under a key, one or several.
    pub(crate) fn inners(&self, notes: &mut Notes, key: &str) -> Vec<Row<'a>> {
        let Some((field, value)) = self.get(key) else {
            return Vec::new();
        };
        let (shape, items) = match (field.kind, &value.kind) {
            (FieldKind::OneOrMore(shape), ValueKind::Table(_)) => (shape, std::slice::from_ref(value)),
            (FieldKind::OneOrMore(shape), _) => (shape, items_of(notes, field, value).unwrap_or(&[])),
            (FieldKind::Tables(shape), _) => (shape, items_of(notes, field, value).unwrap_or(&[])),
            _ => return Vec::new(),
        };
        let mut rows = Vec::new();
        for item in items {
            match &item.kind {
                ValueKind::Table(table) => rows.push(Row::new(notes, shape, table, item.span)),
                _ => notes.push(wrong_type::mistake(
                    &format!("an item of `{key}`"),
                    &format!("a table, `{}`", shape.title),
                    item,
                )),
            }
        }
        rows
    }
}

/// The text of a value, with a mistake where it is no text, or an empty, endless or unprintable one.
pub(crate) fn text_of<'a>(notes: &mut Notes, field: &Field, value: &'a Value) -> Option<&'a str> {
    let key = field.key;
    let ValueKind::Text(text) = &value.kind else {
        notes.push(wrong_type::mistake(&format!("`{key}`"), &field.kind.expected(), value));
        return None;
    };
    if text.trim().is_empty() {
        notes.push(empty_text::mistake(key, field.need, value.span));
        return None;
    }
    let length = text.chars().count();
    if length > LONGEST_TEXT {
        notes.push(text_too_long::mistake(key, length, LONGEST_TEXT, value.span));
        return None;
    }
    // A remark may run over several lines; nothing else needs more than one.
    if let Some(bad) = text.chars().find(|character| character.is_control() && !(key == "note" && *character == '\n')) {
        notes.push(control_character::mistake(key, bad, value.span));
        return None;
    }
    Some(text)
}

/// The items of a list, with a mistake where it is no list or an endless one.
pub(crate) fn items_of<'a>(notes: &mut Notes, field: &Field, value: &'a Value) -> Option<&'a [Value]> {
    let ValueKind::List(items) = &value.kind else {
        notes.push(wrong_type::mistake(&format!("`{}`", field.key), &field.kind.expected(), value));
        return None;
    };
    let most = if matches!(field.kind, FieldKind::Tables(_)) { MOST_TABLES } else { MOST_ITEMS };
    if items.len() > most {
        let first_too_many = items.get(most).map_or(value.span, |item| item.span);
        notes.push(list_too_long::mistake(field.key, items.len(), most, first_too_many));
        return None;
    }
    Some(items)
}

fn name_in<T>(
    notes: &mut Notes,
    key: &str,
    list: &'static NameList,
    text: &str,
    span: Span,
    from_name: fn(&str) -> Option<T>,
) -> Option<T> {
    let named = from_name(text);
    if named.is_none() {
        let nearest = notes.nearest(text, list.names.iter().copied());
        notes.push(unknown_name::mistake(key, text, list, nearest, span));
    }
    named
}
