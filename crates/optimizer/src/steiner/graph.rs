//! The graph that reductions and search work on: lines come and go, and each knows the lines of the instance it is made of.

use super::instance::Cost;

/// The cost of an arc that is not there.
pub(crate) const NEVER: Cost = Cost::MAX / 8;

/// An arc out of a node; the arc back is `arc ^ 1`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Spoke {
    pub(crate) to: u32,
    pub(crate) arc: u32,
}

/// What an edge is made of.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Made {
    /// Nothing of the instance.
    Nothing,
    /// One of its lines.
    Line(u32),
    /// Two parts.
    Joined(u32, u32),
}

/// How every edge ever made was made.
#[derive(Clone, Debug, Default)]
pub(crate) struct History(Vec<Made>);

impl History {
    /// Says how to name what was made; the name with its lowest bit turned is the same the other way round.
    pub(crate) fn add(&mut self, made: Made) -> u32 {
        self.0.push(made);
        (self.0.len() as u32 - 1) * 2
    }

    /// The instance's lines in these parts, each with whether it is gone along backwards, sorted.
    pub(crate) fn lines(&self, parts: impl IntoIterator<Item = u32>) -> Vec<(usize, bool)> {
        let mut open: Vec<u32> = parts.into_iter().collect();
        let mut lines = Vec::new();
        while let Some(part) = open.pop() {
            let turned = part & 1;
            match self.0[(part / 2) as usize] {
                Made::Nothing => {}
                Made::Line(line) => lines.push((line as usize, turned == 1)),
                Made::Joined(one, other) => open.extend([one ^ turned, other ^ turned]),
            }
        }
        lines.sort_unstable();
        lines.dedup();
        lines
    }
}

/// A graph with a root and terminals.
#[derive(Clone, Debug, Default)]
pub(crate) struct Graph {
    pub(crate) around: Vec<Vec<Spoke>>,
    pub(crate) cost: Vec<Cost>,
    pub(crate) head: Vec<u32>,
    pub(crate) made: Vec<u32>,
    pub(crate) terminal: Vec<bool>,
    pub(crate) present: Vec<bool>,
    pub(crate) root: u32,
    pub(crate) symmetric: bool,
    pub(crate) bought: Vec<u32>,
    pub(crate) bought_cost: Cost,
}

impl Graph {
    pub(crate) fn with_nodes(nodes: usize, symmetric: bool) -> Self {
        Self {
            around: vec![Vec::new(); nodes],
            terminal: vec![false; nodes],
            present: vec![true; nodes],
            symmetric,
            ..Self::default()
        }
    }

    pub(crate) fn len(&self) -> usize {
        self.around.len()
    }

    pub(crate) fn nodes(&self) -> impl Iterator<Item = u32> + '_ {
        (0..self.len() as u32).filter(|&node| self.present[node as usize])
    }

    pub(crate) fn terminals(&self) -> Vec<u32> {
        self.nodes().filter(|&node| self.terminal[node as usize]).collect()
    }

    pub(crate) fn is_terminal(&self, node: u32) -> bool {
        self.terminal[node as usize]
    }

    pub(crate) fn degree(&self, node: u32) -> usize {
        self.around[node as usize].len()
    }

    pub(crate) fn tail(&self, arc: u32) -> u32 {
        self.head[(arc ^ 1) as usize]
    }

    /// What the arc is made of, in its direction.
    pub(crate) fn made_of(&self, arc: u32) -> u32 {
        self.made[(arc / 2) as usize] ^ (arc & 1)
    }

    pub(crate) fn edge_there(&self, edge: u32) -> bool {
        self.cost[2 * edge as usize] < NEVER || self.cost[2 * edge as usize + 1] < NEVER
    }

    pub(crate) fn edges(&self) -> usize {
        self.nodes().map(|node| self.degree(node)).sum::<usize>() / 2
    }

    /// Adds an edge; where symmetric, the dearer of two parallel ones goes.
    pub(crate) fn add_edge(&mut self, from: u32, to: u32, there: Cost, back: Cost, made: u32) {
        if from == to || (there >= NEVER && back >= NEVER) {
            return;
        }
        if self.symmetric
            && let Some(old) = self.around[from as usize].iter().find(|spoke| spoke.to == to).map(|spoke| spoke.arc)
        {
            if self.cost[old as usize] > there {
                self.cost[old as usize] = there;
                self.cost[(old ^ 1) as usize] = there;
                self.made[(old / 2) as usize] = made;
            }
            return;
        }
        let arc = self.cost.len() as u32;
        self.cost.extend([there, back]);
        self.head.extend([to, from]);
        self.made.push(made);
        self.around[from as usize].push(Spoke { to, arc });
        self.around[to as usize].push(Spoke { to: from, arc: arc ^ 1 });
    }

    pub(crate) fn remove_edge(&mut self, edge: u32) {
        for arc in [2 * edge, 2 * edge + 1] {
            self.cost[arc as usize] = NEVER;
            let tail = self.tail(arc) as usize;
            self.around[tail].retain(|spoke| spoke.arc != arc);
        }
    }

    pub(crate) fn remove_arc(&mut self, arc: u32) {
        self.cost[arc as usize] = NEVER;
        if self.cost[(arc ^ 1) as usize] >= NEVER {
            self.remove_edge(arc / 2);
        }
    }

    pub(crate) fn remove_node(&mut self, node: u32) {
        for spoke in std::mem::take(&mut self.around[node as usize]) {
            self.cost[spoke.arc as usize] = NEVER;
            self.cost[(spoke.arc ^ 1) as usize] = NEVER;
            self.around[spoke.to as usize].retain(|other| other.arc != spoke.arc ^ 1);
        }
        self.present[node as usize] = false;
        self.terminal[node as usize] = false;
    }

    /// Buys the arc and makes its head one with its tail. Where not symmetric, the head's other arcs in go.
    pub(crate) fn contract(&mut self, arc: u32) {
        let (keep, gone) = (self.tail(arc), self.head[arc as usize]);
        self.bought_cost += self.cost[arc as usize];
        self.bought.push(self.made_of(arc));
        self.terminal[keep as usize] = true;
        let spokes = self.around[gone as usize].clone();
        let moved: Vec<(u32, Cost, Cost, u32)> = spokes
            .iter()
            .filter(|spoke| spoke.to != keep)
            .map(|spoke| {
                let back = if self.symmetric { self.cost[(spoke.arc ^ 1) as usize] } else { NEVER };
                (spoke.to, self.cost[spoke.arc as usize], back, self.made_of(spoke.arc))
            })
            .collect();
        self.remove_node(gone);
        for (to, there, back, made) in moved {
            self.add_edge(keep, to, there, back, made);
        }
        if self.root == gone {
            self.root = keep;
        }
    }

    /// The same graph without the places of nodes and edges that are gone.
    pub(crate) fn compacted(&self) -> Self {
        let mut place = vec![0; self.len()];
        for (index, node) in self.nodes().enumerate() {
            place[node as usize] = index as u32;
        }
        let count = self.nodes().count();
        let mut graph = Self::with_nodes(count, self.symmetric);
        for node in self.nodes() {
            graph.terminal[place[node as usize] as usize] = self.terminal[node as usize];
        }
        for edge in 0..self.made.len() as u32 {
            if self.edge_there(edge) {
                let (from, to) = (self.tail(2 * edge), self.head[2 * edge as usize]);
                let (there, back) = (self.cost[2 * edge as usize], self.cost[2 * edge as usize + 1]);
                graph.add_edge(place[from as usize], place[to as usize], there, back, self.made[edge as usize]);
            }
        }
        graph.root = place[self.root as usize];
        graph.bought.clone_from(&self.bought);
        graph.bought_cost = self.bought_cost;
        graph
    }
}
