//! What a bound rests on, for those who ask: each raise of the [ascent](crate::ascent).

use crate::net::{Net, TreeNode};
use crate::weight::Weight;

/// One raise.
#[derive(Clone, Debug)]
pub(crate) struct Raised {
    /// What is owed.
    pub owed: Weight,
    /// The node that is charged; where there is none, it is owed for certain.
    pub at: Option<TreeNode>,
    /// The group whose supply it is owed for.
    pub group: usize,
    /// The groups from which that supply could come at nothing more to pay.
    pub groups: Vec<usize>,
    /// The nodes where room for what lands is needed for that.
    pub lands: Vec<TreeNode>,
    /// The nodes where a choice that goes with a supply is needed for that.
    pub suits: Vec<TreeNode>,
}

impl Raised {
    /// A raise for a set of places, the supply that is asked for first.
    pub fn of(net: &Net, owed: Weight, at: Option<TreeNode>, members: &[u32]) -> Option<Self> {
        let of_group = |place: u32| place as usize % net.groups;
        let group = of_group(*members.first()?);
        let mut one = Self { owed, at, group, groups: Vec::new(), lands: Vec::new(), suits: Vec::new() };
        for place in members {
            if net.is_supply(*place) {
                one.groups.push(of_group(*place));
            } else if let Some(at) = net.room_at.get(place) {
                one.lands.push(*at);
            } else if let Some(at) = net.fitting_at.get(place) {
                one.suits.push(*at);
            }
        }
        Some(one)
    }
}
