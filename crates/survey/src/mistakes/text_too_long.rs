//! `text-too-long`: a text is longer than its key takes.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind, SOUND};

pub(crate) const KIND: Kind = Kind::error(
    "text-too-long",
    "A text is longer than its key takes.",
    Example::MadeToml(|| format!("{SOUND}note = \"{}\"\n", "very ".repeat(500)).into_bytes()),
);

pub(crate) fn mistake(key: &str, length: usize, most: usize, span: Span) -> Diagnostic {
    KIND.at(span, "too long", format!("`{key}` has {length} characters; at most {most} are read"))
        .help("say it in fewer words")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_text_is_longer_than_its_key_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[text-too-long]: `note` has 2500 characters; at most 2000 are read
  --> survey.toml:20:8
20 | note = "very very very very very very very very very very very very very very very very very very ve…
   |        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ too long
   = help: say it in fewer words
"#
        );
    }
}
