//! `day-not-real`: what should be a day is none, or not written as one.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "day-not-real",
    "What should be a day is none, or not written as one.",
    Example::Toml(r#"format = 1

[job]
name = "Larch Street"
permit_date = "2025-02-30"

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
"#),
);

pub(crate) fn mistake(key: &str, written: &str, span: Span) -> Diagnostic {
    KIND.at(span, "no day of the calendar", format!("`{key}` cannot be `{written}`"))
        .help("write year, month and day, such as `2025-07-01`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_what_should_be_a_day_is_none() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[day-not-real]: `permit_date` cannot be `2025-02-30`
 --> survey.toml:5:15
5 | permit_date = "2025-02-30"
  |               ^^^^^^^^^^^^ no day of the calendar
  = help: write year, month and day, such as `2025-07-01`
"#
        );
    }
}
