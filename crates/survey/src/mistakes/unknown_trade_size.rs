//! `unknown-trade-size`: a trade size is none of the metal boxes in the volume table.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "unknown-trade-size",
    "A trade size is none of the metal boxes in the volume table.",
    Example::Added("body = { size = \"3x2x2-1/3\" }\n"),
);

pub(crate) fn mistake(written: &str, nearest: Option<&str>, span: Span) -> Diagnostic {
    let names: Vec<&str> = dwelling::TRADE_SIZES.iter().map(|size| size.name).collect();
    KIND.at(span, "not in the table of box volumes", format!("no trade size `{written}`"))
        .help_with_names(nearest, &names)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_trade_size_is_none_of_the_metal_boxes_in_the_volume_table() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[unknown-trade-size]: no trade size `3x2x2-1/3`
  --> survey.toml:20:17
20 | body = { size = "3x2x2-1/3" }
   |                 ^^^^^^^^^^^ not in the table of box volumes
   = help: did you mean `3x2x2-1/4`?
"#
        );
    }
}
