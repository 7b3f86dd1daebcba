//! All rules asked about one opening, and what they say taken together.

use crate::cited::{Citation, NotChecked};
use crate::code::CodeInForce;
use crate::duty::{Duty, Need};
use crate::fill::{Fit, fits_after_all};
use crate::local::{as_amended, local_markings};
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Decides, Rule, Says, Statement};
use crate::rules::RULES;
use crate::tables::grounded_equipment::needs_ground_to_serve;
use dwelling::GroundFact;

/// What the code says about one opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// Every duty in the order of [`Duty::ALL`], each exactly once.
    pub duties: Vec<DutyVerdict>,
    /// Every remedy in the order of [`Remedy::ALL`], each exactly once.
    pub remedies: Vec<RemedyVerdict>,
    /// Cautions that hold whatever is chosen.
    pub cautions: Vec<String>,
}

/// Whether a duty holds, by which rules and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DutyVerdict {
    /// The duty.
    pub duty: Duty,
    /// Whether it holds.
    pub need: Need,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The reasons, one sentence each.
    pub because: Vec<String>,
    /// The names of the rules that spoke.
    pub rules: Vec<&'static str>,
    /// The authorities whose amendments or answers changed this, with their texts.
    pub changed_by: Vec<String>,
}

/// Whether a remedy is lawful, fits, and is worth something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemedyVerdict {
    /// The remedy.
    pub remedy: Remedy,
    /// Whether the code allows it.
    pub lawful: Lawful,
    /// Why not, or the two readings, in one sentence each.
    pub why_not: Vec<String>,
    /// The words it must carry.
    pub markings: Vec<Marking>,
    /// The conditions under which it is lawful.
    pub conditions: Vec<Condition>,
    /// Where the code allows or bars it; each condition has its own.
    pub cites: Vec<Citation>,
    /// Whether it gives what is plugged in the ground it needs.
    pub serves_equipment: bool,
    /// Whether the box holds it, with the count.
    pub fit: Fit,
    /// The names of the rules that spoke.
    pub rules: Vec<&'static str>,
    /// The authorities whose amendments or answers changed this, with their texts.
    pub changed_by: Vec<String>,
}

/// A condition under which a remedy is lawful.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Condition {
    /// It in words, with its sections.
    pub text: String,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The name of the rule that lays it down.
    pub rule: &'static str,
    /// The authorities whose amendments or answers lay it down, with their texts.
    pub changed_by: Vec<String>,
}

/// Whether the code allows a remedy.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lawful {
    /// It does.
    Yes,
    /// It does not.
    No,
    /// It is read in two ways; the authority decides.
    Disputed,
    /// A fact or a value is missing.
    NotChecked,
}

/// Asks every rule about an opening and puts together what they say.
#[must_use]
pub fn judge(opening: &Opening, code: &CodeInForce) -> Judgement {
    let said = statements(opening, code);
    let duties = Duty::ALL.iter().map(|duty| duty_verdict(*duty, &said)).collect();
    let fits = fits_after_all(opening, code).into_iter();
    let remedies =
        Remedy::ALL.iter().zip(fits).map(|(remedy, fit)| remedy_verdict(*remedy, &said, opening, fit)).collect();
    let mut cautions: Vec<String> = Vec::new();
    for (_, statement) in &said {
        if let Says::Cautions(caution) = &statement.says {
            add_once(&mut cautions, &with_sections(caution, &statement.cites));
        }
    }
    Judgement { duties, remedies, cautions }
}

type Said = (&'static str, Statement);

/// What every rule says, and what amendments make of it.
fn statements(opening: &Opening, code: &CodeInForce) -> Vec<Said> {
    let mut said = Vec::with_capacity(64);
    for rule in RULES {
        let statements = said_by(rule, opening, code);
        said.extend(statements.into_iter().map(|statement| (rule.id, statement)));
    }
    said.extend(local_markings(code));
    said
}

/// What one rule says; one that lacks a value for the edition in force says that it cannot tell what it decides.
pub(crate) fn said_by(rule: &Rule, opening: &Opening, code: &CodeInForce) -> Vec<Statement> {
    let statements = (rule.judge)(opening, code).unwrap_or_else(|missing| cannot_tell(rule, &missing));
    if code.amendments.is_empty() { statements } else { as_amended(rule, statements, code) }
}

pub(crate) fn cannot_tell(rule: &Rule, missing: &NotChecked) -> Vec<Statement> {
    if rule.decides.is_empty() {
        let caution = format!("not checked: {}; {}", lower_first(rule.title), missing.because);
        return vec![Says::Cautions(caution).by(&[])];
    }
    let says = rule.decides.iter().map(|decides| match decides {
        Decides::Duty(duty) => Says::CannotTell(*duty, missing.because.clone()),
        Decides::Remedy(remedy) => Says::CannotTellRemedy(*remedy, missing.because.clone()),
    });
    says.map(|says| says.by(&[])).collect()
}

/// What was said about one duty: it is owed if any rule says so; else not checked; else disputed; else not owed.
fn duty_verdict(duty: Duty, said: &[Said]) -> DutyVerdict {
    let need_of = |says: &Says| match says {
        Says::Owes(about, why) if *about == duty => Some((Need::Required, why.clone())),
        Says::CannotTell(about, why) if *about == duty => Some((Need::NotChecked, why.clone())),
        Says::Disputes(about, why) if *about == duty => Some((Need::Disputed, why.clone())),
        Says::Excuses(about, why) if *about == duty => Some((Need::NotRequired, why.clone())),
        _ => None,
    };
    let spoken: Vec<(Need, String, &Said)> =
        said.iter().filter_map(|said| need_of(&said.1.says).map(|(need, why)| (need, why, said))).collect();
    let by_weight = [Need::Required, Need::NotChecked, Need::Disputed, Need::NotRequired];
    let need = by_weight.into_iter().find(|need| spoken.iter().any(|(said, ..)| said == need));
    let need = need.unwrap_or(Need::NotRequired);
    let mut verdict =
        DutyVerdict { duty, need, cites: Vec::new(), because: Vec::new(), rules: Vec::new(), changed_by: Vec::new() };
    for (_, why, (rule, statement)) in spoken.into_iter().filter(|(said, ..)| *said == need) {
        add_once(&mut verdict.because, &why);
        statement.cites.iter().for_each(|cite| add_once(&mut verdict.cites, cite));
        add_once(&mut verdict.rules, rule);
        statement.changed_by.iter().for_each(|by| add_once(&mut verdict.changed_by, by));
    }
    verdict
}

/// What was said about one remedy: a bar is a bar; else not checked; else disputed; else lawful if any rule allows it.
fn remedy_verdict(remedy: Remedy, said: &[Said], opening: &Opening, fit: Fit) -> RemedyVerdict {
    let lawful = lawful(remedy, said);
    let mut verdict = RemedyVerdict {
        remedy,
        lawful,
        why_not: Vec::new(),
        markings: Vec::new(),
        conditions: Vec::new(),
        cites: Vec::new(),
        serves_equipment: serves_equipment(remedy, opening),
        fit,
        rules: Vec::new(),
        changed_by: Vec::new(),
    };
    for (rule, Statement { says, cites, changed_by }) in said {
        let speaks = match says {
            Says::Allows(about) => *about == remedy && lawful != Lawful::No,
            Says::Bars(about, why) if *about == remedy => {
                add_once(&mut verdict.why_not, &with_sections(why, cites));
                true
            }
            Says::DisputesRemedy(about, why) if *about == remedy && lawful == Lawful::Disputed => {
                add_once(&mut verdict.why_not, &with_sections(why, cites));
                true
            }
            Says::CannotTellRemedy(about, why) if *about == remedy && lawful == Lawful::NotChecked => {
                add_once(&mut verdict.why_not, &with_sections(why, cites));
                true
            }
            Says::Marks(about, marking) if *about == remedy && lawful != Lawful::No => {
                add_once(&mut verdict.markings, marking);
                true
            }
            Says::Conditions(about, condition) if *about == remedy && lawful != Lawful::No => {
                let text = with_sections(condition, cites);
                let condition = Condition { text, cites: cites.clone(), rule, changed_by: changed_by.clone() };
                add_once(&mut verdict.conditions, &condition);
                add_once(&mut verdict.rules, rule);
                changed_by.iter().for_each(|by| add_once(&mut verdict.changed_by, by));
                false
            }
            _ => false,
        };
        if speaks {
            cites.iter().for_each(|cite| add_once(&mut verdict.cites, cite));
            add_once(&mut verdict.rules, rule);
            changed_by.iter().for_each(|by| add_once(&mut verdict.changed_by, by));
        }
    }
    if lawful == Lawful::No && verdict.why_not.is_empty() {
        verdict.why_not.push(format!("no rule allows `{remedy}` here"));
    }
    verdict
}

fn lawful(remedy: Remedy, said: &[Said]) -> Lawful {
    let (mut allowed, mut disputed, mut unknown) = (false, false, false);
    for (_, statement) in said {
        match &statement.says {
            Says::Bars(about, _) if *about == remedy => return Lawful::No,
            Says::CannotTellRemedy(about, _) if *about == remedy => unknown = true,
            Says::DisputesRemedy(about, _) if *about == remedy => disputed = true,
            Says::Allows(about) if *about == remedy => allowed = true,
            _ => {}
        }
    }
    match (unknown, disputed, allowed) {
        (true, ..) => Lawful::NotChecked,
        (_, true, _) => Lawful::Disputed,
        (.., true) => Lawful::Yes,
        _ => Lawful::No,
    }
}

/// Whether a remedy gives what is plugged in the ground it needs to be safe or to do its work.
fn serves_equipment(remedy: Remedy, opening: &Opening) -> bool {
    if !opening.serves.iter().any(|equipment| needs_ground_to_serve(*equipment)) {
        return true;
    }
    match remedy {
        Remedy::SeparateEgc | Remedy::NewCable | Remedy::RestoreExistingGround => true,
        Remedy::Leave => opening.ground == GroundFact::Connected && opening.holds.takes_grounding_plug(),
        _ => false,
    }
}

fn lower_first(title: &str) -> String {
    let mut letters = title.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// A sentence with the sections it rests on, each once.
pub(crate) fn with_sections(sentence: &str, cites: &[Citation]) -> String {
    let mut text = String::with_capacity(sentence.len() + 24);
    text.push_str(sentence);
    let mut separator = " (";
    for (at, cite) in cites.iter().enumerate() {
        if cites[..at].iter().any(|earlier| earlier.section == cite.section) {
            continue;
        }
        text.push_str(separator);
        text.push_str(cite.section);
        separator = ", ";
    }
    if separator == ", " {
        text.push(')');
    }
    text
}

fn add_once<T: PartialEq + Clone>(list: &mut Vec<T>, item: &T) {
    if !list.contains(item) {
        list.push(item.clone());
    }
}
