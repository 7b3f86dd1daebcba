//! `control-character`: a text holds a character that cannot be printed.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "control-character",
    "A text holds a character that cannot be printed.",
    Example::Added("serves = [\"comp\\u0007uter\"]\n"),
);

pub(crate) fn mistake(key: &str, character: char, span: Span) -> Diagnostic {
    let message = format!("`{key}` holds a character that cannot be printed");
    KIND.at(span, format!("U+{:04X} is in this text", u32::from(character)), message)
        .help("take it out; only a `note` may run over several lines")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_text_holds_a_character_that_cannot_be_printed() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[control-character]: `serves` holds a character that cannot be printed
  --> survey.toml:20:11
20 | serves = ["comp\u0007uter"]
   |           ^^^^^^^^^^^^^^^^ U+0007 is in this text
   = help: take it out; only a `note` may run over several lines
"#
        );
    }
}
