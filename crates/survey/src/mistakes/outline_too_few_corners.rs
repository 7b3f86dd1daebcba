//! `outline-too-few-corners`: the outline of a room has fewer than three corners.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "outline-too-few-corners",
    "The outline of a room has fewer than three corners.",
    Example::Added(r#"
[[room]]
id = "hall"
outline = [[0, 0], [11, 0]]
"#),
);

pub(crate) fn mistake(corners: usize, span: Span) -> Diagnostic {
    let told = match corners {
        0 => "no corner".to_string(),
        1 => "one corner".to_string(),
        _ => format!("{corners} corners"),
    };
    KIND.at(span, told, "an outline needs three corners or more").help("leave `outline` out where the room is not drawn")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_outline_of_a_room_has_fewer_than_three_corners() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[outline-too-few-corners]: an outline needs three corners or more
  --> survey.toml:23:11
23 | outline = [[0, 0], [11, 0]]
   |           ^^^^^^^^^^^^^^^^^ 2 corners
   = help: leave `outline` out where the room is not drawn
"
        );
    }
}
