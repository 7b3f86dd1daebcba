//! The one way in: an instance and limits to the best tree and what is proved about it.

use super::instance::{Cost, Instance, Malformed, Tree};
use super::search::{Search, SteinerLimits};

/// What the search found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The best tree; `None` where none was found.
    pub tree: Option<Tree>,
    /// No tree costs less; `None` where it is proved that there is no tree.
    pub bound: Option<Cost>,
    /// How many graphs were searched.
    pub nodes: u64,
}

impl Answer {
    /// Whether the tree is proved to be cheapest, or that there is none.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.tree.as_ref().map(|tree| tree.cost) == self.bound
    }
}

impl Answer {
    /// How much less than the tree found another might cost; `None` where no tree was found.
    #[must_use]
    pub fn gap(&self) -> Option<Cost> {
        Some(self.tree.as_ref()?.cost - self.bound?)
    }
}

/// Finds the cheapest tree, or the best one within the limits. The same instance and number of nodes give the same tree.
///
/// # Errors
/// Where the instance is malformed.
pub fn solve_steiner(instance: &Instance, limits: &mut SteinerLimits) -> Result<Answer, Malformed> {
    instance.validate()?;
    let mut search = Search::new(instance, limits);
    let bound = search.run();
    Ok(Answer { tree: search.best.take(), bound, nodes: search.nodes })
}
