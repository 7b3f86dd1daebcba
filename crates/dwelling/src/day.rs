//! A day of the calendar: the pure crates have no clock, so that every day is given.

use std::fmt;
use std::str::FromStr;

/// A day, earlier days being less.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    /// A day that the caller knows to exist, such as one printed in a code.
    #[must_use]
    pub const fn on(year: u16, month: u8, day: u8) -> Self {
        Self { year, month, day }
    }

    /// The day with this date; nothing where the calendar has none.
    #[must_use]
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
        let last = match month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => return None,
        };
        (1..=last).contains(&day).then_some(Self { year, month, day })
    }

    /// Its year.
    #[must_use]
    pub const fn year(self) -> u16 {
        self.year
    }
}

impl FromStr for Day {
    type Err = NotADay;

    fn from_str(text: &str) -> Result<Self, NotADay> {
        let mut parts = text.split('-');
        let part = |digits: usize, part: Option<&str>| {
            let part = part.filter(|part| part.len() == digits && part.bytes().all(|byte| byte.is_ascii_digit()));
            part.and_then(|part| part.parse::<u16>().ok()).ok_or(NotADay)
        };
        let year = part(4, parts.next())?;
        let month = u8::try_from(part(2, parts.next())?).map_err(|_| NotADay)?;
        let day = u8::try_from(part(2, parts.next())?).map_err(|_| NotADay)?;
        if parts.next().is_some() {
            return Err(NotADay);
        }
        Self::new(year, month, day).ok_or(NotADay)
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// What is written is no day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotADay;

impl fmt::Display for NotADay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a day is written like 2014-01-01")
    }
}

impl std::error::Error for NotADay {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_read_as_it_is_written_and_days_are_in_order() {
        let days = ["2013-12-31", "2014-01-01", "2024-02-29"].map(|text| text.parse::<Day>().expect("a day"));
        assert!(days[0] < days[1] && days[1] < days[2]);
        assert_eq!(days.map(|day| day.to_string()), ["2013-12-31", "2014-01-01", "2024-02-29"]);
    }

    #[test]
    fn what_the_calendar_does_not_have_is_no_day() {
        for text in [
            "",
            "2014",
            "2014-1-1",
            "2014-13-01",
            "2023-02-29",
            "1900-02-29",
            "2014-04-31",
            "2014-01-01-",
            "２０１４-01-01",
        ] {
            assert_eq!(text.parse::<Day>(), Err(NotADay), "{text}");
        }
    }
}
