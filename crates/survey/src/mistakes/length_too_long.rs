//! `length-too-long`: a run or route is longer than any in a dwelling.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Length;

pub(crate) const KIND: Kind = Kind::error(
    "length-too-long",
    "A run or route is longer than any in a dwelling.",
    Example::Added("run = { length = \"14000 ft\" }\n"),
);

pub(crate) fn mistake(key: &str, most: Length, span: Span) -> Diagnostic {
    KIND.at(span, "too long", format!("`{key}` cannot be longer than {most}")).help("check the number and its unit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_run_or_route_is_longer_than_any_in_a_dwelling() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[length-too-long]: `length` cannot be longer than 1000 ft
  --> survey.toml:20:18
20 | run = { length = "14000 ft" }
   |                  ^^^^^^^^^^ too long
   = help: check the number and its unit
"#
        );
    }
}
