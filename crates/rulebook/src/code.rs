//! The code in force where the dwelling stands: an edition, what the authority changed in it, and what it answered.

use crate::amendment::{Amendment, Change, Dated};
use crate::day::Day;
use crate::edition::Edition;
use crate::lists::List;
use crate::policy::{Answer, Policy, Question};

/// The code in force.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeInForce {
    /// The edition.
    pub edition: Edition,
    /// The day of the permit, where known: some rules and amendments begin on a day.
    pub permit_day: Option<Day>,
    /// What authorities changed, in order: a later amendment overrides an earlier one.
    pub amendments: Vec<Amendment>,
    /// What the authority answered where the trade is divided.
    pub policy: Policy,
}

/// What amendments make of something in the code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Local {
    /// They put it in, or switch it on; who, in words.
    In(String),
    /// They take it out, or switch it off; who, in words.
    Out(String),
    /// They may have taken it out or put it in: that hangs on the permit day. What is missing, in words; and who.
    Unsure(String, String),
}

impl CodeInForce {
    /// An edition as published, without local amendments.
    #[must_use]
    pub const fn published(edition: Edition) -> Self {
        Self { edition, permit_day: None, amendments: Vec::new(), policy: Policy::unknown() }
    }

    /// The same for a permit of this day.
    #[must_use]
    pub const fn on(mut self, permit_day: Day) -> Self {
        self.permit_day = Some(permit_day);
        self
    }

    /// The same with one more amendment.
    #[must_use]
    pub fn amended(mut self, amendment: Amendment) -> Self {
        self.amendments.push(amendment);
        self
    }

    /// The authority's answer to a question on which the trade is divided.
    #[must_use]
    pub fn answer(&self, question: Question) -> Option<&Answer> {
        self.policy.answer(question)
    }

    /// What the last amendment that speaks makes of something; `speaks` says whether a change puts it in or takes it out.
    fn last(&self, mut speaks: impl FnMut(&Change) -> Option<bool>) -> Option<Local> {
        for amendment in self.amendments.iter().rev() {
            let Some(is_in) = amendment.changes.iter().rev().find_map(&mut speaks) else { continue };
            let by = amendment.by();
            match amendment.holds(self.permit_day) {
                Some(true) if is_in => return Some(Local::In(by)),
                Some(true) => return Some(Local::Out(by)),
                Some(false) => {}
                None => {
                    let missing = format!("find out the day of the permit: {by} holds {}", span(amendment));
                    return Some(Local::Unsure(missing, by));
                }
            }
        }
        None
    }

    /// What amendments make of an item of a list.
    pub(crate) fn local(&self, list: List, item: &str) -> Option<Local> {
        if self.amendments.is_empty() {
            return None;
        }
        let names = |in_list: List, items: &[String]| in_list == list && items.iter().any(|named| named == item);
        self.last(|change| match change {
            Change::Narrow { list, items } if names(*list, items) => Some(false),
            Change::Widen { list, items } if names(*list, items) => Some(true),
            _ => None,
        })
    }

    /// Whether amendments switch a rule off.
    pub(crate) fn switched_off(&self, rule: &str) -> Option<Local> {
        if self.amendments.is_empty() {
            return None;
        }
        self.last(|change| match change {
            Change::SwitchOff { rule: named } if named == rule => Some(false),
            _ => None,
        })
    }

    /// The amendment in force that gives something, and what it gives.
    pub(crate) fn given<'a, T>(&'a self, of: impl Fn(&'a Change) -> Option<T>) -> Option<(T, String)> {
        let holding = self.amendments.iter().rev().filter(|amendment| amendment.holds(self.permit_day) == Some(true));
        let mut given =
            holding.flat_map(|amendment| amendment.changes.iter().rev().map(move |change| (change, amendment)));
        given.find_map(|(change, amendment)| of(change).map(|value| (value, amendment.by())))
    }

    /// The day that amendments put in the place of one in the code, and who.
    pub(crate) fn dated(&self, dated: Dated) -> Option<(Day, String)> {
        self.given(|change| match change {
            Change::Date { of, day } if *of == dated => Some(*day),
            _ => None,
        })
    }

    /// The highest voltage that amendments let a list reach, and who.
    pub(crate) fn volts(&self, list: List) -> Option<(u32, String)> {
        self.given(|change| match change {
            Change::Volts { list: named, up_to } if *named == list => Some(*up_to),
            _ => None,
        })
    }
}

fn span(amendment: &Amendment) -> String {
    match (amendment.since, amendment.until) {
        (Some(since), Some(until)) => format!("for permits from {since} and before {until}"),
        (Some(since), None) => format!("for permits from {since}"),
        (None, Some(until)) => format!("for permits before {until}"),
        (None, None) => "for every permit".to_owned(),
    }
}
