//! Names on the command line: parsed by the same lists as survey files, with the nearest name offered.

use crate::command_error::CommandError;
use dwelling::{BoxIndex, Dwelling, nearest};

/// Looks a name up in a closed list.
///
/// # Errors
/// A sentence with the nearest name, or the whole list where none is near.
pub fn named<T: Copy>(all: &[T], names: &'static [&'static str], written: &str) -> Result<T, String> {
    if let Some(position) = names.iter().position(|name| *name == written) {
        return Ok(all[position]);
    }
    Err(match nearest(written, names.iter().copied()) {
        Some(name) => format!("no such name; did you mean `{name}`?"),
        None => format!("no such name; the names are {}", names.join(", ")),
    })
}

/// The box of this id.
///
/// # Errors
/// A sentence with the nearest id, where one is near.
pub fn box_named(dwelling: &Dwelling, id: &str) -> Result<BoxIndex, CommandError> {
    dwelling.box_named(id).ok_or_else(|| {
        let ids = dwelling.boxes.iter().map(|device_box| device_box.id.as_str());
        let near = nearest(id, ids).map_or(String::new(), |near| format!("; did you mean `{near}`?"));
        CommandError::Usage(format!("the survey has no box `{id}`{near}"))
    })
}

/// A value parser for a list of names.
#[macro_export]
macro_rules! name_parser {
    ($kind:ty) => {
        |written: &str| $crate::named::named(<$kind>::ALL, <$kind>::NAMES, written)
    };
}
