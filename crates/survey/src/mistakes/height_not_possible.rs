//! `height-not-possible`: a height is below the floor, or above any ceiling.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Length;

pub(crate) const KIND: Kind = Kind::error(
    "height-not-possible",
    "A height is below the floor, or above any ceiling.",
    Example::Added("height = \"1600 in\"\n"),
);

pub(crate) fn mistake(below: bool, most: Length, span: Span) -> Diagnostic {
    let (label, message) = match below {
        true => ("below zero", "a height cannot be below the floor".to_string()),
        false => ("too high", format!("a height cannot be more than {most}")),
    };
    KIND.at(span, label, message).help("write the height above the floor, for a box that of its centre")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_height_is_below_the_floor_or_above_any_ceiling() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[height-not-possible]: a height cannot be more than 40 ft
  --> survey.toml:20:10
20 | height = "1600 in"
   |          ^^^^^^^^^ too high
   = help: write the height above the floor, for a box that of its centre
"#
        );
    }
}
