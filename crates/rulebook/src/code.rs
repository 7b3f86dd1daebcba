//! The code in force where the dwelling stands.

use crate::edition::Edition;

/// The code in force: an edition. Local amendments are not part of it; who calls says so where a survey names some.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CodeInForce {
    /// The edition.
    pub edition: Edition,
}

impl CodeInForce {
    /// An edition as published, without local amendments.
    #[must_use]
    pub const fn published(edition: Edition) -> Self {
        Self { edition }
    }
}
