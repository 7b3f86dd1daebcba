//! Inference over the circuit trees: how likely each state of each run and device is, by all that was read and seen.
//!
//! A circuit is a tree of runs and boxes. Each run's conductors and each device have a state nobody sees; what was read and
//! seen depends on them as the physics of a meter has it. All states of the whole tree are weighed, exactly, by handing
//! sums of products up the tree and their slopes down again.

mod advice;
mod best;
mod circuit_belief;
mod clash;
mod down;
#[cfg(test)]
mod enumeration;
mod explanations;
mod factors;
mod fewest_boxes;
mod likely;
mod meter_odds;
mod outlook;
mod policy;
mod practice;
mod priors;
mod reading_odds;
mod search_plan;
mod sighting_odds;
mod stakes;
mod state;
mod stations;
mod sums_up;
mod terminals;
mod test_outcome;
mod up;
mod volt_band;
mod words;

pub use advice::{Advice, Expected};
pub use circuit_belief::{BoxBelief, CircuitBelief, RunBelief, SURE_ENOUGH};
pub use clash::{Claim, Clash};
pub use explanations::{About, Explained, Explanation};
pub use factors::{BoxFactors, Factors, Marginals};
pub use fewest_boxes::MOST_IN_VAIN;
pub use meter_odds::{Bands, Draws, Loaded, Three, Together, as_counted, is_counted, key, letters, together};
pub use practice::{Figure, Practice};
pub use priors::Priors;
pub use reading_odds::MISTAKEN;
pub use search_plan::{SearchPlan, SearchStep};
pub use sighting_odds::{MISSEEN, sighting_odds};
pub use stakes::{GroundWork, Stakes};
pub use state::{Arrival, AtBox, Ground, GroundRun, Joined, WireState, Wiring};
pub use stations::ways;
pub use terminals::{Hangs, Slot, Slots, slots};
pub use test_outcome::{Outcome, Test};
pub use volt_band::{VoltBand, volt_band};

use dwelling::{BoxIndex, Dwelling, circuit_trees};

/// What is believed of a dwelling, circuit by circuit.
#[derive(Clone, Debug)]
pub struct Beliefs {
    /// The circuits.
    pub circuits: Vec<CircuitBelief>,
}

impl Beliefs {
    /// What is believed of a box, where it is on a circuit and any state reads as it was found.
    #[must_use]
    pub fn of(&self, index: BoxIndex) -> Option<&BoxBelief> {
        self.circuits.iter().flat_map(|circuit| &circuit.boxes).find(|belief| belief.at == index)
    }

    /// Every test that is worth its minutes, the one worth most by the minute first.
    #[must_use]
    pub fn advice(&self, dwelling: &Dwelling, stakes: &Stakes) -> Vec<Advice> {
        advice::advice(dwelling, &self.circuits, stakes)
    }
}

/// What is believed of a dwelling by these priors.
#[must_use]
pub fn believe(dwelling: &Dwelling, priors: &Priors) -> Beliefs {
    Beliefs { circuits: circuit_belief::believe_trees(dwelling, &circuit_trees(dwelling), priors) }
}

impl CircuitBelief {
    /// The likeliest explanations of what was found that differ in what one would do about this, likeliest first, at most so
    /// many.
    #[must_use]
    pub fn explanations(&self, about: About, most: usize) -> Vec<Explanation> {
        explanations::explanations(&self.stations, about, most)
    }

    /// The search on this circuit that is expected to cost the least, tests and acting wrongly together; nothing where no
    /// state of the circuit reads as it was found.
    #[must_use]
    pub fn search_plan(&self, dwelling: &Dwelling, stakes: &Stakes) -> Option<SearchPlan> {
        search_plan::search_plan(dwelling, self, stakes)
    }
}
