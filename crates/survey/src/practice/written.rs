//! Figures of practice as the file that a business edits, and as JSON.

use super::{SHAPE, within};
use crate::shape::{FieldKind, Shape};
use diagnosis::belief::{Figure, Practice};
use serde_json::{Map, Value, json};
use std::fmt::Write as _;

const HEAD: &str = "\
# How common faults are in old wiring before anybody looks, and what it costs to act wrongly and to test.
# Nobody has published such figures: what is shipped is common practice, no source. Put in what you have found yourself;
# what you leave out, figure by figure, stays as shipped.
format = 1
";

/// The practice file with these figures; each says what it is, and whether it is the shipped one.
#[must_use]
pub fn practice_file(practice: &Practice) -> String {
    let mut text = HEAD.to_string();
    let (mut own, mut shipped) = (practice.clone(), Practice::default());
    write_table(&mut text, &SHAPE, "", &own.figures(), &shipped.figures());
    text
}

fn write_table(text: &mut String, shape: &'static Shape, table: &str, own: &[Figure<'_>], shipped: &[Figure<'_>]) {
    for field in shape.fields {
        if let FieldKind::Table(inner) = field.kind {
            let name = within(table, field.key);
            let _ = write!(text, "\n# {}\n", inner.meaning);
            if !inner.fields.iter().all(|field| matches!(field.kind, FieldKind::Table(_))) {
                let _ = writeln!(text, "[{name}]");
            }
            write_table(text, inner, &name, own, shipped);
        } else if let (Some(own), Some(shipped)) = (value(own, table, field.key), value(shipped, table, field.key)) {
            let line = format!("{:<30} = {own:>7}", field.key);
            let known = match own == shipped {
                true => "common practice, no source".to_string(),
                false => format!("your own; shipped is {shipped}, common practice, no source"),
            };
            let _ = writeln!(text, "{line}   # {} ({known})", field.meaning);
        }
    }
}

fn value(figures: &[Figure<'_>], table: &str, key: &str) -> Option<f64> {
    figures.iter().find(|figure| figure.table == table && figure.key == key).map(|figure| *figure.value)
}

/// The figures in the shape of the file, with whether all of them are the shipped ones.
#[must_use]
pub fn practice_as_json(practice: &Practice) -> Value {
    let mut own = practice.clone();
    let mut all = Map::new();
    all.insert("shipped".to_string(), json!(practice.is_shipped()));
    as_json(&mut all, &SHAPE, "", &own.figures());
    Value::Object(all)
}

fn as_json(into: &mut Map<String, Value>, shape: &'static Shape, table: &str, figures: &[Figure<'_>]) {
    for field in shape.fields {
        if let FieldKind::Table(inner) = field.kind {
            let mut of_table = Map::new();
            as_json(&mut of_table, inner, &within(table, field.key), figures);
            into.insert(field.key.to_string(), Value::Object(of_table));
        } else if let Some(value) = value(figures, table, field.key) {
            into.insert(field.key.to_string(), json!(value));
        }
    }
}
