//! `ohms-not-possible`: the impedance of a grounding path is below zero, or beyond what a tester shows.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Ohms;

pub(crate) const KIND: Kind = Kind::error(
    "ohms-not-possible",
    "The impedance of a grounding path is below zero, or beyond what a tester shows.",
    Example::Added("found = { ground_ohms = -1 }\n"),
);

pub(crate) fn mistake(key: &str, below: bool, most: Ohms, span: Span) -> Diagnostic {
    let (label, message) = match below {
        true => ("below zero", format!("`{key}` cannot be below zero")),
        false => ("too high", format!("`{key}` cannot be more than {most}")),
    };
    KIND.at(span, label, message).help("leave it out where there is no path to measure")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_impedance_of_a_grounding_path_is_below_zero_or_beyond_what_a_tester() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[ohms-not-possible]: `ground_ohms` cannot be below zero
  --> survey.toml:20:25
20 | found = { ground_ohms = -1 }
   |                         ^^ below zero
   = help: leave it out where there is no path to measure
"
        );
    }
}
