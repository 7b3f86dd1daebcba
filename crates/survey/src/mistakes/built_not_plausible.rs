//! `built-not-plausible`: the year a dwelling was built is out of all likelihood.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use std::ops::RangeInclusive;

pub(crate) const KIND: Kind = Kind::error(
    "built-not-plausible",
    "The year a dwelling was built is out of all likelihood.",
    Example::Toml(r#"format = 1

[job]
name = "Larch Street"
built = 195

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
"#),
);

pub(crate) fn mistake(written: i128, years: &RangeInclusive<i128>, span: Span) -> Diagnostic {
    KIND.at(span, "not a likely year", format!("no dwelling of the year {written} is surveyed"))
        .help(format!("write a year from {} to {}, or leave it out", years.start(), years.end()))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_year_a_dwelling_was_built_is_out_of_all_likelihood() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[built-not-plausible]: no dwelling of the year 195 is surveyed
 --> survey.toml:5:9
5 | built = 195
  |         ^^^ not a likely year
  = help: write a year from 1800 to 2100, or leave it out
"
        );
    }
}
