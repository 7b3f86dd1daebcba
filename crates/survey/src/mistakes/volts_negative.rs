//! `volts-negative`: a voltage is below zero, which no meter shows for alternating current.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "volts-negative",
    "A voltage is below zero, which no meter shows for alternating current.",
    Example::Added("found = { hn = -121 }\n"),
);

pub(crate) fn mistake(key: &str, span: Span) -> Diagnostic {
    KIND.at(span, "below zero", format!("`{key}` cannot be below zero"))
        .help("alternating current has no sign: was the meter set to direct current?")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_voltage_is_below_zero_which_no_meter_shows_for_alternating_current() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[volts-negative]: `hn` cannot be below zero
  --> survey.toml:20:16
20 | found = { hn = -121 }
   |                ^^^^ below zero
   = help: alternating current has no sign: was the meter set to direct current?
"
        );
    }
}
