//! `breaker-not-standard`: the rating of a breaker or fuse is none that is made as a standard size.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "breaker-not-standard",
    "The rating of a breaker or fuse is none that is made as a standard size.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
breaker = "16 A"
"#),
);

pub(crate) fn mistake(written: i128, before: Option<i128>, next: Option<i128>, span: Span) -> Diagnostic {
    let near: Vec<String> = before.into_iter().chain(next).map(|rating| format!("`\"{rating} A\"`")).collect();
    KIND.at(span, "not a standard size", format!("{written} A is no standard rating"))
        .help(format!("the next standard ratings are {}", near.join(" and ")))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_rating_of_a_breaker_or_fuse_is_none_that_is_made_as_a_standard_size() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[breaker-not-standard]: 16 A is no standard rating
  --> survey.toml:24:11
24 | breaker = "16 A"
   |           ^^^^^^ not a standard size
   = help: the next standard ratings are `"15 A"` and `"20 A"`
"#
        );
    }
}
