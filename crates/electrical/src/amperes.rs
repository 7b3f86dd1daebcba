//! Ratings of overcurrent devices, in whole amperes.

use std::fmt;

/// The rating of a breaker or fuse, in whole amperes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Amperes(u32);

impl Amperes {
    /// A rating of so many amperes.
    #[must_use]
    pub const fn new(amperes: u32) -> Self {
        Self(amperes)
    }

    /// The rating in amperes.
    #[must_use]
    pub const fn get(self) -> u32 {
        self.0
    }
}

impl fmt::Display for Amperes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} A", self.0)
    }
}
