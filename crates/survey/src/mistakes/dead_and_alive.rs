//! `dead-and-alive`: a box is said to be dead and alive in one observation.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "dead-and-alive",
    "A box is said to be dead and alive in one observation.",
    Example::Added(r#"
[[dead_when]]
opened = "K-1"
dead = ["K-2"]
alive = ["K-2"]

[[box]]
id = "K-2"
room = "kitchen"
"#),
);

pub(crate) fn mistake(id: &str, alive: Span, dead: Span) -> Diagnostic {
    KIND.at(alive, "alive here", format!("box `{id}` is said to be dead and alive in one observation"))
        .and(dead, "dead here")
        .help("keep the one that was seen; where one half of a device was dead, leave the box out")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_said_to_be_dead_and_alive_in_one_observation() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[dead-and-alive]: box `K-2` is said to be dead and alive in one observation
  --> survey.toml:24:10
23 | dead = ["K-2"]
   |         ----- dead here
24 | alive = ["K-2"]
   |          ^^^^^ alive here
   = help: keep the one that was seen; where one half of a device was dead, leave the box out
"#
        );
    }
}
