//! `number-without-unit`: a quantity is written without its unit.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::quantity::Quantity;

pub(crate) const KIND: Kind = Kind::error(
    "number-without-unit",
    "A quantity is written without its unit.",
    Example::Added("height = 16\n"),
);

pub(crate) fn mistake(key: &str, written: &str, quantity: Quantity, span: Span) -> Diagnostic {
    let offers: Vec<String> = quantity.offered().iter().map(|unit| format!("`\"{written} {unit}\"`")).collect();
    KIND.at(span, "a number alone", format!("`{key}` needs a unit")).help(format!("write {}", offers.join(" or ")))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_quantity_is_written_without_its_unit() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[number-without-unit]: `height` needs a unit
  --> survey.toml:20:10
20 | height = 16
   |          ^^ a number alone
   = help: write `"16 in"` or `"16 mm"`
"#
        );
    }
}
