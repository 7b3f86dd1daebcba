//! `json-syntax`: the text is not JSON.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "json-syntax",
    "The text is not JSON.",
    Example::Json(r#"{ "format": 1,
  "job": { "name": "Larch Street", }
}
"#),
);

pub(crate) fn mistake(told: &str, span: Span) -> Diagnostic {
    KIND.at(span, told.to_lowercase(), "this is not JSON")
        .help("JSON has no comments, no comma after the last item, and all keys and texts in double quotes")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_text_is_not_json() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[json-syntax]: this is not JSON
 --> survey.json:2:34
2 |   "job": { "name": "Larch Street", }
  |                                  ^ trailing commas are not allowed
  = help: JSON has no comments, no comma after the last item, and all keys and texts in double quotes
"#
        );
    }
}
