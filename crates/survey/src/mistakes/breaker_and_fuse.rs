//! `breaker-and-fuse`: a circuit is said to have both a breaker and a fuse.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "breaker-and-fuse",
    "A circuit is said to have both a breaker and a fuse.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
breaker = "15 A"
fuse = "15 A"
"#),
);

pub(crate) fn mistake(fuse: Span, breaker: Span) -> Diagnostic {
    KIND.at(fuse, "a fuse here", "a circuit has either a breaker or a fuse")
        .and(breaker, "a breaker here")
        .help("keep the one that opens this circuit in its panel")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_circuit_is_said_to_have_both_a_breaker_and_a_fuse() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[breaker-and-fuse]: a circuit has either a breaker or a fuse
  --> survey.toml:25:8
24 | breaker = "15 A"
   |           ------ a breaker here
25 | fuse = "15 A"
   |        ^^^^^^ a fuse here
   = help: keep the one that opens this circuit in its panel
"#
        );
    }
}
