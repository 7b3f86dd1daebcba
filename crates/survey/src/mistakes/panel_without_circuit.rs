//! `panel-without-circuit`: a box is fed by its circuit's panel, but its circuit is not known and there are several panels.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "panel-without-circuit",
    "A box is fed by its circuit's panel, but its circuit is not known.",
    Example::Added(r#"
[[panel]]
id = "annex"

[[box]]
id = "K-2"
room = "kitchen"
fed_by = "panel"
"#),
);

pub(crate) fn mistake(fed_by: Span, row: Span) -> Diagnostic {
    KIND.at(fed_by, "which panel?", "`panel` means the panel of the box's circuit, and the circuit is not known")
        .and(row, "no `circuit` here")
        .help("add the circuit, or write the panel's own id")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_fed_by_its_circuits_panel_but_its_circuit_is_not_known() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[panel-without-circuit]: `panel` means the panel of the box's circuit, and the circuit is not known
  --> survey.toml:27:10
24 | [[box]]
   | ------- no `circuit` here
   ...
27 | fed_by = "panel"
   |          ^^^^^^^ which panel?
   = help: add the circuit, or write the panel's own id
"#
        );
    }
}
