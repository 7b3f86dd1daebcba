//! Survey files: text in TOML or JSON to a dwelling, with every mistake of the file pointed at.
//!
//! [`read`] never fails: it gives the dwelling where no mistake is an error, and all mistakes with their places.

mod checks;
mod decimal;
mod diagnostic;
mod document;
mod flags;
mod format;
mod from_json;
mod from_toml;
mod ids;
mod local_code;
mod measure;
mod mistake_answer;
mod mistakes;
mod notes;
mod pages;
mod position;
mod practice;
mod prices;
mod quantity;
mod read;
mod render;
mod row;
mod row_quantities;
mod schema;
mod shape;
mod tables;
mod unit;
mod value;

pub use diagnostic::{Diagnostic, Label, Severity, Span};
pub use flags::{distance_flag, gauge_flag, height_flag, rating_flag, volume_flag};
pub use format::Format;
pub use local_code::{LocalCode, read_local_code};
pub use mistake_answer::{LabelAnswer, MistakeAnswer, MistakesAnswer};
pub use mistakes::{KINDS, Kind, SOUND};
pub use pages::{local_code_page, mistakes_page, practice_page, prices_page, survey_page};
pub use practice::{practice_as_json, practice_file, read_practice};
pub use prices::read_prices;
pub use read::{Read, read, text_of};
pub use render::render;
pub use schema::{local_code_schema, practice_schema, prices_schema, schema};
