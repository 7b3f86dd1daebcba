//! What every command does alike: read a survey, tell its mistakes, settle the edition, and write the answer.

use crate::command_error::{CommandError, NOT_THE_LAST_WORD};
use dwelling::Dwelling;
use serde::Serialize;
use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use survey::{Diagnostic, Format, MistakesAnswer, Severity};

/// Where a survey comes from.
#[derive(Debug, clap::Args)]
#[group(multiple = false)]
pub struct SurveySource {
    /// The survey: a .toml or .json file, or - to read TOML from standard input
    #[arg(value_name = "SURVEY")]
    pub survey: Option<PathBuf>,
    /// One of the dwellings that come with the program (see `thirdwire example`)
    #[arg(long, value_name = "NAME")]
    pub example: Option<String>,
}

/// A survey's bytes and what to call them.
pub struct SurveyText {
    /// What mistakes name as the file.
    pub name: String,
    /// What was read.
    pub bytes: Vec<u8>,
    /// TOML or JSON.
    pub format: Format,
    /// The folder it lies in, from which it names other files.
    pub folder: PathBuf,
}

impl SurveySource {
    /// Reads the bytes.
    ///
    /// # Errors
    /// [`CommandError::Unreadable`] for a file, [`CommandError::Usage`] for an example that does not exist, or where neither
    /// is named.
    pub fn read(&self) -> Result<SurveyText, CommandError> {
        match (&self.survey, &self.example) {
            (Some(path), _) => read_file(path),
            (None, None) => Err(CommandError::Usage("name a survey or an `--example`; see --help".to_owned())),
            (None, Some(name)) => {
                let example = crate::examples::named(name)?;
                let name = format!("{}.toml", example.name);
                let bytes = example.text.as_bytes().to_vec();
                Ok(SurveyText { name, bytes, format: Format::Toml, folder: PathBuf::new() })
            }
        }
    }
}

/// Reads a file, or standard input for `-`.
///
/// # Errors
/// [`CommandError::Unreadable`].
pub fn read_file(path: &Path) -> Result<SurveyText, CommandError> {
    let unreadable = |error| CommandError::Unreadable(path.to_owned(), error);
    if path == Path::new("-") {
        let mut bytes = Vec::new();
        std::io::stdin().read_to_end(&mut bytes).map_err(unreadable)?;
        let name = "<standard input>".into();
        return Ok(SurveyText { name, bytes, format: Format::Toml, folder: PathBuf::new() });
    }
    let name = path.display().to_string();
    let format = Format::of_file_name(&name);
    let folder = path.parent().map(Path::to_owned).unwrap_or_default();
    Ok(SurveyText { bytes: std::fs::read(path).map_err(unreadable)?, name, format, folder })
}

/// Reads the dwelling out of a survey; tells every mistake on standard error, or as JSON on standard output.
///
/// # Errors
/// [`CommandError::Mistakes`] where there are any.
pub fn dwelling_of(text: &SurveyText, json: bool) -> Result<Dwelling, CommandError> {
    let read = survey::read(&text.bytes, text.format);
    tell(&text.name, &survey::text_of(&text.bytes), &read.diagnostics, json && read.dwelling.is_none())?;
    read.dwelling.ok_or(CommandError::Mistakes)
}

/// Tells mistakes: rendered on standard error, or as one JSON value on standard output.
///
/// # Errors
/// What writing can run into.
pub fn tell(name: &str, text: &str, diagnostics: &[Diagnostic], json: bool) -> Result<(), CommandError> {
    if json {
        return write_json(&MistakesAnswer::of(name, text, diagnostics));
    }
    let mut out = anstream::stderr().lock();
    for diagnostic in diagnostics {
        writeln!(out, "{}\n", survey::render(diagnostic, name, text))?;
    }
    let errors = diagnostics.iter().filter(|diagnostic| diagnostic.severity == Severity::Error).count();
    if errors > 0 {
        let noun = if errors == 1 { "mistake" } else { "mistakes" };
        writeln!(out, "{errors} {noun} in {name}")?;
    }
    Ok(())
}

/// Writes a value as JSON on standard output.
///
/// # Errors
/// What writing can run into.
pub fn write_json(value: &impl Serialize) -> Result<(), CommandError> {
    let text = serde_json::to_string_pretty(value).map_err(|error| CommandError::Fault(error.to_string()))?;
    write_text(&format!("{text}\n"))
}

/// Writes a page on standard output; colours are left out where nobody would see them.
///
/// # Errors
/// What writing can run into.
pub fn write_text(text: &str) -> Result<(), CommandError> {
    let mut out = anstream::stdout().lock();
    out.write_all(text.as_bytes())?;
    Ok(out.flush()?)
}

/// The exit code of an answer.
#[must_use]
pub fn exit_code(is_last_word: bool) -> ExitCode {
    if is_last_word { ExitCode::SUCCESS } else { ExitCode::from(NOT_THE_LAST_WORD) }
}
