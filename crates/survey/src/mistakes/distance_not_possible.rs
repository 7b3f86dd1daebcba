//! `distance-not-possible`: a distance is below zero, or farther than any dwelling is wide.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Length;

pub(crate) const KIND: Kind = Kind::error(
    "distance-not-possible",
    "A distance is below zero, or farther than any dwelling is wide.",
    Example::Added("sink = \"-4 ft\"\n"),
);

pub(crate) fn mistake(key: &str, below: bool, most: Length, span: Span) -> Diagnostic {
    let (label, message) = match below {
        true => ("below zero", format!("`{key}` cannot be less than nothing")),
        false => ("too far", format!("`{key}` cannot be more than {most}")),
    };
    KIND.at(span, label, message).help("leave it out where nobody has measured it")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_distance_is_below_zero_or_farther_than_any_dwelling_is_wide() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[distance-not-possible]: `sink` cannot be less than nothing
  --> survey.toml:20:8
20 | sink = "-4 ft"
   |        ^^^^^^^ below zero
   = help: leave it out where nobody has measured it
"#
        );
    }
}
