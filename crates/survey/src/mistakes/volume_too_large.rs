//! `volume-too-large`: a box volume is larger than any box.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Volume;

pub(crate) const KIND: Kind = Kind::error(
    "volume-too-large",
    "A box volume is larger than any box.",
    Example::Added("body = { volume = \"12500 in3\" }\n"),
);

pub(crate) fn mistake(key: &str, most: Volume, span: Span) -> Diagnostic {
    KIND.at(span, "too large", format!("`{key}` cannot be more than {most}")).help("check the number and its unit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_volume_is_larger_than_any_box() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[volume-too-large]: `volume` cannot be more than 1000 in³
  --> survey.toml:20:19
20 | body = { volume = "12500 in3" }
   |                   ^^^^^^^^^^^ too large
   = help: check the number and its unit
"#
        );
    }
}
