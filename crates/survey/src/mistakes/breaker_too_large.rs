//! `breaker-too-large`: the rating of a breaker or fuse is larger than any in a dwelling.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "breaker-too-large",
    "The rating of a breaker or fuse is larger than any in a dwelling.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
breaker = "1500 A"
"#),
);

pub(crate) fn mistake(key: &str, most: i128, span: Span) -> Diagnostic {
    KIND.at(span, "too large", format!("`{key}` cannot be rated for more than {most} A"))
        .help("check the number and its unit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_rating_of_a_breaker_or_fuse_is_larger_than_any_in_a_dwelling() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[breaker-too-large]: `breaker` cannot be rated for more than 400 A
  --> survey.toml:24:11
24 | breaker = "1500 A"
   |           ^^^^^^^^ too large
   = help: check the number and its unit
"#
        );
    }
}
