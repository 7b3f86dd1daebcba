//! All rules asked about one opening, and what they say taken together.

use crate::cited::{Citation, NotChecked};
use crate::code::CodeInForce;
use crate::duty::{Duty, Need};
use crate::fill::{Fit, fits_after_all};
use crate::local::{as_amended, local_markings};
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Decides, Rule, Says, Statement, Words};
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
    /// Where it is read in two ways whether what is plugged in may be used on it: both readings, in words.
    pub disputed_use: Vec<String>,
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
    /// It in words, without its sections.
    pub says: Words,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The name of the rule that lays it down.
    pub rule: &'static str,
    /// The authorities whose amendments or answers lay it down, with their texts.
    pub changed_by: Vec<String>,
}

impl Condition {
    /// It in words, with its sections.
    #[must_use]
    pub fn text(&self) -> String {
        with_sections(self.says.clone(), &self.cites)
    }
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
    let mut judgement = Judgement::before(opening, code, &said);
    for (rule, statement) in said {
        judgement.take(rule, statement);
    }
    for verdict in &mut judgement.remedies {
        if verdict.lawful == Lawful::No && verdict.why_not.is_empty() {
            verdict.why_not.push(format!("no rule allows `{}` here", verdict.remedy));
        }
    }
    judgement
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
        return vec![Says::Cautions(caution.into()).by(&[])];
    }
    let says = rule.decides.iter().map(|decides| match decides {
        Decides::Duty(duty) => Says::CannotTell(*duty, missing.because.clone().into()),
        Decides::Remedy(remedy) => Says::CannotTellRemedy(*remedy, missing.because.clone().into()),
    });
    says.map(|says| says.by(&[])).collect()
}

impl Judgement {
    /// Every duty and remedy with how it stands, and nothing yet of why.
    fn before(opening: &Opening, code: &CodeInForce, said: &[Said]) -> Self {
        let (needs, lawful) = standings(said);
        let duty = |(duty, need): (&Duty, Need)| DutyVerdict {
            duty: *duty,
            need,
            cites: Vec::new(),
            because: Vec::new(),
            rules: Vec::new(),
            changed_by: Vec::new(),
        };
        let remedy = |((remedy, lawful), fit): ((&Remedy, Lawful), Fit)| RemedyVerdict {
            remedy: *remedy,
            lawful,
            why_not: Vec::new(),
            markings: Vec::new(),
            conditions: Vec::with_capacity(16),
            disputed_use: Vec::new(),
            cites: Vec::new(),
            serves_equipment: serves_equipment(*remedy, opening, code),
            fit,
            rules: Vec::with_capacity(16),
            changed_by: Vec::new(),
        };
        let fits = fits_after_all(opening, code);
        Self {
            duties: Duty::ALL.iter().zip(needs).map(duty).collect(),
            remedies: Remedy::ALL.iter().zip(lawful).zip(fits).map(remedy).collect(),
            cautions: Vec::new(),
        }
    }

    /// Takes in one statement, where it speaks for how its duty or remedy stands.
    fn take(&mut self, rule: &'static str, statement: Statement) {
        let Statement { says, cites, changed_by } = statement;
        let spoken = Spoken { rule, cites, changed_by };
        match says {
            Says::Owes(duty, why) => self.duty(duty, Need::Required, why, spoken),
            Says::CannotTell(duty, why) => self.duty(duty, Need::NotChecked, why, spoken),
            Says::Disputes(duty, why) => self.duty(duty, Need::Disputed, why, spoken),
            Says::Excuses(duty, why) => self.duty(duty, Need::NotRequired, why, spoken),
            Says::Allows(remedy) => {
                let verdict = &mut self.remedies[remedy as usize];
                if verdict.lawful != Lawful::No {
                    verdict.rests_on(spoken);
                }
            }
            Says::Bars(remedy, why) => self.remedies[remedy as usize].stands(Lawful::No, why, spoken),
            Says::DisputesRemedy(remedy, why) => self.remedies[remedy as usize].stands(Lawful::Disputed, why, spoken),
            Says::DisputesUse(remedy, why) => {
                let verdict = &mut self.remedies[remedy as usize];
                if verdict.lawful != Lawful::No {
                    add_once(&mut verdict.disputed_use, with_sections(why, &spoken.cites));
                    add_once(&mut verdict.rules, spoken.rule);
                }
            }
            Says::CannotTellRemedy(remedy, why) => {
                self.remedies[remedy as usize].stands(Lawful::NotChecked, why, spoken)
            }
            Says::Marks(remedy, marking) => {
                let verdict = &mut self.remedies[remedy as usize];
                if verdict.lawful != Lawful::No {
                    add_once(&mut verdict.markings, marking);
                    verdict.rests_on(spoken);
                }
            }
            Says::Conditions(remedy, condition) => self.remedies[remedy as usize].only_if(condition, spoken),
            Says::Cautions(caution) => add_once(&mut self.cautions, with_sections(caution, &spoken.cites)),
        }
    }

    fn duty(&mut self, duty: Duty, need: Need, why: Words, spoken: Spoken) {
        let verdict = &mut self.duties[duty as usize];
        if verdict.need == need {
            add_once(&mut verdict.because, why.into_owned());
            spoken.cites.into_iter().for_each(|cite| add_once(&mut verdict.cites, cite));
            add_once(&mut verdict.rules, spoken.rule);
            spoken.changed_by.into_iter().for_each(|by| add_once(&mut verdict.changed_by, by));
        }
    }
}

/// Who said something, where the code says so, and which authorities made it so.
struct Spoken {
    rule: &'static str,
    cites: Vec<Citation>,
    changed_by: Vec<String>,
}

impl RemedyVerdict {
    fn rests_on(&mut self, spoken: Spoken) {
        spoken.cites.into_iter().for_each(|cite| add_once(&mut self.cites, cite));
        add_once(&mut self.rules, spoken.rule);
        spoken.changed_by.into_iter().for_each(|by| add_once(&mut self.changed_by, by));
    }

    fn stands(&mut self, lawful: Lawful, why: Words, spoken: Spoken) {
        if self.lawful == lawful {
            add_once(&mut self.why_not, with_sections(why, &spoken.cites));
            self.rests_on(spoken);
        }
    }

    fn only_if(&mut self, condition: Words, spoken: Spoken) {
        if self.lawful == Lawful::No {
            return;
        }
        let Spoken { rule, cites, changed_by } = spoken;
        changed_by.iter().for_each(|by| add_once(&mut self.changed_by, by.clone()));
        add_once(&mut self.conditions, Condition { says: condition, cites, rule, changed_by });
        add_once(&mut self.rules, rule);
    }
}

/// How every duty and remedy stands. A duty is owed if any rule says so; else not checked; else disputed; else not owed. A remedy
/// that is barred is barred; else not checked; else disputed; else lawful if any rule allows it.
fn standings(said: &[Said]) -> ([Need; Duty::ALL.len()], [Lawful; Remedy::ALL.len()]) {
    let mut needs = [Need::NotRequired; Duty::ALL.len()];
    // What no rule allows is not lawful: `None` until one speaks.
    let mut standing: [Option<Lawful>; Remedy::ALL.len()] = [None; Remedy::ALL.len()];
    let need_weight = |need: Need| match need {
        Need::NotRequired => 0,
        Need::Disputed => 1,
        Need::NotChecked => 2,
        Need::Required => 3,
    };
    let lawful_weight = |lawful: Option<Lawful>| match lawful {
        None => 0,
        Some(Lawful::Yes) => 1,
        Some(Lawful::Disputed) => 2,
        Some(Lawful::NotChecked) => 3,
        Some(Lawful::No) => 4,
    };
    for (_, statement) in said {
        let need = match &statement.says {
            Says::Owes(duty, _) => Some((*duty, Need::Required)),
            Says::CannotTell(duty, _) => Some((*duty, Need::NotChecked)),
            Says::Disputes(duty, _) => Some((*duty, Need::Disputed)),
            _ => None,
        };
        if let Some((duty, need)) = need
            && need_weight(need) > need_weight(needs[duty as usize])
        {
            needs[duty as usize] = need;
        }
        let lawful = match &statement.says {
            Says::Bars(remedy, _) => Some((*remedy, Lawful::No)),
            Says::CannotTellRemedy(remedy, _) => Some((*remedy, Lawful::NotChecked)),
            Says::DisputesRemedy(remedy, _) => Some((*remedy, Lawful::Disputed)),
            Says::Allows(remedy) => Some((*remedy, Lawful::Yes)),
            _ => None,
        };
        if let Some((remedy, lawful)) = lawful
            && lawful_weight(Some(lawful)) > lawful_weight(standing[remedy as usize])
        {
            standing[remedy as usize] = Some(lawful);
        }
    }
    (needs, standing.map(|lawful| lawful.unwrap_or(Lawful::No)))
}

/// Whether a remedy gives what is plugged in the ground it needs to be safe or to do its work.
fn serves_equipment(remedy: Remedy, opening: &Opening, code: &CodeInForce) -> bool {
    if !opening.serves.iter().any(|equipment| needs_ground_to_serve(*equipment)) {
        return true;
    }
    match remedy {
        Remedy::SeparateEgc | Remedy::NewCable | Remedy::RestoreExistingGround => true,
        Remedy::Leave => opening.ground_under(code).0 == GroundFact::Connected && opening.holds.takes_grounding_plug(),
        _ => false,
    }
}

fn lower_first(title: &str) -> String {
    let mut letters = title.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// A sentence with the sections it rests on, each once.
pub(crate) fn with_sections(sentence: Words, cites: &[Citation]) -> String {
    if cites.is_empty() {
        return sentence.into_owned();
    }
    let sections: usize = cites.iter().map(|cite| cite.section.len() + 2).sum();
    let mut text = String::with_capacity(sentence.len() + sections + 2);
    text.push_str(&sentence);
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

fn add_once<T: PartialEq>(list: &mut Vec<T>, item: T) {
    if !list.contains(&item) {
        list.push(item);
    }
}
