//! The words that several papers use.

use dwelling::Dwelling;

/// Names in a row, each but the last followed by a comma.
pub(crate) fn listed<T: AsRef<str>>(names: &[T]) -> String {
    names.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ")
}

/// A circuit, or both circuits of a multiwire set.
pub(crate) fn circuits_in_words(circuits: &[String]) -> String {
    circuits.join(" + ")
}

/// What people call a room.
pub(crate) fn room_title(dwelling: &Dwelling, id: &str) -> String {
    let room = dwelling.rooms.iter().find(|room| room.id == id);
    room.and_then(|room| room.title.clone()).unwrap_or_else(|| id.to_owned())
}

/// How many openings are made in finished surfaces.
pub(crate) fn wall_openings(count: i64) -> String {
    match count {
        0 => "no wall opened".to_owned(),
        1 => "1 wall opening".to_owned(),
        many => format!("{many} wall openings"),
    }
}

/// A caution that begins with a capital and ends with a full stop.
pub(crate) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first: String = letters.next().map(|letter| letter.to_uppercase().collect()).unwrap_or_default();
    let stop = if words.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{first}{}{stop}", letters.as_str())
}
