//! estimate.
