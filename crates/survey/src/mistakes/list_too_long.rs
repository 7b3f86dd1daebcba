//! `list-too-long`: a list has more items than any dwelling needs.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind, SOUND};

pub(crate) const KIND: Kind = Kind::error(
    "list-too-long",
    "A list has more items than any dwelling needs.",
    Example::MadeToml(|| format!("{SOUND}serves = [{}]\n", "\"computer\", ".repeat(501)).into_bytes()),
);

pub(crate) fn mistake(key: &str, length: usize, most: usize, span: Span) -> Diagnostic {
    KIND.at(span, "from here on nothing is read", format!("`{key}` has {length} items; at most {most} are read"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_list_has_more_items_than_any_dwelling_needs() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[list-too-long]: `serves` has 501 items; at most 500 are read
  --> survey.toml:20:6011
20 | …r", "computer", "computer", "computer", "computer", ]
   |                                          ^^^^^^^^^^ from here on nothing is read
"#
        );
    }
}
