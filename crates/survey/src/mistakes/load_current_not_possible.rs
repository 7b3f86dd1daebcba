//! `load-current-not-possible`: the current of a load is beyond what a branch circuit bears.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "load-current-not-possible",
    "The current of a load is beyond what a branch circuit bears.",
    Example::Added("after = { hn = 118, load = \"heavy\", load_current = \"1250 A\" }\n"),
);

pub(crate) fn mistake(key: &str, least: i128, most: i128, span: Span) -> Diagnostic {
    let message = format!("`{key}` cannot be below {least} mA nor above {} A", most / 1000);
    KIND.at(span, "not the current of a load", message)
        .help("write what the load draws in amperes, measured or from its nameplate; leave it out where nobody knows")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_current_of_a_load_is_beyond_what_a_branch_circuit_bears() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[load-current-not-possible]: `load_current` cannot be below 50 mA nor above 60 A
  --> survey.toml:20:52
20 | after = { hn = 118, load = "heavy", load_current = "1250 A" }
   |                                                    ^^^^^^^^ not the current of a load
   = help: write what the load draws in amperes, measured or from its nameplate; leave it out where nobody knows
"#
        );
    }
}
