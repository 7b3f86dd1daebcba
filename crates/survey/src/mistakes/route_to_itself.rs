//! `route-to-itself`: a route ends where it begins.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "route-to-itself",
    "A route ends where it begins.",
    Example::Added(r#"
[[route]]
from = "K-1"
to = "K-1"
kind = "egc"
length = "40 ft"
"#),
);

pub(crate) fn mistake(id: &str, to: Span, from: Span) -> Diagnostic {
    KIND.at(to, "ends here", format!("the route leads from `{id}` to itself"))
        .and(from, "begins here")
        .help("name the box to be grounded as `to`, and where the conductor would come from as `from`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_route_ends_where_it_begins() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[route-to-itself]: the route leads from `K-1` to itself
  --> survey.toml:23:6
22 | from = "K-1"
   |        ----- begins here
23 | to = "K-1"
   |      ^^^^^ ends here
   = help: name the box to be grounded as `to`, and where the conductor would come from as `from`
"#
        );
    }
}
