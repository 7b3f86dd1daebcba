//! `button-without-device`: a test button was pressed where what is fitted has none.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "button-without-device",
    "A test button was pressed where what is fitted has none.",
    Example::Added("after = { fitted = \"three-slot\", test_button = \"trips\" }\n"),
);

pub(crate) fn mistake(fitted: &str, button: Span, device: Span) -> Diagnostic {
    KIND.at(button, "the button of which device?", format!("`{fitted}` has no test button"))
        .and(device, "fitted by this")
        .help("write what is fitted, or, where the device is elsewhere, `dead_when_tripped` here and `test_button` there")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_button_was_pressed_where_there_is_none() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[button-without-device]: `three-slot` has no test button
  --> survey.toml:20:48
20 | after = { fitted = "three-slot", test_button = "trips" }
   |                                                ^^^^^^^ the button of which device?
   |                    ------------ fitted by this
   = help: write what is fitted, or, where the device is elsewhere, `dead_when_tripped` here and `test_button` there
"#
        );
    }
}
