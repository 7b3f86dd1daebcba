//! Currents as people measure or read them off a nameplate.

use std::fmt;

/// A current, in whole milliamperes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Milliamperes(i64);

impl Milliamperes {
    /// A current of whole milliamperes.
    #[must_use]
    pub const fn new(milliamperes: i64) -> Self {
        Self(milliamperes)
    }

    /// The current in milliamperes.
    #[must_use]
    pub const fn get(self) -> i64 {
        self.0
    }
}

impl fmt::Display for Milliamperes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, rest) = (self.0 / 1000, (self.0 % 1000).abs());
        let thousandths = format!("{rest:03}");
        let part = thousandths.trim_end_matches('0');
        if part.is_empty() { write!(f, "{whole} A") } else { write!(f, "{whole}.{part} A") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_current_is_shown_in_amperes_without_needless_noughts() {
        let shown = [12_000, 12_500, 900, 50].map(|milliamperes| Milliamperes::new(milliamperes).to_string());
        assert_eq!(shown, ["12 A", "12.5 A", "0.9 A", "0.05 A"]);
    }
}
