//! `empty-text`: a text, or an item of a list, is empty.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::shape::Need;

pub(crate) const KIND: Kind = Kind::error(
    "empty-text",
    "A text, or an item of a list, is empty.",
    Example::Added("serves = [\"computer\", \"\"]\n"),
);

pub(crate) fn mistake(key: &str, need: Need, span: Span) -> Diagnostic {
    let help = match need {
        Need::Optional => "write what is so, or leave it out",
        Need::Required | Need::RequiredOtherwise | Need::UnlessClosed => "write what is so; it must not be left out",
    };
    KIND.at(span, "nothing between the quotes", format!("`{key}` holds an empty text")).help(help)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_text_or_an_item_of_a_list_is_empty() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[empty-text]: `serves` holds an empty text
  --> survey.toml:20:23
20 | serves = ["computer", ""]
   |                       ^^ nothing between the quotes
   = help: write what is so, or leave it out
"#
        );
    }
}
