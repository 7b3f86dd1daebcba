//! `wrong-unit`: a unit measures something else than its key holds.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::unit::Dimension;

pub(crate) const KIND: Kind = Kind::error(
    "wrong-unit",
    "A unit measures something else than its key holds.",
    Example::Added("run = { length = \"14 A\" }\n"),
);

pub(crate) fn mistake(key: &str, written: Dimension, wanted: Dimension, expected: &str, span: Span) -> Diagnostic {
    let message = format!("`{key}` must be {}, not {}", wanted.in_words(), written.in_words());
    KIND.at(span, format!("this is {}", written.in_words()), message).help(format!("write {expected}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_unit_measures_something_else_than_its_key_holds() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[wrong-unit]: `length` must be a length, not a current
  --> survey.toml:20:18
20 | run = { length = "14 A" }
   |                  ^^^^^^ this is a current
   = help: write a length with its unit, such as `"14 ft"` or `"4.2 m"`
"#
        );
    }
}
