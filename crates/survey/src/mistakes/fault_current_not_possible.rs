//! `fault-current-not-possible`: the fault current of a panel is beyond what a dwelling's supply gives.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "fault-current-not-possible",
    "The fault current of a panel is beyond what a dwelling's supply gives.",
    Example::Added("[[panel]]\nid = \"shed\"\nfault_current = \"15 A\"\n"),
);

pub(crate) fn mistake(key: &str, least: i128, most: i128, span: Span) -> Diagnostic {
    let message = format!("`{key}` cannot be below {least} A nor above {most} A");
    KIND.at(span, "not the current of a fault", message)
        .help("this is what a fault in the panel draws, not a breaker's rating; leave it out where nobody measured or stated it")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_fault_current_of_a_panel_is_beyond_what_a_supply_gives() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[fault-current-not-possible]: `fault_current` cannot be below 100 A nor above 100000 A
  --> survey.toml:22:17
22 | fault_current = "15 A"
   |                 ^^^^^^ not the current of a fault
   = help: this is what a fault in the panel draws, not a breaker's rating; leave it out where nobody measured or stated it
"#
        );
    }
}
