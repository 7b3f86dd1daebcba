//! `gauge-unusual`: a wire is thinner than those that branch circuits are wired with.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Gauge;

pub(crate) const KIND: Kind = Kind::warning(
    "gauge-unusual",
    "A wire is thinner than those that branch circuits are wired with.",
    Example::Added("run = { gauge = 16 }\n"),
);

pub(crate) fn mistake(gauge: Gauge, span: Span) -> Diagnostic {
    KIND.at(span, "thinner than 14 AWG", format!("{gauge} is thin for the wiring of a dwelling"))
        .help("check the size printed on the cable; branch circuits are 14 AWG copper or thicker")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_wire_is_thinner_than_those_that_branch_circuits_are_wired() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
warning[gauge-unusual]: 16 AWG is thin for the wiring of a dwelling
  --> survey.toml:20:17
20 | run = { gauge = 16 }
   |                 ^^ thinner than 14 AWG
   = help: check the size printed on the cable; branch circuits are 14 AWG copper or thicker
"
        );
    }
}
