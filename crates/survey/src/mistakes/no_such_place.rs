//! `no-such-place`: a route begins or ends at something that is no box, panel or ground source of the survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-place",
    "A route begins or ends at something that is no box, panel or ground source of the survey.",
    Example::Added(r#"
[[route]]
from = "mains"
to = "K-1"
kind = "egc"
length = "40 ft"
"#),
).telling_absence();

pub(crate) fn mistake(key: &str, id: &str, nearest: Option<&str>, span: Span) -> Diagnostic {
    let way = if key == "from" { "begin" } else { "end" };
    let mistake = KIND.at(span, "named here only", format!("no box, panel or source `{id}` for a route to {way} at"));
    match nearest {
        Some(name) => mistake.help(format!("did you mean `{name}`?")),
        None => mistake.help("write the id of a box, panel or source"),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_route_begins_or_ends_at_something_that_is_no_box_panel_or_ground() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-place]: no box, panel or source `mains` for a route to begin at
  --> survey.toml:22:8
22 | from = "mains"
   |        ^^^^^^^ named here only
   = help: did you mean `main`?
"#
        );
    }
}
