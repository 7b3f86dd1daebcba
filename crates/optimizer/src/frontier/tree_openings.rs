//! A tree under given links whose choices open walls: for each number of openings the least that it costs.

use crate::ascent::Charges;
use crate::bound::view;
use crate::compiled_tree::{CompiledOption, CompiledTree};
use crate::effective_tree::EffectiveTree;
use crate::frontier::value::Value;
use crate::link_state::LinkState;
use crate::part::Part;
use crate::problem::SupplyNeed;
use crate::tree_solver::{Chosen, Outlook, Supply};
use crate::weight::{Weight, cost_of};

/// A choice of everything in a tree.
#[derive(Clone, Debug)]
pub(super) struct TreePoint {
    pub cents: i64,
    pub openings: i64,
    pub root: usize,
    pub chosen: Vec<Chosen>,
}

impl TreePoint {
    /// What it adds to a choice of links.
    pub const fn value(&self) -> Value {
        Value { cents: self.cents, openings: self.openings, worth: 0 }
    }
}

/// Some nodes decided: what they cost, and what is behind the load side that is being filled.
#[derive(Clone, Debug, Default)]
struct Label {
    weight: Weight,
    openings: i64,
    count: u64,
    burden: i64,
    behind: Vec<usize>,
    chosen: Vec<(usize, Chosen)>,
}

impl Label {
    fn with(&self, other: &Self) -> Self {
        Self {
            weight: self.weight + other.weight,
            openings: self.openings + other.openings,
            chosen: self.chosen.iter().chain(&other.chosen).cloned().collect(),
            ..self.clone()
        }
    }
}

/// Returns the choices of a tree of a complete state that no other beats in cents and openings.
pub(super) fn tree_points(part: &Part<'_>, place: usize, state: &LinkState) -> Vec<TreePoint> {
    let compiled = &part.trees[place].compiled;
    let (shape, outlooks) = view(part, place, state, &Charges::default());
    let Some(shape) = shape.as_ref().map_or(Some(&compiled.unmoved), Option::as_ref) else { return Vec::new() };
    let sights = compiled.sights.len();
    let mut walk =
        Walk { compiled, shape, outlooks: &outlooks, subtrees: vec![(0, 0); outlooks.len()], labels: Vec::new() };
    walk.labels = vec![Vec::new(); outlooks.len() * sights];
    for &node in shape.order.iter().rev() {
        let given = &compiled.given.nodes[node];
        walk.subtrees[node] = (u64::from(given.count), given.burden);
        for &child in &shape.children[node] {
            let (count, burden) = walk.subtrees[child];
            walk.subtrees[node].0 += count;
            walk.subtrees[node].1 += burden;
        }
        for sight in 0..sights {
            walk.labels[node * sights + sight] = walk.of_node(node, sight);
        }
    }
    let mut points = Vec::new();
    for root in &compiled.roots {
        let sight = compiled.sight_of[usize::from(root.gives.0)];
        let openings = compiled.given.root_options[root.index].cost.openings;
        let mut labels = vec![Label { weight: root.weight, openings, ..Label::default() }];
        for &node in &shape.on_root {
            labels = unbeaten(joined(&labels, &walk.labels[node * sights + sight]));
        }
        points.extend(labels.into_iter().map(|label| (label, root.index)));
    }
    let mut kept: Vec<(Label, usize)> = Vec::new();
    points.sort_by_key(|(label, root)| (label.weight, label.openings, *root));
    for (label, root) in points {
        if kept.last().is_none_or(|(last, _)| label.openings < last.openings) {
            kept.push((label, root));
        }
    }
    kept.into_iter().map(|(label, root)| point_of(label, root, outlooks.len())).collect()
}

fn point_of(label: Label, root: usize, nodes: usize) -> TreePoint {
    let mut chosen = vec![Chosen::default(); nodes];
    for (node, choice) in label.chosen {
        chosen[node] = choice;
    }
    TreePoint { cents: cost_of(label.weight).cents, openings: label.openings, root, chosen }
}

struct Walk<'t> {
    compiled: &'t CompiledTree<'t>,
    shape: &'t EffectiveTree,
    outlooks: &'t [Outlook],
    /// By node: count and burden of its subtree.
    subtrees: Vec<(u64, i64)>,
    /// By node and sight.
    labels: Vec<Vec<Label>>,
}

impl Walk<'_> {
    fn of_node(&self, node: usize, sight: usize) -> Vec<Label> {
        let mut all = Vec::new();
        for option in self.compiled.options[node].iter().filter(|option| self.holds(node, sight, option)) {
            let openings = self.compiled.given.nodes[node].options[option.index].cost.openings;
            let own = Label { weight: option.weight, openings, ..Label::default() };
            all.extend(self.below(node, sight, option, own).into_iter().map(|mut label| {
                let mut behind = std::mem::take(&mut label.behind);
                behind.sort_unstable();
                label.chosen.push((node, Chosen { option: option.index, behind, wants_supply: false }));
                Label { count: 0, burden: 0, ..label }
            }));
        }
        unbeaten(all)
    }

    fn holds(&self, node: usize, sight: usize, option: &CompiledOption<'_>) -> bool {
        let outlook = &self.outlooks[node];
        let lands = || option.most_landings.get(outlook.grade).is_some_and(|most| outlook.landings <= *most);
        self.compiled.sights[sight].covers(option.needs_from_above)
            && (outlook.landings == 0 || lands())
            && match option.supply {
                SupplyNeed::Any => true,
                SupplyNeed::Supplied => outlook.supply == Supply::On,
                SupplyNeed::Unsupplied => outlook.supply == Supply::Off,
            }
    }

    fn below(&self, node: usize, sight: usize, option: &CompiledOption<'_>, own: Label) -> Vec<Label> {
        let sights = self.compiled.sights.len();
        let beyond = self.compiled.sight_of[usize::from(self.compiled.sights[sight].0 | option.gives.0)];
        let mut labels = vec![own];
        for &child in &self.shape.children[node] {
            let mut next = joined(&labels, &self.labels[child * sights + sight]);
            if self.shape.behind_load[child] && beyond != sight {
                let (count, burden) = self.subtrees[child];
                for mut label in joined(&labels, &self.labels[child * sights + beyond]) {
                    label.count += count;
                    label.burden += burden;
                    label.behind.push(child);
                    if label.count <= option.count_limit && label.burden <= option.burden_left {
                        next.push(label);
                    }
                }
            }
            labels = unbeaten(next);
        }
        labels
    }
}

fn joined(labels: &[Label], others: &[Label]) -> Vec<Label> {
    labels.iter().flat_map(|label| others.iter().map(|other| label.with(other))).collect()
}

/// The labels than which no other is as good in everything.
fn unbeaten(mut labels: Vec<Label>) -> Vec<Label> {
    labels.sort_by_key(|label| (label.weight, label.openings, label.count, label.burden));
    let mut kept: Vec<Label> = Vec::with_capacity(labels.len());
    for label in labels {
        let is_as_good = |other: &Label| {
            other.openings <= label.openings && other.count <= label.count && other.burden <= label.burden
        };
        if !kept.iter().any(is_as_good) {
            kept.push(label);
        }
    }
    kept
}
