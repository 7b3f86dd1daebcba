//! `time-not-possible`: a time of work is below zero, or longer than any route takes.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "time-not-possible",
    "A time of work is below zero, or longer than any route takes.",
    Example::Added(r#"
[[route]]
from = "main"
to = "K-1"
kind = "egc"
length = "40 ft"
minutes = "-5 min"
"#),
);

pub(crate) fn mistake(key: &str, below: bool, most: i128, span: Span) -> Diagnostic {
    let (label, message) = match below {
        true => ("below zero", format!("`{key}` cannot be below zero")),
        false => ("too long", format!("`{key}` cannot be more than {most}")),
    };
    KIND.at(span, label, message).help("leave it out to let the price book say it by length")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_time_of_work_is_below_zero_or_longer_than_any_route_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[time-not-possible]: `minutes` cannot be below zero
  --> survey.toml:26:11
26 | minutes = "-5 min"
   |           ^^^^^^^^ below zero
   = help: leave it out to let the price book say it by length
"#
        );
    }
}
