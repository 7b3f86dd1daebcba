//! What a choice of everything costs and gives, without the weights by which the search ranks shortfalls.

use crate::assemble::Assembled;
use crate::at_panel::PanelCandidate;
use crate::candidate::Candidate;
use crate::device::Device;
use crate::facts::Facts;
use dwelling::{BoxIndex, Holding};
use estimate::Price;
use optimizer::Solution;

/// What a choice of everything costs and gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standing {
    /// What it costs.
    pub price: Price,
    /// Openings made in finished surfaces.
    pub wall_openings: i64,
    /// Receptacles with a real ground afterwards.
    pub grounded: Vec<BoxIndex>,
    /// Openings that carry a marking.
    pub marked: usize,
    /// Openings for which nothing lawful was found.
    pub unlawful: Vec<BoxIndex>,
    /// Openings at which equipment that needs a ground has none.
    pub equipment_without_ground: Vec<BoxIndex>,
    /// Openings at which the owner does not get what was asked for in the survey.
    pub wishes_unmet: Vec<BoxIndex>,
}

impl Standing {
    /// Whether it leaves no more unlawful than another, nor, with as much lawful, more equipment without a ground.
    #[must_use]
    pub fn is_as_lawful_as(&self, other: &Self) -> bool {
        let rank = |of: &Self| (of.unlawful.len(), of.equipment_without_ground.len());
        rank(self) <= rank(other)
    }

    /// Whether it falls short of as little as another, the wishes of the survey included.
    #[must_use]
    pub fn gives_as_much_as(&self, other: &Self) -> bool {
        let rank = |of: &Self| (of.unlawful.len(), of.equipment_without_ground.len(), of.wishes_unmet.len());
        rank(self) <= rank(other)
    }
}

/// What a choice of everything costs and gives.
#[must_use]
pub fn standing_of(facts: &Facts, assembled: &Assembled, places: &[(usize, usize)], solution: &Solution) -> Standing {
    let chosen = |at: BoxIndex| -> &Candidate {
        let (tree, node) = places[at.0];
        &assembled.candidates[at.0][solution.nodes[tree][node].option]
    };
    let boxes = || facts.dwelling.box_indices();
    let at_panels = assembled.at_panel.iter().zip(&solution.roots).filter_map(|(choices, root)| choices.get(*root));
    let routes = solution.links.iter().map(|link| assembled.network.bought_as[link.link].prices[link.grade]);
    let grounded = |at: &BoxIndex| {
        let holds = facts.at(*at).as_found.holds;
        let kept_two_slot = holds == Holding::TwoSlot && chosen(*at).device == Device::Kept;
        let taken_out = chosen(*at).device == Device::Blank;
        holds.is_receptacle() && !taken_out && solution.supplied[facts.groups.index_of(*at)] && !kept_two_slot
    };
    Standing {
        price: boxes().map(|at| chosen(at).price).sum::<Price>()
            + at_panels.map(PanelCandidate::whole_price).sum()
            + routes.sum()
            + assembled.dangers.iter().map(|repair| repair.price).sum(),
        wall_openings: solution.cost.openings,
        grounded: boxes().filter(grounded).collect(),
        marked: boxes().filter(|at| !chosen(*at).markings.is_empty()).count(),
        unlawful: boxes().filter(|at| chosen(*at).shortfall.unlawful).collect(),
        equipment_without_ground: boxes().filter(|at| chosen(*at).shortfall.equipment_without_ground).collect(),
        wishes_unmet: boxes().filter(|at| chosen(*at).shortfall.wish_unmet).collect(),
    }
}
