//! `outline-corner-twice`: the outline of a room comes to the same corner twice.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "outline-corner-twice",
    "The outline of a room comes to the same corner twice.",
    Example::Added(r#"
[[room]]
id = "hall"
outline = [[0, 0], [11, 0], [11, 12], [0, 0]]
"#),
);

pub(crate) fn mistake(closes: bool, again: Span, first: Span) -> Diagnostic {
    let help = match closes {
        true => "leave the last corner out: the outline closes by itself",
        false => "write each corner once, in order around the room",
    };
    KIND.at(again, "again here", "the outline comes to one corner twice").and(first, "first here").help(help)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_outline_of_a_room_comes_to_the_same_corner_twice() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[outline-corner-twice]: the outline comes to one corner twice
  --> survey.toml:23:39
23 | outline = [[0, 0], [11, 0], [11, 12], [0, 0]]
   |                                       ^^^^^^ again here
   |            ------ first here
   = help: leave the last corner out: the outline closes by itself
"
        );
    }
}
