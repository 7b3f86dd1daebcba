//! Prints how every value of the rulebook is known: what was read, what rests on memory, what is disputed, what is missing.

use rulebook::{Edition, Known, Value, all_values};
use std::fmt::Write as _;

/// The page: the counts by edition, then what nobody has read, value by value.
pub fn page() -> String {
    let values = all_values();
    let mut page = String::from("edition   read  from memory  disputed  not entered\n");
    for edition in Edition::ALL {
        let known: Vec<Option<Known>> = values.iter().map(|value| known_in(*value, edition)).collect();
        let count = |wanted: fn(&Option<Known>) -> bool| known.iter().filter(|known| wanted(known)).count();
        let _ = writeln!(
            page,
            "{:<8} {:>5}  {:>11}  {:>8}  {:>11}",
            edition.year(),
            count(|known| matches!(known, Some(Known::Read(_)))),
            count(|known| matches!(known, Some(Known::FromMemory))),
            count(|known| matches!(known, Some(Known::Disputed(_)))),
            count(Option::is_none),
        );
    }
    for value in values {
        let unread: Vec<String> = Edition::ALL
            .into_iter()
            .filter_map(|edition| match known_in(value, edition) {
                Some(Known::Read(_)) => None,
                Some(Known::FromMemory) => Some(format!("{} from memory", edition.year())),
                Some(Known::Disputed(_)) => Some(format!("{} disputed", edition.year())),
                None => Some(format!("{} not entered", edition.year())),
            })
            .collect();
        if !unread.is_empty() {
            let _ = writeln!(page, "{}: {}", value.id(), unread.join(", "));
        }
    }
    page
}

fn known_in(value: &dyn Value, edition: Edition) -> Option<Known> {
    value.citations().into_iter().find(|cite| cite.edition == edition).map(|cite| cite.known)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_edition_has_its_line_and_every_value_is_counted_once_in_it() {
        let page = page();
        for edition in Edition::ALL {
            let line = page.lines().find(|line| line.starts_with(&edition.year().to_string())).unwrap();
            let sum: usize = line.split_whitespace().skip(1).map(|count| count.parse::<usize>().unwrap()).sum();
            assert_eq!(sum, all_values().len(), "{line}");
        }
    }
}
