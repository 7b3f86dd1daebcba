//! `fed-from-other-circuit`: a box is fed from a box of another circuit that does not share its neutral.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "fed-from-other-circuit",
    "A box is fed from a box of another circuit that does not share its neutral.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"

[[box]]
id = "K-2"
room = "kitchen"
circuit = "5"
fed_by = "K-1"
"#),
);

pub(crate) fn mistake((own, theirs): (&str, &str), feeder: &str, (fed_by, circuit): (Span, Span)) -> Diagnostic {
    let message = format!("a box on circuit `{own}` cannot be fed from box `{feeder}` on circuit `{theirs}`");
    KIND.at(fed_by, "fed from there", message)
        .and(circuit, format!("`{feeder}` is on circuit `{theirs}`"))
        .help("mend the circuit or the feed; if both circuits share a neutral, say `shares_neutral_with`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_fed_from_a_box_of_another_circuit_that_does_not_share() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[fed-from-other-circuit]: a box on circuit `5` cannot be fed from box `K-1` on circuit `3`
  --> survey.toml:29:10
19 | circuit = "3"
   |           --- `K-1` is on circuit `3`
   ...
29 | fed_by = "K-1"
   |          ^^^^^ fed from there
   = help: mend the circuit or the feed; if both circuits share a neutral, say `shares_neutral_with`
"#
        );
    }
}
