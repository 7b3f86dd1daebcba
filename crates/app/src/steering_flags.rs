//! What the owner lays down for a plan, from the command line.

use crate::command_error::CommandError;
use dwelling::{Dwelling, RoomIndex, nearest};
use estimate::Cents;
use remedies::Wish;

/// What the owner lays down beforehand. Ids are those of the survey; name the survey before them.
#[derive(Debug, Default, clap::Args)]
pub struct SteeringFlags {
    /// Boxes that must truly be grounded
    #[arg(long, value_name = "BOX", num_args = 1..)]
    pub ground: Vec<String>,
    /// Boxes that stay, with their device and what feeds them; they may be marked, protected and joined to a ground
    #[arg(long, value_name = "BOX", num_args = 1..)]
    pub keep: Vec<String>,
    /// Rooms in which no finished surface is opened and no box cut out
    #[arg(long, value_name = "ROOM", num_args = 1..)]
    pub no_open: Vec<String>,
    /// The most that may be spent: the plan grounds the most for it, by what is plugged in
    #[arg(long, value_name = "MONEY", value_parser = money)]
    pub budget: Option<Cents>,
}

/// A sum of money, such as `1500`, `1,500.00` or `$1500`.
fn money(written: &str) -> Result<Cents, String> {
    let wrong = || "write a sum of money, such as `1500` or `1,500.00`".to_owned();
    let plain = written.trim().trim_start_matches('$').replace(',', "");
    let (dollars, cents) = plain.split_once('.').unwrap_or((&plain, "00"));
    let digits = |text: &str| !text.is_empty() && text.len() <= 9 && text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(dollars) || !digits(cents) || cents.len() != 2 {
        return Err(wrong());
    }
    let number = |text: &str| text.parse::<i64>().map_err(|_| wrong());
    Ok(Cents(number(dollars)? * 100 + number(cents)?))
}

impl SteeringFlags {
    /// The wishes: grounds first, then boxes to keep, then rooms not to open, each once.
    ///
    /// # Errors
    /// [`CommandError::Usage`] with every id that the survey does not have, and the nearest that it has.
    pub fn wishes(&self, dwelling: &Dwelling) -> Result<Vec<Wish>, CommandError> {
        let mut wishes: Vec<Wish> = Vec::new();
        let mut mistakes: Vec<String> = Vec::new();
        let mut add = |found: Result<Wish, String>| match found {
            Ok(wish) if wishes.contains(&wish) => {}
            Ok(wish) => wishes.push(wish),
            Err(mistake) => mistakes.push(mistake),
        };
        let boxes = || dwelling.boxes.iter().map(|device_box| device_box.id.as_str());
        let rooms = || dwelling.rooms.iter().map(|room| room.id.as_str());
        let box_of = |flag: &str, id: &str| dwelling.box_named(id).ok_or_else(|| no_such("box", flag, id, boxes()));
        for id in &self.ground {
            add(box_of("--ground", id).map(Wish::Ground));
        }
        for id in &self.keep {
            add(box_of("--keep", id).map(Wish::Keep));
        }
        for id in &self.no_open {
            let room = rooms().position(|room| room == id).map(RoomIndex);
            add(room.ok_or_else(|| no_such("room", "--no-open", id, rooms())).map(Wish::NoOpen));
        }
        if mistakes.is_empty() { Ok(wishes) } else { Err(CommandError::Usage(mistakes.join("\nerror: "))) }
    }
}

fn no_such<'a>(thing: &str, flag: &str, id: &str, names: impl Iterator<Item = &'a str>) -> String {
    let near = nearest(id, names).map_or(String::new(), |near| format!("; did you mean `{near}`?"));
    format!("`{flag} {id}`: the survey has no {thing} `{id}`{near}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1,500 dollars are 150,000 cents.
    #[test]
    fn sums_are_read_with_and_without_their_sign_and_thousands() {
        for written in ["1500", "1500.00", "$1,500", "$1,500.00", " 1500 "] {
            assert_eq!(money(written), Ok(Cents(150_000)), "{written}");
        }
        assert_eq!(money("0.05"), Ok(Cents(5)));
    }

    #[test]
    fn what_is_no_sum_is_refused() {
        for written in ["", "-5", "1e3", "12.5", "12.345", "1.5k", "9999999999", "$", "1.2.3", "٣"] {
            assert!(money(written).is_err(), "{written}");
        }
    }
}
