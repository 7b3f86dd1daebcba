//! `shared-neutral-without-partner`: a run is said to carry a shared neutral on a circuit that shares none.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "shared-neutral-without-partner",
    "A run is said to carry a shared neutral on a circuit that shares none.",
    Example::Added("run = { shared_neutral = true }\n"),
);

pub(crate) fn mistake(circuit: &str, span: Span) -> Diagnostic {
    KIND.at(span, "shared with what?", format!("circuit `{circuit}` shares its neutral with no other"))
        .help("name the other circuit of the multiwire set as `shares_neutral_with`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_run_is_said_to_carry_a_shared_neutral_on_a_circuit_that_shares_none() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
warning[shared-neutral-without-partner]: circuit `3` shares its neutral with no other
  --> survey.toml:20:26
20 | run = { shared_neutral = true }
   |                          ^^^^ shared with what?
   = help: name the other circuit of the multiwire set as `shares_neutral_with`
"
        );
    }
}
