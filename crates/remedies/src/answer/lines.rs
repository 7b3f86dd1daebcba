//! The lines of a price, as an answer: what is bought and what is worked, unit by unit.

use dwelling::names;
use estimate::{Line, PriceBook, WorkCondition, added_up};
use schemars::JsonSchema;
use serde::Serialize;

/// A line of a price: so many units, each of one price in whole cents. The lines of a price add up to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LineAnswer {
    /// What it is of.
    pub of: LineOf,
    /// Its name in the price book; `as-stated` for work whose minutes the survey states.
    pub line: &'static str,
    /// What makes the work longer or shorter than plain; null where nothing that is known does.
    pub condition: Option<WorkCondition>,
    /// How many pieces or feet, or how often.
    pub quantity: u32,
    /// What one costs, in cents: waste, markup and tax included.
    pub unit_cents: i64,
    /// What all cost, in cents.
    pub cents: i64,
    /// Minutes of work, rounded half up.
    pub minutes: u32,
}

names! {
    /// What a line of a price is of.
    LineOf {
        /// Pieces of material.
        Pieces = "pieces",
        /// Feet of material.
        Feet = "feet",
        /// Work.
        Work = "work",
    }
}

impl LineAnswer {
    /// Lines as answers, those of the same unit added up.
    #[must_use]
    pub fn all(book: &PriceBook, lines: impl IntoIterator<Item = Line>) -> Vec<Self> {
        added_up(lines).into_iter().map(|line| Self::of(book, line)).collect()
    }

    fn of(book: &PriceBook, line: Line) -> Self {
        let unit = book.unit(line);
        let (of, name, condition) = match line {
            Line::Thing(thing, _) if thing.is_by_the_foot() => (LineOf::Feet, thing.name(), None),
            Line::Thing(thing, _) => (LineOf::Pieces, thing.name(), None),
            Line::Work(task, _, condition) => (LineOf::Work, task.name(), condition),
            Line::AsStated(_) => (LineOf::Work, AS_STATED, None),
        };
        let all = unit * line.quantity();
        Self {
            of,
            line: name,
            condition,
            quantity: line.quantity(),
            unit_cents: unit.total().0,
            cents: all.total().0,
            minutes: all.minutes(),
        }
    }
}

/// The name of work whose minutes the survey states.
pub(super) const AS_STATED: &str = "as-stated";
