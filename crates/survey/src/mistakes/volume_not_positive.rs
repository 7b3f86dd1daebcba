//! `volume-not-positive`: a box volume is zero or less.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "volume-not-positive",
    "A box volume is zero or less.",
    Example::Added("body = { volume = \"-12.5 in3\" }\n"),
);

pub(crate) fn mistake(key: &str, span: Span) -> Diagnostic {
    KIND.at(span, "zero or less", format!("`{key}` must be more than nothing"))
        .help("leave it out where it is not marked and not known")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_volume_is_zero_or_less() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[volume-not-positive]: `volume` must be more than nothing
  --> survey.toml:20:19
20 | body = { volume = "-12.5 in3" }
   |                   ^^^^^^^^^^^ zero or less
   = help: leave it out where it is not marked and not known
"#
        );
    }
}
