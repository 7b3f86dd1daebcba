//! JSON text to the tree of values.

use crate::diagnostic::Span;
use crate::mistakes::{json_syntax, nested_too_deep, wrong_type};
use crate::notes::Notes;
use crate::value::{Entry, Table, Value, ValueKind};
use jsonc_parser::common::Range;
use jsonc_parser::{ParseOptions, ast, parse_to_ast};

/// How many lists and tables may lie inside one another; a survey needs five.
const DEEPEST: usize = 60;

/// Plain JSON, nothing beyond it.
const STRICT: ParseOptions = ParseOptions {
    allow_comments: false,
    allow_loose_object_property_names: false,
    allow_trailing_commas: false,
    allow_missing_commas: false,
    allow_single_quoted_strings: false,
    allow_hexadecimal_numbers: false,
    allow_unary_plus_numbers: false,
    allow_bare_decimal_point_numbers: false,
    allow_non_finite_numbers: false,
    allow_extended_string_escapes: false,
};

/// Reads a JSON text that begins `offset` bytes into the file; nothing can be read of a broken one.
pub(crate) fn from_json(text: &str, offset: usize, notes: &mut Notes) -> Table {
    if let Some(byte) = too_deep_at(text) {
        notes.push(nested_too_deep::mistake(Span::new(byte + offset, byte + offset + 1)));
        return Table::default();
    }
    match parse_to_ast(text, &Default::default(), &STRICT) {
        Ok(parsed) => match parsed.value.map(|root| value(&root, offset)) {
            Some(Value { kind: ValueKind::Table(table), .. }) => table,
            Some(other) => {
                notes.push(wrong_type::mistake("the file", "one table: `{ … }`", &other));
                Table::default()
            }
            None => Table::default(),
        },
        Err(error) => {
            notes.push(json_syntax::mistake(&error.kind().to_string(), shifted(error.range(), offset)));
            Table::default()
        }
    }
}

fn value(node: &ast::Value<'_>, offset: usize) -> Value {
    let (range, kind) = match node {
        ast::Value::StringLit(text) => (text.range, ValueKind::Text(text.value.to_string())),
        ast::Value::NumberLit(number) => (number.range, ValueKind::Number(number.value.to_string())),
        ast::Value::BooleanLit(flag) => (flag.range, ValueKind::Flag(flag.value)),
        ast::Value::NullKeyword(null) => (null.range, ValueKind::Null),
        ast::Value::Array(list) => {
            (list.range, ValueKind::List(list.elements.iter().map(|item| value(item, offset)).collect()))
        }
        ast::Value::Object(object) => {
            let entries = object.properties.iter().map(|property| entry(property, offset)).collect();
            // The opening brace stands for the whole table, as `[[box]]` does in TOML.
            let brace = Range { start: object.range.start, end: object.range.start + 1 };
            (brace, ValueKind::Table(Table { entries }))
        }
    };
    Value { span: shifted(range, offset), kind }
}

fn entry(property: &ast::ObjectProp<'_>, offset: usize) -> Entry {
    let range = match &property.name {
        ast::ObjectPropName::String(text) => text.range,
        ast::ObjectPropName::Word(word) => word.range,
    };
    Entry {
        key: property.name.as_str().to_string(),
        key_span: shifted(range, offset),
        value: value(&property.value, offset),
    }
}

fn shifted(range: Range, offset: usize) -> Span {
    Span::new(range.start + offset, range.end + offset)
}

/// The byte at which lists and tables lie too deep inside one another.
fn too_deep_at(text: &str) -> Option<usize> {
    let (mut depth, mut in_text, mut escaped) = (0usize, false, false);
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_text => escaped = true,
            b'"' => in_text = !in_text,
            b'{' | b'[' if !in_text => {
                depth += 1;
                if depth > DEEPEST {
                    return Some(at);
                }
            }
            b'}' | b']' if !in_text => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    None
}
