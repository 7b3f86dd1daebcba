//! What each group is charged for supply: dual ascent.
//!
//! Whatever set of groups holds no source, if any of it is supplied, a chosen link flows into the set. So the weights of
//! the links can be laid out on such sets, none of a link's weight twice, and each set's part charged to one group of
//! it, or shared: nothing that is supplied costs less than the charges. At first each group alone is charged its
//! lightest link. Then, for groups that take supply at their charge, the set of all from which it could come at no
//! further charge is charged for the links into the set, until that supply comes from a source. What of a chosen
//! link's weight is not charged comes on top.

use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::weight::{IMPOSSIBLE, Weight};

/// The charges for a state, and what of the arcs' weights is not charged.
#[derive(Clone, Debug, Default)]
pub(crate) struct Charges {
    /// By group; nothing where it is not supplied.
    pub by_group: Vec<Weight>,
    left: Vec<Weight>,
}

impl Charges {
    /// What the group is charged. A complete state has no charges.
    pub fn of_group(&self, group: usize) -> Weight {
        self.by_group.get(group).copied().unwrap_or(0)
    }

    /// What choosing the arc costs beyond what is charged to the groups.
    pub fn beyond(&self, arc: usize) -> Weight {
        self.left.get(arc).copied().unwrap_or(0)
    }
}

impl Charges {
    /// Charges each group its lightest link.
    pub fn new(part: &Part<'_>, state: &LinkState) -> Self {
        let lightest = |group: usize| match state.status[group] {
            Status::Off => 0,
            Status::Open | Status::Due | Status::Fed(_) => state.least_into(part, group),
        };
        let by_group: Vec<Weight> = (0..state.status.len()).map(lightest).collect();
        let left = part
            .arcs
            .iter()
            .zip(&state.weight)
            .map(|(arc, weight)| if *weight < IMPOSSIBLE { weight - by_group[arc.head] } else { IMPOSSIBLE });
        Self { left: left.collect(), by_group }
    }

    /// Charges the groups that take supply for how it comes to them. Returns whether any charge rose.
    pub fn rise(&mut self, part: &Part<'_>, state: &LinkState, takes: &[bool]) -> bool {
        let mut rose = false;
        let mut rising: Vec<usize> = (0..takes.len()).filter(|group| takes[*group]).collect();
        while !rising.is_empty() {
            rising.retain(|group| {
                let rises = self.rise_once(part, state, takes, *group);
                rose |= rises;
                rises
            });
        }
        rose
    }

    fn rise_once(&mut self, part: &Part<'_>, state: &LinkState, takes: &[bool], group: usize) -> bool {
        let Some(set) = self.set_without_source(part, group) else { return false };
        let enters = |arc: usize| {
            let arc = &part.arcs[arc];
            set[arc.head] && arc.tail.is_none_or(|tail| !set[tail])
        };
        let entering: Vec<usize> =
            (0..part.arcs.len()).filter(|arc| self.left[*arc] < IMPOSSIBLE && enters(*arc)).collect();
        let Some(rise) = entering.iter().map(|arc| self.left[*arc]).min() else { return false };
        for arc in entering {
            self.left[arc] -= rise;
        }
        let is_certain = |group: usize| matches!(state.status[group], Status::Due | Status::Fed(_));
        let members = || (0..set.len()).filter(|member| set[*member]);
        if let Some(certain) = members().find(|member| is_certain(*member)) {
            self.by_group[certain] += rise;
            return true;
        }
        let sharing = members().filter(|member| takes[*member]).count() as Weight;
        for member in members().filter(|member| takes[*member]) {
            self.by_group[member] += rise / sharing;
        }
        self.by_group[group] += rise % sharing;
        true
    }

    /// All groups from which supply could come to the group at no further charge, or `None` where it could from a
    /// source.
    fn set_without_source(&self, part: &Part<'_>, group: usize) -> Option<Vec<bool>> {
        let mut set = vec![false; part.groups.len()];
        set[group] = true;
        let mut open = vec![group];
        while let Some(head) = open.pop() {
            for &arc in part.groups[head].arcs.iter().filter(|arc| self.left[**arc] == 0) {
                let tail = part.arcs[arc].tail?;
                if !set[tail] {
                    set[tail] = true;
                    open.push(tail);
                }
            }
        }
        Some(set)
    }
}
