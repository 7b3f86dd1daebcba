//! `load-on-other-circuit`: a reading was taken under a load that is not on the circuit of its box.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "load-on-other-circuit",
    "A reading was taken under a load that is not on the circuit of its box.",
    Example::Added(r#"after = { hn = 118, load = "heavy", load_at = "L-1" }

[[circuit]]
id = "4"
panel = "main"

[[box]]
id = "L-1"
room = "kitchen"
circuit = "4"
"#),
);

pub(crate) fn mistake(id: &str, theirs: &str, own: &str, span: Span, circuit: Span) -> Diagnostic {
    let message = format!("box `{id}` is on circuit `{theirs}`, and what was read is on circuit `{own}`");
    KIND.at(span, "the load was there", message)
        .and(circuit, "the circuit of what was read")
        .help("a load on another circuit tells nothing of this one: name a box of the same circuit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_load_was_not_on_the_circuit_of_what_was_read() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[load-on-other-circuit]: box `L-1` is on circuit `4`, and what was read is on circuit `3`
  --> survey.toml:20:47
19 | circuit = "3"
   |           --- the circuit of what was read
20 | after = { hn = 118, load = "heavy", load_at = "L-1" }
   |                                               ^^^^^ the load was there
   = help: a load on another circuit tells nothing of this one: name a box of the same circuit
"#
        );
    }
}
