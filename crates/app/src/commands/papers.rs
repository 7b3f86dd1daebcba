//! Writes the papers of a job.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::commands::prove::{carried_out, told_of_carried_out};
use crate::law::settle;
use crate::offer_pick::{FIRST, OfferPick, offer_pick};
use crate::planning::to_plan_on;
use crate::planning_flags::PlanningFlags;
use calculations::{Moment, checks_of, expected_readings, state_at};
use clap::ValueEnum;
use closeout::prove;
use drawings::{drawn_as_found, drawn_as_planned};
use dwelling::Day;
use papers::{Drawn, Job, LabelSheet, PaperFault, PaperSize, SetAnswer, SetFile, set_of, two_counts, two_lengths};
use remedies::{PlanStatus, estimate_answer};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Write the papers of the job as PDF: what the owner signs, the crew carries and the inspector keeps
///
/// Plans the dwelling, or one of its offers, and writes a set of papers that belongs together into a folder: proposal, work
/// order, material list, circuit directory, test record, inspection packet, labels. The papers are
/// tagged for those who hear them read, say the same for the same survey byte for byte, and read in black and white.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire papers my-house.toml -o my-papers --date 2026-11-25\n  thirdwire papers my-house.toml -o my-papers --offer 2 --paper a4\n  thirdwire papers my-house.toml -o my-papers --label-size 2x0.5in --label-grid 4x20 --label-margin 0.25x0.5in --label-pitch 2x0.5in"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// The folder to write into; it is made where it does not exist
    #[arg(short, long, value_name = "FOLDER")]
    output: PathBuf,
    /// The papers of this offer, by its number or its name, such as `electronics` (see `thirdwire plan --offers`); without it those
    /// of the offer that the survey says was carried out, where it says one
    #[arg(long, value_name = "OFFER", value_parser = offer_pick, conflicts_with = "budget")]
    offer: Option<OfferPick>,
    /// The size of the paper
    #[arg(long, value_enum, default_value = "letter", value_name = "SIZE")]
    paper: Size,
    /// The day that stands on the papers, such as 2026-11-25; without it a line is left to fill in
    #[arg(long, value_name = "DAY")]
    date: Option<Day>,
    /// The size of a label, such as 2.625x1in or 63.5x38.1mm
    #[arg(long, value_name = "SIZE", value_parser = two_lengths)]
    label_size: Option<(f32, f32)>,
    /// How many labels stand side by side and below one another, such as 3x10
    #[arg(long, value_name = "COUNTS", value_parser = two_counts)]
    label_grid: Option<(u16, u16)>,
    /// From the left and upper edge of the paper to the first label, such as 0.1875x0.5in
    #[arg(long, value_name = "SIZE", value_parser = two_lengths)]
    label_margin: Option<(f32, f32)>,
    /// From one label's left and upper edge to the next one's, such as 2.75x1in
    #[arg(long, value_name = "SIZE", value_parser = two_lengths)]
    label_pitch: Option<(f32, f32)>,
    #[command(flatten)]
    planning: PlanningFlags,
    /// List the files that were written as JSON (its schema: `thirdwire schema papers`)
    #[arg(long)]
    json: bool,
}

/// A size of paper on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Size {
    /// US Letter
    Letter,
    /// ISO A4
    A4,
}

impl Size {
    /// The size that papers are set for.
    #[must_use]
    pub const fn of_paper(self) -> PaperSize {
        match self {
            Self::Letter => PaperSize::Letter,
            Self::A4 => PaperSize::A4,
        }
    }
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let size = args.paper.of_paper();
    let sheet = label_sheet(args, size)?;
    let book = price_book(args.planning.prices.as_deref(), args.json)?;
    let text = args.source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let law = settle(&args.planning.code, &dwelling.job, &text.folder, args.json)?;
    // The proposal shows the offers side by side.
    // A sum of money to stay within asks for another plan than the one that was carried out.
    let done = carried_out(&dwelling).filter(|_| args.offer.is_none() && args.planning.steering.budget.is_none());
    let offer = args.offer.or(done.map(OfferPick::Number)).unwrap_or(FIRST);
    let asked = args.planning.asked(&dwelling, Some(offer))?;
    let (planned, offers) = asked.planned(&dwelling, law.code, &book)?;
    let plan = asked.answer(&planned, offers, &law.answer, &book)?;
    let after = state_at(&planned, Moment::After);
    let number = plan.offers.as_ref().map_or(1, |offers| offers.taken);
    let proof = dwelling.boxes.iter().any(|at| !at.after.is_empty()).then(|| prove(&planned, &plan, number));
    let job = Job {
        dwelling: &dwelling,
        plan: &plan,
        estimate: &estimate_answer(&planned, &plan),
        readings: &expected_readings(&after),
        checks: &checks_of(&after),
        proof: proof.as_ref(),
        floors_before: &drawn_as_found(&dwelling, &planned.facts.diagnosis, None).sheets,
        floors_after: &drawn_as_planned(&planned, None).sheets,
        drawn: &Drawn::of(&planned),
        date: args.date.map(|day| day.to_string()),
    };
    let files = set_of(&job, size, &sheet).map_err(fault)?;
    write_files(&files, &args.output)?;
    let settled = plan.status == PlanStatus::Complete;
    let answer = SetAnswer::of(&job, size, &files, settled);
    if args.json {
        write_json(&answer)?
    } else {
        let done = done.map_or_else(String::new, |offer| format!("{}\n", told_of_carried_out(offer)));
        write_text(&format!("{}{done}", told(&answer, &args.output)))?
    }
    Ok(exit_code(settled))
}

fn fault(fault: PaperFault) -> CommandError {
    CommandError::Fault(format!("{}: {}", fault.paper, fault.what))
}

/// The sheet of labels: the usual one of the paper, with what was stated instead.
fn label_sheet(args: &Args, paper: PaperSize) -> Result<LabelSheet, CommandError> {
    let usual = LabelSheet::usual(paper);
    let sheet = LabelSheet {
        paper,
        label: args.label_size.unwrap_or(usual.label),
        grid: args.label_grid.unwrap_or(usual.grid),
        margin: args.label_margin.unwrap_or(usual.margin),
        pitch: args.label_pitch.or(args.label_size).unwrap_or(usual.pitch),
    };
    sheet.check().map_err(CommandError::Usage)?;
    Ok(sheet)
}

fn write_files(files: &[SetFile], folder: &Path) -> Result<(), CommandError> {
    let told =
        |path: &Path, error: std::io::Error| CommandError::Usage(format!("cannot write `{}`: {error}", path.display()));
    std::fs::create_dir_all(folder).map_err(|error| told(folder, error))?;
    for file in files {
        let path = folder.join(&file.told.file);
        std::fs::write(&path, &file.bytes).map_err(|error| told(&path, error))?;
    }
    Ok(())
}

fn told(answer: &SetAnswer, folder: &Path) -> String {
    let mut page = String::new();
    for file in &answer.files {
        let pages = if file.pages == 1 { "1 page".to_owned() } else { format!("{} pages", file.pages) };
        page.push_str(&format!("written: {}  {}, {pages}\n", folder.join(&file.file).display(), file.title));
    }
    for count in &answer.markings {
        page.push_str(&format!("labels “{}”: {}\n", count.words, count.openings));
    }
    if !answer.settled {
        page.push_str("not settled: what must be found out or asked first stands at the head of the work order\n");
    }
    page
}
