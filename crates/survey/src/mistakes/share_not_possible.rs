//! `share-not-possible`: a share or a chance is not above nothing and below one.

use crate::decimal::Decimal;
use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};
use crate::practice::{LARGEST_SHARE, SMALLEST_SHARE};

pub(crate) const KIND: Kind = Kind::error(
    "share-not-possible",
    "A share or a chance is not above nothing and below one.",
    Example::Practice(r#"format = 1

[how-often]
unknown-metal-is-sound = 40
"#),
);

const HUNDREDTH: Decimal = Decimal::billionths(10_000_000);
const HUNDRED: f64 = 100.0;

pub(crate) fn mistake(key: &str, number: Decimal, written: &str, span: Span) -> Diagnostic {
    let told = KIND.at(span, "out of range", format!("`{key}` cannot be {written}"));
    let value = number.as_float();
    if value > 1.0 && value < HUNDRED {
        let share = Decimal::billionths(number.times_rounded(HUNDREDTH.times_rounded(1_000_000_000)));
        return told.help(format!("{written} % is written `{}`", share.shown()));
    }
    let why = "what can never be, no reading could show";
    told.help(format!("write a number from {SMALLEST_SHARE} to {LARGEST_SHARE}: {why}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_share_or_a_chance_is_not_above_nothing_and_below_one() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[share-not-possible]: `unknown-metal-is-sound` cannot be 40
 --> practice.toml:4:26
4 | unknown-metal-is-sound = 40
  |                          ^^ out of range
  = help: 40 % is written `0.4`
"
        );
    }
}
