//! The price book as the TOML file that a contractor edits.

use crate::cents::Cents;
use crate::condition::WorkCondition;
use crate::material::Material;
use crate::price_book::PriceBook;
use crate::task::Task;
use std::fmt::Write as _;

/// A comment begins in this column.
const COMMENT: usize = 34;

impl PriceBook {
    /// The book as the TOML file that a contractor edits.
    #[must_use]
    pub fn to_toml(&self) -> String {
        let mut text = String::new();
        if self.is_demo {
            text.push_str("# Invented demo figures. Replace every one with your own before you quote from it.\n");
        }
        text.push_str("format = 1\n\n# An hour of work, dollars.\n");
        row(&mut text, "hour", &dollars(self.hour()), "an electrician");
        if let Some(helper) = self.helper_hour() {
            row(&mut text, "helper-hour", &dollars(helper), "a helper, where a task takes two");
        }
        text.push_str(
            "\n# What things cost you, dollars a piece (or a foot, where the name ends in -ft).\n[material]\n",
        );
        for thing in Material::ALL.iter().filter(|thing| self.has_thing(**thing)) {
            row(&mut text, thing.name(), &dollars(self.cost(*thing)), thing.meaning().trim());
        }
        text.push_str("\n# How things are sold: pieces or feet in a pack. What is not here is sold singly.\n[packs]\n");
        for thing in Material::ALL.iter().filter(|thing| !self.packs(**thing).is_empty()) {
            let sizes: Vec<String> = self.packs(*thing).iter().map(ToString::to_string).collect();
            row(&mut text, thing.name(), &format!("[{}]", sizes.join(", ")), "");
        }
        text.push_str("\n# How long work takes on the site, minutes.\n[minutes]\n");
        for task in Task::ALL.iter().filter(|task| self.has_task(**task)) {
            row(&mut text, task.name(), &self.minutes(*task).to_string(), task.meaning().trim());
        }
        self.add_crew(&mut text);
        text.push_str("\n# What the place makes of the plain time, percent of it.\n[conditions]\n");
        for condition in WorkCondition::ALL {
            row(&mut text, condition.name(), &self.percent(*condition).to_string(), condition.meaning().trim());
        }
        self.add_charges(&mut text);
        text
    }

    fn add_crew(&self, text: &mut String) {
        text.push_str("\n[crew]\n");
        row(text, "hours-a-day", &self.charges().hours_a_day.to_string(), "worked on the site");
        let two: Vec<String> =
            Task::ALL.iter().filter(|task| self.takes_two(**task)).map(|task| format!("\"{task}\"")).collect();
        text.push_str("# The tasks that take an electrician and a helper.\n");
        row(text, "tasks-for-two", &format!("[{}]", two.join(", ")), "");
    }

    fn add_charges(&self, text: &mut String) {
        let charges = self.charges();
        let in_the_prices = if self.is_demo { " The demo prices of things have them in already." } else { "" };
        let _ = write!(text, "\n# On the price of every piece and foot.{in_the_prices}\n[charges]\n");
        row(text, "waste-percent", &charges.waste.to_string(), "of what goes by the foot, cut off and thrown away");
        row(text, "markup-percent", &charges.markup.to_string(), "on the cost of material");
        row(text, "tax-percent", &charges.tax.to_string(), "on material, its markup included");
        text.push_str("# On the whole job.\n");
        row(text, "trip", &dollars(charges.trip), "for each working day");
        row(text, "permit", &dollars(charges.permit), "the fee");
        row(text, "contingency-percent", &charges.contingency.to_string(), "on material, labour and trips");
        row(text, "minimum", &dollars(charges.minimum), "the least that a job is done for");
        row(text, "round-to", &dollars(charges.round_to), "the total is rounded up to a multiple of this; 0 is not");
    }
}

fn row(text: &mut String, key: &str, value: &str, comment: &str) {
    let start = text.len();
    let _ = write!(text, "{key:<20} = {value:>7}");
    if !comment.is_empty() {
        let gap = COMMENT.saturating_sub(text.len() - start).max(3);
        let _ = write!(text, "{}# {comment}", " ".repeat(gap));
    }
    text.push('\n');
}

fn dollars(cents: Cents) -> String {
    format!("{}.{:02}", cents.0 / 100, cents.0 % 100)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_book_says_that_its_figures_are_invented() {
        assert!(PriceBook::demo().to_toml().starts_with("# Invented demo figures."));
        assert!(!PriceBook::new(Cents(1), &[], &[]).to_toml().contains("nvented"));
    }
}
