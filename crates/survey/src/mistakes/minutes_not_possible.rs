//! `minutes-not-possible`: minutes are fewer or more than their key takes.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "minutes-not-possible",
    "Minutes are fewer or more than their key takes.",
    Example::Practice(r#"format = 1

[minutes]
open-the-box = 0
"#),
);

pub(crate) fn mistake(key: &str, written: &str, least: f64, most: f64, span: Span) -> Diagnostic {
    KIND.at(span, "out of range", format!("`{key}` cannot be {written}"))
        .help(format!("write minutes from {least} to {most}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_minutes_are_fewer_or_more_than_their_key_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[minutes-not-possible]: `open-the-box` cannot be 0
 --> practice.toml:4:16
4 | open-the-box = 0
  |                ^ out of range
  = help: write minutes from 0.1 to 1000
"
        );
    }
}
