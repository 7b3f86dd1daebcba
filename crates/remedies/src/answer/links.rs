//! The links of the network of grounds that a plan buys, as an answer.

use crate::planned::Planned;
use schemars::JsonSchema;
use serde::Serialize;

/// A link of the network of grounds: a route of the survey or a stretch of one. Its number stands for it in this survey and
/// this version of the program, so that a plan can be verified from its JSON alone.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LinkAnswer {
    /// Its number in the network that the program makes of the survey.
    pub number: usize,
    /// Whether the ground flows along it in the direction in which it is numbered.
    pub forward: bool,
    /// The size of the grounding conductor along it.
    pub size: String,
}

impl LinkAnswer {
    /// Every link that a plan buys, by rising number.
    #[must_use]
    pub fn all(plan: &Planned) -> Vec<Self> {
        let links = plan.solution.links.iter();
        links
            .map(|link| Self { number: link.link, forward: link.forward, size: plan.size_of(link).to_string() })
            .collect()
    }
}
