//! What can keep a command from answering, and the exit code that tells it.

use std::fmt;
use std::io;
use std::path::PathBuf;
use std::process::ExitCode;

/// The exit code of a survey with mistakes.
pub const MISTAKES: u8 = 1;
/// The exit code of a wrong command line or a file that cannot be read.
pub const USAGE: u8 = 2;
/// The exit code of an answer that is not the last word.
pub const NOT_THE_LAST_WORD: u8 = 3;
/// The exit code of readings after the work that contradict the plan.
pub const CONTRADICTS: u8 = 4;

/// Why a command gave no answer.
#[derive(Debug)]
pub enum CommandError {
    /// A file cannot be read.
    Unreadable(PathBuf, io::Error),
    /// What was asked for does not exist; the message offers the nearest.
    Usage(String),
    /// A survey or another file has mistakes; they are told already.
    Mistakes,
    /// The code in force is not covered.
    NotCovered(String),
    /// The answer could not be written.
    Unwritable(io::Error),
    /// Whoever reads the answer has gone.
    Closed,
    /// A fault of this program.
    Fault(String),
}

impl CommandError {
    /// The exit code that tells it to scripts.
    #[must_use]
    pub fn exit_code(&self) -> ExitCode {
        ExitCode::from(match self {
            Self::Mistakes => MISTAKES,
            Self::Unreadable(..) | Self::Usage(_) | Self::Unwritable(_) => USAGE,
            Self::NotCovered(_) => NOT_THE_LAST_WORD,
            Self::Closed => 0,
            Self::Fault(_) => 70,
        })
    }
}

impl fmt::Display for CommandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable(path, error) => write!(f, "error: cannot read `{}`: {error}", path.display()),
            Self::Usage(message) => write!(f, "error: {message}"),
            Self::Mistakes => f.write_str("nothing was answered: mend the mistakes above first"),
            Self::NotCovered(message) => write!(f, "not checked: {message}"),
            Self::Unwritable(error) => write!(f, "error: the answer could not be written: {error}"),
            Self::Closed => Ok(()),
            Self::Fault(message) => write!(f, "error: a fault of this program, please report it: {message}"),
        }
    }
}

impl From<io::Error> for CommandError {
    fn from(error: io::Error) -> Self {
        if error.kind() == io::ErrorKind::BrokenPipe { Self::Closed } else { Self::Unwritable(error) }
    }
}
