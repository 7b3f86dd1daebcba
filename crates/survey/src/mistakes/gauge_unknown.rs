//! `gauge-unknown`: a wire size is none that is made.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "gauge-unknown",
    "A wire size is none that is made.",
    Example::Added("run = { gauge = 13 }\n"),
);

pub(crate) fn mistake(key: &str, written: &str, span: Span) -> Diagnostic {
    KIND.at(span, "no wire of this size is made", format!("`{key}` cannot be `{written}`"))
        .help("sizes are 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1 and `\"1/0\"` to `\"4/0\"`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_wire_size_is_none_that_is_made() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[gauge-unknown]: `gauge` cannot be `13`
  --> survey.toml:20:17
20 | run = { gauge = 13 }
   |                 ^^ no wire of this size is made
   = help: sizes are 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1 and `"1/0"` to `"4/0"`
"#
        );
    }
}
