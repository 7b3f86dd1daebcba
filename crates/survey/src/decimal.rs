//! Decimal numbers as people write them, exact to a billionth.

/// A number in whole billionths, bounded so that no product of a unit overflows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Decimal(i128);

const ONE: i128 = 1_000_000_000;
const PLACES: usize = 9;
/// Larger numbers count as this: far beyond what any field takes.
const LARGEST: i128 = 1_000_000_000_000 * ONE;

impl Decimal {
    pub(crate) const fn billionths(billionths: i128) -> Self {
        Self(if billionths > LARGEST {
            LARGEST
        } else if billionths < -LARGEST {
            -LARGEST
        } else {
            billionths
        })
    }

    /// The number that a text of digits, a sign, a point and an exponent says.
    pub(crate) fn parse(written: &str) -> Option<Self> {
        let plain = written.replace('_', "");
        let (negative, unsigned) = match plain.strip_prefix('-') {
            Some(rest) => (true, rest),
            None => (false, plain.strip_prefix('+').unwrap_or(&plain)),
        };
        let signed = |size: i128| Self::billionths(if negative { -size } else { size });
        if unsigned == "inf" {
            return Some(signed(LARGEST));
        }
        let (digits, exponent) = match unsigned.split_once(['e', 'E']) {
            Some((digits, exponent)) => (digits, exponent_of(exponent)?),
            None => (unsigned, 0),
        };
        let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
        let all_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
        if (whole.is_empty() && part.is_empty()) || !all_digits(whole) || !all_digits(part) {
            return None;
        }
        Some(signed(scaled(whole, part, exponent)))
    }

    /// A fraction such as 1/2.
    pub(crate) fn fraction(above: Self, below: Self) -> Option<Self> {
        (below.0 > 0).then(|| Self::billionths(above.0.saturating_mul(ONE) / below.0))
    }

    pub(crate) fn plus(self, other: Self) -> Self {
        Self::billionths(self.0.saturating_add(other.0))
    }

    pub(crate) const fn negated(self) -> Self {
        Self(-self.0)
    }

    pub(crate) const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// The number if it has no part behind the point.
    pub(crate) const fn whole(self) -> Option<i128> {
        if self.0 % ONE == 0 { Some(self.0 / ONE) } else { None }
    }

    /// The nearest floating-point number.
    pub(crate) fn as_float(self) -> f64 {
        self.0 as f64 / ONE as f64
    }

    /// The number with no more digits than it needs.
    pub(crate) fn shown(self) -> String {
        let (sign, size) = (if self.0 < 0 { "-" } else { "" }, self.0.abs());
        let part = format!("{:09}", size % ONE);
        let part = part.trim_end_matches('0');
        format!("{sign}{}{}{part}", size / ONE, if part.is_empty() { "" } else { "." })
    }

    /// The number of base units, rounded to the nearest, halves away from zero.
    pub(crate) const fn times_rounded(self, factor: i128) -> i128 {
        let product = self.0.saturating_mul(factor);
        let half = if product < 0 { -ONE / 2 } else { ONE / 2 };
        product.saturating_add(half) / ONE
    }

    /// The number times a ratio, rounded down.
    pub(crate) const fn times_ratio_down(self, above: i128, below: i128) -> i128 {
        self.0.saturating_mul(above).div_euclid(below.saturating_mul(ONE))
    }
}

/// An exponent, bounded where the number is out of all reach anyway.
fn exponent_of(written: &str) -> Option<i32> {
    let (negative, digits) = match written.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, written.strip_prefix('+').unwrap_or(written)),
    };
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let size = digits.parse::<i32>().unwrap_or(1000).min(1000);
    Some(if negative { -size } else { size })
}

/// The digits before and behind the point with the point moved, in billionths; what lies behind them is cut off.
fn scaled(whole: &str, part: &str, exponent: i32) -> i128 {
    let digits: String = whole.chars().chain(part.chars()).collect();
    let point = whole.len() as i64 + i64::from(exponent) + PLACES as i64;
    let mut size: i128 = 0;
    let mut at: i64 = 0;
    for digit in digits.bytes().take_while(|_| {
        at += 1;
        at <= point
    }) {
        size = size.saturating_mul(10).saturating_add(i128::from(digit - b'0')).min(LARGEST);
    }
    let missing = point - digits.len() as i64;
    for _ in 0..missing.clamp(0, 40) {
        size = size.saturating_mul(10).min(LARGEST);
    }
    if point < 0 { 0 } else { size }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_are_read_exactly() {
        assert_eq!(Decimal::parse("12.5"), Some(Decimal(12_500_000_000)));
        assert_eq!(Decimal::parse("-0.25"), Some(Decimal(-250_000_000)));
        assert_eq!(Decimal::parse("1.5e2"), Some(Decimal(150 * ONE)));
        assert_eq!(Decimal::parse("150e-1"), Some(Decimal(15 * ONE)));
        assert_eq!(Decimal::parse("1_000"), Some(Decimal(1000 * ONE)));
        assert_eq!(Decimal::parse("1e999"), Some(Decimal(LARGEST)));
        assert_eq!(Decimal::parse("1e-999"), Some(Decimal(0)));
    }

    #[test]
    fn what_is_no_number_is_none() {
        for written in ["", ".", "nan", "1.2.3", "twelve", "-", "1e", "0x10", "12,5"] {
            assert_eq!(Decimal::parse(written), None, "{written}");
        }
    }
}
