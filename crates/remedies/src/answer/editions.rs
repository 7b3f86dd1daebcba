//! What changes for a dwelling between two codes in force, opening by opening, as an answer.

use super::duties::RequiresAnswer;
use super::remedy::RemedyAnswer;
use crate::facts::OpeningFacts;
use crate::planned::Planned;
use rulebook::Need;
use schemars::JsonSchema;
use serde::Serialize;

/// What changes for a dwelling from one edition to another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct EditionsAnswer {
    /// The edition changed from.
    pub from: u16,
    /// The edition changed to.
    pub to: u16,
    /// The openings for which something changes, in survey order.
    pub openings: Vec<OpeningChanges>,
    /// How many openings nothing changes for.
    pub unchanged: usize,
    /// What the cheapest lawful whole costs under the first, in cents.
    pub plan_from_cents: i64,
    /// What it costs under the second, in cents.
    pub plan_to_cents: i64,
    /// Whether something could not be checked or planned under either, so that the two costs cannot be compared.
    pub not_checked: bool,
}

/// What changes for one opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OpeningChanges {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// The changes.
    pub changes: Vec<ChangeAnswer>,
}

/// One thing that changes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ChangeAnswer {
    /// What: a duty, a remedy, the room its box has for one, or what the plan does.
    pub what: String,
    /// How it was.
    pub from: String,
    /// How it is.
    pub to: String,
    /// The sections under the second edition.
    pub cites: Vec<String>,
}

/// What changes between two plans of the same dwelling under two codes.
#[must_use]
pub fn editions_answer(from: &Planned, to: &Planned) -> EditionsAnswer {
    let all: Vec<OpeningChanges> = from
        .facts
        .sites
        .iter()
        .zip(&to.facts.sites)
        .map(|(before, after)| {
            let mut changes = duty_changes(before, after);
            changes.extend(remedy_changes(before, after));
            let (was, is) = (&before.judged_as_found.cautions, &after.judged_as_found.cautions);
            changes.extend(worded_changes("cautions".to_owned(), was, is));
            let (was, is) = (from.chosen(before.index), to.chosen(after.index));
            if (was.step, was.device, was.box_work) != (is.step, is.device, is.box_work) {
                changes.push(ChangeAnswer {
                    what: "the plan".to_owned(),
                    from: format!("{}, {}, box {}", was.step, was.device, was.box_work),
                    to: format!("{}, {}, box {}", is.step, is.device, is.box_work),
                    cites: Vec::new(),
                });
            }
            OpeningChanges { box_id: from.facts.dwelling.device_box(before.index).id.clone(), changes }
        })
        .collect();
    let (openings, unchanged): (Vec<_>, Vec<_>) = all.into_iter().partition(|opening| !opening.changes.is_empty());
    EditionsAnswer {
        from: from.facts.code.edition.year(),
        to: to.facts.code.edition.year(),
        openings,
        unchanged: unchanged.len(),
        plan_from_cents: from.total().total().0,
        plan_to_cents: to.total().total().0,
        not_checked: leaves_open(from) || leaves_open(to),
    }
}

/// Whether a plan leaves an opening unresolved, or rests on a duty that could not be checked.
fn leaves_open(plan: &Planned) -> bool {
    plan.facts.sites.iter().filter(|at| at.as_found.holds.is_receptacle()).any(|at| {
        let unread = at.judged_as_found.duties.iter().any(|verdict| verdict.need == Need::NotChecked);
        unread || plan.chosen(at.index).shortfall.unlawful
    })
}

/// Duties count for openings at which something can be plugged in.
fn duty_changes(before: &OpeningFacts, after: &OpeningFacts) -> Vec<ChangeAnswer> {
    if !before.as_found.holds.is_receptacle() {
        return Vec::new();
    }
    let (was, is) = (RequiresAnswer::of(&before.judged_as_found), RequiresAnswer::of(&after.judged_as_found));
    let pairs = was.named().into_iter().zip(is.named());
    let changed = pairs.filter(|((_, was), (_, is))| was.need != is.need);
    changed
        .map(|((name, was), (_, is))| ChangeAnswer {
            what: name.to_owned(),
            from: in_words(was.need, &was.because),
            to: in_words(is.need, &is.because),
            cites: is.cites.clone(),
        })
        .collect()
}

fn in_words(need: Need, because: &[String]) -> String {
    if because.is_empty() { need.to_string() } else { format!("{need}: {}", because.join("; ")) }
}

/// What sentences go and what sentences come; a section that has only moved is no change.
fn worded_changes(what: String, was: &[String], is: &[String]) -> Option<ChangeAnswer> {
    let words = |sentence: &String| sentence.rsplit_once(" (").map_or(sentence.clone(), |(words, _)| words.to_owned());
    let only_in = |these: &[String], those: &[String]| -> Vec<String> {
        let those: Vec<String> = those.iter().map(words).collect();
        these.iter().filter(|sentence| !those.contains(&words(sentence))).cloned().collect()
    };
    let (gone, come) = (only_in(was, is), only_in(is, was));
    let told = |list: Vec<String>| if list.is_empty() { "nothing of the kind".to_owned() } else { list.join("; ") };
    let changed = !(gone.is_empty() && come.is_empty());
    changed.then(|| ChangeAnswer { what, from: told(gone), to: told(come), cites: Vec::new() })
}

fn remedy_changes(before: &OpeningFacts, after: &OpeningFacts) -> Vec<ChangeAnswer> {
    let mut changes = Vec::new();
    if !before.as_found.holds.is_receptacle() {
        return changes;
    }
    for (was, is) in before.judged_as_found.remedies.iter().zip(&after.judged_as_found.remedies) {
        let (was, is) = (RemedyAnswer::of(was), RemedyAnswer::of(is));
        if was.standing != is.standing {
            let why = |answer: &RemedyAnswer| match &answer.why_not {
                Some(why_not) => format!("{}: {why_not}", answer.standing),
                None => answer.standing.to_owned(),
            };
            let (from, to) = (why(&was), why(&is));
            changes.push(ChangeAnswer { what: was.remedy.to_string(), from, to, cites: is.cites.clone() });
        }
        changes.extend(worded_changes(format!("conditions of {}", was.remedy), &was.conditions, &is.conditions));
        if was.markings != is.markings {
            let (from, to) = (was.markings.join(", "), is.markings.join(", "));
            changes.push(ChangeAnswer { what: format!("markings of {}", was.remedy), from, to, cites: is.cites });
        }
        if was.fill.fits != is.fill.fits || was.fill.taken != is.fill.taken {
            let count = |answer: &crate::answer::FillAnswer| {
                let fits = answer.fits.map_or("not checked", |fits| if fits { "fits" } else { "too full" });
                format!("{fits}, {} taken", answer.taken.as_deref().unwrap_or("not counted"))
            };
            let what = format!("box count of {}", was.remedy);
            changes.push(ChangeAnswer { what, from: count(&was.fill), to: count(&is.fill), cites: Vec::new() });
        }
    }
    changes
}
