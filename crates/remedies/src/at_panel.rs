//! What could be put at the panel end of a circuit or multiwire set.

use crate::candidate::{AFCI, GFCI};
use crate::dangers::{DangerRepair, protective_breaker, smaller_overcurrent};
use crate::device::AtPanel;
use crate::facts::Facts;
use crate::feed_through::FeedThroughLimits;
use dwelling::{CircuitTree, Overcurrent, ProtectiveBreaker};
use estimate::{Line, Material, Price, PriceBook, Task};
use optimizer::{Cost, Marks, RootOption};

/// One thing that could be put at the panel end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanelCandidate {
    /// What it is.
    pub choice: AtPanel,
    /// What it costs: the price of its lines.
    pub price: Price,
    /// What is bought and worked for it.
    pub lines: Vec<Line>,
    /// What is done besides, where it leaves a breaker or fuse that is too large for its conductors.
    pub repair: Option<DangerRepair>,
    /// The protection that everything on the circuit has of it.
    pub gives: Marks,
}

impl PanelCandidate {
    /// What it costs with what has to be done besides.
    #[must_use]
    pub fn whole_price(&self) -> Price {
        self.price + self.repair.as_ref().map(|repair| repair.price).unwrap_or_default()
    }

    /// The candidate as the optimizer sees it.
    #[must_use]
    pub fn option(&self, limits: FeedThroughLimits) -> RootOption {
        let devices = i64::from(self.choice != AtPanel::AsItIs);
        RootOption {
            cost: Cost { cents: self.whole_price().total().0, openings: 0, devices },
            gives: self.gives,
            // What a breaker that stays has behind it is not of the plan's making.
            burden_limit: (self.gives.covers(GFCI) && self.choice != AtPanel::AsItIs).then_some(limits.most_leakage),
        }
    }
}

/// Every candidate for the panel end of a tree: what is there, the breakers made for the panel, and devices beside it.
#[must_use]
pub fn panel_candidates(facts: &Facts, book: &PriceBook, tree: &CircuitTree) -> Vec<PanelCandidate> {
    let panel = facts.dwelling.panel(tree.panel);
    let (price, lines) = (Price::default(), Vec::new());
    let smaller = smaller_overcurrent(facts, book, tree);
    let (gives, repair) = (fitted(facts, tree), smaller.clone());
    let mut found = vec![PanelCandidate { choice: AtPanel::AsItIs, price, lines, repair, gives }];
    let mut add = |choice: AtPanel, lines: Vec<Line>| {
        // A new breaker is of the rating that the conductors bear.
        let repair = smaller.clone().filter(|_| !matches!(choice, AtPanel::Breaker(_)));
        found.push(PanelCandidate { choice, price: book.price(&lines), lines, repair, gives: marks(choice) });
    };
    let made = panel.made_for_it.as_deref().unwrap_or_default();
    let breakers = panel.overcurrent != Some(Overcurrent::Fuses);
    for breaker in made.iter().filter(|breaker| breakers && breaker.is_two_pole() == tree.is_multiwire()) {
        let lines = vec![Line::Thing(protective_breaker(*breaker), 1), Line::once(Task::ChangeBreaker)];
        add(AtPanel::Breaker(*breaker), lines);
    }
    if panel.room_beside == Some(true) && !tree.is_multiwire() && bears_all_outlets(facts, tree) {
        for (choice, device) in
            [(AtPanel::DeadFrontGfci, Material::DeadFrontGfci), (AtPanel::DeadFrontDual, Material::DeadFrontDual)]
        {
            let things = [Line::Thing(device, 1), Line::Thing(Material::PanelSideBox, 1)];
            add(choice, things.into_iter().chain([Line::once(Task::FitPanelSideDevice)]).collect());
        }
    }
    found
}

/// Whether the load side of a device beside the panel may protect every outlet of a tree.
pub fn bears_all_outlets(facts: &Facts, tree: &CircuitTree) -> bool {
    let members = tree.members.iter().chain(&tree.unplaced);
    let outlets = members.filter(|at| facts.dwelling.device_box(**at).holds.is_receptacle()).count();
    facts.limits.most_outlets.is_none_or(|most| outlets <= most as usize)
}

/// The protection of the breakers that are there: both circuits of a set must have it from a two-pole one.
fn fitted(facts: &Facts, tree: &CircuitTree) -> Marks {
    let usable = |breaker: ProtectiveBreaker| breaker.is_two_pole() == tree.is_multiwire();
    let each = tree.circuits.iter().map(|circuit| {
        let breaker = facts.dwelling.circuit(*circuit).fitted.filter(|breaker| usable(*breaker));
        breaker.map_or(Marks::NONE, |breaker| marks(AtPanel::Breaker(breaker)))
    });
    Marks(each.map(|marks| marks.0).reduce(|left, right| left & right).unwrap_or(0))
}

fn marks(choice: AtPanel) -> Marks {
    let gfci = if choice.is_gfci() { GFCI } else { Marks::NONE };
    gfci | if choice.is_afci() { AFCI } else { Marks::NONE }
}
