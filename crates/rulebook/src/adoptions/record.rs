//! What is known of a place's adoptions, and which of them a permit falls under.

use crate::adoptions::{ADOPTIONS, LEFT_TO_THE_LOCAL};
use crate::amendment::Amendment;
use crate::cited::{Known, NotChecked};
use crate::code::CodeInForce;
use crate::day::Day;
use crate::edition::Edition;
use crate::policy::Policy;
use dwelling::{DwellingUse, nearest};

/// What every answer that rests on a built-in record says with it.
pub const ASK_THE_AUTHORITY: &str = "built-in records of what places adopted can be out of date or incomplete: the word of the \
     authority having jurisdiction counts";

/// The adoptions of a place, earliest first.
#[derive(Clone, Copy, Debug)]
pub struct Adoption {
    /// Its name, such as `south-carolina`.
    pub place: &'static str,
    /// What people call it.
    pub title: &'static str,
    /// The day up to which the sources speak.
    pub as_of: Day,
    /// The records, earliest first.
    pub records: &'static [Record],
    /// What else is to be known, such as amendments nobody could read.
    pub remarks: &'static [&'static str],
}

/// One adoption.
#[derive(Clone, Copy, Debug)]
pub struct Record {
    /// The first permit day it holds for.
    pub since: Since,
    /// The edition adopted.
    pub edition: Edition,
    /// How that is known.
    pub known: Known,
    /// The last day on which the earlier code could still be chosen, where there was such a time.
    pub earlier_until: Option<Day>,
    /// The dwellings it is not for, and what is known of their code.
    pub not_for: &'static [(DwellingUse, &'static str)],
    /// What the place changed in it.
    pub amendments: fn() -> Vec<Amendment>,
}

/// Since when an adoption holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    /// Since this day.
    On(Day),
    /// The source does not say; on this day it was in force.
    SeenOn(Day),
}

impl Since {
    /// The first day for which it is known to hold.
    #[must_use]
    pub const fn first(self) -> Day {
        match self {
            Self::On(day) | Self::SeenOn(day) => day,
        }
    }
}

impl Adoption {
    /// The record that a permit of this day falls under.
    fn record(&self, day: Day) -> Option<&'static Record> {
        self.records.iter().rev().find(|record| record.since.first() <= day)
    }
}

/// A place's code for a permit, with what must be said with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Adopted {
    /// The code.
    pub code: CodeInForce,
    /// The place, as people call it.
    pub title: &'static str,
    /// Up to when the sources speak.
    pub as_of: Day,
    /// How the adoption is known.
    pub known: Known,
    /// What must be said with every answer: that the authority's word counts, and what is not in the record.
    pub warnings: Vec<&'static str>,
}

/// How many years beyond its sources a record is still taken for good: places adopt about every three years.
const GOOD_FOR_YEARS: u16 = 3;

/// The code in force in a place for a permit of this day on this kind of dwelling, with what must be said with it.
///
/// # Errors
/// [`NotChecked`] for a place without a record, without the permit's day, before the first record, long after the last source,
/// while an earlier code could still be chosen, and for a dwelling to which the adoption does not apply or whose kind is unknown
/// where that matters.
pub fn adopted(place: &str, permit_day: Option<Day>, dwelling_use: Option<DwellingUse>) -> Result<Adopted, NotChecked> {
    let missing = |because: String| NotChecked { because };
    if let Some((_, title)) = LEFT_TO_THE_LOCAL.iter().find(|(name, _)| *name == place) {
        let because =
            format!("{title} has no statewide adoption: each place there adopts its own edition, so state the edition");
        return Err(missing(because));
    }
    let Some(adoption) = ADOPTIONS.iter().find(|adoption| adoption.place == place) else {
        let names = ADOPTIONS.iter().map(|adoption| adoption.place);
        let near = nearest(place, names).map(|near| format!("; did you mean `{near}`?")).unwrap_or_default();
        return Err(missing(format!("there is no record of what `{place}` adopted{near}")));
    };
    let title = adoption.title;
    let day = permit_day
        .ok_or_else(|| missing(format!("find out the day of the permit: it picks what {title} had adopted")))?;
    let record = adoption.record(day).ok_or_else(|| {
        missing(format!("what {title} had adopted on {day} is not recorded: ask the authority, and state the edition"))
    })?;
    if day.year() > adoption.as_of.year().saturating_add(GOOD_FOR_YEARS) {
        let because =
            format!("the record of {title} is as of {}, too long before {day}: ask the authority", adoption.as_of);
        return Err(missing(because));
    }
    if let Some(until) = record.earlier_until.filter(|until| day <= *until) {
        let because = format!(
            "until {until} {title} let the earlier code be chosen beside {}: find out which the permit was applied for under",
            record.edition
        );
        return Err(missing(because));
    }
    match dwelling_use {
        None if !record.not_for.is_empty() => {
            return Err(missing(format!(
                "find out the kind of dwelling: in {title} not every kind follows the same code"
            )));
        }
        Some(used) => {
            if let Some((_, instead)) = record.not_for.iter().find(|(not_for, _)| *not_for == used) {
                return Err(missing(format!("{title}: {instead}")));
            }
        }
        None => {}
    }
    let code = CodeInForce {
        edition: record.edition,
        permit_day: Some(day),
        amendments: (record.amendments)(),
        policy: Policy::unknown(),
    };
    let warnings = [ASK_THE_AUTHORITY].iter().chain(adoption.remarks).copied().collect();
    Ok(Adopted { code, title, as_of: adoption.as_of, known: record.known, warnings })
}

/// The code in force in a place for a permit of this day on this kind of dwelling.
///
/// # Errors
/// As for [`adopted`].
pub fn code_for(
    place: &str,
    permit_day: Option<Day>,
    dwelling_use: Option<DwellingUse>,
) -> Result<CodeInForce, NotChecked> {
    adopted(place, permit_day, dwelling_use).map(|adopted| adopted.code)
}
