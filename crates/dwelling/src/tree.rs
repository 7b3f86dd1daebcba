//! Circuit trees: what feeds what, and what lies downstream of what.

use crate::device_box::Feed;
use crate::index::{BoxIndex, CircuitIndex, PanelIndex};
use crate::whole::Dwelling;
use std::collections::BTreeMap;

/// The boxes of one circuit, or of the two circuits of a multiwire set, as they are fed from the panel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CircuitTree {
    /// The circuit, or both circuits of a multiwire set, in survey order.
    pub circuits: Vec<CircuitIndex>,
    /// The panel they originate in.
    pub panel: PanelIndex,
    /// Every box whose place in the feeding order is known, parents before children.
    pub members: Vec<BoxIndex>,
    /// Boxes on these circuits that nobody knows to reach the panel, parents before children.
    pub unplaced: Vec<BoxIndex>,
    children: BTreeMap<BoxIndex, Vec<BoxIndex>>,
}

impl CircuitTree {
    /// Whether two circuits share a neutral here.
    #[must_use]
    pub fn is_multiwire(&self) -> bool {
        self.circuits.len() > 1
    }

    /// The boxes fed straight from this one, in survey order.
    #[must_use]
    pub fn children(&self, parent: BoxIndex) -> &[BoxIndex] {
        self.children.get(&parent).map_or(&[], Vec::as_slice)
    }

    /// Every box downstream of this one, parents before children, itself left out.
    #[must_use]
    pub fn downstream(&self, of: BoxIndex) -> Vec<BoxIndex> {
        let mut found = self.children(of).to_vec();
        let mut next = 0;
        while next < found.len() {
            found.extend_from_slice(self.children(found[next]));
            next += 1;
        }
        found
    }
}

/// The trees of a dwelling, one for each circuit or multiwire set, in the order of their first circuit.
#[must_use]
pub fn circuit_trees(dwelling: &Dwelling) -> Vec<CircuitTree> {
    circuit_sets(dwelling).into_iter().map(|circuits| tree_of(dwelling, circuits)).collect()
}

/// The circuits in sets that share a neutral; a circuit alone is a set of one.
fn circuit_sets(dwelling: &Dwelling) -> Vec<Vec<CircuitIndex>> {
    let mut sets: Vec<Vec<CircuitIndex>> = Vec::new();
    for (index, circuit) in dwelling.circuits.iter().enumerate() {
        let index = CircuitIndex(index);
        if sets.iter().any(|set| set.contains(&index)) {
            continue;
        }
        let partner = circuit.shares_neutral_with.or_else(|| {
            let partner = dwelling.circuits.iter().position(|other| other.shares_neutral_with == Some(index));
            partner.map(CircuitIndex)
        });
        match partner.filter(|partner| *partner != index && !sets.iter().any(|set| set.contains(partner))) {
            Some(partner) => sets.push(vec![index.min(partner), index.max(partner)]),
            None => sets.push(vec![index]),
        }
    }
    sets
}

fn tree_of(dwelling: &Dwelling, circuits: Vec<CircuitIndex>) -> CircuitTree {
    let panel = dwelling.circuit(circuits[0]).panel;
    let on_it: Vec<BoxIndex> = dwelling
        .box_indices()
        .filter(|index| dwelling.device_box(*index).circuit.is_some_and(|circuit| circuits.contains(&circuit)))
        .collect();
    let mut children: BTreeMap<BoxIndex, Vec<BoxIndex>> = BTreeMap::new();
    let (mut members, mut unplaced) = (Vec::new(), Vec::new());
    for index in &on_it {
        match dwelling.device_box(*index).fed_by {
            Some(Feed::Panel(_)) => members.push(*index),
            Some(Feed::Box(parent)) if on_it.contains(&parent) => children.entry(parent).or_default().push(*index),
            Some(Feed::Box(_)) | None => unplaced.push(*index),
        }
    }
    // A box of unknown feed may still have known boxes behind it: it heads a part of its own.
    for part in [&mut members, &mut unplaced] {
        let mut next = 0;
        while next < part.len() {
            part.extend_from_slice(children.get(&part[next]).map_or(&[], Vec::as_slice));
            next += 1;
        }
    }
    CircuitTree { circuits, panel, members, unplaced, children }
}

impl Dwelling {
    /// Whether the run that feeds a box carries both hots and the shared neutral of a multiwire set.
    ///
    /// Where the survey does not say, the home run of a multiwire circuit does and its other runs do not.
    #[must_use]
    pub fn neutral_is_shared_to(&self, index: BoxIndex) -> bool {
        let device_box = self.device_box(index);
        let is_home_run = matches!(device_box.fed_by, Some(Feed::Panel(_)));
        let multiwire = device_box.circuit.is_some_and(|circuit| self.partner_of(circuit).is_some());
        multiwire && device_box.run.shared_neutral.unwrap_or(is_home_run)
    }

    /// The other circuit of a multiwire set.
    #[must_use]
    pub fn partner_of(&self, circuit: CircuitIndex) -> Option<CircuitIndex> {
        self.circuit(circuit).shares_neutral_with.or_else(|| {
            self.circuits.iter().position(|other| other.shares_neutral_with == Some(circuit)).map(CircuitIndex)
        })
    }
}
