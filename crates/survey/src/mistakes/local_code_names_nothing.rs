//! `local-code-names-nothing`: a change of the code names a rule or an item that the rulebook does not have.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "local-code-names-nothing",
    "A change of the code names a rule or an item that the rulebook does not have, or says what cannot hold.",
    Example::LocalCode(r#"format = 1
authority = "Larch County"
source = "Ordinance 2024-17"

[[narrow]]
list = "afci-rooms"
items = ["kitchn"]
"#),
);

pub(crate) fn mistake(message: &str, nearest: Option<&str>, span: Span) -> Diagnostic {
    let told = KIND.at(span, "changes nothing", message);
    match nearest {
        Some(name) => told.help(format!("did you mean `{name}`?")),
        None => told,
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_change_of_the_code_names_nothing() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[local-code-names-nothing]: `afci-rooms` knows no such item
 --> local.toml:7:10
7 | items = ["kitchn"]
  |          ^^^^^^^^ changes nothing
  = help: did you mean `kitchen`?
"#
        );
    }
}
