//! `unknown-name`: a name is not in the list of names that its key takes.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::shape::NameList;

pub(crate) const KIND: Kind = Kind::error(
    "unknown-name",
    "A name is not in the list of names that its key takes.",
    Example::Added("holds = \"tree-slot\"\n"),
);

pub(crate) fn mistake(key: &str, written: &str, list: &NameList, nearest: Option<&str>, span: Span) -> Diagnostic {
    KIND.at(span, format!("not one of the {}", list.title), format!("`{key}` cannot be `{written}`"))
        .help_with_names(nearest, list.names)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_name_is_not_in_the_list_of_names_that_its_key_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[unknown-name]: `holds` cannot be `tree-slot`
  --> survey.toml:20:9
20 | holds = "tree-slot"
   |         ^^^^^^^^^^^ not one of the things a box holds
   = help: did you mean `three-slot`?
"#
        );
    }
}
