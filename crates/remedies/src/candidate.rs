//! A candidate: one thing that could be done at one opening, with its price and what it needs.

use crate::device::{BoxWork, Device};
use crate::feed_through::FeedThroughLimits;
use dwelling::names;
use estimate::{Line, Price};
use optimizer::{Cost, Marks, NodeOption, SupplyNeed};
use rulebook::Marking;

/// The mark of GFCI protection.
pub const GFCI: Marks = Marks(1);
/// The mark of AFCI protection.
pub const AFCI: Marks = Marks(2);

names! {
    /// What is done at an opening.
    Step {
        /// Nothing, but that a conductor may be joined in its box.
        Leave = "leave",
        /// The receptacle stays; protection from upstream and markings make it lawful.
        MarkProtected = "mark-protected",
        /// The GFCI receptacle that is there stays and is marked.
        MarkGfci = "mark-gfci",
        /// The protective receptacle that is there stays, and its load side is put to use.
        UseLoadSide = "use-load-side",
        /// A two-slot receptacle is fitted.
        FitTwoSlot = "fit-two-slot",
        /// A protective receptacle is fitted without a ground.
        FitGfci = "fit-gfci",
        /// A three-slot receptacle is fitted behind protection, without a ground.
        FitProtected = "fit-protected",
        /// The receptacle stays and the ground in its box is restored.
        RestoreKept = "restore-kept",
        /// A grounding receptacle is fitted and the ground in its box restored or joined to it.
        RestoreFitted = "restore-fitted",
        /// Nothing is touched: the ground arrives through conductors that are joined here already.
        GroundArrives = "ground-arrives",
        /// The receptacle stays and is joined to a ground that a new conductor brings.
        ConnectKept = "connect-kept",
        /// A grounding receptacle is fitted and joined to a ground that a new conductor brings.
        ConnectFitted = "connect-fitted",
        /// The receptacle is taken out, its conductors are spliced and a blank cover closes the box.
        TakeOut = "take-out",
        /// Nothing lawful was found.
        Unresolved = "unresolved",
    }
}

impl Step {
    /// Whether it makes a receptacle that takes a grounding plug lawful without a ground: no grounding conductor may then
    /// join it to other receptacles, 406.4(D)(2).
    #[must_use]
    pub const fn is_protected_without_ground(self) -> bool {
        matches!(self, Self::MarkProtected | Self::MarkGfci | Self::FitGfci | Self::FitProtected)
    }
}

/// What makes a choice worse than any sum of money: these never pay off.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shortfall {
    /// The opening stays unlawful.
    pub unlawful: bool,
    /// Equipment that needs a ground has none.
    pub equipment_without_ground: bool,
    /// The owner does not get what was asked for.
    pub wish_unmet: bool,
}

/// More cents than any plan of a dwelling costs: a wish is not given up for money.
pub(crate) const WISH_WEIGHT: i64 = 100_000_000;

impl Shortfall {
    /// Its weight in the optimizer's cents, in a dwelling of so many boxes.
    ///
    /// A wish outweighs all money, a ground for equipment the wishes of all boxes, and lawfulness the equipment of all.
    #[must_use]
    pub fn weight(self, boxes: usize) -> i64 {
        let more_than_all = i64::try_from(boxes).unwrap_or(i64::MAX).saturating_add(1);
        let equipment_weight = WISH_WEIGHT.saturating_mul(more_than_all);
        let lawful_weight = equipment_weight.saturating_mul(more_than_all);
        i64::from(self.unlawful) * lawful_weight
            + i64::from(self.equipment_without_ground) * equipment_weight
            + i64::from(self.wish_unmet) * WISH_WEIGHT
    }
}

/// One thing that could be done at one opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// What is done.
    pub step: Step,
    /// The device that is there afterwards.
    pub device: Device,
    /// What is done with the box.
    pub box_work: BoxWork,
    /// What it costs: the price of its lines.
    pub price: Price,
    /// What is bought and worked for it.
    pub lines: Vec<Line>,
    /// The markings it must carry.
    pub markings: Vec<Marking>,
    /// What it falls short of.
    pub shortfall: Shortfall,
    /// Whether the box could not be counted.
    pub fill_unchecked: bool,
    /// Marks that must hold here.
    pub needs: Marks,
    /// Marks it has of itself.
    pub own: Marks,
    /// Marks it gives to what its load side feeds.
    pub gives: Marks,
    /// What it needs of its group's ground.
    pub supply: SupplyNeed,
    /// By grade: how many grounds may land here.
    pub landings: Vec<u32>,
}

impl Candidate {
    /// Whether the load side of its device protects what it feeds.
    #[must_use]
    pub fn gives_protection(&self) -> bool {
        self.gives != Marks::NONE
    }

    /// The candidate as the optimizer sees it, in a dwelling of so many boxes.
    #[must_use]
    pub fn option(&self, limits: FeedThroughLimits, boxes: usize) -> NodeOption {
        let new_device = i64::from(self.device != Device::Kept);
        // What a device that stays has plugged into it is not of the plan's making: only a newly used load side is.
        let as_it_was = self.device == Device::Kept && self.gives == Marks::NONE;
        NodeOption {
            cost: Cost { cents: self.price.total().0 + self.shortfall.weight(boxes), openings: 0, devices: new_device },
            needs: self.needs,
            own: self.own,
            gives: self.gives,
            supply: self.supply,
            most_landings: self.landings.clone(),
            count_limit: limits.most_outlets.filter(|_| self.gives_protection()),
            burden_limit: (self.own.covers(GFCI) && !as_it_was).then_some(limits.most_leakage),
        }
    }
}
