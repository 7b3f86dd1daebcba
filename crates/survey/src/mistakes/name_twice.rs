//! `name-twice`: a list names the same thing twice.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "name-twice",
    "A list names the same thing twice.",
    Example::Added("serves = [\"computer\", \"computer\"]\n"),
);

pub(crate) fn mistake(key: &str, name: &str, span: Span) -> Diagnostic {
    KIND.at(span, "named before in this list", format!("`{key}` names `{name}` twice")).help("once is enough")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_list_names_the_same_thing_twice() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[name-twice]: `serves` names `computer` twice
  --> survey.toml:20:23
20 | serves = ["computer", "computer"]
   |                       ^^^^^^^^^^ named before in this list
   = help: once is enough
"#
        );
    }
}
