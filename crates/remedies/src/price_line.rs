//! The lines of a price book, to be moved one at a time.

use estimate::{Cents, Charge, Material, PriceBook, Task, WorkCondition};

/// A line of the price book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PriceLine {
    /// An hour of work.
    Hour,
    /// An hour of a helper's work.
    HelperHour,
    /// A thing.
    Material(Material),
    /// The time that a task takes.
    Task(Task),
    /// What a condition makes of the plain time.
    Condition(WorkCondition),
    /// Something that is charged besides.
    Charge(Charge),
}

impl PriceLine {
    /// Every line, in the order of the book.
    pub fn all() -> impl Iterator<Item = Self> {
        let materials = Material::ALL.iter().map(|thing| Self::Material(*thing));
        let tasks = Task::ALL.iter().map(|task| Self::Task(*task));
        let conditions = WorkCondition::ALL.iter().map(|condition| Self::Condition(*condition));
        let charges = Charge::ALL.iter().map(|charge| Self::Charge(*charge));
        [Self::Hour, Self::HelperHour].into_iter().chain(materials).chain(tasks).chain(conditions).chain(charges)
    }

    /// Its name in the price book.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Hour => "hour",
            Self::HelperHour => "helper-hour",
            Self::Material(thing) => thing.name(),
            Self::Task(task) => task.name(),
            Self::Condition(condition) => condition.name(),
            Self::Charge(charge) => charge.name(),
        }
    }

    /// The table of the price book in which it stands; nothing for the hours.
    #[must_use]
    pub const fn table(self) -> Option<&'static str> {
        match self {
            Self::Hour | Self::HelperHour => None,
            Self::Material(_) => Some("material"),
            Self::Task(_) => Some("minutes"),
            Self::Condition(_) => Some("conditions"),
            Self::Charge(Charge::HoursADay) => Some("crew"),
            Self::Charge(_) => Some("charges"),
        }
    }

    /// The book with this line moved by so many percent of itself, rounded half up to the cent, the minute or the percent of a
    /// condition; what the book leaves out stays so.
    #[must_use]
    pub fn moved(self, book: &PriceBook, percent: i64) -> PriceBook {
        let moved = |figure: i64| (figure * (100 + percent) + 50).div_euclid(100);
        let count = |figure: u32| u32::try_from(moved(i64::from(figure))).unwrap_or(u32::MAX);
        let other = book.clone();
        match self {
            Self::Hour => other.with_hour(Cents(moved(book.hour().0))),
            Self::HelperHour => other.with_helper_hour(book.helper_hour().map(|hour| Cents(moved(hour.0)))),
            Self::Material(thing) if book.has_thing(thing) => other.with_cost(thing, Cents(moved(book.cost(thing).0))),
            Self::Task(task) if book.has_task(task) => other.with_minutes(task, count(book.minutes(task))),
            Self::Material(_) | Self::Task(_) => other,
            Self::Condition(condition) => other.with_percent(condition, count(book.percent(condition))),
            Self::Charge(charge) => other.with_charges(book.charges().moved(charge, percent)),
        }
    }
}
