//! `length-not-positive`: a length is zero or less.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "length-not-positive",
    "A length is zero or less.",
    Example::Added("run = { length = \"-14 ft\" }\n"),
);

pub(crate) fn mistake(key: &str, span: Span) -> Diagnostic {
    KIND.at(span, "zero or less", format!("`{key}` must be longer than nothing"))
        .help("leave it out where nobody has measured it")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_length_is_zero_or_less() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[length-not-positive]: `length` must be longer than nothing
  --> survey.toml:20:18
20 | run = { length = "-14 ft" }
   |                  ^^^^^^^^ zero or less
   = help: leave it out where nobody has measured it
"#
        );
    }
}
