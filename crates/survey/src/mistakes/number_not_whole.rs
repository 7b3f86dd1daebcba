//! `number-not-whole`: a number that counts something has a part behind the point.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "number-not-whole",
    "A number that counts something has a part behind the point.",
    Example::Added("cables_in_box = 2.5\n"),
);

pub(crate) fn mistake(key: &str, written: &str, span: Span) -> Diagnostic {
    KIND.at(span, "has a part behind the point", format!("`{key}` must be a whole number, not {written}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_number_that_counts_something_has_a_part_behind_the_point() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[number-not-whole]: `cables_in_box` must be a whole number, not 2.5
  --> survey.toml:20:17
20 | cables_in_box = 2.5
   |                 ^^^ has a part behind the point
"
        );
    }
}
