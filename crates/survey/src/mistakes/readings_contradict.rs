//! `readings-contradict`: three voltages cannot be true at once, read with a meter that shows no phantom volts.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use electrical::Volts;

pub(crate) const KIND: Kind = Kind::warning(
    "readings-contradict",
    "Three voltages cannot be true at once, read with a meter that shows no phantom volts.",
    Example::Added("found = { hn = 121, hg = 40, ng = 10, meter = \"low-impedance\" }\n"),
);

pub(crate) fn mistake(told: &[(&str, Volts, Span); 3]) -> Diagnostic {
    let [(low, _, low_at), (middle, _, middle_at), (high, volts, high_at)] = told;
    let message = format!("`{high}` is more than `{middle}` and `{low}` together");
    KIND.at(*high_at, format!("{volts} here"), message)
        .and(*middle_at, "this")
        .and(*low_at, "and this reach less far")
        .help("read all three again with the same meter and the same load")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_three_voltages_cannot_be_true_at_once_read_with_a_meter_that_shows() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[readings-contradict]: `hn` is more than `hg` and `ng` together
  --> survey.toml:20:16
20 | found = { hn = 121, hg = 40, ng = 10, meter = "low-impedance" }
   |                ^^^ 121 V here
   |                          -- this
   |                                   -- and this reach less far
   = help: read all three again with the same meter and the same load
"#
        );
    }
}
