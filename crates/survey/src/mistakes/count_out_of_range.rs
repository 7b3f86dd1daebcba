//! `count-out-of-range`: a whole number is smaller or larger than its key takes.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "count-out-of-range",
    "A whole number is smaller or larger than its key takes.",
    Example::Added("cables_in_box = -1\n"),
);

pub(crate) fn mistake(key: &str, written: i128, least: i64, most: i64, span: Span) -> Diagnostic {
    KIND.at(span, "out of range", format!("`{key}` cannot be {written}")).help(format!("write a number from {least} to {most}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_whole_number_is_smaller_or_larger_than_its_key_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[count-out-of-range]: `cables_in_box` cannot be -1
  --> survey.toml:20:17
20 | cables_in_box = -1
   |                 ^^ out of range
   = help: write a number from 0 to 40
"
        );
    }
}
