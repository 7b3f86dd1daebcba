//! Rooted Steiner arborescence with node prizes: the problem, and the tree that answers it.

/// What a line, a prize or a tree costs.
pub type Cost = i64;

/// The most that all costs and prizes of an instance may add up to.
pub const MOST: Cost = 1 << 56;

/// A line between two nodes, with what it costs to go along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line {
    /// The node it leaves.
    pub from: usize,
    /// The node it goes to.
    pub to: usize,
    /// What it costs from `from` to `to`.
    pub there: Cost,
    /// What it costs the other way; `None` where it goes one way only.
    pub back: Option<Cost>,
}

/// The problem: the cheapest tree that leads away from the root, holds every terminal, and pays for each prize missed.
///
/// Without a root the tree may start anywhere, or be empty; then every line costs the same both ways.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Instance {
    /// How many nodes there are.
    pub nodes: usize,
    /// The lines.
    pub lines: Vec<Line>,
    /// Where every tree starts.
    pub root: Option<usize>,
    /// The nodes that every tree holds.
    pub terminals: Vec<usize>,
    /// Nodes, with what it costs to leave each out; a node's prizes add up.
    pub prizes: Vec<(usize, Cost)>,
}

/// A tree: what it costs, where it starts, which lines it has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tree {
    /// The lines and the missed prizes, added up.
    pub cost: Cost,
    /// The node it starts at; `None` is the empty tree.
    pub root: Option<usize>,
    /// Its lines by rising index.
    pub lines: Vec<usize>,
}

/// Why an instance is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Malformed {
    /// A line, terminal, prize or root names a node that is not there.
    NoSuchNode(usize),
    /// A line joins a node to itself.
    Loop(usize),
    /// A cost or a prize is below zero.
    BelowZero,
    /// The costs add up to more than [`MOST`].
    TooLarge,
    /// There is no root, and a line does not cost the same both ways.
    OneWayWithoutRoot(usize),
}

impl Instance {
    /// Says why the instance cannot be solved.
    ///
    /// # Errors
    /// The first fault found.
    pub fn validate(&self) -> Result<(), Malformed> {
        let ends = self.lines.iter().flat_map(|line| [line.from, line.to]);
        let named = self.terminals.iter().copied().chain(self.prizes.iter().map(|&(node, _)| node)).chain(self.root);
        if let Some(node) = ends.chain(named).find(|&node| node >= self.nodes) {
            return Err(Malformed::NoSuchNode(node));
        }
        let costs = self.lines.iter().flat_map(|line| [line.there, line.back.unwrap_or(0)]);
        let mut sum: Cost = 0;
        for cost in costs.chain(self.prizes.iter().map(|&(_, prize)| prize)) {
            if cost < 0 {
                return Err(Malformed::BelowZero);
            }
            sum = sum.saturating_add(cost);
        }
        if sum > MOST || self.nodes > u32::MAX as usize / 8 || self.lines.len() > u32::MAX as usize / 8 {
            return Err(Malformed::TooLarge);
        }
        for (index, line) in self.lines.iter().enumerate() {
            if line.from == line.to {
                return Err(Malformed::Loop(index));
            }
            if self.root.is_none() && line.back != Some(line.there) {
                return Err(Malformed::OneWayWithoutRoot(index));
            }
        }
        Ok(())
    }

    /// Whether every line costs the same both ways.
    #[must_use]
    pub fn is_undirected(&self) -> bool {
        self.lines.iter().all(|line| line.back == Some(line.there))
    }

    /// The prize of each node.
    #[must_use]
    pub fn prize_by_node(&self) -> Vec<Cost> {
        let mut prizes = vec![0; self.nodes];
        for &(node, prize) in &self.prizes {
            if let Some(sum) = prizes.get_mut(node) {
                *sum += prize;
            }
        }
        prizes
    }
}
