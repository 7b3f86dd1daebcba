//! `reading-empty`: a set of readings holds nothing.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "reading-empty",
    "A set of readings holds nothing.",
    Example::Added("found = {}\n"),
);

pub(crate) fn mistake(key: &str, span: Span) -> Diagnostic {
    KIND.at(span, "nothing is written in it", "a reading without a value tells nothing").help(format!("write what was read or seen, or leave `{key}` out"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_set_of_readings_holds_nothing() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
warning[reading-empty]: a reading without a value tells nothing
  --> survey.toml:20:9
20 | found = {}
   |         ^^ nothing is written in it
   = help: write what was read or seen, or leave `found` out
"
        );
    }
}
