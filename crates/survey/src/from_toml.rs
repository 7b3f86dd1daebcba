//! TOML text to the tree of values, with every syntax mistake the parser can give.

use crate::diagnostic::Span;
use crate::mistakes::{key_twice, nested_too_deep, toml_syntax};
use crate::notes::Notes;
use crate::value::{Entry, Table, Value, ValueKind};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Reads what can be read of a TOML text that begins `offset` bytes into the file.
pub(crate) fn from_toml(text: &str, offset: usize, notes: &mut Notes) -> Table {
    let (document, errors) = DeTable::parse_recoverable(text);
    let tree = table(document.get_ref(), offset);
    let mut too_deep = false;
    for error in errors {
        let range = error.span().unwrap_or(0..0);
        let span = Span::new(range.start + offset, range.end + offset);
        let message = error.message();
        let mistake = if message.starts_with("duplicate key") {
            let before = text.get(..range.start).unwrap_or("");
            let key = text.get(range).unwrap_or("").trim_matches(['"', '\'']);
            let first = if notes.may_search() {
                first_place(&tree, key, span).or_else(|| header(before, key, offset))
            } else {
                None
            };
            key_twice::mistake(key, span, first)
        } else if message.contains("recurs") {
            // The parser tells it again for every bracket that follows.
            if std::mem::replace(&mut too_deep, true) {
                continue;
            }
            nested_too_deep::mistake(span)
        } else {
            toml_syntax::mistake(message, span)
        };
        notes.push(mistake);
    }
    tree
}

fn table(table: &DeTable<'_>, offset: usize) -> Table {
    let mut entries: Vec<Entry> = table
        .iter()
        .map(|(key, value)| Entry {
            key: key.get_ref().to_string(),
            key_span: shifted(key.span(), offset),
            value: self::value(value, offset),
        })
        .collect();
    entries.sort_by_key(|entry| entry.key_span.start);
    Table { entries }
}

fn value(value: &Spanned<DeValue<'_>>, offset: usize) -> Value {
    let kind = match value.get_ref() {
        DeValue::String(text) => ValueKind::Text(text.to_string()),
        DeValue::Integer(number) if number.radix() == 10 => ValueKind::Number(number.as_str().to_string()),
        DeValue::Integer(number) => ValueKind::Number(in_tens(number.as_str(), number.radix())),
        DeValue::Float(number) => ValueKind::Number(number.as_str().to_string()),
        DeValue::Boolean(flag) => ValueKind::Flag(*flag),
        DeValue::Datetime(_) => ValueKind::Day,
        DeValue::Array(list) => ValueKind::List(list.iter().map(|item| self::value(item, offset)).collect()),
        DeValue::Table(inner) => ValueKind::Table(table(inner, offset)),
    };
    Value { span: shifted(value.span(), offset), kind }
}

/// A hexadecimal, octal or binary number in tens; one too large to count is as large as can be.
fn in_tens(digits: &str, radix: u32) -> String {
    i128::from_str_radix(digits, radix).unwrap_or(i128::MAX).to_string()
}

fn shifted(range: std::ops::Range<usize>, offset: usize) -> Span {
    Span::new(range.start + offset, range.end + offset)
}

/// Where a key that is given again was given first: the last place before it, in a table that is still open there.
fn first_place(table: &Table, key: &str, again: Span) -> Option<Span> {
    let mut best = None;
    look_in(table, None, key, again, &mut best);
    best
}

/// The last header of a table before a place, for a table that is begun again: the tree keeps the later one alone.
fn header(before: &str, key: &str, offset: usize) -> Option<Span> {
    let header = format!("[{key}]");
    let at = before.rfind(&header)?;
    let begins_line = before[..at].rsplit('\n').next().is_some_and(|start| start.trim().is_empty());
    begins_line.then(|| Span::new(at + 1 + offset, at + 1 + key.len() + offset))
}

fn look_in(table: &Table, within: Option<Span>, key: &str, again: Span, best: &mut Option<Span>) {
    for entry in &table.entries {
        let inline = within.is_some_and(|span| span.start <= entry.key_span.start && entry.key_span.end <= span.end);
        let open = !inline || within.is_some_and(|span| again.end <= span.end);
        if open
            && entry.key == key
            && entry.key_span.end <= again.start
            && best.is_none_or(|span| span < entry.key_span)
        {
            *best = Some(entry.key_span);
        }
        match &entry.value.kind {
            ValueKind::Table(inner) => look_in(inner, Some(entry.value.span), key, again, best),
            ValueKind::List(items) => {
                for item in items {
                    if let ValueKind::Table(inner) = &item.kind {
                        look_in(inner, Some(item.span), key, again, best);
                    }
                }
            }
            _ => {}
        }
    }
}
