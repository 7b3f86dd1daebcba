//! `outline-crosses-itself`: two sides of a room's outline cross or touch.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "outline-crosses-itself",
    "Two sides of a room's outline cross or touch.",
    Example::Added(r#"
[[room]]
id = "hall"
outline = [[0, 0], [11, 12], [11, 0], [0, 12]]
"#),
);

pub(crate) fn mistake(second: Span, first: Span) -> Diagnostic {
    KIND.at(second, "the side from this corner to the next", "the outline crosses itself")
        .and(first, "crosses the side from this corner to the next")
        .help("write the corners in order around the room")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_two_sides_of_a_rooms_outline_cross_or_touch() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[outline-crosses-itself]: the outline crosses itself
  --> survey.toml:23:30
23 | outline = [[0, 0], [11, 12], [11, 0], [0, 12]]
   |                              ^^^^^^^ the side from this corner to the next
   |            ------ crosses the side from this corner to the next
   = help: write the corners in order around the room
"
        );
    }
}
