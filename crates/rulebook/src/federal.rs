//! Federal text that touches the work: when disturbing old paint calls for lead-safe practices.

use crate::cited::Known;

/// A place in a federal text, and how it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FederalText {
    /// The section.
    pub section: &'static str,
    /// How it is known.
    pub known: Known,
}

const MINOR_WORK: FederalText =
    FederalText { section: "40 CFR 745.83", known: Known::Read("EPA frequent questions on minor repair; thehtrc.com") };
const OLD_HOUSING: FederalText =
    FederalText { section: "40 CFR 745.82", known: Known::Read("blog.zackacademy.com on housing from before 1978") };

/// Housing built before this year is reached.
pub const LEAD_YEAR: u16 = 1978;
/// The most paint in square feet that may be disturbed in one room as minor work, all work within 30 days taken together.
pub const MINOR_INSIDE: u32 = 6;
/// The same outside.
pub const MINOR_OUTSIDE: u32 = 20;

const SQUARE_INCHES: u32 = 144;

/// Painted surface that a job disturbs. `None` is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaintedSurface {
    /// Whether it is inside: then in one room.
    pub inside: bool,
    /// How much is disturbed, in square inches, within 30 days; what is removed counts whole.
    pub square_inches: Option<u32>,
    /// Whether a window is replaced, a painted surface torn out, or a forbidden practice used.
    pub more_than_minor: Option<bool>,
}

/// Whether lead-safe practices are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeadSafe {
    /// They are.
    Asked,
    /// They are not: minor repair and maintenance.
    MinorWork,
    /// They are not: the house is too young.
    NotThisHouse,
    /// A fact is missing.
    NotChecked,
}

/// Whether lead-safe practices are asked for, why in one sentence, and where that stands.
#[must_use]
pub fn lead_safe(built: Option<u16>, surface: PaintedSurface) -> (LeadSafe, String, FederalText) {
    let most = if surface.inside { MINOR_INSIDE } else { MINOR_OUTSIDE };
    match built {
        None => {
            return (LeadSafe::NotChecked, "find out the year in which the house was built".to_owned(), OLD_HOUSING);
        }
        Some(year) if year >= LEAD_YEAR => {
            return (LeadSafe::NotThisHouse, format!("built in {year}, not before {LEAD_YEAR}"), OLD_HOUSING);
        }
        Some(_) => {}
    }
    let (asked, why) = match (surface.more_than_minor, surface.square_inches) {
        (Some(true), _) => {
            let why = "a window, a torn-out painted surface or a forbidden practice is never minor work";
            (LeadSafe::Asked, why.to_owned())
        }
        (_, Some(area)) if area > most.saturating_mul(SQUARE_INCHES) => {
            (LeadSafe::Asked, format!("more than {most} square feet of paint are disturbed"))
        }
        (_, None) => (LeadSafe::NotChecked, "measure how much painted surface is disturbed".to_owned()),
        (None, _) => (
            LeadSafe::NotChecked,
            "find out whether a painted surface is torn out: a hole in a wall may count".to_owned(),
        ),
        (Some(false), Some(_)) => {
            (LeadSafe::MinorWork, format!("no more than {most} square feet of paint are disturbed"))
        }
    };
    (asked, why, MINOR_WORK)
}

/// The caution for work in a house that may have lead paint; nothing for one that is known to be younger.
#[must_use]
pub fn lead_caution(built: Option<u16>) -> Option<String> {
    if built.is_some_and(|year| year >= LEAD_YEAR) {
        return None;
    }
    let age = if built.is_some() { "the house is from before 1978" } else { "the house may be from before 1978" };
    Some(format!(
        "{age}: paint can hold lead; where more than {MINOR_INSIDE} square feet are disturbed in a room, or {MINOR_OUTSIDE} outside, \
         within 30 days, certified lead-safe work is asked for, and a hole cut into a painted wall may count as tearing it out \
         ({})",
        MINOR_WORK.section
    ))
}
