//! Draws the floors of a dwelling, or its circuits with what is believed of them.

use crate::answering::{SurveySource, dwelling_of, exit_code, write_json, write_text};
use crate::command_error::CommandError;
use crate::commands::practice::practice_of;
use crate::commands::prices::price_book;
use crate::law::{CodeFlags, settle};
use crate::named::box_named;
use crate::planning::to_plan_on;
use diagnosis::belief::believe;
use drawings::{
    DrawingAnswer, NotPlaced, SheetAnswer, ThingKind, drawn_as_found, drawn_as_planned, drawn_box, drawn_circuits,
    floors_of, one_line_as_found, one_line_as_planned, wiring_as_found, wiring_as_planned,
};
use dwelling::{CircuitIndex, Dwelling};
use remedies::{PlanFault, Planned};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// The flags that ask for floors or for a plan: drawings of circuits show neither.
const OF_FLOORS: [&str; 8] = ["floor", "before", "after", "prices", "edition", "place", "permit_date", "local_code"];
/// The flags that ask for something else than the wiring of one box or the one-line.
const NOT_OF_A_BOX: [&str; 4] = ["floor", "circuits", "circuit", "practice"];

/// Draw the plan of each floor: rooms, boxes, what feeds what, grounds, and the work of the plan
///
/// Draws an SVG of 7.6 by 10.1 inches, which prints at a usual scale on Letter and on A4 and reads in black and white. What
/// the survey gives no position is listed beside the plan, never drawn where it might be.
///
/// With `--box` it draws the wiring of one box: its cables, what is joined to what, its device, what is taken out.
///
/// With `--one-line` it draws each panel with its circuits as trees: ratings, protection, grounds, shared neutrals.
///
/// With `--circuits` or `--circuit` it draws the circuits instead, as boxes are fed from the panel: how likely each state of
/// each ground is, where a ground stops, what clashes, and what to test or open next.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  thirdwire draw --example bungalow > bungalow.svg\n  thirdwire draw my-house.toml --floor 2 -o floor-2.svg\n  thirdwire draw my-house.toml --before -o as-found.svg\n  thirdwire draw --example bungalow --box L-3 > box-L-3.svg\n  thirdwire draw my-house.toml --box K-1 --before -o K-1.svg\n  thirdwire draw --example bungalow --circuit 3 > circuit-3.svg\n  thirdwire draw my-house.toml --circuits -o circuits.svg"
)]
pub struct Args {
    #[command(flatten)]
    source: SurveySource,
    /// Only this floor: 0 the basement or ground, 1 the first floor, and so on
    #[arg(long, value_name = "N", allow_negative_numbers = true)]
    floor: Option<i8>,
    /// The circuits instead of the floors, with what is believed of every box and run by all that was read and seen
    #[arg(long, conflicts_with_all = OF_FLOORS)]
    circuits: bool,
    /// Only this circuit, drawn as with `--circuits`, with the one that shares its neutral
    #[arg(long, value_name = "CIRCUIT", conflicts_with = "circuits", conflicts_with_all = OF_FLOORS)]
    circuit: Option<String>,
    /// The wiring of this box instead of the floors
    #[arg(long = "box", value_name = "BOX", conflicts_with_all = NOT_OF_A_BOX)]
    one_box: Option<String>,
    /// The one-line instead of the floors: each panel, and its circuits as trees of openings
    #[arg(long, conflicts_with_all = NOT_OF_A_BOX, conflicts_with = "one_box")]
    one_line: bool,
    /// Write into this file; where there are more sheets than one, each gets its floor or number in its name
    #[arg(short, long, value_name = "FILE", conflicts_with = "json")]
    output: Option<PathBuf>,
    /// As it was found, without a plan
    #[arg(long, conflicts_with = "after")]
    before: bool,
    /// As the plan leaves it, with the work (so it is drawn unless asked otherwise)
    #[arg(long)]
    after: bool,
    /// Your own price book, on which the plan rests (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    /// Your own figures of what is common in old wiring, on which drawings of circuits rest (see `thirdwire practice`)
    #[arg(long, value_name = "FILE", conflicts_with_all = OF_FLOORS)]
    practice: Option<PathBuf>,
    #[command(flatten)]
    code: CodeFlags,
    /// Answer as JSON (its schema: `thirdwire schema draw`)
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let text = args.source.read()?;
    let dwelling = dwelling_of(&text, args.json)?;
    let floor = args.floor.map(|floor| existing(&dwelling, floor)).transpose()?;
    let answer = if args.circuits || args.circuit.is_some() {
        let only = args.circuit.as_ref().map(|id| circuit_named(&dwelling, id)).transpose()?;
        let practice = practice_of(args.practice.as_deref(), args.json)?;
        let beliefs = believe(&dwelling, &practice.priors);
        drawn_circuits(&dwelling, &beliefs, &beliefs.advice(&dwelling, &practice.stakes), only)
    } else if args.practice.is_some() {
        let message = "`--practice` is for drawings of circuits: add `--circuits` or `--circuit`";
        return Err(CommandError::Usage(message.to_owned()));
    } else if args.before {
        let diagnosis = diagnosis::diagnose(&dwelling);
        match &args.one_box {
            Some(id) => drawn_box(&dwelling, wiring_as_found(&dwelling, &diagnosis, box_named(&dwelling, id)?)),
            None if args.one_line => one_line_as_found(&dwelling, &diagnosis),
            None => drawn_as_found(&dwelling, &diagnosis, floor),
        }
    } else {
        let book = price_book(args.prices.as_deref(), args.json)?;
        let law = settle(&args.code, &dwelling.job, &text.folder, args.json)?;
        let dwelling = to_plan_on(dwelling);
        let planned = Planned::of(&dwelling, law.code, &book)
            .map_err(|PlanFault(faults)| CommandError::Fault(faults.join("; ")))?;
        match &args.one_box {
            Some(id) => drawn_box(&dwelling, wiring_as_planned(&planned, box_named(&dwelling, id)?)),
            None if args.one_line => one_line_as_planned(&planned),
            None => drawn_as_planned(&planned, floor),
        }
    };
    match &args.output {
        _ if args.json => write_json(&answer)?,
        Some(path) => write_text(&written(&answer, path)?)?,
        None => write_text(&only_sheet(&answer)?.svg)?,
    }
    Ok(exit_code(answer.is_last_word()))
}

/// The floor of this number, where the dwelling has it.
fn existing(dwelling: &Dwelling, floor: i8) -> Result<Option<i8>, CommandError> {
    let floors = floors_of(dwelling);
    if floors.contains(&Some(floor)) {
        return Ok(Some(floor));
    }
    let names: Vec<String> = floors.iter().flatten().map(ToString::to_string).collect();
    let there = match names.as_slice() {
        [] => "the survey states no floor of any room".to_owned(),
        [one] => format!("there is floor {one}"),
        more => format!("there are floors {}", more.join(", ")),
    };
    Err(CommandError::Usage(format!("there is nothing on floor {floor}; {there}")))
}

/// The circuit of this name.
fn circuit_named(dwelling: &Dwelling, id: &str) -> Result<CircuitIndex, CommandError> {
    let position = dwelling.circuits.iter().position(|circuit| circuit.id == id);
    position.map(CircuitIndex).ok_or_else(|| {
        let names: Vec<&str> = dwelling.circuits.iter().map(|circuit| circuit.id.as_str()).collect();
        CommandError::Usage(format!("there is no circuit `{id}`; there are {}", names.join(", ")))
    })
}

/// The sheet, where there is one.
fn only_sheet(answer: &DrawingAnswer) -> Result<&SheetAnswer, CommandError> {
    match answer.sheets.as_slice() {
        [sheet] => Ok(sheet),
        [] => Err(CommandError::Usage("the survey has neither rooms nor boxes to draw".to_owned())),
        [first, ..] if !first.circuits.is_empty() => Err(CommandError::Usage(format!(
            "there are {} sheets, and one drawing holds one: name a file with `-o`, or a circuit with `--circuit`",
            answer.sheets.len()
        ))),
        sheets => Err(CommandError::Usage(format!(
            "there are {} sheets, and one drawing holds one: name a file with `-o`, or a floor with `--floor`",
            sheets.len()
        ))),
    }
}

/// Writes each sheet into a file, and tells what was written and what could not be drawn.
fn written(answer: &DrawingAnswer, path: &Path) -> Result<String, CommandError> {
    let mut page = String::new();
    if answer.sheets.is_empty() {
        only_sheet(answer)?;
    }
    for (position, sheet) in answer.sheets.iter().enumerate() {
        let path = if answer.sheets.len() == 1 { path.to_owned() } else { path_of(answer, position, path) };
        let unwritable = |error| CommandError::Usage(format!("cannot write `{}`: {error}", path.display()));
        std::fs::write(&path, &sheet.svg).map_err(unwritable)?;
        page.push_str(&format!("drawn: {}  {}\n", path.display(), sheet.title));
    }
    let missing = |kind| move |thing: &&NotPlaced| thing.kind == kind;
    let boxes: Vec<&str> =
        answer.not_placed.iter().filter(missing(ThingKind::Box)).map(|thing| thing.id.as_str()).collect();
    if !boxes.is_empty() {
        let why = if answer.sheets.iter().any(|sheet| !sheet.circuits.is_empty()) {
            "drawn beside the trees, since nobody knows what feeds them"
        } else {
            "listed beside the plan, since the survey does not say where they are"
        };
        page.push_str(&format!("{why}: {}\n", boxes.join(", ")));
    }
    Ok(page)
}

/// The path of one of many sheets: its floor stands in its name, and its number where a floor has several; of circuits its
/// number alone.
fn path_of(answer: &DrawingAnswer, position: usize, path: &Path) -> PathBuf {
    let floor = answer.sheets[position].floor;
    let earlier = answer.sheets[..position].iter().filter(|sheet| sheet.floor == floor).count();
    let stem = path.file_stem().map_or_else(String::new, |stem| stem.to_string_lossy().into_owned());
    let floor = floor.map_or("not-stated".to_owned(), |floor| floor.to_string());
    let part = if earlier == 0 { String::new() } else { format!("-sheet-{}", earlier + 1) };
    let part = match answer.sheets.iter().any(|sheet| !sheet.circuits.is_empty()) {
        true => format!("sheet-{}", position + 1),
        false => format!("floor-{floor}{part}"),
    };
    let extension = path.extension().map_or_else(|| "svg".into(), |extension| extension.to_string_lossy());
    path.with_file_name(format!("{stem}-{part}.{extension}"))
}
