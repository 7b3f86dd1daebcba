//! `dead-when-names-itself`: an observation lists the box at which power was taken away.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "dead-when-names-itself",
    "An observation lists the box at which power was taken away.",
    Example::Added(r#"
[[dead_when]]
opened = "K-1"
dead = ["K-1", "K-2"]

[[box]]
id = "K-2"
room = "kitchen"
"#),
);

pub(crate) fn mistake(id: &str, listed: Span, cut: Span) -> Diagnostic {
    KIND.at(listed, "listed here", format!("box `{id}` is listed among what was looked at while it was itself apart"))
        .and(cut, "power was taken away here")
        .help("leave it out: it tells nothing of what feeds what")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_observation_lists_the_box_at_which_power_was_taken_away() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[dead-when-names-itself]: box `K-1` is listed among what was looked at while it was itself apart
  --> survey.toml:23:9
22 | opened = "K-1"
   |          ----- power was taken away here
23 | dead = ["K-1", "K-2"]
   |         ^^^^^ listed here
   = help: leave it out: it tells nothing of what feeds what
"#
        );
    }
}
