//! `box-feeds-itself`: a box is said to be fed by itself.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "box-feeds-itself",
    "A box is said to be fed by itself.",
    Example::Added("fed_by = \"K-1\"\n"),
);

pub(crate) fn mistake(id: &str, span: Span) -> Diagnostic {
    KIND.at(span, "its own id", format!("box `{id}` is fed by itself"))
        .help("write what is upstream of it, or leave `fed_by` out where nobody knows")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_said_to_be_fed_by_itself() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[box-feeds-itself]: box `K-1` is fed by itself
  --> survey.toml:20:10
20 | fed_by = "K-1"
   |          ^^^^^ its own id
   = help: write what is upstream of it, or leave `fed_by` out where nobody knows
"#
        );
    }
}
