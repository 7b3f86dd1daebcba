//! `neutral-shared-with-itself`: a circuit is said to share a neutral with itself.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "neutral-shared-with-itself",
    "A circuit is said to share a neutral with itself.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
shares_neutral_with = "5"
"#),
);

pub(crate) fn mistake(id: &str, span: Span) -> Diagnostic {
    KIND.at(span, "its own id", format!("circuit `{id}` shares a neutral with itself"))
        .help("name the other circuit of the multiwire set")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_circuit_is_said_to_share_a_neutral_with_itself() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[neutral-shared-with-itself]: circuit `5` shares a neutral with itself
  --> survey.toml:24:23
24 | shares_neutral_with = "5"
   |                       ^^^ its own id
   = help: name the other circuit of the multiwire set
"#
        );
    }
}
