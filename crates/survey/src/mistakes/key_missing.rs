//! `key-missing`: a key that a table must have is left out.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::shape::{Field, Shape};

pub(crate) const KIND: Kind = Kind::error(
    "key-missing",
    "A key that a table must have is left out.",
    Example::Added(r#"
[[source]]
id = "pipe"
"#),
).telling_absence();

pub(crate) fn mistake(shape: &Shape, field: &Field, span: Span) -> Diagnostic {
    let message = format!("`{}` lacks the key `{}`", shape.title, field.key);
    KIND.at(span, format!("`{}` is {}", field.key, field.meaning), message)
        .help(format!("add `{} = {}`, with what is so here", field.key, field.example))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_key_that_a_table_must_have_is_left_out() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[key-missing]: `[[source]]` lacks the key `kind`
  --> survey.toml:21:1
21 | [[source]]
   | ^^^^^^^^^^ `kind` is what it is
   = help: add `kind = "water-pipe"`, with what is so here
"#
        );
    }
}
