//! What amendments make of what a rule says.

use crate::amendment::Change;
use crate::code::{CodeInForce, Local};
use crate::duty::Duty;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};

/// The name under which conditions of an authority's own are listed.
pub(crate) const LOCAL: &str = "local.amendment";

/// What a rule says after amendments: switched off it asks nothing and permits nothing, and a note is added to what it says.
pub(crate) fn as_amended(rule: &Rule, statements: Vec<Statement>, code: &CodeInForce) -> Vec<Statement> {
    let spoke = !statements.is_empty();
    let mut said = match code.switched_off(rule.id) {
        Some(Local::Out(by)) => switched_off(rule, &statements, &by),
        Some(Local::Unsure(missing, by)) => unsure(statements, &missing, &by),
        Some(Local::In(_)) | None => statements,
    };
    if spoke {
        said.extend(notes(rule, code));
    }
    said
}

fn switched_off(rule: &Rule, statements: &[Statement], by: &str) -> Vec<Statement> {
    let mut said = Vec::new();
    for decides in rule.decides {
        if let Decides::Duty(duty) = decides {
            said.push(Says::Excuses(*duty, format!("{by}: this is not asked here").into()).by(&[]).changed(Some(by)));
        }
    }
    for remedy in Remedy::ALL {
        let allowed =
            statements.iter().any(|statement| matches!(statement.says, Says::Allows(about) if about == *remedy));
        let spoken = statements.iter().any(|statement| about(&statement.says) == Some(*remedy));
        if allowed {
            let why = format!("{by}: this permission is not given here");
            said.push(Says::Bars(*remedy, why.into()).by(&[]).changed(Some(by)));
        } else if spoken {
            let not_asked = format!("{by}: what `{}` asks is not asked here", rule.id);
            said.push(Says::Conditions(*remedy, not_asked.into()).by(&[]).changed(Some(by)));
        }
    }
    said
}

fn unsure(statements: Vec<Statement>, missing: &str, by: &str) -> Vec<Statement> {
    let unsure_of = |statement: Statement| {
        let duty = |duty: Duty| Says::CannotTell(duty, missing.to_owned().into());
        let says = match &statement.says {
            Says::Owes(about, _) | Says::Disputes(about, _) => duty(*about),
            Says::Allows(remedy) | Says::Bars(remedy, _) | Says::DisputesRemedy(remedy, _) => {
                Says::CannotTellRemedy(*remedy, missing.to_owned().into())
            }
            _ => return statement,
        };
        Statement { says, ..statement }.changed(Some(by))
    };
    statements.into_iter().map(unsure_of).collect()
}

/// The remedy that a statement is about.
const fn about(says: &Says) -> Option<Remedy> {
    match says {
        Says::Allows(remedy)
        | Says::Bars(remedy, _)
        | Says::DisputesRemedy(remedy, _)
        | Says::DisputesUse(remedy, _)
        | Says::CannotTellRemedy(remedy, _)
        | Says::Marks(remedy, _)
        | Says::Conditions(remedy, _) => Some(*remedy),
        _ => None,
    }
}

/// The notes of authorities on a rule. One whose day is not known to have come is said all the same.
fn notes(rule: &Rule, code: &CodeInForce) -> Vec<Statement> {
    let holding = code.amendments.iter().filter(|amendment| amendment.holds(code.permit_day) != Some(false));
    let changes = holding.flat_map(|amendment| amendment.changes.iter().map(move |change| (change, amendment.by())));
    changes
        .filter_map(|(change, by)| match change {
            Change::Note { rule: named, words } if named == rule.id => {
                Some(Says::Cautions(format!("{words} ({by})").into()).by(&[]).changed(Some(&by)))
            }
            _ => None,
        })
        .collect()
}

/// The markings of authorities' own, as conditions of the remedies that carry them.
pub(crate) fn local_markings(code: &CodeInForce) -> Vec<(&'static str, Statement)> {
    let holding = code.amendments.iter().filter(|amendment| amendment.holds(code.permit_day) != Some(false));
    let changes = holding.flat_map(|amendment| amendment.changes.iter().map(move |change| (change, amendment.by())));
    changes
        .filter_map(|(change, by)| match change {
            Change::Marking { remedy, words } => {
                let mark = Says::Conditions(*remedy, format!("mark it \"{words}\" ({by})").into());
                Some((LOCAL, mark.by(&[]).changed(Some(&by))))
            }
            _ => None,
        })
        .collect()
}
