//! `floor-not-possible`: a floor is deeper or higher than dwellings reach.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "floor-not-possible",
    "A floor is deeper or higher than dwellings reach.",
    Example::Added(r#"
[[room]]
id = "loft"
floor = 200
"#),
);

pub(crate) fn mistake(written: i128, least: i64, most: i64, span: Span) -> Diagnostic {
    KIND.at(span, "no such floor", format!("a room cannot be on floor {written}"))
        .help(format!("floors run from {least} to {most}; 0 is the basement or ground, 1 the first floor"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_floor_is_deeper_or_higher_than_dwellings_reach() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[floor-not-possible]: a room cannot be on floor 200
  --> survey.toml:23:9
23 | floor = 200
   |         ^^^ no such floor
   = help: floors run from -5 to 100; 0 is the basement or ground, 1 the first floor
"
        );
    }
}
