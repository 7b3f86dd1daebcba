//! `toml-syntax`: the text is not TOML.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "toml-syntax",
    "The text is not TOML.",
    Example::Added("height = 4 ft\n"),
);

pub(crate) fn mistake(told: &str, span: Span) -> Diagnostic {
    // What the parser says begins with a small letter and has no full stop already.
    KIND.at(span, told, "this is not TOML").help("texts and quantities stand in quotes: `length = \"14 ft\"`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_text_is_not_toml() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[toml-syntax]: this is not TOML
  --> survey.toml:20:10
20 | height = 4 ft
   |          ^^^^ string values must be quoted, expected literal string
   = help: texts and quantities stand in quotes: `length = "14 ft"`
"#
        );
    }
}
