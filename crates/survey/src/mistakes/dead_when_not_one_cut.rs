//! `dead-when-not-one-cut`: an observation does not say in one way where power was taken away.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "dead-when-not-one-cut",
    "An observation does not say in one way where power was taken away.",
    Example::Added(r#"
[[dead_when]]
breaker_off = "3"
opened = "K-1"
dead = ["K-2"]

[[box]]
id = "K-2"
room = "kitchen"
"#),
).telling_absence();

pub(crate) fn mistake(row: Span, given: &[(&str, Span)]) -> Diagnostic {
    let help = "write one of `breaker_off`, `opened` and `load_side_lifted`, and another `[[dead_when]]` for the next";
    match given {
        [(_, first), (second, place), ..] => {
            let message = "an observation says in two ways where power was taken away".to_owned();
            KIND.at(*place, format!("`{second}` besides"), message).and(*first, "said here already").help(help)
        }
        _ => KIND.at(row, "here", "an observation does not say where power was taken away").help(help),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_observation_does_not_say_in_one_way_where_power_was_taken_away() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[dead-when-not-one-cut]: an observation says in two ways where power was taken away
  --> survey.toml:23:10
22 | breaker_off = "3"
   |               --- said here already
23 | opened = "K-1"
   |          ^^^^^ `opened` besides
   = help: write one of `breaker_off`, `opened` and `load_side_lifted`, and another `[[dead_when]]` for the next
"#
        );
    }
}
