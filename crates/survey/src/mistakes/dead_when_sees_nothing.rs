//! `dead-when-sees-nothing`: an observation names no box that was dead or alive.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "dead-when-sees-nothing",
    "An observation names no box that was dead or alive.",
    Example::Added(r#"
[[dead_when]]
opened = "K-1"
"#),
);

pub(crate) fn mistake(row: Span) -> Diagnostic {
    KIND.at(row, "here", "an observation names no box that was `dead` or `alive`")
        .help("name the boxes that were looked at, or leave the observation out")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_observation_names_no_box_that_was_dead_or_alive() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[dead-when-sees-nothing]: an observation names no box that was `dead` or `alive`
  --> survey.toml:21:1
21 | [[dead_when]]
   | ^^^^^^^^^^^^^ here
   = help: name the boxes that were looked at, or leave the observation out
"#
        );
    }
}
