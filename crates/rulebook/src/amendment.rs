//! What an authority changes in the code it adopts.

use crate::day::Day;
use crate::lists::List;
use crate::remedy::Remedy;
use crate::rules::RULES;
use dwelling::names;
use dwelling::nearest;

/// Changes that one authority made by one text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Amendment {
    /// Who made them, such as `City of Springfield`.
    pub authority: String,
    /// Where they are written, such as `Ordinance 12-345`.
    pub source: String,
    /// The first permit day they hold for, where they have one.
    pub since: Option<Day>,
    /// The first permit day they no longer hold for, where they end.
    pub until: Option<Day>,
    /// The changes, in order: a later one overrides an earlier one.
    pub changes: Vec<Change>,
}

impl Amendment {
    /// The authority and its text in words.
    #[must_use]
    pub fn by(&self) -> String {
        format!("{}, {}", self.authority, self.source)
    }

    /// Whether it holds for a permit of this day; nothing where that hangs on a day that is not known.
    #[must_use]
    pub fn holds(&self, permit_day: Option<Day>) -> Option<bool> {
        if self.since.is_none() && self.until.is_none() {
            return Some(true);
        }
        let day = permit_day?;
        Some(self.since.is_none_or(|since| since <= day) && self.until.is_none_or(|until| day < until))
    }
}

/// One change of the code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A rule is not applied.
    SwitchOff {
        /// The rule's name.
        rule: String,
    },
    /// Items are taken out of a list.
    Narrow {
        /// The list.
        list: List,
        /// The items.
        items: Vec<String>,
    },
    /// Items are added to a list.
    Widen {
        /// The list.
        list: List,
        /// The items.
        items: Vec<String>,
    },
    /// A date that stands in the code is another one.
    Date {
        /// Which date.
        of: Dated,
        /// The day in its place.
        day: Day,
    },
    /// The list of GFCI places reaches receptacles up to another voltage.
    Volts {
        /// The list: only that of GFCI places has a voltage.
        list: List,
        /// The highest voltage reached: 125 or 250.
        up_to: u32,
    },
    /// A remedy carries words of the authority's own.
    Marking {
        /// The remedy.
        remedy: Remedy,
        /// The words.
        words: String,
    },
    /// Something to be said wherever a rule speaks.
    Note {
        /// The rule's name.
        rule: String,
        /// It in words.
        words: String,
    },
}

names! {
    /// A date that stands in the code.
    Dated {
        /// From when a replaced receptacle needs AFCI protection.
        AfciOnReplacement = "afci-on-replacement",
        /// From when outdoor outlets need GFCI protection.
        OutdoorOutlets = "outdoor-outlets",
        /// Until when listed heating and cooling equipment outdoors is exempt from it.
        OutdoorEquipmentExempt = "outdoor-equipment-exempt",
    }
}

/// Something in an amendment that names nothing in the rulebook.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AmendmentFault {
    /// The position of the amendment.
    pub amendment: usize,
    /// The position of the change in it; nothing where the amendment itself is at fault.
    pub change: Option<usize>,
    /// What was written.
    pub written: String,
    /// What is wrong with it.
    pub message: String,
    /// The name nearest to it, where one is near.
    pub nearest: Option<String>,
}

/// Checks amendments against the rulebook: a change that names an unknown rule or item would change nothing.
#[must_use]
pub fn check_amendments(amendments: &[Amendment]) -> Vec<AmendmentFault> {
    let mut faults = Vec::new();
    for (at, amendment) in amendments.iter().enumerate() {
        for (what, text) in [
            ("an amendment names its authority", &amendment.authority),
            ("an amendment names its source", &amendment.source),
        ] {
            if text.trim().is_empty() {
                faults.push(fault(at, None, text, what.to_owned(), None));
            }
        }
        if let (Some(since), Some(until)) = (amendment.since, amendment.until)
            && until <= since
        {
            let message = format!("it ends on {until}, before it begins on {since}");
            faults.push(fault(at, None, &until.to_string(), message, None));
        }
        for (number, change) in amendment.changes.iter().enumerate() {
            check_change(change, &mut |written, message, near| {
                faults.push(fault(at, Some(number), written, message, near));
            });
        }
    }
    faults
}

fn check_change(change: &Change, fault: &mut dyn FnMut(&str, String, Option<String>)) {
    match change {
        Change::SwitchOff { rule } | Change::Note { rule, .. } => {
            if !RULES.iter().any(|known| known.id == rule) {
                let near = nearest(rule, RULES.iter().map(|rule| rule.id)).map(str::to_owned);
                fault(rule, "there is no rule of this name".to_owned(), near);
            }
        }
        Change::Narrow { list, items } | Change::Widen { list, items } => {
            if items.is_empty() {
                fault("", format!("nothing of `{list}` is named"), None);
            }
            for item in items {
                let known = list.items();
                if !known.contains(&item.as_str()) {
                    let near = nearest(item, known.iter().copied()).map(str::to_owned);
                    fault(item, format!("`{list}` knows no such item"), near);
                }
            }
        }
        Change::Volts { list, up_to } => {
            if *list != List::GfciPlaces {
                fault(
                    list.name(),
                    "only `gfci-places` has a voltage".to_owned(),
                    Some(List::GfciPlaces.name().to_owned()),
                );
            }
            if ![125, 250].contains(up_to) {
                fault(&up_to.to_string(), "receptacles are reached up to 125 or 250 V".to_owned(), None);
            }
        }
        Change::Marking { words, .. } => {
            if words.trim().is_empty() {
                fault(words, "a marking has words".to_owned(), None);
            }
        }
        Change::Date { .. } => {}
    }
}

fn fault(
    amendment: usize,
    change: Option<usize>,
    written: &str,
    message: String,
    nearest: Option<String>,
) -> AmendmentFault {
    AmendmentFault { amendment, change, written: written.to_owned(), message, nearest }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(changes: Vec<Change>) -> [Amendment; 1] {
        [Amendment { authority: "City".into(), source: "Ordinance".into(), since: None, until: None, changes }]
    }

    #[test]
    fn a_slip_of_the_pen_is_told_with_the_nearest_name() {
        let narrow = Change::Narrow { list: List::AfciRooms, items: vec!["kitchn".into()] };
        let off = Change::SwitchOff { rule: "replacement.afcis".into() };
        let faults = check_amendments(&of(vec![narrow, off]));
        let near: Vec<Option<&str>> = faults.iter().map(|fault| fault.nearest.as_deref()).collect();
        assert_eq!(near, [Some("kitchen"), Some("replacement.afci")]);
        assert_eq!(faults.iter().map(|fault| fault.change).collect::<Vec<_>>(), [Some(0), Some(1)]);
    }

    #[test]
    fn an_amendment_without_a_fault_has_none_and_one_that_ends_before_it_begins_has() {
        assert_eq!(check_amendments(&of(vec![Change::Volts { list: List::GfciPlaces, up_to: 125 }])), []);
        let [mut amendment] = of(Vec::new());
        amendment.since = Day::new(2020, 1, 1);
        amendment.until = Day::new(2019, 1, 1);
        assert_eq!(check_amendments(&[amendment]).len(), 1);
    }

    #[test]
    fn an_amendment_with_a_day_holds_only_where_the_permit_day_says_so() {
        let [mut amendment] = of(Vec::new());
        assert_eq!(amendment.holds(None), Some(true));
        amendment.since = Day::new(2020, 1, 1);
        assert_eq!(amendment.holds(None), None);
        assert_eq!(amendment.holds(Day::new(2019, 12, 31)), Some(false));
        assert_eq!(amendment.holds(Day::new(2020, 1, 1)), Some(true));
    }
}
