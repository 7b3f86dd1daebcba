//! The price book: an hour of work, what things cost, how long work takes.

use crate::cents::Cents;
use crate::material::Material;
use crate::task::Task;

/// What a contractor pays and charges. Every figure can be replaced by one's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceBook {
    /// An hour of work.
    pub hour: Cents,
    /// What each thing costs, in the order of [`Material::ALL`].
    material: Vec<Cents>,
    /// How long each task takes in minutes, in the order of [`Task::ALL`].
    minutes: Vec<u32>,
    /// Whether the figures are the invented ones that come with the tool.
    pub is_demo: bool,
}

/// A price, its parts kept apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, schemars::JsonSchema)]
pub struct Price {
    /// What is bought.
    pub material: Cents,
    /// What is worked.
    pub labour: Cents,
    /// The minutes of work in it.
    pub minutes: u32,
}

impl Price {
    /// Material and labour together.
    #[must_use]
    pub fn total(self) -> Cents {
        self.material + self.labour
    }
}

impl std::ops::Add for Price {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            material: self.material + other.material,
            labour: self.labour + other.labour,
            minutes: self.minutes + other.minutes,
        }
    }
}

impl std::iter::Sum for Price {
    fn sum<I: Iterator<Item = Self>>(prices: I) -> Self {
        prices.fold(Self::default(), std::ops::Add::add)
    }
}

impl PriceBook {
    /// A book with these figures; what a list leaves out costs what the demo book says.
    #[must_use]
    pub fn new(hour: Cents, material: &[(Material, Cents)], minutes: &[(Task, u32)]) -> Self {
        let demo = Self::demo();
        let of = |thing: &Material| material.iter().find(|(key, _)| key == thing).map(|(_, cents)| *cents);
        let long = |task: &Task| minutes.iter().find(|(key, _)| key == task).map(|(_, minutes)| *minutes);
        Self {
            hour,
            material: Material::ALL.iter().map(|key| of(key).unwrap_or_else(|| demo.cost(*key))).collect(),
            minutes: Task::ALL.iter().map(|key| long(key).unwrap_or_else(|| demo.minutes(*key))).collect(),
            is_demo: false,
        }
    }

    /// The invented figures that come with the tool.
    #[must_use]
    pub fn demo() -> Self {
        Self {
            hour: Cents(9_500),
            material: Material::ALL.iter().map(|key| demo_cost(*key)).collect(),
            minutes: Task::ALL.iter().map(|key| demo_minutes(*key)).collect(),
            is_demo: true,
        }
    }

    /// The same book with another price of an hour.
    #[must_use]
    pub fn with_hour(self, hour: Cents) -> Self {
        Self { hour, ..self }
    }

    /// The same book with another price of a thing.
    #[must_use]
    pub fn with_cost(mut self, thing: Material, cost: Cents) -> Self {
        self.material[thing as usize] = cost;
        self
    }

    /// The same book with another time for a task, in minutes.
    #[must_use]
    pub fn with_minutes(mut self, task: Task, minutes: u32) -> Self {
        self.minutes[task as usize] = minutes;
        self
    }

    /// What a thing costs.
    #[must_use]
    pub fn cost(&self, thing: Material) -> Cents {
        self.material[thing as usize]
    }

    /// How long a task takes, in minutes.
    #[must_use]
    pub fn minutes(&self, task: Task) -> u32 {
        self.minutes[task as usize]
    }

    /// What so many minutes of work cost, rounded half up to the cent.
    #[must_use]
    pub fn labour(&self, minutes: u32) -> Cents {
        Cents((self.hour.0 * i64::from(minutes) + 30).div_euclid(60))
    }

    /// The price of buying these things and doing these minutes of work.
    #[must_use]
    pub fn price(&self, things: &[(Material, i64)], minutes: u32) -> Price {
        let material = things.iter().map(|(thing, pieces)| self.cost(*thing) * *pieces).sum();
        Price { material, labour: self.labour(minutes), minutes }
    }

    /// The book as the TOML file that a contractor edits.
    #[must_use]
    pub fn to_toml(&self) -> String {
        let mut text = String::new();
        if self.is_demo {
            text.push_str("# Invented demo figures. Replace every one with your own before you quote from it.\n");
        }
        text.push_str(&format!("format = 1\n\n# One hour of work, dollars.\nhour = {}\n", dollars(self.hour)));
        text.push_str("\n# What things cost, dollars a piece (or a foot, where the name ends in -ft).\n[material]\n");
        for (thing, cost) in Material::ALL.iter().zip(&self.material) {
            text.push_str(&format!("{:<20} = {:>7}   #{}\n", thing.name(), dollars(*cost), thing.meaning()));
        }
        text.push_str("\n# How long work takes, minutes.\n[minutes]\n");
        for (task, minutes) in Task::ALL.iter().zip(&self.minutes) {
            text.push_str(&format!("{:<22} = {:>4}   #{}\n", task.name(), minutes, task.meaning()));
        }
        text
    }
}

fn dollars(cents: Cents) -> String {
    format!("{}.{:02}", cents.0 / 100, cents.0 % 100)
}

/// Invented demo figure for what a thing costs.
#[allow(clippy::inconsistent_digit_grouping, reason = "the last group is cents")]
fn demo_cost(thing: Material) -> Cents {
    Cents(match thing {
        Material::TwoSlot => 3_40,
        Material::ThreeSlot => 2_80,
        Material::ThreeSlotOutdoors => 21_00,
        Material::Gfci => 24_00,
        Material::GfciOutdoors => 43_00,
        Material::Afci => 42_00,
        Material::Dual => 49_00,
        Material::DeadFrontGfci => 26_00,
        Material::DeadFrontDual => 58_00,
        Material::PanelSideBox => 14_00,
        Material::Plate => 1_10,
        Material::Label => 30,
        Material::OldWorkBox => 4_20,
        Material::SurfaceExtension => 18_50,
        Material::WideOldWorkBox => 7_80,
        Material::BreakerGfci => 58_00,
        Material::BreakerAfci => 52_00,
        Material::BreakerDual => 66_00,
        Material::BreakerGfciTwoPole => 118_00,
        Material::BreakerAfciTwoPole => 124_00,
        Material::BreakerDualTwoPole => 149_00,
        Material::GroundWire14 => 22,
        Material::GroundWire12 => 33,
        Material::GroundWire10 => 52,
        Material::Cable14 => 62,
        Material::Cable12 => 88,
        Material::Cable10 => 1_45,
        Material::GroundFittings => 1_90,
        Material::AluminiumSplice => 4_60,
        Material::BlankCover => 1_90,
        Material::Patch => 6_00,
        Material::BranchBox => 3_60,
        Material::RacewayFoot => 1_45,
        Material::RacewayEnds => 12_00,
    })
}

/// Invented demo figure for how long a task takes.
fn demo_minutes(task: Task) -> u32 {
    match task {
        Task::FitDevice => 20,
        Task::SortLoadSide => 12,
        Task::LabelAndTest => 5,
        Task::RestoreGround => 15,
        Task::TracePoorGround => 50,
        Task::RemoveFalseGround => 10,
        Task::CorrectPolarity => 8,
        Task::PartGround => 6,
        Task::ReplaceBox => 45,
        Task::ExtendBox => 40,
        Task::ReplaceBoxWide => 70,
        Task::ConnectGround => 8,
        Task::ChangeBreaker => 18,
        Task::FitPanelSideDevice => 55,
        Task::FishSetup => 35,
        Task::FishFoot => 2,
        Task::PatchOpening => 40,
        Task::TakeOut => 15,
        Task::SpliceAluminium => 6,
        Task::EndConductor => 6,
        Task::JoinBranch => 6,
        Task::DrillPlate => 6,
        Task::FishBay => 10,
        Task::PastInsulation => 15,
        Task::PastFireBlock => 30,
        Task::ThroughFloor => 35,
        Task::ThroughStud => 10,
        Task::ThroughWall => 12,
        Task::AtticFoot => 1,
        Task::CrawlFoot => 2,
        Task::BasementFoot => 1,
        Task::SetUpRaceway => 20,
        Task::RacewayFoot => 3,
        Task::PatchWithCare => 25,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 95 dollars an hour are 1.58333 a minute; 20 minutes are 31.6667, rounded half up 31.67.
    #[test]
    fn labour_is_rounded_once_to_the_cent() {
        assert_eq!(PriceBook::demo().labour(20), Cents(31_67));
        assert_eq!(PriceBook::demo().labour(60), Cents(9_500));
        assert_eq!(PriceBook::demo().labour(0), Cents(0));
    }

    #[test]
    fn ones_own_figures_replace_the_demo_ones_and_the_rest_stay() {
        let book = PriceBook::new(Cents(12_000), &[(Material::Gfci, Cents(1_999))], &[(Task::FitDevice, 25)]);
        assert_eq!(book.cost(Material::Gfci), Cents(1_999));
        assert_eq!(book.minutes(Task::FitDevice), 25);
        assert_eq!(book.cost(Material::Dual), PriceBook::demo().cost(Material::Dual));
        assert!(!book.is_demo);
    }

    #[test]
    fn the_demo_book_says_that_its_figures_are_invented() {
        assert!(PriceBook::demo().to_toml().starts_with("# Invented demo figures."));
    }
}
