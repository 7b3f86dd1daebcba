//! The JSON Schema of survey files, made from the shapes.

use crate::local_code;
use crate::practice::{self, LARGEST_SHARE, SMALLEST_SHARE};
use crate::prices;
use crate::quantity::Quantity;
use crate::row::UNKNOWN;
use crate::shape::{Field, FieldKind, Need, Shape};
use crate::tables::survey;
use serde_json::{Map, Value, json};

/// A number as people write it, with a fraction or a part behind the point.
const NUMBER: &str = r"-?(\d+(\.\d*)?|\.\d+)([ -]?\d+/\d+)?(/\d+)?";

/// An id, in words that every reader of patterns knows: of letters beyond A to Z it lets more pass than [`crate::read`] does.
const ID: &str = r"^[A-Za-z0-9_./#+\u00aa-\uffff-]{1,64}$";

/// The JSON Schema of survey files, draft 2020-12, for editors that complete and check while one writes.
///
/// It describes the shape; what only the whole survey shows is left to [`crate::read`].
#[must_use]
pub fn schema() -> Value {
    schema_of(&survey::SHAPE, "survey of a dwelling")
}

/// The JSON Schema of files of local changes to the code, draft 2020-12.
#[must_use]
pub fn local_code_schema() -> Value {
    schema_of(&local_code::SHAPE, "local changes to the code")
}

/// The JSON Schema of price books, draft 2020-12.
#[must_use]
pub fn prices_schema() -> Value {
    schema_of(&prices::SHAPE, "price book")
}

/// The JSON Schema of practice files, draft 2020-12.
#[must_use]
pub fn practice_schema() -> Value {
    schema_of(&practice::SHAPE, "practice file")
}

fn schema_of(shape: &'static Shape, title: &str) -> Value {
    let mut definitions = Map::new();
    let mut root = table(shape, &mut definitions);
    let head = json!({ "$schema": "https://json-schema.org/draft/2020-12/schema", "title": title });
    if let (Value::Object(root), Value::Object(head)) = (&mut root, head) {
        for (key, value) in head {
            root.insert(key, value);
        }
        root.insert("$defs".to_string(), Value::Object(definitions));
    }
    root
}

fn table(shape: &'static Shape, definitions: &mut Map<String, Value>) -> Value {
    let mut properties = Map::new();
    let (mut required, mut unless_closed) = (Vec::new(), Vec::new());
    for field in shape.fields {
        properties.insert(field.key.to_string(), property(field, definitions));
        match field.need {
            Need::Required | Need::RequiredOtherwise => required.push(json!(field.key)),
            Need::UnlessClosed => unless_closed.push(json!(field.key)),
            Need::Optional => {}
        }
    }
    let mut described = json!({
        "type": "object",
        "description": shape.meaning,
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    });
    if let (false, Value::Object(described)) = (unless_closed.is_empty(), &mut described) {
        let closed = json!({ "required": ["closed"], "properties": { "closed": { "const": true } } });
        described.insert("anyOf".to_string(), json!([{ "required": unless_closed }, closed]));
    }
    described
}

fn property(field: &Field, definitions: &mut Map<String, Value>) -> Value {
    let of_kind = kind(&field.kind, definitions);
    let takes_unknown = matches!(&of_kind["enum"], Value::Array(names) if names.iter().any(|name| name == UNKNOWN));
    let mut property = match field.need {
        Need::Optional if !takes_unknown => json!({ "anyOf": [of_kind, { "const": UNKNOWN }] }),
        _ => of_kind,
    };
    if let Value::Object(property) = &mut property {
        property.insert("description".to_string(), json!(field.meaning));
    }
    property
}

fn kind(kind: &FieldKind, definitions: &mut Map<String, Value>) -> Value {
    match kind {
        FieldKind::Format => json!({ "const": survey::FORMAT as i64 }),
        FieldKind::Id => json!({ "type": "string", "pattern": ID }),
        FieldKind::Reference(_) | FieldKind::Text | FieldKind::TradeSize => json!({ "type": "string", "minLength": 1 }),
        FieldKind::References(_) | FieldKind::Texts => {
            json!({ "type": "array", "items": { "type": "string", "minLength": 1 } })
        }
        FieldKind::Flag => json!({ "type": "boolean" }),
        FieldKind::Day => json!({ "type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$" }),
        FieldKind::Year => json!({ "type": "integer" }),
        FieldKind::Count(least, most) => json!({ "type": "integer", "minimum": least, "maximum": most }),
        FieldKind::Name(list) => json!({ "type": "string", "enum": list.names }),
        FieldKind::Names(list) => {
            json!({ "type": "array", "items": { "type": "string", "enum": list.names }, "uniqueItems": true })
        }
        FieldKind::Quantity(quantity) => of_quantity(*quantity),
        FieldKind::Gauge => json!({
            "anyOf": [
                { "enum": [18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1] },
                { "type": "string", "pattern": r"^#?(18|16|14|12|10|8|6|4|3|2|1|[1-4]/0)( ?[Aa][Ww][Gg])?$" },
            ]
        }),
        FieldKind::Money => json!({ "type": "number", "minimum": 0 }),
        FieldKind::Percent(most) => json!({ "type": "number", "minimum": 0, "maximum": most }),
        FieldKind::Counts(least, most) => {
            json!({ "type": "array", "items": { "type": "integer", "minimum": least, "maximum": most } })
        }
        FieldKind::Share | FieldKind::Chance => {
            json!({ "type": "number", "minimum": SMALLEST_SHARE, "maximum": LARGEST_SHARE })
        }
        FieldKind::Minutes(least, most) => json!({ "type": "number", "minimum": least, "maximum": most }),
        FieldKind::Point => point(),
        FieldKind::Outline => json!({ "type": "array", "items": point(), "minItems": 3 }),
        FieldKind::Table(shape) => reference(shape, definitions),
        FieldKind::Tables(shape) => json!({ "type": "array", "items": reference(shape, definitions) }),
        FieldKind::OneOrMore(shape) => {
            let one = reference(shape, definitions);
            json!({ "anyOf": [one, { "type": "array", "items": one }] })
        }
        FieldKind::DistanceOrTable(shape) => {
            json!({ "anyOf": [of_quantity(Quantity::Distance), reference(shape, definitions)] })
        }
    }
}

fn point() -> Value {
    json!({ "type": "array", "items": { "type": "number" }, "minItems": 2, "maxItems": 2 })
}

fn of_quantity(quantity: Quantity) -> Value {
    let text = json!({ "type": "string", "pattern": format!("^ *({NUMBER} *[^ \\d]+[23³²]?( +[a-z]+[23³²]?)? *)+$") });
    if quantity.takes_bare_numbers() { json!({ "anyOf": [{ "type": "number", "minimum": 0 }, text] }) } else { text }
}

fn reference(shape: &'static Shape, definitions: &mut Map<String, Value>) -> Value {
    if !definitions.contains_key(shape.name) {
        // Marks the name first, so that a shape within itself would not be described for ever.
        definitions.insert(shape.name.to_string(), Value::Null);
        let described = table(shape, definitions);
        definitions.insert(shape.name.to_string(), described);
    }
    json!({ "$ref": format!("#/$defs/{}", shape.name) })
}
