//! `nested-too-deep`: lists or tables lie inside one another deeper than any survey needs.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "nested-too-deep",
    "Lists or tables lie inside one another deeper than any survey needs.",
    Example::MadeJson(|| format!("{{ \"format\": 1, \"job\": {} }}", "[".repeat(70)).into_bytes()),
);

pub(crate) fn mistake(span: Span) -> Diagnostic {
    KIND.at(span, "one level too deep", "lists and tables lie too deep inside one another")
        .help("a survey needs five levels at most")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_lists_or_tables_lie_inside_one_another_deeper_than_any_survey_needs() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[nested-too-deep]: lists and tables lie too deep inside one another
 --> survey.json:1:82
1 | { "format": 1, "job": [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[ }
  |                                                                                  ^ one level too deep
  = help: a survey needs five levels at most
"#
        );
    }
}
