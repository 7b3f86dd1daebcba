//! `breaker-not-positive`: the rating of a breaker or fuse is zero or less.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "breaker-not-positive",
    "The rating of a breaker or fuse is zero or less.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
breaker = "0 A"
"#),
);

pub(crate) fn mistake(key: &str, span: Span) -> Diagnostic {
    KIND.at(span, "zero or less", format!("`{key}` must be rated for more than nothing"))
        .help("leave it out where the rating cannot be read")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_rating_of_a_breaker_or_fuse_is_zero_or_less() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[breaker-not-positive]: `breaker` must be rated for more than nothing
  --> survey.toml:24:11
24 | breaker = "0 A"
   |           ^^^^^ zero or less
   = help: leave it out where the rating cannot be read
"#
        );
    }
}
