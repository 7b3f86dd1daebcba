//! `circuit-contradicted`: a breaker that was off tells another circuit of a box than the survey does elsewhere.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "circuit-contradicted",
    "A breaker that was off tells another circuit of a box than the survey does elsewhere.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"

[[dead_when]]
breaker_off = "5"
dead = ["K-1"]
"#),
);

pub(crate) fn mistake(id: &str, seen: &str, (off, place): (&str, Span), (known, told): (&str, Span)) -> Diagnostic {
    KIND.at(place, format!("{seen} with `{off}` off"), format!("box `{id}` was {seen} with `{off}` off, and is told to be on `{known}`"))
        .and(told, format!("told to be on `{known}` here"))
        .help("one of the two is wrong: turn the breaker off again and look")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_breaker_that_was_off_tells_another_circuit_of_a_box() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[circuit-contradicted]: box `K-1` was dead with `5` off, and is told to be on `3`
  --> survey.toml:27:9
19 | circuit = "3"
   |           --- told to be on `3` here
   ...
27 | dead = ["K-1"]
   |         ^^^^^ dead with `5` off
   = help: one of the two is wrong: turn the breaker off again and look
"#
        );
    }
}
