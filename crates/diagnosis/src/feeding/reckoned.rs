//! What one walk over all orders reckons: their whole weight, the weightiest, and their number.

/// Up to here numbers are counted exactly; it stands for itself and more.
pub const MOST_COUNTED: u64 = 1 << 53;

/// What a set of orders, or of parts of orders, comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Reckoned {
    /// The weight of all together.
    pub(crate) whole: f64,
    /// The weight of the weightiest.
    pub(crate) weightiest: f64,
    /// How many there are, exactly up to [`MOST_COUNTED`].
    pub(crate) number: f64,
}

impl Reckoned {
    /// Of no order at all.
    pub(crate) const NONE: Self = Self { whole: 0.0, weightiest: 0.0, number: 0.0 };
    /// Of the order with nothing in it.
    pub(crate) const ONE: Self = Self { whole: 1.0, weightiest: 1.0, number: 1.0 };

    /// Whether there is none.
    #[inline]
    pub(crate) const fn is_none(self) -> bool {
        self.number == 0.0
    }

    /// Of all that goes together with something of this weight.
    #[inline]
    pub(crate) fn times(self, weight: f64) -> Self {
        let number = if weight > 0.0 { self.number } else { 0.0 };
        Self { whole: self.whole * weight, weightiest: self.weightiest * weight, number }
    }

    /// Of both together, each with each.
    #[inline]
    pub(crate) fn both(self, other: Self) -> Self {
        Self {
            whole: self.whole * other.whole,
            weightiest: self.weightiest * other.weightiest,
            number: self.number * other.number,
        }
    }

    /// Adds what is there instead.
    #[inline]
    pub(crate) fn add(&mut self, other: Self) {
        self.whole += other.whole;
        self.weightiest = self.weightiest.max(other.weightiest);
        self.number += other.number;
    }

    /// How many there are, as a whole number.
    #[inline]
    pub(crate) fn counted(self) -> u64 {
        if self.number < MOST_COUNTED as f64 { self.number as u64 } else { MOST_COUNTED }
    }
}
