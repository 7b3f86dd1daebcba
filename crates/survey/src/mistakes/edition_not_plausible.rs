//! `edition-not-plausible`: the year of the code's edition is out of all likelihood.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use std::ops::RangeInclusive;

pub(crate) const KIND: Kind = Kind::error(
    "edition-not-plausible",
    "The year of the code's edition is out of all likelihood.",
    Example::Toml(r#"format = 1

[job]
name = "Larch Street"
edition = 20200

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
"#),
);

pub(crate) fn mistake(written: i128, years: &RangeInclusive<i128>, span: Span) -> Diagnostic {
    KIND.at(span, "not the year of an edition", format!("there is no edition of the year {written}"))
        .help(format!("write a year from {} to {}, such as `2020`; the inspector's office knows which", years.start(), years.end()))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_year_of_the_codes_edition_is_out_of_all_likelihood() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[edition-not-plausible]: there is no edition of the year 20200
 --> survey.toml:5:11
5 | edition = 20200
  |           ^^^^^ not the year of an edition
  = help: write a year from 1897 to 2100, such as `2020`; the inspector's office knows which
"
        );
    }
}
