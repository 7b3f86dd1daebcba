//! `no-such-room`: a key names a room that is not in the survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-room",
    "A key names a room that is not in the survey.",
    Example::Added(r#"
[[box]]
id = "K-2"
room = "kitchn"
"#),
).telling_absence();

pub(crate) fn mistake(id: &str, nearest: Option<&str>, names: &[&str], span: Span) -> Diagnostic {
    KIND.at(span, "named here only", format!("no room `{id}`")).help_with_names(nearest, names)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_key_names_a_room_that_is_not_in_the_survey() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-room]: no room `kitchn`
  --> survey.toml:23:8
23 | room = "kitchn"
   |        ^^^^^^^^ named here only
   = help: did you mean `kitchen`?
"#
        );
    }
}
