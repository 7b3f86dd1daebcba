//! `want-without-receptacle`: a receptacle is wanted where the box holds something that is none.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "want-without-receptacle",
    "A receptacle is wanted where the box holds something that is none.",
    Example::Added(r#"holds = "switch"
want = "three-slot"
"#),
);

pub(crate) fn mistake(want: &str, holds: &str, (want_at, holds_at): (Span, Span)) -> Diagnostic {
    KIND.at(want_at, "a receptacle is wanted", format!("`{want}` is wanted of a box that holds no receptacle"))
        .and(holds_at, format!("it holds a {holds}"))
        .help("write what the box holds if this is not it, or leave `want` out")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_receptacle_is_wanted_where_the_box_holds_something_that_is_none() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[want-without-receptacle]: `three-slot` is wanted of a box that holds no receptacle
  --> survey.toml:21:8
20 | holds = "switch"
   |         -------- it holds a switch
21 | want = "three-slot"
   |        ^^^^^^^^^^^^ a receptacle is wanted
   = help: write what the box holds if this is not it, or leave `want` out
"#
        );
    }
}
