//! The editions of the National Electrical Code that the rulebook covers.

use std::fmt;

/// An edition of the NEC that somebody has entered into the rulebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Edition {
    /// The 2008 edition.
    Nec2008,
    /// The 2011 edition.
    Nec2011,
    /// The 2014 edition.
    Nec2014,
    /// The 2017 edition.
    Nec2017,
    /// The 2020 edition.
    Nec2020,
    /// The 2023 edition.
    Nec2023,
    /// The 2026 edition: few of its values could be confirmed, and the others are not checked.
    Nec2026,
}

impl Edition {
    /// Every edition covered, earliest first.
    pub const ALL: [Self; 7] =
        [Self::Nec2008, Self::Nec2011, Self::Nec2014, Self::Nec2017, Self::Nec2020, Self::Nec2023, Self::Nec2026];

    /// The edition of this year, if it is covered.
    #[must_use]
    pub fn of_year(year: u16) -> Option<Self> {
        Self::ALL.into_iter().find(|edition| edition.year() == year)
    }

    /// The year of the edition.
    #[must_use]
    pub const fn year(self) -> u16 {
        match self {
            Self::Nec2008 => 2008,
            Self::Nec2011 => 2011,
            Self::Nec2014 => 2014,
            Self::Nec2017 => 2017,
            Self::Nec2020 => 2020,
            Self::Nec2023 => 2023,
            Self::Nec2026 => 2026,
        }
    }
}

impl fmt::Display for Edition {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "NEC {}", self.year())
    }
}
