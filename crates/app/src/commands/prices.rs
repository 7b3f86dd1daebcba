//! The price book: prints it, and reads one's own.

use crate::answering::{read_file, tell, write_json, write_text};
use crate::command_error::CommandError;
use crate::workbook::{PriceSheets, fault, is_workbook, price_book_workbook, write_workbook};
use estimate::{Line, Material, Percent, PriceBook, Task, WorkCondition};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value, json};
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Print the price book: the invented demo figures, or one's own file as it was understood
///
/// Every figure can be replaced by one's own: what things cost, how long work takes and under which conditions longer, who
/// works, what is charged besides. docs/price-book.md lists every key and says how a price is worked out.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire prices > my-prices.toml\n  thirdwire prices my-prices.toml --json\n  thirdwire prices my-prices.toml --xlsx my-prices.xlsx"
)]
pub struct Args {
    /// Your own price book: a .toml or .xlsx file
    #[arg(value_name = "FILE")]
    file: Option<PathBuf>,
    /// The same
    #[arg(long, value_name = "FILE", conflicts_with = "file", hide = true)]
    prices: Option<PathBuf>,
    /// Write it as a spreadsheet, which can be read back
    #[arg(long, value_name = "FILE")]
    xlsx: Option<PathBuf>,
    /// Answer as JSON (its schema: `thirdwire schema price-book`)
    #[arg(long)]
    json: bool,
}

/// A price book as it was understood, with what a unit is charged at. Maps are by the names of the price book.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PriceBookAnswer {
    /// The version of this answer's shape.
    format: u32,
    /// Whether its figures are the invented ones that come with the tool.
    demo: bool,
    /// An hour of an electrician's work, in cents.
    hour_cents: i64,
    /// An hour of a helper's work, in cents; null where there is none.
    helper_hour_cents: Option<i64>,
    /// What each thing costs by the piece or the foot, in cents; null where the book has no price.
    material_cents: Map<String, Value>,
    /// What each thing is charged at: waste, markup and tax included, in cents; null where the book has no price.
    charged_cents: Map<String, Value>,
    /// In what packs things are sold; what is not here is sold by the piece or the foot.
    packs: Map<String, Value>,
    /// How long each task takes on the site, in minutes; null where the book does not say.
    minutes: Map<String, Value>,
    /// What each task costs once under no condition, in cents; null where the book does not say.
    task_cents: Map<String, Value>,
    /// The tasks that take an electrician and a helper.
    tasks_for_two: Vec<Task>,
    /// What each condition makes of the plain time, in percent.
    conditions: Map<String, Value>,
    /// What is charged besides.
    charges: ChargesAnswer,
}

/// What is charged besides material and labour.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ChargesAnswer {
    /// Of what goes by the foot, cut off and thrown away: percent.
    waste_percent: f64,
    /// On the cost of material: percent.
    markup_percent: f64,
    /// On material, its markup included: percent.
    tax_percent: f64,
    /// For each working day, in cents.
    trip_cents: i64,
    /// Hours of a day that are worked on the site.
    hours_a_day: u32,
    /// The fee of the permit, in cents.
    permit_cents: i64,
    /// On material, labour and trips: percent.
    contingency_percent: f64,
    /// The least that a job is done for, in cents.
    minimum_cents: i64,
    /// The total is rounded up to a multiple of this, in cents; 0 where it is not.
    round_to_cents: i64,
}

impl PriceBookAnswer {
    fn of(book: &PriceBook) -> Self {
        let charges = book.charges();
        let things = |of: &dyn Fn(Material) -> Value| by_name(Material::ALL, |thing| thing.name(), of);
        let tasks = |of: &dyn Fn(Task) -> Value| by_name(Task::ALL, |task| task.name(), of);
        let mut packs = things(&|thing| json!(book.packs(thing)));
        packs.retain(|_, sizes| *sizes != json!([]));
        Self {
            format: 1,
            demo: book.is_demo,
            hour_cents: book.hour().0,
            helper_hour_cents: book.helper_hour().map(|cents| cents.0),
            material_cents: things(&|thing| book.has_thing(thing).then(|| book.cost(thing).0).into()),
            charged_cents: things(&|thing| book.has_thing(thing).then(|| book.charged(thing).0).into()),
            packs,
            minutes: tasks(&|task| book.has_task(task).then(|| book.minutes(task)).into()),
            task_cents: tasks(&|task| book.has_task(task).then(|| book.unit(Line::once(task)).labour.0).into()),
            tasks_for_two: Task::ALL.iter().copied().filter(|task| book.takes_two(*task)).collect(),
            conditions: by_name(WorkCondition::ALL, |one| one.name(), &|one| book.percent(one).into()),
            charges: ChargesAnswer {
                waste_percent: in_percent(charges.waste),
                markup_percent: in_percent(charges.markup),
                tax_percent: in_percent(charges.tax),
                trip_cents: charges.trip.0,
                hours_a_day: charges.hours_a_day,
                permit_cents: charges.permit.0,
                contingency_percent: in_percent(charges.contingency),
                minimum_cents: charges.minimum.0,
                round_to_cents: charges.round_to.0,
            },
        }
    }
}

fn in_percent(percent: Percent) -> f64 {
    f64::from(percent.0) / 100.0
}

fn by_name<T: Copy>(all: &[T], name: fn(T) -> &'static str, of: &dyn Fn(T) -> Value) -> Map<String, Value> {
    all.iter().map(|one| (name(*one).to_owned(), of(*one))).collect()
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let book = price_book(args.file.as_deref().or(args.prices.as_deref()), args.json)?;
    if let Some(path) = &args.xlsx {
        write_workbook(path, &price_book_workbook(&book).map_err(fault)?)?;
    }
    if args.json {
        write_json(&PriceBookAnswer::of(&book))?;
    } else if args.xlsx.is_none() {
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
    if is_workbook(path) {
        return from_workbook(path, json);
    }
    let text = read_file(path)?;
    let (book, diagnostics) = survey::read_prices(&text.bytes);
    tell(&text.name, &survey::text_of(&text.bytes), &diagnostics, json && book.is_none())?;
    book.ok_or(CommandError::Mistakes)
}

/// The price book of a spreadsheet; every mistake is told with its sheet and cell.
fn from_workbook(path: &Path, json: bool) -> Result<PriceBook, CommandError> {
    let text = read_file(path)?;
    let sheets = PriceSheets::read(&text.bytes)
        .map_err(|why| CommandError::Usage(format!("cannot read `{}`: {why}", path.display())))?;
    let (book, diagnostics) = sheets.prices();
    if json && book.is_none() {
        tell(&text.name, sheets.text(), &sheets.with_cells(diagnostics), true)?;
    } else {
        let mut out = anstream::stderr().lock();
        for diagnostic in &diagnostics {
            writeln!(out, "{}", sheets.rendered(diagnostic, &text.name))?;
        }
        if book.is_none() {
            let noun = if diagnostics.len() == 1 { "mistake" } else { "mistakes" };
            writeln!(out, "{} {noun} in {}", diagnostics.len(), text.name)?;
        }
    }
    book.ok_or(CommandError::Mistakes)
}
