//! `coordinate-not-possible`: a place on the plan is farther from its origin than any dwelling is wide.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Length;

pub(crate) const KIND: Kind = Kind::error(
    "coordinate-not-possible",
    "A place on the plan is farther from its origin than any dwelling is wide.",
    Example::Added("at = [11.0, 45000]\n"),
);

pub(crate) fn mistake(most: Length, span: Span) -> Diagnostic {
    KIND.at(span, "too far from the plan's origin", format!("a coordinate cannot be more than {most}"))
        .help("coordinates are feet unless `[job]` says `units = \"metres\"`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_place_on_the_plan_is_farther_from_its_origin_than_any_dwelling() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[coordinate-not-possible]: a coordinate cannot be more than 2000 ft
  --> survey.toml:20:13
20 | at = [11.0, 45000]
   |             ^^^^^ too far from the plan's origin
   = help: coordinates are feet unless `[job]` says `units = "metres"`
"#
        );
    }
}
