//! `id-reserved`: an id is a word that means something else in surveys.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "id-reserved",
    "An id is a word that means something else in surveys.",
    Example::Added(r#"
[[room]]
id = "unknown"
"#),
);

pub(crate) fn mistake(id: &str, span: Span) -> Diagnostic {
    KIND.at(span, "a word with a meaning of its own", format!("`{id}` cannot be an id"))
        .help("`panel` is the panel of a box's own circuit, and `unknown` is what nobody knows yet")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_id_is_a_word_that_means_something_else_in_surveys() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[id-reserved]: `unknown` cannot be an id
  --> survey.toml:22:6
22 | id = "unknown"
   |      ^^^^^^^^^ a word with a meaning of its own
   = help: `panel` is the panel of a box's own circuit, and `unknown` is what nobody knows yet
"#
        );
    }
}
