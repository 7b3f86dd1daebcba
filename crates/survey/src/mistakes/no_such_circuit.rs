//! `no-such-circuit`: a key names a circuit that is not in the survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-circuit",
    "A key names a circuit that is not in the survey.",
    Example::Added(r#"
[[box]]
id = "K-2"
room = "kitchen"
circuit = "33"
"#),
).telling_absence();

pub(crate) fn mistake(id: &str, nearest: Option<&str>, names: &[&str], span: Span) -> Diagnostic {
    KIND.at(span, "named here only", format!("no circuit `{id}`")).help_with_names(nearest, names)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_key_names_a_circuit_that_is_not_in_the_survey() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-circuit]: no circuit `33`
  --> survey.toml:24:11
24 | circuit = "33"
   |           ^^^^ named here only
   = help: did you mean `3`?
"#
        );
    }
}
