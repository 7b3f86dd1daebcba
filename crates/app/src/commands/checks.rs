//! Checks the numbers of a dwelling before and after its plan.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::law::{CodeFlags, settle};
use crate::page;
use calculations::{Moment, checks_answer, fault_current_chart, leakage_chart, state_at};
use dwelling::CircuitIndex;
use remedies::{PlanFault, Planned};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Check the numbers: box fill, breakers, grounding wires, fault current, voltage drop, leakage
///
/// Holds every box, run and GFCI against what is required or advised, as found and as the plan leaves it, and tells what
/// a meter must read afterwards. What the survey does not state is not checked, and said to be found out.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Example:\n  thirdwire checks --example bungalow\n  thirdwire checks my-house.toml --after --svg charts"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Your own price book, on which the plan rests (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    #[command(flatten)]
    code: CodeFlags,
    /// Only as it was found
    #[arg(long, conflicts_with = "after")]
    before: bool,
    /// Only as the plan leaves it
    #[arg(long)]
    after: bool,
    /// Draw the fault currents of each circuit and the leakage behind each GFCI into this folder
    #[arg(long, value_name = "FOLDER")]
    svg: Option<PathBuf>,
    /// Answer as JSON (its schema: `thirdwire schema checks`)
    #[arg(long)]
    json: bool,
    /// Show every check, those that came out well included
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let book = price_book(args.prices.as_deref(), args.json)?;
    let law = settle(&args.code, &dwelling.job, &text.folder, args.json)?;
    let planned =
        Planned::of(&dwelling, law.code, &book).map_err(|PlanFault(faults)| CommandError::Fault(faults.join("; ")))?;
    let moments: &[Moment] = match (args.before, args.after) {
        (true, _) => &[Moment::Before],
        (_, true) => &[Moment::After],
        _ => &[Moment::Before, Moment::After],
    };
    let answer = checks_answer(&planned, &law.answer, moments);
    let drawn = match &args.svg {
        Some(folder) => draw(&planned, moments, folder)?,
        None => Vec::new(),
    };
    if args.json {
        write_json(&answer)?;
    } else {
        write_text(&page::checks::render(&answer, &planned, args.full, &drawn))?;
    }
    Ok(exit_code(answer.is_last_word()))
}

/// Draws the charts of each moment into a folder; the names of the files.
fn draw(planned: &Planned, moments: &[Moment], folder: &Path) -> Result<Vec<String>, CommandError> {
    let told =
        |path: &Path, error: std::io::Error| CommandError::Usage(format!("cannot write `{}`: {error}", path.display()));
    std::fs::create_dir_all(folder).map_err(|error| told(folder, error))?;
    let mut drawn: Vec<String> = Vec::new();
    for moment in moments {
        let state = state_at(planned, *moment);
        let circuits = state.dwelling.circuits.iter().enumerate();
        let mut charts: Vec<(String, Option<String>)> = circuits
            .map(|(at, circuit)| (format!("circuit-{}", circuit.id), fault_current_chart(&state, CircuitIndex(at))))
            .collect();
        charts.push(("leakage".to_owned(), leakage_chart(&state)));
        for (name, chart) in charts.into_iter().filter_map(|(name, chart)| Some((name, chart?))) {
            let name = file_name(&format!("{moment}-{name}"), &drawn);
            let path = folder.join(&name);
            std::fs::write(&path, chart).map_err(|error| told(&path, error))?;
            drawn.push(name);
        }
    }
    Ok(drawn)
}

/// A file name of letters, digits and hyphens that is not taken yet.
fn file_name(wanted: &str, taken: &[String]) -> String {
    let plain: String =
        wanted.chars().map(|letter| if letter.is_ascii_alphanumeric() { letter } else { '-' }).collect();
    let names = std::iter::once(format!("{plain}.svg")).chain((2..).map(|number| format!("{plain}-{number}.svg")));
    let mut free = names.filter(|name| !taken.contains(name));
    free.next().unwrap_or(plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_stay_inside_their_folder_and_apart() {
        assert_eq!(file_name("after-circuit-../../x", &[]), "after-circuit-------x.svg");
        assert_eq!(file_name("a/b", &["a-b.svg".to_owned()]), "a-b-2.svg");
    }
}
