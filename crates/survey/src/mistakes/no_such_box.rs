//! `no-such-box`: an observation names a box that the survey does not have.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-box",
    "An observation names a box that the survey does not have.",
    Example::Added(r#"
[[dead_when]]
breaker_off = "3"
dead = ["K-7"]
"#),
).telling_absence();

pub(crate) fn mistake(id: &str, nearest: Option<&str>, all: &[&str], span: Span) -> Diagnostic {
    KIND.at(span, "named here only", format!("no box `{id}`")).help_with_names(nearest, all)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_observation_names_a_box_that_the_survey_does_not_have() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-box]: no box `K-7`
  --> survey.toml:23:9
23 | dead = ["K-7"]
   |         ^^^^^ named here only
   = help: did you mean `K-1`?
"#
        );
    }
}
