//! `route-end-not-a-box`: a route ends at something that is not a box.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "route-end-not-a-box",
    "A route ends at something that is not a box.",
    Example::Added(r#"
[[route]]
from = "K-1"
to = "main"
kind = "egc"
length = "40 ft"
"#),
);

pub(crate) fn mistake(id: &str, what: &str, span: Span) -> Diagnostic {
    KIND.at(span, format!("this is {what}"), format!("a route cannot end at `{id}`, which is no box"))
        .help("a route leads to the box to be grounded: write the other end as `from`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_route_ends_at_something_that_is_not_a_box() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[route-end-not-a-box]: a route cannot end at `main`, which is no box
  --> survey.toml:23:6
23 | to = "main"
   |      ^^^^^^ this is a panel
   = help: a route leads to the box to be grounded: write the other end as `from`
"#
        );
    }
}
