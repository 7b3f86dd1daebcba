//! remedies.
