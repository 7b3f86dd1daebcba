//! survey.
