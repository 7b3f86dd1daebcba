//! The charges of a price book by name, to be moved one at a time.

use crate::cents::Cents;
use crate::charges::Charges;
use crate::percent::Percent;
use dwelling::names;

names! {
    /// Something that is charged besides, or that decides how much of it is.
    Charge {
        /// What is cut off and thrown away of what goes by the foot.
        Waste = "waste-percent",
        /// On the cost of material.
        Markup = "markup-percent",
        /// On material, its markup included.
        Tax = "tax-percent",
        /// For each working day.
        Trip = "trip",
        /// Hours of a day that are worked on the site.
        HoursADay = "hours-a-day",
        /// The fee of the permit.
        Permit = "permit",
        /// For what nobody could see.
        Contingency = "contingency-percent",
        /// The least that a job is done for.
        Minimum = "minimum",
        /// The total is rounded up to a multiple of this.
        RoundTo = "round-to",
    }
}

impl Charges {
    /// The same charges, one of them moved by so many percent, rounded half up; a day keeps an hour.
    #[must_use]
    pub fn moved(self, charge: Charge, percent: i64) -> Self {
        let moved = |figure: i64| (figure * (100 + percent) + 50).div_euclid(100).max(0);
        let cents = |of: Cents| Cents(moved(of.0));
        let count = |of: u32| u32::try_from(moved(i64::from(of))).unwrap_or(u32::MAX);
        let share = |of: Percent| Percent(count(of.0));
        match charge {
            Charge::Waste => Self { waste: share(self.waste), ..self },
            Charge::Markup => Self { markup: share(self.markup), ..self },
            Charge::Tax => Self { tax: share(self.tax), ..self },
            Charge::Trip => Self { trip: cents(self.trip), ..self },
            Charge::HoursADay => Self { hours_a_day: count(self.hours_a_day).max(1), ..self },
            Charge::Permit => Self { permit: cents(self.permit), ..self },
            Charge::Contingency => Self { contingency: share(self.contingency), ..self },
            Charge::Minimum => Self { minimum: cents(self.minimum), ..self },
            Charge::RoundTo => Self { round_to: cents(self.round_to), ..self },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: half of 6.25 % is 3.125, rounded half up 3.13; a quarter more than 7 hours is 8.75, 9 of them; half of one hour
    /// would be rounded to one; a quarter less than 45.00 is 33.75. What is left out stays nothing.
    #[test]
    fn a_charge_is_moved_alone_and_rounded_half_up() {
        let charges = Charges { tax: Percent(6_25), hours_a_day: 7, trip: Cents(45_00), ..Charges::default() };
        assert_eq!(charges.moved(Charge::Tax, -50), Charges { tax: Percent(3_13), ..charges });
        assert_eq!(charges.moved(Charge::HoursADay, 25).hours_a_day, 9);
        assert_eq!(Charges { hours_a_day: 1, ..charges }.moved(Charge::HoursADay, -75).hours_a_day, 1);
        assert_eq!(charges.moved(Charge::Trip, -25), Charges { trip: Cents(33_75), ..charges });
        assert_eq!(charges.moved(Charge::Markup, 50), charges);
    }
}
