//! `no-rooms`: the survey has no room.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-rooms",
    "The survey has no room.",
    Example::Toml(r#"format = 1

[job]
name = "Larch Street"

[[box]]
id = "K-1"
room = "kitchen"
"#),
).telling_absence();

pub(crate) fn mistake(span: Span) -> Diagnostic {
    KIND.at(span, "no `[[room]]` in this file", "the survey has no room")
        .help("write `[[room]]` with an `id` and a `use` for every room that holds a box")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_survey_has_no_room() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[no-rooms]: the survey has no room
 --> survey.toml:1:1
1 | format = 1
  | ^ no `[[room]]` in this file
  = help: write `[[room]]` with an `id` and a `use` for every room that holds a box
"
        );
    }
}
