//! `no-boxes`: the survey has no box.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-boxes",
    "The survey has no box.",
    Example::Toml(r#"format = 1

[job]
name = "Larch Street"

[[room]]
id = "kitchen"
"#),
).telling_absence();

pub(crate) fn mistake(span: Span) -> Diagnostic {
    KIND.at(span, "no `[[box]]` in this file", "the survey has no box")
        .help("write `[[box]]` with an `id` and a `room` for every opening")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_survey_has_no_box() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[no-boxes]: the survey has no box
 --> survey.toml:1:1
1 | format = 1
  | ^ no `[[box]]` in this file
  = help: write `[[box]]` with an `id` and a `room` for every opening
"
        );
    }
}
