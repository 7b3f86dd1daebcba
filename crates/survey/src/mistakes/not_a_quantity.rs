//! `not-a-quantity`: a quantity does not begin with a number, or is none at all.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "not-a-quantity",
    "A quantity does not begin with a number, or is none at all.",
    Example::Added("height = \"knee-high\"\n"),
);

pub(crate) fn mistake(key: &str, written: &str, expected: &str, span: Span) -> Diagnostic {
    KIND.at(span, "no number with a unit", format!("`{key}` cannot be `{written}`")).help(format!("write {expected}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_quantity_does_not_begin_with_a_number_or_is_none_at_all() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[not-a-quantity]: `height` cannot be `knee-high`
  --> survey.toml:20:10
20 | height = "knee-high"
   |          ^^^^^^^^^^^ no number with a unit
   = help: write a height with its unit, such as `"16 in"` or `"400 mm"`
"#
        );
    }
}
