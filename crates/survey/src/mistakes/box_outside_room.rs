//! `box-outside-room`: a box is drawn outside its room's outline.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "box-outside-room",
    "A box is drawn outside its room's outline.",
    Example::Added(r#"
[[room]]
id = "hall"
outline = [[0, 0], [11, 0], [11, 12], [0, 12]]

[[box]]
id = "H-1"
room = "hall"
at = [20.0, 4.5]
"#),
);

pub(crate) fn mistake(room: &str, at: Span, outline: Span) -> Diagnostic {
    KIND.at(at, "outside of it", format!("the box is drawn outside room `{room}`"))
        .and(outline, "the outline of the room")
        .help("check the room and the coordinates; they count from one origin for the whole floor")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_drawn_outside_its_rooms_outline() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
warning[box-outside-room]: the box is drawn outside room `hall`
  --> survey.toml:28:6
23 | outline = [[0, 0], [11, 0], [11, 12], [0, 12]]
   |           ------------------------------------ the outline of the room
   ...
28 | at = [20.0, 4.5]
   |      ^^^^^^^^^^^ outside of it
   = help: check the room and the coordinates; they count from one origin for the whole floor
"
        );
    }
}
