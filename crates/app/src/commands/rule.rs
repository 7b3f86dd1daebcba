//! Shows a rule: what it asks, in our words, and its values edition by edition.

use crate::answering::{write_json, write_text};
use crate::command_error::CommandError;
use dwelling::nearest;
use remedies::how_known;
use rulebook::{RULES, RulePage, rule_page};
use serde_json::{Value, json};
use std::fmt::Write as _;
use std::process::ExitCode;

/// Show a rule: what it asks, by edition side by side, with sections; or list all rules
#[derive(Debug, clap::Args)]
#[command(after_help = "Example:\n  thirdwire rule\n  thirdwire rule replacement.afci")]
pub struct Args {
    /// The rule; the list, where none is named
    id: Option<String>,
    /// Answer as JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let Some(id) = &args.id else {
        if args.json {
            let list: Vec<Value> = RULES.iter().map(|rule| json!({ "id": rule.id, "title": rule.title })).collect();
            write_json(&list)?;
        } else {
            write_text(&RULES.iter().map(|rule| format!("{:<32} {}\n", rule.id, rule.title)).collect::<String>())?;
        }
        return Ok(ExitCode::SUCCESS);
    };
    let page = rule_page(id).ok_or_else(|| {
        let near = nearest(id, RULES.iter().map(|rule| rule.id));
        CommandError::Usage(match near {
            Some(near) => format!("there is no rule `{id}`; did you mean `{near}`?"),
            None => format!("there is no rule `{id}`; `thirdwire rule` lists all"),
        })
    })?;
    if args.json {
        write_json(&as_json(&page))?
    } else {
        write_text(&as_text(&page))?
    }
    Ok(ExitCode::SUCCESS)
}

fn as_json(page: &RulePage) -> Value {
    let rows = page.by_edition.iter().map(|row| {
        json!({
            "value": row.value, "edition": row.edition.year(), "section": row.section, "is": row.in_words,
            "known": how_known(row.known),
        })
    });
    json!({ "id": page.id, "title": page.title, "page": page.page, "by_edition": rows.collect::<Vec<_>>() })
}

fn as_text(page: &RulePage) -> String {
    let mut text = format!("{}\n\n{}\n", page.id, page.page.trim());
    let mut last = "";
    for row in &page.by_edition {
        if row.value != last {
            let _ = writeln!(text, "\n{}", row.value);
            last = row.value;
        }
        let section = row.section.unwrap_or("–");
        let is = row.in_words.as_deref().unwrap_or("not checked");
        let _ = writeln!(text, "  {}  {section:<22} {is}  ({})", row.edition.year(), how_known(row.known));
    }
    text
}
