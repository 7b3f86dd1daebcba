//! The estimate of a plan.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::commands::prove::{carried_out, told_of_carried_out};
use crate::law::settle;
use crate::offer_pick::{OfferPick, offer_pick};
use crate::page;
use crate::planning::to_plan_on;
use crate::planning_flags::PlanningFlags;
use crate::workbook::{estimate_workbook, fault, write_workbook};
use clap::ValueEnum;
use remedies::{PlanStatus, estimate_answer};
use std::path::PathBuf;
use std::process::ExitCode;

/// Estimate a plan: what is bought, what is worked, what is charged besides, and what the owner pays
///
/// Opens every price up to its lines. A unit – a piece, a foot, a task done once – has one price in whole cents, and every sum is
/// of what is shown. docs/price-book.md says how a price is worked out.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire estimate --example bungalow\n  thirdwire estimate my-house.toml --prices my-prices.toml --by piece\n  thirdwire estimate my-house.toml --offer 2 --xlsx my-house.xlsx"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// The estimate of this offer, by its number or its name, such as `electronics` (see `thirdwire plan --offers`); without it that
    /// of the offer that the survey says was carried out, where it says one
    #[arg(long, value_name = "OFFER", value_parser = offer_pick, conflicts_with = "budget")]
    offer: Option<OfferPick>,
    /// How the lines are put together
    #[arg(long, value_enum, default_value = "counter", value_name = "HOW")]
    by: By,
    #[command(flatten)]
    planning: PlanningFlags,
    /// Write it as a spreadsheet whose figures can be changed and whose sums follow
    #[arg(long, value_name = "FILE")]
    xlsx: Option<PathBuf>,
    /// Answer as JSON (its schema: `thirdwire schema estimate`)
    #[arg(long)]
    json: bool,
}

/// How the lines of an estimate are put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum By {
    /// Material by where it is bought, labour by task
    Counter,
    /// Every panel end, opening and route with its lines
    Piece,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let book = price_book(args.planning.prices.as_deref(), args.json)?;
    let text = args.source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let law = settle(&args.planning.code, &dwelling.job, &text.folder, args.json)?;
    // A sum of money to stay within asks for another plan than the one that was carried out.
    let done = carried_out(&dwelling).filter(|_| args.offer.is_none() && args.planning.steering.budget.is_none());
    let asked = args.planning.asked(&dwelling, args.offer.or(done.map(OfferPick::Number)))?;
    let (planned, offers) = asked.planned(&dwelling, law.code, &book)?;
    let plan = asked.answer(&planned, offers, &law.answer, &book)?;
    let mut answer = estimate_answer(&planned, &plan);
    answer.notes.extend(done.map(told_of_carried_out));
    if let Some(path) = &args.xlsx {
        write_workbook(path, &estimate_workbook(&answer, &book).map_err(fault)?)?;
    }
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::estimate::render(&answer, args.by == By::Piece))?
    }
    Ok(exit_code(answer.status == PlanStatus::Complete))
}
