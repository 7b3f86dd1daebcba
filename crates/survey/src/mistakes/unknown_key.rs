//! `unknown-key`: a table has a key that it cannot have.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::shape::Shape;

pub(crate) const KIND: Kind = Kind::error(
    "unknown-key",
    "A table has a key that it cannot have.",
    Example::Added("heigth = \"16 in\"\n"),
);

pub(crate) fn mistake(key: &str, shape: &Shape, nearest: Option<&str>, span: Span) -> Diagnostic {
    let keys: Vec<&str> = shape.keys().collect();
    KIND.at(span, "not a key of this table", format!("`{}` has no key `{key}`", shape.title)).help_with_names(nearest, &keys)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_table_has_a_key_that_it_cannot_have() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[unknown-key]: `[[box]]` has no key `heigth`
  --> survey.toml:20:1
20 | heigth = "16 in"
   | ^^^^^^ not a key of this table
   = help: did you mean `height`?
"#
        );
    }
}
