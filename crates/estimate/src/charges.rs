//! What is charged besides material and labour, and what the owner pays.

use crate::cents::Cents;
use crate::percent::Percent;
use crate::price::Price;

/// What a business adds to what things cost and work takes. Nothing is added where a figure is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Charges {
    /// Of what goes by the foot: what is cut off and thrown away.
    pub waste: Percent,
    /// On the cost of material.
    pub markup: Percent,
    /// On material, its markup included.
    pub tax: Percent,
    /// For each working day: the way to the site and back.
    pub trip: Cents,
    /// How many hours of a day are worked on the site.
    pub hours_a_day: u32,
    /// The fee of the permit.
    pub permit: Cents,
    /// On material, labour and trips: for what nobody could see.
    pub contingency: Percent,
    /// The least that a job is done for.
    pub minimum: Cents,
    /// The total is rounded up to a multiple of this.
    pub round_to: Cents,
}

/// A working day where the book says nothing: common practice, no source.
const HOURS_A_DAY: u32 = 8;

impl Default for Charges {
    fn default() -> Self {
        Self {
            waste: Percent::default(),
            markup: Percent::default(),
            tax: Percent::default(),
            trip: Cents::default(),
            hours_a_day: HOURS_A_DAY,
            permit: Cents::default(),
            contingency: Percent::default(),
            minimum: Cents::default(),
            round_to: Cents::default(),
        }
    }
}

/// What the owner pays, part by part: the total is the sum of the others.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OwnerPrice {
    /// Material and labour.
    pub work: Cents,
    /// Working days begun.
    pub days: u32,
    /// The trips of those days.
    pub trips: Cents,
    /// For what nobody could see.
    pub contingency: Cents,
    /// The fee of the permit.
    pub permit: Cents,
    /// What is missing to the least that a job is done for.
    pub to_minimum: Cents,
    /// What rounding up adds.
    pub rounding: Cents,
    /// The sum.
    pub total: Cents,
}

impl Charges {
    /// What a unit that costs this is charged at, rounded half up to the cent once.
    #[must_use]
    pub fn charged(&self, cost: Cents, by_the_foot: bool) -> Cents {
        let waste = if by_the_foot { self.waste } else { Percent::default() };
        let above = waste.on_top() * self.markup.on_top() * self.tax.on_top();
        cost.times_ratio(above, Percent::ONE * Percent::ONE * Percent::ONE)
    }

    /// What the owner pays for work of this price; nothing where there is no work.
    ///
    /// For as many days it never falls as the price rises.
    #[must_use]
    pub fn owner_price(&self, price: Price) -> OwnerPrice {
        let work = price.total();
        if work == Cents(0) && price.time.0 == 0 {
            return OwnerPrice::default();
        }
        let days = price.time.days(self.hours_a_day);
        let trips = self.trip * i64::from(days);
        let contingency = (work + trips).times_ratio(i128::from(self.contingency.0), Percent::ONE);
        let sum = work + trips + contingency + self.permit;
        let to_minimum = Cents((self.minimum.0 - sum.0).max(0));
        let before = sum + to_minimum;
        let step = self.round_to.0;
        let rounding = if step > 0 { Cents((step - before.0.rem_euclid(step)).rem_euclid(step)) } else { Cents(0) };
        let (permit, total) = (self.permit, before + rounding);
        OwnerPrice { work, days, trips, contingency, permit, to_minimum, rounding, total }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::price::WorkTime;

    fn all() -> Charges {
        Charges {
            waste: Percent::whole(10),
            markup: Percent::whole(15),
            tax: Percent(625),
            trip: Cents(4_500),
            permit: Cents(12_000),
            contingency: Percent::whole(5),
            minimum: Cents(25_000),
            round_to: Cents(1_000),
            ..Charges::default()
        }
    }

    fn priced(material: i64, labour: i64, minutes: u32) -> Price {
        Price { material: Cents(material), labour: Cents(labour), time: WorkTime::minutes_of(minutes) }
    }

    /// By hand: 24.00 × 1.15 × 1.0625 = 29.325, rounded half up 29.33; a foot at 0.33 × 1.10 × 1.15 × 1.0625 = 0.44354.
    #[test]
    fn a_unit_carries_waste_markup_and_tax_rounded_once() {
        assert_eq!(all().charged(Cents(2_400), false), Cents(2_933));
        assert_eq!(all().charged(Cents(33), true), Cents(44));
        assert_eq!(Charges::default().charged(Cents(33), true), Cents(33));
    }

    /// By hand: 300.00 + 700.00 = 1,000.00 in 500 minutes, two days of 8 hours begun: 90.00 of trips; 5 % of 1,090.00 is
    /// 54.50; with the permit 1,264.50, rounded up to 1,270.00.
    #[test]
    fn the_owner_pays_work_trips_contingency_permit_and_rounding() {
        let paid = all().owner_price(priced(30_000, 70_000, 500));
        assert_eq!((paid.work, paid.days, paid.trips), (Cents(100_000), 2, Cents(9_000)));
        assert_eq!((paid.contingency, paid.permit), (Cents(5_450), Cents(12_000)));
        assert_eq!((paid.to_minimum, paid.rounding, paid.total), (Cents(0), Cents(550), Cents(127_000)));
    }

    /// By hand: 10.00 + 45.00 of a trip, 2.75 of contingency and the permit are 177.75: 72.25 are missing to 250.00.
    #[test]
    fn a_small_job_costs_the_minimum_and_no_job_costs_nothing() {
        let paid = all().owner_price(priced(0, 1_000, 5));
        assert_eq!((paid.to_minimum, paid.rounding, paid.total), (Cents(7_225), Cents(0), Cents(25_000)));
        assert_eq!(all().owner_price(Price::default()), OwnerPrice::default());
    }

    #[test]
    fn the_parts_add_up_and_more_work_in_as_many_days_never_costs_less() {
        let mut before = Cents(0);
        for cents in (1..200_000).step_by(37) {
            let paid = all().owner_price(priced(cents / 3, cents - cents / 3, 480));
            let parts = [paid.work, paid.trips, paid.contingency, paid.permit, paid.to_minimum, paid.rounding];
            assert_eq!(parts.into_iter().sum::<Cents>(), paid.total);
            assert!(paid.total >= before && paid.total.0 % 1_000 == 0);
            before = paid.total;
        }
    }
}
