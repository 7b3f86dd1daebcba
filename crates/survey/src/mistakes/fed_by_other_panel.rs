//! `fed-by-other-panel`: a box is fed straight from a panel in which its circuit does not originate.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "fed-by-other-panel",
    "A box is fed straight from a panel in which its circuit does not originate.",
    Example::Added(r#"
[[panel]]
id = "annex"

[[box]]
id = "K-2"
room = "kitchen"
circuit = "3"
fed_by = "annex"
"#),
);

pub(crate) fn mistake(written: &str, circuit: &str, own: &str, (fed_by, circuit_at): (Span, Span)) -> Diagnostic {
    KIND.at(fed_by, format!("panel `{written}`"), format!("circuit `{circuit}` does not originate in panel `{written}`"))
        .and(circuit_at, format!("circuit `{circuit}` originates in panel `{own}`"))
        .help("write `fed_by = \"panel\"` for the panel of the box's own circuit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_fed_straight_from_a_panel_in_which_its_circuit_does() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[fed-by-other-panel]: circuit `3` does not originate in panel `annex`
  --> survey.toml:28:10
27 | circuit = "3"
   |           --- circuit `3` originates in panel `main`
28 | fed_by = "annex"
   |          ^^^^^^^ panel `annex`
   = help: write `fed_by = "panel"` for the panel of the box's own circuit
"#
        );
    }
}
