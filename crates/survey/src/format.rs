//! The notations a survey can be written in.

/// A notation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Format {
    /// TOML, as people write it.
    Toml,
    /// JSON, as programs write it.
    Json,
}

impl Format {
    /// The notation that a file of this name is in: JSON for names that end in `.json`, TOML for every other.
    #[must_use]
    pub fn of_file_name(name: &str) -> Self {
        if name.to_lowercase().ends_with(".json") { Self::Json } else { Self::Toml }
    }
}
