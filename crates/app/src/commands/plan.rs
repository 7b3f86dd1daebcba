//! Plans a whole dwelling.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::prices::price_book;
use crate::commands::stream;
use crate::law::settle;
use crate::offer_pick::{FIRST, OfferPick, offer_pick};
use crate::page;
use crate::planning::{Asked, to_plan_on};
use crate::planning_flags::PlanningFlags;
use remedies::PlanStatus;
use std::process::ExitCode;

/// Plan a dwelling: findings, duties and the cheapest lawful whole
///
/// Reads a survey and answers, opening by opening in walking order, what was found, what is done, with which
/// protection, ground, markings and box, what it costs, and what the code rules out.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire plan --example bungalow\n  thirdwire plan my-house.toml --prices my-prices.toml --json\n  thirdwire plan my-house.toml --ground L-1 B1-2 --keep BA-1 --no-open living\n  thirdwire plan --example flat --offers"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Plan many dwellings: one survey in JSON a line on standard input, one plan a line out, in the same order
    #[arg(long, conflicts_with_all = ["survey", "example", "full", "ground", "keep", "no_open", "budget", "offers", "offer", "next_best", "certificate"])]
    stream: bool,
    #[command(flatten)]
    planning: PlanningFlags,
    /// Show side by side what can be offered, and what each step up buys
    #[arg(long, conflicts_with = "budget")]
    offers: bool,
    /// Plan this offer, by its number or its name: least-money, fewest-walls, electronics, most-grounds, best-value (see `--offers`)
    #[arg(long, value_name = "OFFER", value_parser = offer_pick, conflicts_with = "budget")]
    offer: Option<OfferPick>,
    /// Tell for each opening the next best and what it would cost the whole: a search for each
    #[arg(long)]
    next_best: bool,
    /// Put the certificate that nothing costs less into the JSON: as long as the rest of the plan, or longer
    #[arg(long, requires = "json")]
    certificate: bool,
    /// Answer as JSON (its schema: `thirdwire schema plan`)
    #[arg(long)]
    json: bool,
    /// Show every opening in full, those with nothing to do and the next best included
    #[arg(long, conflicts_with = "json")]
    full: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let book = price_book(args.planning.prices.as_deref(), args.json)?;
    if args.stream {
        return stream::run(&args.planning.code, &book);
    }
    let text = args.source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let law = settle(&args.planning.code, &dwelling.job, &text.folder, args.json)?;
    let offer = args.offer.or(args.offers.then_some(FIRST));
    let next_best = args.next_best || args.full;
    let asked = Asked {
        other_orders: true,
        next_best,
        certificate: args.certificate,
        ..args.planning.asked(&dwelling, offer)?
    };
    let (planned, offers) = asked.planned(&dwelling, law.code, &book)?;
    let answer = asked.answer(&planned, offers, &law.answer, &book)?;
    if args.json {
        write_json(&answer)?
    } else {
        write_text(&page::plan::render(&answer, &dwelling, args.full))?
    }
    Ok(exit_code(answer.status == PlanStatus::Complete))
}
