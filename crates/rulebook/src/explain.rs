//! Why the code says what it says of an opening: every rule in order, with what it says and the values it rests on.

use crate::cited::{Citation, Known};
use crate::code::CodeInForce;
use crate::duty::{Duty, Need};
use crate::judgement::{Lawful, said_by, with_sections};
use crate::local::{LOCAL, local_markings};
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Says, Statement};
use crate::rules::RULES;

/// What one rule says of an opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The rule's name.
    pub rule: &'static str,
    /// What it asks, in our words.
    pub title: &'static str,
    /// What it says; nothing where it has nothing to say.
    pub things: Vec<SaidThing>,
    /// The values it may rest on, in the edition in force.
    pub values: Vec<ValueUsed>,
    /// Why it could not be asked, where it could not.
    pub not_checked: Option<String>,
}

/// One thing that a rule says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SaidThing {
    /// The duty it is about, and whether that holds.
    pub duty: Option<(Duty, Need)>,
    /// The remedy it is about.
    pub remedy: Option<Remedy>,
    /// Whether it makes that remedy lawful; nothing for a marking or a condition.
    pub lawful: Option<Lawful>,
    /// The marking it asks for.
    pub marking: Option<Marking>,
    /// It in words, with its sections.
    pub text: String,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The authorities whose amendments or answers make it say so.
    pub changed_by: Vec<String>,
}

/// A value of the code in the edition in force.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ValueUsed {
    /// The value's name.
    pub value: &'static str,
    /// Its section; nothing where nobody has entered the edition.
    pub section: Option<&'static str>,
    /// How it is known; nothing where nobody has entered the edition.
    pub known: Option<Known>,
    /// What it is, in words.
    pub in_words: Option<String>,
}

/// Every rule in order with what it says of an opening: the chain that `judge` puts together. Markings that an authority asks for
/// come last, under the name `local.amendment`.
#[must_use]
pub fn explain(opening: &Opening, code: &CodeInForce) -> Vec<Said> {
    let said = |rule: &'static crate::rule::Rule| Said {
        rule: rule.id,
        title: rule.title,
        things: said_by(rule, opening, code).iter().map(thing).collect(),
        values: rule
            .values
            .iter()
            .map(|value| {
                let cite = value.citations().into_iter().find(|cite| cite.edition == code.edition);
                ValueUsed {
                    value: value.id(),
                    section: cite.map(|cite| cite.section),
                    known: cite.map(|cite| cite.known),
                    in_words: value.in_words(code.edition),
                }
            })
            .collect(),
        not_checked: (rule.judge)(opening, code).err().map(|missing| missing.because),
    };
    let mut chain: Vec<Said> = RULES.iter().map(said).collect();
    let markings = local_markings(code);
    if !markings.is_empty() {
        chain.push(Said {
            rule: LOCAL,
            title: "An authority asks for words of its own",
            things: markings.iter().map(|(_, statement)| thing(statement)).collect(),
            values: Vec::new(),
            not_checked: None,
        });
    }
    chain
}

fn thing(statement: &Statement) -> SaidThing {
    let (mut duty, mut remedy, mut lawful, mut marking) = (None, None, None, None);
    let text = match &statement.says {
        Says::Owes(about, why) => {
            duty = Some((*about, Need::Required));
            why.clone()
        }
        Says::Excuses(about, why) => {
            duty = Some((*about, Need::NotRequired));
            why.clone()
        }
        Says::Disputes(about, why) => {
            duty = Some((*about, Need::Disputed));
            why.clone()
        }
        Says::CannotTell(about, why) => {
            duty = Some((*about, Need::NotChecked));
            why.clone()
        }
        Says::Allows(about) => {
            (remedy, lawful) = (Some(*about), Some(Lawful::Yes));
            format!("`{about}` is lawful here").into()
        }
        Says::Bars(about, why) => {
            (remedy, lawful) = (Some(*about), Some(Lawful::No));
            why.clone()
        }
        Says::DisputesRemedy(about, why) => {
            (remedy, lawful) = (Some(*about), Some(Lawful::Disputed));
            why.clone()
        }
        Says::DisputesUse(about, why) => {
            remedy = Some(*about);
            format!("its use is disputed: {why}").into()
        }
        Says::CannotTellRemedy(about, why) => {
            (remedy, lawful) = (Some(*about), Some(Lawful::NotChecked));
            why.clone()
        }
        Says::Marks(about, words) => {
            (remedy, marking) = (Some(*about), Some(*words));
            format!("mark it \"{words}\"").into()
        }
        Says::Conditions(about, condition) => {
            remedy = Some(*about);
            condition.clone()
        }
        Says::Cautions(caution) => caution.clone(),
    };
    SaidThing {
        duty,
        remedy,
        lawful,
        marking,
        text: with_sections(text, &statement.cites),
        cites: statement.cites.clone(),
        changed_by: statement.changed_by.clone(),
    }
}
