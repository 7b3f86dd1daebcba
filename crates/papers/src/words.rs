//! The words that several papers use.

use dwelling::Dwelling;
use remedies::RouteAnswer;
use remedies::in_words::capital;

/// Names in a row, each but the last followed by a comma.
pub(crate) fn listed<T: AsRef<str>>(names: &[T]) -> String {
    names.iter().map(AsRef::as_ref).collect::<Vec<&str>>().join(", ")
}

/// A circuit, or both circuits of a multiwire set.
pub(crate) fn circuits_in_words(circuits: &[String]) -> String {
    circuits.join(" + ")
}

/// A circuit, or both circuits of a multiwire set, with the word before.
pub(crate) fn circuits_named(circuits: &[String]) -> String {
    let word = if circuits.len() > 1 { "circuits" } else { "circuit" };
    format!("{word} {}", circuits_in_words(circuits))
}

/// Parts of a sentence, the last after an `and`.
pub(crate) fn and_last<T: AsRef<str>>(names: &[T]) -> String {
    in_a_row(&names.iter().map(|name| name.as_ref().to_owned()).collect::<Vec<String>>())
}

/// What people call a room.
pub(crate) fn room_title(dwelling: &Dwelling, id: &str) -> String {
    let room = dwelling.rooms.iter().find(|room| room.id == id);
    room.and_then(|room| room.title.clone()).unwrap_or_else(|| id.to_owned())
}

/// Parts of a sentence, the last after an `and`.
pub(crate) fn in_a_row(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// Lines such as `K-1: ask`, those that ask for the same told once for all their boxes.
pub(crate) fn once_for_all(lines: &[String]) -> Vec<String> {
    let mut told: Vec<(Vec<&str>, &str)> = Vec::new();
    for line in lines {
        let (at, what) = line.split_once(": ").unwrap_or(("", line));
        match told.iter_mut().find(|(boxes, known)| *known == what && !at.is_empty() && !boxes.is_empty()) {
            Some((boxes, _)) => boxes.push(at),
            None => told.push((if at.is_empty() { Vec::new() } else { vec![at] }, what)),
        }
    }
    let line = |(boxes, what): &(Vec<&str>, &str)| {
        let what = unquoted(what);
        if boxes.is_empty() { what } else { format!("{}: {what}", listed(boxes)) }
    };
    told.iter().map(line).collect()
}

/// Words without the marks that surround a name on a terminal.
pub(crate) fn unquoted(words: &str) -> String {
    words.replace('`', "")
}

/// The sizes of a way from its beginning, such as `12 AWG, then 14 AWG`.
pub(crate) fn sizes_of(route: &RouteAnswer) -> String {
    let mut sizes: Vec<&str> = route.legs.iter().map(|leg| leg.size.as_str()).collect();
    sizes.push(&route.size);
    sizes.dedup();
    sizes.join(", then ")
}

/// A thing with its article: `an AFCI breaker`.
pub(crate) fn one(thing: &str) -> String {
    let article = if thing.starts_with(['A', 'a', 'E', 'e', 'I', 'i', 'O', 'o']) { "an" } else { "a" };
    format!("{article} {thing}")
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
    let stop = if words.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{}{stop}", capital(words))
}
