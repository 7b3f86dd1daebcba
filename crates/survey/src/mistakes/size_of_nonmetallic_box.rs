//! `size-of-nonmetallic-box`: a trade size of metal boxes is given for a box that is not metal.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "size-of-nonmetallic-box",
    "A trade size of metal boxes is given for a box that is not metal, whose volume it does not tell.",
    Example::Added("body = { metal = false, size = \"3x2x2-1/2\" }\n"),
);

pub(crate) fn mistake(size: Span, metal: Span) -> Diagnostic {
    KIND.at(size, "the size of a metal box", "only metal boxes have their volume by trade size")
        .and(metal, "not metal")
        .help("write the volume marked inside the box as `volume`, or leave it out where it cannot be read")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_trade_size_of_metal_boxes_is_given_for_a_box_that_is_not_metal() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[size-of-nonmetallic-box]: only metal boxes have their volume by trade size
  --> survey.toml:20:32
20 | body = { metal = false, size = "3x2x2-1/2" }
   |                                ^^^^^^^^^^^ the size of a metal box
   |                  ----- not metal
   = help: write the volume marked inside the box as `volume`, or leave it out where it cannot be read
"#
        );
    }
}
