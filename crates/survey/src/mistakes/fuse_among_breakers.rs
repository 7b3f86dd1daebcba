//! `fuse-among-breakers`: a circuit is said to have a fuse in a panel of breakers.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "fuse-among-breakers",
    "A circuit is said to have a fuse in a panel of breakers.",
    Example::Added(r#"
[[panel]]
id = "annex"
overcurrent = "breakers"

[[circuit]]
id = "5"
panel = "annex"
fuse = "15 A"
"#),
);

pub(crate) fn mistake(panel: &str, span: Span) -> Diagnostic {
    KIND.at(span, "a fuse here", format!("panel `{panel}` is said to hold breakers"))
        .help("write `breaker` for `fuse`, or `overcurrent = \"fuses\"` on the panel")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_circuit_is_said_to_have_a_fuse_in_a_panel_of_breakers() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[fuse-among-breakers]: panel `annex` is said to hold breakers
  --> survey.toml:28:8
28 | fuse = "15 A"
   |        ^^^^^^ a fuse here
   = help: write `breaker` for `fuse`, or `overcurrent = "fuses"` on the panel
"#
        );
    }
}
