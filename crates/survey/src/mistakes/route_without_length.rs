//! `route-without-length`: a way that is not closed has no length.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "route-without-length",
    "A way that is not closed has no length.",
    Example::Added(r#"
[[route]]
from = "main"
to = "K-1"
kind = "egc"
"#),
);

pub(crate) fn mistake(span: Span) -> Diagnostic {
    KIND.at(span, "`length` is left out", "a way along which something could be brought needs a `length`".to_string())
        .help("add `length = \"40 ft\"`, or `closed = true` where nothing can be brought along it")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_way_that_is_not_closed_has_no_length() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[route-without-length]: a way along which something could be brought needs a `length`
  --> survey.toml:21:1
21 | [[route]]
   | ^^^^^^^^^ `length` is left out
   = help: add `length = "40 ft"`, or `closed = true` where nothing can be brought along it
"#
        );
    }
}
