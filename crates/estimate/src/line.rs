//! The lines of a takeoff: so much of a thing, so often a piece of work. A price follows from them and nothing else.

use crate::condition::WorkCondition;
use crate::material::Material;
use crate::task::Task;

/// A line of a takeoff.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// So many pieces or feet of a thing.
    Thing(Material, u32),
    /// A piece of work so often, under a condition where it has one.
    Work(Task, u32, Option<WorkCondition>),
    /// Work whose minutes the survey states.
    AsStated(u32),
}

impl Line {
    /// A piece of work, once, under no condition.
    #[must_use]
    pub const fn once(task: Task) -> Self {
        Self::Work(task, 1, None)
    }

    /// How many pieces or feet, or how often.
    #[must_use]
    pub const fn quantity(self) -> u32 {
        match self {
            Self::Thing(_, quantity) | Self::Work(_, quantity, _) => quantity,
            Self::AsStated(_) => 1,
        }
    }

    /// The same line with another quantity.
    #[must_use]
    const fn with_quantity(self, quantity: u32) -> Self {
        match self {
            Self::Thing(thing, _) => Self::Thing(thing, quantity),
            Self::Work(task, _, condition) => Self::Work(task, quantity, condition),
            Self::AsStated(minutes) => Self::AsStated(minutes),
        }
    }

    /// Whether two lines are of the same unit, so that their quantities add up.
    fn is_of_one_unit(self, other: Self) -> bool {
        !matches!(self, Self::AsStated(_)) && self.with_quantity(0) == other.with_quantity(0)
    }
}

/// The lines with those of the same unit added up, things first and both in the order of the book; empty lines left out.
///
/// A unit has one price in whole cents, so what lines cost together stays the same.
#[must_use]
pub fn added_up(lines: impl IntoIterator<Item = Line>) -> Vec<Line> {
    let mut sorted: Vec<Line> = lines.into_iter().filter(|line| line.quantity() > 0).collect();
    sorted.sort_unstable();
    let mut sums: Vec<Line> = Vec::new();
    for line in sorted {
        match sums.last_mut().filter(|last| last.is_of_one_unit(line)) {
            Some(last) => *last = last.with_quantity(last.quantity().saturating_add(line.quantity())),
            None => sums.push(line),
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_of_one_unit_add_up_and_others_stay_apart() {
        let lines = [
            Line::AsStated(20),
            Line::Work(Task::FishBay, 2, Some(WorkCondition::Plaster)),
            Line::Thing(Material::Plate, 1),
            Line::Work(Task::FishBay, 1, None),
            Line::Work(Task::FishBay, 3, Some(WorkCondition::Plaster)),
            Line::Thing(Material::Plate, 2),
            Line::Thing(Material::Label, 0),
            Line::AsStated(20),
        ];
        let expected = [
            Line::Thing(Material::Plate, 3),
            Line::Work(Task::FishBay, 1, None),
            Line::Work(Task::FishBay, 5, Some(WorkCondition::Plaster)),
            Line::AsStated(20),
            Line::AsStated(20),
        ];
        assert_eq!(added_up(lines), expected);
    }
}
