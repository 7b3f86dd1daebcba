//! Lists the built-in records of what places adopted.

use crate::answering::{write_json, write_text};
use crate::command_error::CommandError;
use dwelling::nearest;
use remedies::how_known;
use rulebook::{ASK_THE_AUTHORITY, Adoption, Record, Since, adoptions};
use serde_json::{Value, json};
use std::fmt::Write as _;
use std::process::ExitCode;

/// List what places adopted, as far as it is built in, with the dates the records speak for
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire places\n  thirdwire places south-carolina --json")]
pub struct Args {
    /// A place; all, where none is named
    place: Option<String>,
    /// Answer as JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let chosen: Vec<&Adoption> = match &args.place {
        None => adoptions().iter().collect(),
        Some(place) => {
            let found = adoptions().iter().find(|adoption| adoption.place == *place);
            vec![found.ok_or_else(|| {
                let near = nearest(place, adoptions().iter().map(|adoption| adoption.place));
                let near = near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
                CommandError::Usage(format!("there is no record of `{place}`{near}"))
            })?]
        }
    };
    if args.json {
        let places: Vec<Value> = chosen.iter().map(|adoption| as_json(adoption)).collect();
        write_json(&json!({ "warning": ASK_THE_AUTHORITY, "places": places }))?;
    } else {
        let mut page = format!("{ASK_THE_AUTHORITY}.\n\n");
        chosen.iter().for_each(|adoption| write_place(&mut page, adoption, args.place.is_some()));
        write_text(&page)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn since(record: &Record) -> String {
    match record.since {
        Since::On(day) => format!("since {day}"),
        Since::SeenOn(day) => format!("in force on {day}"),
    }
}

fn as_json(adoption: &Adoption) -> Value {
    let records = adoption.records.iter().map(|record| {
        let changes: Vec<String> = (record.amendments)().iter().map(|amendment| amendment.by()).collect();
        json!({
            "since": since(record), "edition": record.edition.year(), "known": how_known(Some(record.known)),
            "earlier_until": record.earlier_until.map(|day| day.to_string()), "changed_by": changes,
            "not_for": record.not_for.iter().map(|(used, why)| json!({ "use": used, "why": why })).collect::<Vec<_>>(),
        })
    });
    json!({
        "place": adoption.place, "title": adoption.title, "as_of": adoption.as_of.to_string(),
        "records": records.collect::<Vec<_>>(), "remarks": adoption.remarks,
    })
}

fn write_place(page: &mut String, adoption: &Adoption, in_full: bool) {
    for record in adoption.records {
        let amended = if (record.amendments)().is_empty() { "" } else { ", amended" };
        let (place, as_of) = (adoption.place, adoption.as_of);
        let _ = writeln!(page, "{place:<16} {}  {}{amended}; as of {as_of}", record.edition, since(record));
        if in_full {
            let _ = writeln!(page, "                 {}", how_known(Some(record.known)));
            for amendment in (record.amendments)() {
                let _ = writeln!(page, "                 changed by {}", amendment.by());
                for change in &amendment.changes {
                    let _ = writeln!(page, "                   {}", change_in_words(change));
                }
            }
            for (used, why) in record.not_for {
                let _ = writeln!(page, "                 not for {used}: {why}");
            }
        }
    }
    if in_full {
        for remark in adoption.remarks {
            let _ = writeln!(page, "                 {remark}");
        }
    }
}

fn change_in_words(change: &rulebook::Change) -> String {
    use rulebook::Change;
    match change {
        Change::SwitchOff { rule } => format!("rule {rule} is not applied"),
        Change::Narrow { list, items } => format!("{list} without {}", items.join(", ")),
        Change::Widen { list, items } => format!("{list} with {}", items.join(", ")),
        Change::Date { of, day } => format!("{of} from {day}"),
        Change::Volts { list, up_to } => format!("{list} up to {up_to} V"),
        Change::Marking { remedy, words } => format!("{remedy} carries “{words}”"),
        Change::Note { rule, words } => format!("{rule}: {words}"),
    }
}
