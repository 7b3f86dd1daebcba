//! `load-not-on`: a reading after the work says what load it was taken under, and that none was on.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "load-not-on",
    "A reading after the work says what load it was taken under, and that none was on.",
    Example::Added("after = { hn = 118, load = \"none\", load_current = \"12 A\" }\n"),
);

pub(crate) fn mistake(key: &str, span: Span, load: Span) -> Diagnostic {
    let mistake = KIND.at(span, "what was on", format!("`{key}` is given, and no load was on"));
    mistake.and(load, "nothing, by this").help("write `load = \"heavy\"` or `load = \"lamp\"`, or leave it out")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_reading_says_what_load_was_on_and_that_none_was() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[load-not-on]: `load_current` is given, and no load was on
  --> survey.toml:20:51
20 | after = { hn = 118, load = "none", load_current = "12 A" }
   |                                                   ^^^^^^ what was on
   |                            ------ nothing, by this
   = help: write `load = "heavy"` or `load = "lamp"`, or leave it out
"#
        );
    }
}
