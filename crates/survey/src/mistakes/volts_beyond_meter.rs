//! `volts-beyond-meter`: a voltage is higher than any in a dwelling of 120 V and 240 V.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Volts;

pub(crate) const KIND: Kind = Kind::error(
    "volts-beyond-meter",
    "A voltage is higher than any in a dwelling of 120 V and 240 V.",
    Example::Added("found = { hn = 1210 }\n"),
);

pub(crate) fn mistake(key: &str, most: Volts, span: Span) -> Diagnostic {
    KIND.at(span, "too high", format!("`{key}` cannot be more than {most} in a dwelling"))
        .help("check the number; millivolts are written `\"25 mV\"`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_voltage_is_higher_than_any_in_a_dwelling_of_120_v_and_240_v() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[volts-beyond-meter]: `hn` cannot be more than 300 V in a dwelling
  --> survey.toml:20:16
20 | found = { hn = 1210 }
   |                ^^^^ too high
   = help: check the number; millivolts are written `"25 mV"`
"#
        );
    }
}
