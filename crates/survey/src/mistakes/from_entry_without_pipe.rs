//! `from-entry-without-pipe`: a distance from where a pipe enters the building is given for something that is no water pipe.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "from-entry-without-pipe",
    "A distance from where a pipe enters the building is given for something that is no water pipe.",
    Example::Added(r#"
[[source]]
id = "rod"
kind = "lone-rod"
from_entry = "3 ft"
"#),
);

pub(crate) fn mistake(kind: &str, span: Span, kind_at: Span) -> Diagnostic {
    KIND.at(span, "only water pipes are measured so", format!("`from_entry` has no meaning for a `{kind}`"))
        .and(kind_at, "not a water pipe")
        .help("leave `from_entry` out, or mend the kind")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_distance_from_where_a_pipe_enters_the_building_is_given_for_something() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[from-entry-without-pipe]: `from_entry` has no meaning for a `lone-rod`
  --> survey.toml:24:14
23 | kind = "lone-rod"
   |        ---------- not a water pipe
24 | from_entry = "3 ft"
   |              ^^^^^^ only water pipes are measured so
   = help: leave `from_entry` out, or mend the kind
"#
        );
    }
}
