//! `circuit-without-panel`: a circuit does not say in which panel it originates.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "circuit-without-panel",
    "A circuit does not say in which panel it originates.",
    Example::Added(r#"
[[circuit]]
id = "5"
"#),
).telling_absence();

pub(crate) fn mistake(panel: Option<&str>, span: Span) -> Diagnostic {
    let mistake = KIND.at(span, "no `panel` here", "a circuit must say in which panel it originates");
    match panel {
        Some(id) => mistake.help(format!("add `panel = \"{id}\"`, if that is the one")),
        None => mistake.help("describe the panel under `[[panel]]` and name its id here as `panel`"),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_circuit_does_not_say_in_which_panel_it_originates() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[circuit-without-panel]: a circuit must say in which panel it originates
  --> survey.toml:21:1
21 | [[circuit]]
   | ^^^^^^^^^^^ no `panel` here
   = help: add `panel = "main"`, if that is the one
"#
        );
    }
}
