//! Small random Steiner instances of every kind, and their optimum by trying every set of lines.

use optimizer::steiner::{Cost, Instance, Line};

/// A xorshift generator.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// A number below the end.
    pub fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33) as usize % end
    }
}

/// The kinds of instance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Undirected, terminals alone.
    SteinerTree,
    /// Undirected, prizes alone, no root.
    PrizeCollecting,
    /// Undirected, prizes, terminals and a root.
    Rooted,
    /// One-way lines, terminals and prizes.
    Arborescence,
}

pub const KINDS: [Kind; 4] = [Kind::SteinerTree, Kind::PrizeCollecting, Kind::Rooted, Kind::Arborescence];

/// An instance of this kind with up to so many nodes and lines.
pub fn instance(chance: &mut Chance, kind: Kind, most_nodes: usize, most_lines: usize) -> Instance {
    let nodes = 1 + chance.below(most_nodes);
    let dear = [2, 6, 30][chance.below(3)];
    let mut instance = Instance { nodes, ..Instance::default() };
    let lines = if nodes > 1 { chance.below(most_lines + 1) } else { 0 };
    for index in 0..lines {
        // Most instances hang together.
        let to = if index + 1 < nodes { index + 1 } else { chance.below(nodes) };
        let from =
            if index + 1 < nodes && chance.below(12) > 0 { chance.below(index + 1) } else { chance.below(nodes) };
        if from == to {
            continue;
        }
        let there = chance.below(dear) as Cost;
        let back = match (kind, chance.below(3)) {
            (Kind::Arborescence, 0) => None,
            (Kind::Arborescence, 1) => Some(chance.below(dear) as Cost),
            _ => Some(there),
        };
        let (from, to) = if kind == Kind::Arborescence && chance.below(4) == 0 { (to, from) } else { (from, to) };
        instance.lines.push(Line { from, to, there, back });
    }
    if kind != Kind::SteinerTree {
        for node in 0..nodes {
            if chance.below(2) == 0 {
                instance.prizes.push((node, chance.below(dear * 2) as Cost));
            }
        }
    }
    if matches!(kind, Kind::Rooted | Kind::Arborescence) {
        instance.root = Some(chance.below(nodes));
    }
    let terminals = match kind {
        Kind::SteinerTree => 1 + chance.below(nodes),
        Kind::PrizeCollecting => 0,
        Kind::Rooted | Kind::Arborescence => chance.below(nodes.min(4) + 1),
    };
    instance.terminals = (0..terminals).map(|_| chance.below(nodes)).collect();
    instance
}

/// The least cost of a tree, by trying every set of lines from every start; `None` where there is no tree.
pub fn least(instance: &Instance) -> Option<Cost> {
    let prize =
        |node: usize| instance.prizes.iter().filter(|&&(at, _)| at == node).map(|&(_, prize)| prize).sum::<Cost>();
    let prizes: Vec<Cost> = (0..instance.nodes).map(prize).collect();
    let starts: Vec<usize> = match instance.root {
        Some(root) => vec![root],
        None => (0..instance.nodes).collect(),
    };
    let empty = instance.root.is_none() && instance.terminals.is_empty();
    let mut best = empty.then(|| prizes.iter().sum());
    for chosen in 0u32..1 << instance.lines.len() {
        for &start in &starts {
            let mut inside = 1u32 << start;
            let (mut cost, mut used) = (0, 0);
            loop {
                let mut grew = false;
                for (index, line) in instance.lines.iter().enumerate().filter(|(index, _)| chosen >> index & 1 == 1) {
                    let (from, to) = (inside >> line.from & 1 == 1, inside >> line.to & 1 == 1);
                    let step = match (from, to, line.back) {
                        (true, false, _) => Some((line.there, line.to)),
                        (false, true, Some(back)) => Some((back, line.from)),
                        _ => None,
                    };
                    if let Some((more, node)) = step {
                        cost += more;
                        used |= 1u32 << index;
                        inside |= 1 << node;
                        grew = true;
                    }
                }
                if !grew {
                    break;
                }
            }
            if used == chosen && instance.terminals.iter().all(|&terminal| inside >> terminal & 1 == 1) {
                let missed: Cost =
                    (0..instance.nodes).filter(|node| inside >> node & 1 == 0).map(|node| prizes[node]).sum();
                best = Some(best.map_or(cost + missed, |best: Cost| best.min(cost + missed)));
            }
        }
    }
    best
}
