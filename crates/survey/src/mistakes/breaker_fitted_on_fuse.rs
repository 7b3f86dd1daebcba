//! `breaker-fitted-on-fuse`: a protective breaker is said to be fitted to a circuit with a fuse.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "breaker-fitted-on-fuse",
    "A protective breaker is said to be fitted to a circuit with a fuse.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
fuse = "15 A"
fitted = "gfci"
"#),
);

pub(crate) fn mistake(fitted: Span, fuse: Span) -> Diagnostic {
    KIND.at(fitted, "a breaker fitted here", "a circuit with a fuse has no protective breaker")
        .and(fuse, "a fuse here")
        .help("write `breaker` for `fuse`, or leave `fitted` out")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_protective_breaker_is_said_to_be_fitted_to_a_circuit_with_a_fuse() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[breaker-fitted-on-fuse]: a circuit with a fuse has no protective breaker
  --> survey.toml:25:10
24 | fuse = "15 A"
   |        ------ a fuse here
25 | fitted = "gfci"
   |          ^^^^^^ a breaker fitted here
   = help: write `breaker` for `fuse`, or leave `fitted` out
"#
        );
    }
}
