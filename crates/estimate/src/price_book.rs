//! The price book: its figures, and the price of every unit of material and work that follows from them.

use crate::cents::Cents;
use crate::charges::{Charges, OwnerPrice};
use crate::condition::WorkCondition;
use crate::figures::Figures;
use crate::line::Line;
use crate::material::Material;
use crate::price::{Price, WorkTime};
use crate::task::Task;

/// What a contractor pays and charges. Every figure can be replaced by one's own.
///
/// A unit – a piece, a foot, a task done once under one condition – has one price in whole cents: tax, markup and waste are in
/// it, and it is rounded half up once. All prices are whole numbers of units, so they are the sums of what is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceBook {
    hour: Cents,
    helper_hour: Option<Cents>,
    /// What each thing costs, in the order of [`Material::ALL`].
    material: Vec<Cents>,
    /// In what packs each is sold.
    packs: Vec<Vec<u32>>,
    /// How long each task takes in minutes, in the order of [`Task::ALL`].
    minutes: Vec<u32>,
    /// Which tasks take two.
    for_two: Vec<bool>,
    /// What each condition makes of the plain time in percent, in the order of [`WorkCondition::ALL`].
    percents: Vec<u32>,
    charges: Charges,
    /// Whether the figures are the invented ones that come with the tool.
    pub is_demo: bool,
    /// The things for which nobody wrote a price down.
    things_without: Vec<Material>,
    /// The tasks for which nobody wrote down how long they take.
    tasks_without: Vec<Task>,
    /// What a piece or a foot of each thing is charged at.
    charged: Vec<Cents>,
    /// What each task costs once: plain, then under each condition.
    worked: Vec<Price>,
}

/// What a condition leaves as it is, in percent.
const PLAIN: u32 = 100;
/// The prices of a task: one plain, one for each condition.
const BY_CONDITION: usize = WorkCondition::ALL.len() + 1;

impl PriceBook {
    /// The book of these figures.
    #[must_use]
    pub fn of(figures: Figures) -> Self {
        let mut book = Self::plain(figures.hour);
        let demo = Figures::demo();
        // What puts dangers right is priced by the figures of whoever quotes, or not at all.
        let things = demo.material.into_iter().filter(|(thing, _)| !thing.is_for_dangers());
        for (thing, cost) in things.chain(figures.material) {
            book.material[thing as usize] = cost;
            book.things_without.retain(|without| *without != thing);
        }
        let tasks = demo.minutes.into_iter().filter(|(task, _)| !task.is_for_dangers());
        for (task, minutes) in tasks.chain(figures.minutes) {
            book.minutes[task as usize] = minutes;
            book.tasks_without.retain(|without| *without != task);
        }
        for (thing, packs) in figures.packs {
            book.packs[thing as usize] = packs;
        }
        for task in figures.for_two {
            book.for_two[task as usize] = true;
        }
        for (condition, percent) in figures.conditions {
            book.percents[condition as usize] = percent;
        }
        (book.helper_hour, book.charges) = (figures.helper_hour, figures.charges);
        book.worked_out()
    }

    /// A book with these figures and no charges besides; what a list leaves out costs what the demo book says.
    #[must_use]
    pub fn new(hour: Cents, material: &[(Material, Cents)], minutes: &[(Task, u32)]) -> Self {
        Self::of(Figures { hour, material: material.to_vec(), minutes: minutes.to_vec(), ..Figures::default() })
    }

    /// The invented figures that come with the tool.
    #[must_use]
    pub fn demo() -> Self {
        Self { is_demo: true, ..Self::of(Figures::demo()) }
    }

    fn plain(hour: Cents) -> Self {
        Self {
            hour,
            helper_hour: None,
            material: vec![Cents(0); Material::ALL.len()],
            packs: vec![Vec::new(); Material::ALL.len()],
            minutes: vec![0; Task::ALL.len()],
            for_two: vec![false; Task::ALL.len()],
            percents: vec![PLAIN; WorkCondition::ALL.len()],
            charges: Charges::default(),
            is_demo: false,
            things_without: Material::ALL.to_vec(),
            tasks_without: Task::ALL.to_vec(),
            charged: Vec::new(),
            worked: Vec::new(),
        }
    }

    /// The book with the price of every unit worked out anew.
    fn worked_out(mut self) -> Self {
        let charged = |thing: &Material| self.charges.charged(self.cost(*thing), thing.is_by_the_foot());
        self.charged = Material::ALL.iter().map(charged).collect();
        let conditions = || std::iter::once(None).chain(WorkCondition::ALL.iter().copied().map(Some));
        let worked =
            Task::ALL.iter().flat_map(|task| conditions().map(|condition| self.price_of_work(*task, condition)));
        self.worked = worked.collect();
        self
    }

    fn price_of_work(&self, task: Task, condition: Option<WorkCondition>) -> Price {
        let percent = condition.map_or(PLAIN, |condition| self.percent(condition));
        let time = WorkTime(u64::from(self.minutes(task)) * u64::from(percent));
        Price { material: Cents(0), labour: labour(self.hour_of(task), time), time }
    }

    /// What an hour of a task costs: a helper's included where it takes two.
    #[must_use]
    pub fn hour_of(&self, task: Task) -> Cents {
        self.hour + if self.takes_two(task) { self.helper_hour.unwrap_or_default() } else { Cents(0) }
    }

    /// Whether the book has a price for a thing. What it has none for adds nothing.
    #[must_use]
    pub fn has_thing(&self, thing: Material) -> bool {
        !self.things_without.contains(&thing)
    }

    /// Whether the book says how long a task takes. What it does not say adds nothing.
    #[must_use]
    pub fn has_task(&self, task: Task) -> bool {
        !self.tasks_without.contains(&task)
    }

    /// The name of what a line is of, where the book has no price for it.
    #[must_use]
    pub fn without_price(&self, line: Line) -> Option<&'static str> {
        match line {
            Line::Thing(thing, _) => (!self.has_thing(thing)).then(|| thing.name()),
            Line::Work(task, ..) => (!self.has_task(task)).then(|| task.name()),
            Line::AsStated(_) => None,
        }
    }

    /// The same book with another price of an hour.
    #[must_use]
    pub fn with_hour(self, hour: Cents) -> Self {
        Self { hour, ..self }.worked_out()
    }

    /// The same book with another price of a helper's hour.
    #[must_use]
    pub fn with_helper_hour(self, hour: Option<Cents>) -> Self {
        Self { helper_hour: hour, ..self }.worked_out()
    }

    /// The same book with another time under a condition, in percent of the plain time.
    #[must_use]
    pub fn with_percent(mut self, condition: WorkCondition, percent: u32) -> Self {
        self.percents[condition as usize] = percent;
        self.worked_out()
    }

    /// The same book with other charges.
    #[must_use]
    pub fn with_charges(self, charges: Charges) -> Self {
        Self { charges, ..self }.worked_out()
    }

    /// The same book with another price of a thing.
    #[must_use]
    pub fn with_cost(mut self, thing: Material, cost: Cents) -> Self {
        self.material[thing as usize] = cost;
        self.things_without.retain(|without| *without != thing);
        self.worked_out()
    }

    /// The same book with another time for a task, in minutes.
    #[must_use]
    pub fn with_minutes(mut self, task: Task, minutes: u32) -> Self {
        self.minutes[task as usize] = minutes;
        self.tasks_without.retain(|without| *without != task);
        self.worked_out()
    }

    /// An hour of an electrician's work.
    #[must_use]
    pub fn hour(&self) -> Cents {
        self.hour
    }

    /// An hour of a helper's work.
    #[must_use]
    pub fn helper_hour(&self) -> Option<Cents> {
        self.helper_hour
    }

    /// What a thing costs.
    #[must_use]
    pub fn cost(&self, thing: Material) -> Cents {
        self.material[thing as usize]
    }

    /// What a piece or a foot of a thing is charged at.
    #[must_use]
    pub fn charged(&self, thing: Material) -> Cents {
        self.charged[thing as usize]
    }

    /// In what packs a thing is sold; none where it is sold by the piece or the foot.
    #[must_use]
    pub fn packs(&self, thing: Material) -> &[u32] {
        &self.packs[thing as usize]
    }

    /// How long a task takes, in minutes.
    #[must_use]
    pub fn minutes(&self, task: Task) -> u32 {
        self.minutes[task as usize]
    }

    /// Whether a task takes an electrician and a helper.
    #[must_use]
    pub fn takes_two(&self, task: Task) -> bool {
        self.for_two[task as usize]
    }

    /// What a condition makes of the plain time, in percent.
    #[must_use]
    pub fn percent(&self, condition: WorkCondition) -> u32 {
        self.percents[condition as usize]
    }

    /// What is charged besides material and labour.
    #[must_use]
    pub fn charges(&self) -> &Charges {
        &self.charges
    }

    /// What a unit of a line costs.
    #[must_use]
    pub fn unit(&self, line: Line) -> Price {
        match line {
            Line::Thing(thing, _) => Price { material: self.charged(thing), ..Price::default() },
            Line::Work(task, _, condition) => {
                self.worked[task as usize * BY_CONDITION + condition.map_or(0, |condition| condition as usize + 1)]
            }
            Line::AsStated(minutes) => {
                let time = WorkTime::minutes_of(minutes);
                Price { labour: labour(self.hour, time), time, ..Price::default() }
            }
        }
    }

    /// The price of these lines: the sum of what each costs.
    #[must_use]
    pub fn price(&self, lines: &[Line]) -> Price {
        lines.iter().map(|line| self.unit(*line) * line.quantity()).sum()
    }

    /// What the owner pays for work of this price.
    #[must_use]
    pub fn owner_price(&self, price: Price) -> OwnerPrice {
        self.charges.owner_price(price)
    }
}

/// What work of so long costs at an hour of this price, rounded half up to the cent.
fn labour(hour: Cents, time: WorkTime) -> Cents {
    hour.times_ratio(i128::from(time.0), 60 * 100)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 95 dollars an hour are 1.58333 a minute; 20 minutes are 31.6667, rounded half up 31.67, and three times that
    /// is three times the unit.
    #[test]
    fn labour_is_rounded_once_to_the_cent_for_a_unit() {
        let demo = PriceBook::demo();
        let twenty = |times| demo.price(&[Line::Work(Task::FitDevice, times, None)]);
        assert_eq!((twenty(1).labour, twenty(3).labour), (Cents(31_67), Cents(95_01)));
        assert_eq!(demo.price(&[Line::AsStated(60)]).labour, Cents(95_00));
        assert_eq!(demo.price(&[]), Price::default());
    }

    /// By hand: at 125 % a bay is fished in 10 × 1.25 = 12.5 minutes, 19.7917 dollars at 95 an hour, and a fire block is passed in
    /// 30 minutes of 95 + 55 dollars an hour, 75.00.
    #[test]
    fn a_condition_makes_work_longer_and_a_helper_makes_it_dearer() {
        let (conditions, for_two) = (vec![(WorkCondition::Plaster, 125)], vec![Task::PastFireBlock]);
        let book = PriceBook::of(Figures { conditions, for_two, ..Figures::demo() });
        let bay = book.unit(Line::Work(Task::FishBay, 1, Some(WorkCondition::Plaster)));
        assert_eq!((bay.labour, bay.time), (Cents(19_79), WorkTime(1_250)));
        assert_eq!(book.unit(Line::once(Task::FishBay)).labour, Cents(15_83));
        let block = book.unit(Line::once(Task::PastFireBlock));
        assert_eq!((block.labour, block.minutes()), (Cents(75_00), 30));
    }

    /// By hand: the figures that are put in come out.
    #[test]
    fn ones_own_figures_replace_the_demo_ones_and_the_rest_stay() {
        let book = PriceBook::new(Cents(12_000), &[(Material::Gfci, Cents(1_999))], &[(Task::FitDevice, 25)]);
        assert_eq!((book.cost(Material::Gfci), book.charged(Material::Gfci)), (Cents(1_999), Cents(1_999)));
        assert_eq!(book.minutes(Task::FitDevice), 25);
        assert_eq!(book.cost(Material::Dual), PriceBook::demo().cost(Material::Dual));
        assert!(!book.is_demo);
    }

    /// Nothing is charged, made longer or done by two that the book does not say.
    /// By hand: 100 percent is plain work, and 123.45 and 0.01 are 123.46.
    #[test]
    fn what_a_book_leaves_out_adds_nothing() {
        let book = PriceBook::new(Cents(12_000), &[], &[]);
        assert_eq!(book.charges(), &Charges::default());
        assert!(WorkCondition::ALL.iter().all(|condition| book.percent(*condition) == 100));
        assert!(Task::ALL.iter().all(|task| !book.takes_two(*task)));
        let price = Price { material: Cents(12_345), labour: Cents(1), time: WorkTime::minutes_of(9_999) };
        assert_eq!(book.owner_price(price).total, Cents(12_346));
    }

    /// Who quotes from a book written before these keys were there is not made to quote invented figures.
    /// By hand: nothing is 0 cents; a thing at 12.50 that is written down has its price.
    #[test]
    fn what_puts_dangers_right_has_no_price_where_a_book_of_ones_own_leaves_it_out() {
        let book = PriceBook::new(Cents(12_000), &[(Material::Fuse, Cents(12_50))], &[]);
        let (search, fuse) = (Line::once(Task::FindOpenNeutral), Line::Thing(Material::Fuse, 1));
        assert_eq!((book.unit(search), book.without_price(search)), (Price::default(), Some("find-open-neutral")));
        assert_eq!((book.unit(fuse).material, book.without_price(fuse)), (Cents(12_50), None));
        assert_eq!(book.without_price(Line::once(Task::ChangeBreaker)), None);
        let demo = PriceBook::demo();
        assert!(Task::ALL.iter().all(|task| demo.has_task(*task)));
        assert!(Material::ALL.iter().all(|thing| demo.has_thing(*thing)));
    }

    #[test]
    fn another_figure_changes_every_unit_that_rests_on_it() {
        let demo = PriceBook::demo();
        let line = Line::once(Task::ThroughFloor);
        assert!(demo.clone().with_hour(Cents(9_600)).unit(line).labour > demo.unit(line).labour);
        assert_eq!(demo.clone().with_minutes(Task::ThroughFloor, 0).unit(line), Price::default());
        let free = demo.clone().with_cost(Material::Plate, Cents(0));
        assert_eq!(
            (free.charged(Material::Plate), free.charged(Material::Label)),
            (Cents(0), demo.charged(Material::Label))
        );
    }
}
