//! Settles the code in force: from the command line, the survey, the built-in records of places, and a file of local code.

use crate::answering::{read_file, tell, write_json};
use crate::command_error::CommandError;
use dwelling::{Day, Job};
use remedies::LawAnswer;
use rulebook::{Adopted, CodeInForce, Edition, NotChecked, adopted};
use std::path::{Path, PathBuf};

/// The code in force, where the survey does not say it or something else is to be tried.
#[derive(Debug, Default, clap::Args)]
pub struct CodeFlags {
    /// The edition of the code, as published, instead of what the survey states
    #[arg(long, value_name = "YEAR", conflicts_with = "place")]
    pub edition: Option<u16>,
    /// The place whose adoption counts (see `thirdwire places`), instead of what the survey states
    #[arg(long, value_name = "PLACE")]
    pub place: Option<String>,
    /// The day of the permit, such as 2025-07-01
    #[arg(long, value_name = "DAY")]
    pub permit_date: Option<Day>,
    /// A file of local changes to the code, instead of the one the survey names
    #[arg(long, value_name = "FILE")]
    pub local_code: Option<PathBuf>,
}

/// The code in force and what is to be said of it.
pub struct Law {
    /// The code.
    pub code: CodeInForce,
    /// What is to be said of it.
    pub answer: LawAnswer,
}

/// Settles the code in force for a job whose survey lies in this folder; tells as JSON where it cannot be settled.
///
/// # Errors
/// [`CommandError::NotCovered`] where the edition is not stated, not covered or not recorded;
/// [`CommandError::Mistakes`] where the file of local code has any.
pub fn settle(flags: &CodeFlags, job: &Job, folder: &Path, json: bool) -> Result<Law, CommandError> {
    let settled = try_settle(flags, job, folder, json);
    settled.inspect_err(|error| {
        if let (CommandError::NotCovered(message), true) = (error, json) {
            let year = flags.edition.or(job.edition);
            let _told = write_json(&serde_json::json!({ "edition": year, "not_checked": message }));
        }
    })
}

fn try_settle(flags: &CodeFlags, job: &Job, folder: &Path, json: bool) -> Result<Law, CommandError> {
    let day = flags.permit_date.or(job.permit_day);
    let place = flags.place.as_ref().or(if flags.edition.is_some() { None } else { job.place.as_ref() });
    let local = local_code(flags, job, folder, json)?;
    let local_edition = local.as_ref().and_then(|local| local.edition);
    let stated = flags.edition.or(local_edition).or(if flags.place.is_some() { None } else { job.edition });
    let (mut code, mut answer) = match place {
        Some(place) => of_place(place, day, stated, job)?,
        None => {
            let mut code = published(stated)?;
            code.permit_day = day;
            let answer = LawAnswer::of(&code);
            (code, answer)
        }
    };
    if let Some(local) = local {
        let by = local.amendment.by();
        for (question, yes) in local.answers {
            code.policy = code.policy.with(question, yes, by.clone());
        }
        code = code.amended(local.amendment);
        let (warnings, doubts, place) = (answer.warnings, answer.doubts, answer.place);
        answer = LawAnswer { warnings, doubts, place, ..LawAnswer::of(&code) };
    }
    Ok(Law { code, answer })
}

/// The code that a place adopted; where the survey states another edition that one counts, and the difference is told.
fn of_place(
    place: &str,
    day: Option<Day>,
    stated: Option<u16>,
    job: &Job,
) -> Result<(CodeInForce, LawAnswer), CommandError> {
    let found = adopted(place, day, job.dwelling_use);
    let Adopted { code, title, as_of, warnings, .. } = match (found, stated) {
        (Ok(adopted), _) => adopted,
        (Err(NotChecked { because }), None) => return Err(CommandError::NotCovered(because)),
        (Err(NotChecked { because }), Some(_)) => {
            let mut code = published(stated)?;
            code.permit_day = day;
            let doubts = vec![format!("the stated edition is taken as published: {because}")];
            let answer = LawAnswer { doubts, ..LawAnswer::of(&code) };
            return Ok((code, answer));
        }
    };
    let mut doubts = Vec::new();
    let code = match stated {
        Some(year) if year != code.edition.year() => {
            doubts.push(format!(
                "the {year} edition is stated, and the record of {title} says {}: ask the authority; planned on {year} as published",
                code.edition.year()
            ));
            let mut stated = published(stated)?;
            stated.permit_day = day;
            stated
        }
        _ => code,
    };
    let warnings = warnings.iter().map(|warning| format!("{title}, as of {as_of}: {warning}")).collect();
    let answer = LawAnswer { place: Some(title.to_owned()), warnings, doubts, ..LawAnswer::of(&code) };
    Ok((code, answer))
}

/// An edition as published.
///
/// # Errors
/// [`CommandError::NotCovered`] for an edition that is not stated or not covered.
pub fn published(year: Option<u16>) -> Result<CodeInForce, CommandError> {
    let covered: Vec<String> = Edition::ALL.iter().map(|edition| edition.year().to_string()).collect();
    let covered = covered.join(", ");
    let Some(year) = year else {
        let message =
            format!("the edition of the code in force is not stated; ask the authority. Covered are {covered}");
        return Err(CommandError::NotCovered(message));
    };
    let edition = Edition::of_year(year)
        .ok_or_else(|| CommandError::NotCovered(format!("the {year} edition is not covered; covered are {covered}")))?;
    Ok(CodeInForce::published(edition))
}

fn local_code(
    flags: &CodeFlags,
    job: &Job,
    folder: &Path,
    json: bool,
) -> Result<Option<survey::LocalCode>, CommandError> {
    let path = match (&flags.local_code, &job.amendments) {
        (Some(path), _) => path.clone(),
        (None, Some(name)) => folder.join(name),
        (None, None) => return Ok(None),
    };
    let text = read_file(&path)?;
    let (code, diagnostics) = survey::read_local_code(&text.bytes);
    tell(&text.name, &survey::text_of(&text.bytes), &diagnostics, json && code.is_none())?;
    code.map(Some).ok_or(CommandError::Mistakes)
}
