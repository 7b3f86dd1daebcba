//! The price book: prints it, and reads one's own.

use crate::answering::{read_file, tell, write_json, write_text};
use crate::command_error::CommandError;
use estimate::{Material, PriceBook, Task};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Print the price book: the invented demo figures, or one's own file as it was understood
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Example:\n  thirdwire prices > my-prices.toml\n  thirdwire prices --prices my-prices.toml --json"
)]
pub struct Args {
    /// Your own price book
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    /// Answer as JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let book = price_book(args.prices.as_deref(), args.json)?;
    if args.json {
        let material: serde_json::Map<_, _> =
            Material::ALL.iter().map(|thing| (thing.name().to_owned(), book.cost(*thing).0.into())).collect();
        let minutes: serde_json::Map<_, _> =
            Task::ALL.iter().map(|task| (task.name().to_owned(), book.minutes(*task).into())).collect();
        write_json(&serde_json::json!({
            "demo": book.is_demo, "hour_cents": book.hour.0, "material_cents": material, "minutes": minutes,
        }))?;
    } else {
        write_text(&book.to_toml())?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The price book of a file, or the demo one.
///
/// # Errors
/// [`CommandError::Mistakes`] where the file has any.
pub fn price_book(path: Option<&Path>, json: bool) -> Result<PriceBook, CommandError> {
    let Some(path) = path else { return Ok(PriceBook::demo()) };
    let text = read_file(path)?;
    let (book, diagnostics) = survey::read_prices(&text.bytes);
    tell(&text.name, &survey::text_of(&text.bytes), &diagnostics, json && book.is_none())?;
    book.ok_or(CommandError::Mistakes)
}
