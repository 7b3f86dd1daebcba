//! A value of the code together with its edition, its section and how it is known.

use crate::code::CodeInForce;
use crate::edition::Edition;
use crate::in_words::InWords;
use std::fmt;

/// How a value of the code is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Known {
    /// Somebody read it in the named public source.
    Read(&'static str),
    /// It is remembered; nobody found a public source to read it in.
    FromMemory,
    /// Sources read it in two ways; the text gives both.
    Disputed(&'static str),
}

/// Where a statement stands in the code, and how that is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Citation {
    /// The edition.
    pub edition: Edition,
    /// The section, such as `406.4(D)(2)(b)` or `Table 250.122`.
    pub section: &'static str,
    /// How it is known.
    pub known: Known,
}

impl fmt::Display for Citation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {}", self.edition, self.section)
    }
}

/// A value taken out of the code, with its citation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cited<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub cite: Citation,
}

/// One edition's value as somebody entered it.
#[derive(Clone, Copy, Debug)]
pub struct Reading<T> {
    /// The edition.
    pub edition: Edition,
    /// The section in that edition.
    pub section: &'static str,
    /// How it is known.
    pub known: Known,
    /// The value.
    pub value: T,
}

impl<T> Reading<T> {
    /// A value that somebody read in the named public source.
    #[must_use]
    pub const fn read(edition: Edition, section: &'static str, source: &'static str, value: T) -> Self {
        Self { edition, section, known: Known::Read(source), value }
    }

    /// A value that is remembered and was found in no public source.
    #[must_use]
    pub const fn remembered(edition: Edition, section: &'static str, value: T) -> Self {
        Self { edition, section, known: Known::FromMemory, value }
    }

    /// A value that was read in the 2011 text (California Electrical Code 2013, which adopts it) and is remembered to stand
    /// unchanged: nobody has read it in a text of this edition, so it rests on memory.
    #[must_use]
    pub const fn unchanged_since_2011(edition: Edition, section: &'static str, value: T) -> Self {
        Self::remembered(edition, section, value)
    }

    /// A value that sources read in two ways; `value` is the one used, the text gives both.
    #[must_use]
    pub const fn disputed(edition: Edition, section: &'static str, both: &'static str, value: T) -> Self {
        Self { edition, section, known: Known::Disputed(both), value }
    }
}

/// A value of the code by edition: one reading for each edition that somebody has entered, and no other.
#[derive(Clone, Copy, Debug)]
pub struct ByEdition<T: 'static> {
    /// A stable name, such as `boxes.ground-fill.sharing-first-allowance`.
    pub id: &'static str,
    /// The readings, earliest edition first.
    pub readings: &'static [Reading<T>],
}

/// Why a question of the code has no answer: never a pass.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotChecked {
    /// The value or the fact that is missing, in words.
    pub because: String,
}

impl<T: Copy> ByEdition<T> {
    /// The value in the edition in force with its citation.
    ///
    /// # Errors
    /// [`NotChecked`] where nobody has entered this edition: last edition's value is never used in its stead.
    pub fn in_force(&self, code: &CodeInForce) -> Result<Cited<T>, NotChecked> {
        let edition = code.edition;
        let reading = self.readings.iter().find(|reading| reading.edition == edition);
        let reading = reading.ok_or_else(|| NotChecked {
            because: format!("`{}` has not been read for {edition}: ask the authority", self.id),
        })?;
        let cite = Citation { edition, section: reading.section, known: reading.known };
        Ok(Cited { value: reading.value, cite })
    }
}

/// A value of the code whatever its type: its name, and for each edition what it is, where it stands and how it is known.
pub trait Value: Sync {
    /// Its stable name.
    fn id(&self) -> &'static str;
    /// Its citations, one for each edition that somebody has entered.
    fn citations(&self) -> Vec<Citation>;
    /// What it is in this edition, in words; nothing where nobody has entered it.
    fn in_words(&self, edition: Edition) -> Option<String>;
}

impl<T: Sync + InWords> Value for ByEdition<T> {
    fn id(&self) -> &'static str {
        self.id
    }

    fn citations(&self) -> Vec<Citation> {
        let cite = |reading: &Reading<T>| Citation {
            edition: reading.edition,
            section: reading.section,
            known: reading.known,
        };
        self.readings.iter().map(cite).collect()
    }

    fn in_words(&self, edition: Edition) -> Option<String> {
        let reading = self.readings.iter().find(|reading| reading.edition == edition)?;
        Some(reading.value.in_words())
    }
}
