//! `volume-and-size-contradict`: the volume marked on a box cannot be that of its trade size.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Volume;

pub(crate) const KIND: Kind = Kind::error(
    "volume-and-size-contradict",
    "The volume marked on a box cannot be that of its trade size.",
    Example::Added("body = { size = \"3x2x2-1/2\", volume = \"8 in3\" }\n"),
);

pub(crate) fn mistake(marked: Volume, of_size: Volume, size: &str, (marked_at, size_at): (Span, Span)) -> Diagnostic {
    KIND.at(marked_at, format!("{marked} here"), "the volume and the trade size of this box contradict each other")
        .and(size_at, format!("`{size}` has {of_size}"))
        .help("a box may be marked with somewhat more than its trade size has, never with less; keep the one that is sure")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_volume_marked_on_a_box_cannot_be_that_of_its_trade_size() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[volume-and-size-contradict]: the volume and the trade size of this box contradict each other
  --> survey.toml:20:39
20 | body = { size = "3x2x2-1/2", volume = "8 in3" }
   |                                       ^^^^^^^ 8 in³ here
   |                 ----------- `3x2x2-1/2` has 12.5 in³
   = help: a box may be marked with somewhat more than its trade size has, never with less; keep the one that is sure
"#
        );
    }
}
