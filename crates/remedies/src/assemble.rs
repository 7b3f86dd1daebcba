//! The dwelling's choices put together as one problem for the optimizer.

use crate::at_panel::{PanelCandidate, panel_candidates};
use crate::candidate::Candidate;
use crate::candidates::candidates;
use crate::dangers::{DangerRepair, danger_repairs};
use crate::facts::Facts;
use crate::feed_through::FeedThroughLimits;
use crate::leakage::leakage_allowed_for;
use crate::network::Network;
use dwelling::{BoxIndex, Feed};
use estimate::PriceBook;
use optimizer::{Cost, Marks, Node, Problem, RootOption, Tree};
use std::collections::BTreeMap;

/// The problem and the way back from its options to what they stand for.
pub struct Assembled {
    /// The problem as the optimizer sees it.
    pub problem: Problem,
    /// By tree: its candidates at the panel, in the order of the root's options.
    pub at_panel: Vec<Vec<PanelCandidate>>,
    /// By tree: the boxes that its nodes stand for.
    pub boxes: Vec<Vec<BoxIndex>>,
    /// By box: its candidates, in the order of its node's options.
    pub candidates: Vec<Vec<Candidate>>,
    /// The network of grounds.
    pub network: Network,
    /// What is dangerous and is put right whatever is chosen: the same for every solution, and no part of the problem.
    pub dangers: Vec<DangerRepair>,
}

/// Assembles the problem of a dwelling.
///
/// The trees are the circuit trees in order and, where boxes are on no known circuit, one more that holds these and
/// gives no protection.
#[must_use]
pub fn assemble(facts: &Facts, book: &PriceBook) -> Assembled {
    let network = Network::of(facts, book);
    let candidates: Vec<Vec<Candidate>> =
        facts.sites.iter().map(|at| candidates(facts, book, at, network.links_at[at.index.0])).collect();
    let mut boxes: Vec<Vec<BoxIndex>> =
        facts.trees.iter().map(|tree| tree.members.iter().chain(&tree.unplaced).copied().collect()).collect();
    let mut at_panel: Vec<Vec<PanelCandidate>> =
        facts.trees.iter().map(|tree| panel_candidates(facts, book, tree)).collect();
    boxes.push(on_no_circuit(facts));
    at_panel.push(Vec::new());
    let trees = boxes
        .iter()
        .zip(&at_panel)
        .map(|(members, choices)| Tree {
            root_options: root_options(choices, facts.limits),
            nodes: members.iter().map(|at| node(facts, &candidates[at.0], members, *at)).collect(),
        })
        .collect();
    let problem = Problem { trees, groups: network.groups.clone(), links: network.links.clone() };
    Assembled { problem, at_panel, boxes, candidates, network, dangers: danger_repairs(facts, book) }
}

/// The boxes on no known circuit, parents before children.
fn on_no_circuit(facts: &Facts) -> Vec<BoxIndex> {
    let mut ordered = Vec::new();
    let mut children: BTreeMap<BoxIndex, Vec<BoxIndex>> = BTreeMap::new();
    for at in facts.sites.iter().filter(|at| at.tree.is_none()) {
        match facts.dwelling.device_box(at.index).fed_by {
            Some(Feed::Box(parent)) if facts.at(parent).tree.is_none() => {
                children.entry(parent).or_default().push(at.index)
            }
            _ => ordered.push(at.index),
        }
    }
    let mut next = 0;
    while next < ordered.len() {
        ordered.extend_from_slice(children.get(&ordered[next]).map_or(&[], Vec::as_slice));
        next += 1;
    }
    ordered
}

fn root_options(choices: &[PanelCandidate], limits: FeedThroughLimits) -> Vec<RootOption> {
    if choices.is_empty() {
        return vec![RootOption { cost: Cost::default(), gives: Marks::NONE, burden_limit: None }];
    }
    choices.iter().map(|choice| choice.option(limits)).collect()
}

fn node(facts: &Facts, candidates: &[Candidate], members: &[BoxIndex], at: BoxIndex) -> Node {
    let device_box = facts.dwelling.device_box(at);
    let before = members.iter().position(|member| *member == at).unwrap_or(members.len());
    let fed_from = match device_box.fed_by {
        Some(Feed::Box(parent)) => {
            members[..before].iter().position(|member| *member == parent).map(|node| (node, parent))
        }
        _ => None,
    };
    let behind_load = fed_from.is_some_and(|(_, parent)| can_be_behind_load(facts, parent, at));
    Node {
        parent: fed_from.map(|(node, _)| node),
        behind_load,
        group: facts.groups.index_of(at),
        burden: leakage_allowed_for(device_box),
        count: u32::from(device_box.holds.is_receptacle()),
        options: candidates.iter().map(|candidate| candidate.option(facts.limits, facts.sites.len())).collect(),
    }
}

/// Whether the load side of a device in one box could feed another: not over a shared neutral, nor another circuit.
fn can_be_behind_load(facts: &Facts, parent: BoxIndex, child: BoxIndex) -> bool {
    let same_circuit = facts.dwelling.device_box(parent).circuit == facts.dwelling.device_box(child).circuit;
    same_circuit && !facts.dwelling.neutral_is_shared_to(child)
}
