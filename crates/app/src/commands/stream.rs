//! Plans many dwellings: one survey a line in, one answer a line out, in the same order.

use crate::command_error::{CommandError, MISTAKES, NOT_THE_LAST_WORD};
use crate::law::{CodeFlags, settle};
use crate::planning::to_plan_on;
use estimate::PriceBook;
use rayon::prelude::*;
use remedies::{PlanFault, PlanStatus, Planned, plan_answer, with_other_orders};
use serde_json::{Value, json};
use std::io::{BufRead as _, Write as _};
use std::path::Path;
use std::process::ExitCode;
use survey::{Format, MistakesAnswer};

/// How many lines are held at a time: enough to keep every core busy, few enough that memory stays flat.
const AT_A_TIME: usize = 128;

/// How one line went.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Went {
    Complete,
    NotTheLastWord,
    Mistaken,
}

/// Answers every line of standard input until it ends. A bad line is answered in its place and stops nothing.
pub fn run(code: &CodeFlags, book: &PriceBook) -> Result<ExitCode, CommandError> {
    let mut lines = std::io::stdin().lock().split(b'\n').enumerate();
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    let (mut mistaken, mut open) = (false, false);
    loop {
        let mut held = Vec::with_capacity(AT_A_TIME);
        for (index, line) in lines.by_ref().take(AT_A_TIME) {
            held.push((index + 1, line.map_err(CommandError::from)?));
        }
        if held.is_empty() {
            break;
        }
        let answers: Vec<Option<(Value, Went)>> =
            held.par_iter().map(|(number, line)| answer(*number, line, code, book)).collect();
        for (value, went) in answers.into_iter().flatten() {
            mistaken |= went == Went::Mistaken;
            open |= went == Went::NotTheLastWord;
            serde_json::to_writer(&mut out, &value).map_err(|error| CommandError::from(std::io::Error::from(error)))?;
            out.write_all(b"\n")?;
        }
        out.flush()?;
    }
    Ok(match (mistaken, open) {
        (true, _) => ExitCode::from(MISTAKES),
        (false, true) => ExitCode::from(NOT_THE_LAST_WORD),
        (false, false) => ExitCode::SUCCESS,
    })
}

/// The answer to one line; none to an empty one.
fn answer(number: usize, line: &[u8], code: &CodeFlags, book: &PriceBook) -> Option<(Value, Went)> {
    if line.trim_ascii().is_empty() {
        return None;
    }
    let read = survey::read(line, Format::Json);
    let Some(dwelling) = read.dwelling else {
        let text = survey::text_of(line);
        let mistakes = MistakesAnswer::of("", &text, &read.diagnostics).mistakes;
        return Some((json!({ "line": number, "mistakes": mistakes }), Went::Mistaken));
    };
    let law = match settle(code, &dwelling.job, Path::new(""), false) {
        Ok(law) => law,
        Err(error) => return Some((json!({ "line": number, "not_checked": error.to_string() }), Went::NotTheLastWord)),
    };
    let dwelling = to_plan_on(dwelling);
    let answered = Planned::of(&dwelling, law.code, book).and_then(|planned| {
        let mut plan = plan_answer(&planned, &law.answer, book.is_demo);
        plan.feeding = with_other_orders(&plan.feeding, &planned, book)?;
        Ok(plan)
    });
    Some(match answered {
        Ok(plan) => {
            let went = if plan.status == PlanStatus::Complete { Went::Complete } else { Went::NotTheLastWord };
            (json!({ "line": number, "plan": plan }), went)
        }
        Err(PlanFault(faults)) => (json!({ "line": number, "fault": faults }), Went::NotTheLastWord),
    })
}
