//! Solving a network by making stars into meshes, the node with the fewest neighbours first.

use super::{Network, NetworkError, Node};
use crate::Complex;

/// Admittances that leave less than this part of their sizes' sum have cancelled.
const CANCELLED: f64 = 1e-8;

/// What lies between a node and a neighbour. The current from the neighbour into the node is
/// `admittance * (V_neighbour - V_node) + driven`.
#[derive(Clone, Copy, Debug)]
struct Link {
    neighbour: usize,
    admittance: Complex,
    driven: Complex,
}

/// A node that was eliminated, with the neighbours it had then.
#[derive(Clone, Debug)]
struct Step {
    node: usize,
    /// One over the sum of the admittances to its neighbours.
    impedance: Complex,
    neighbours: Vec<(usize, Complex)>,
}

/// The steps of an elimination, by which further currents can be solved for.
#[derive(Clone, Debug)]
pub(super) struct Elimination {
    steps: Vec<Step>,
}

impl Elimination {
    /// The voltages that currents driven into the nodes cause by themselves, all sources being still.
    pub(super) fn voltages(&self, mut driven: Vec<Complex>) -> Vec<Complex> {
        for step in &self.steps {
            let share = driven[step.node] * step.impedance;
            for (neighbour, admittance) in &step.neighbours {
                driven[*neighbour] += share * *admittance;
            }
        }
        self.back(driven)
    }

    /// The voltages from the currents that stood at each node when it was eliminated.
    fn back(&self, mut values: Vec<Complex>) -> Vec<Complex> {
        values[0] = Complex::ZERO;
        for step in self.steps.iter().rev() {
            let sum: Complex = step.neighbours.iter().map(|(node, admittance)| values[*node] * *admittance).sum();
            values[step.node] = (sum + values[step.node]) * step.impedance;
        }
        values
    }
}

/// The voltages of all nodes, those made one with another aside, and the steps that gave them.
pub(super) fn solve(network: &Network) -> Result<(Vec<Complex>, Elimination), NetworkError> {
    let mut mesh = Mesh::of(network);
    let mut steps = Vec::with_capacity(network.nodes());
    while let Some(node) = mesh.fewest_neighbours() {
        steps.push(mesh.eliminate(node)?);
    }
    let elimination = Elimination { steps };
    let voltages = elimination.back(mesh.driven);
    Ok((voltages, elimination))
}

/// The network that is left.
struct Mesh {
    links: Vec<Vec<Link>>,
    /// What the links of each eliminated node drove into it.
    driven: Vec<Complex>,
    left: Vec<usize>,
    /// Where in a list of links a neighbour stands, plus one; nought if it does not. All nought between uses.
    place: Vec<usize>,
}

impl Mesh {
    fn of(network: &Network) -> Self {
        let count = network.nodes();
        let mut mesh = Self {
            links: vec![Vec::new(); count],
            driven: vec![Complex::ZERO; count],
            left: (1..count).filter(|node| network.one(*node) == *node).collect(),
            place: vec![0; count],
        };
        for branch in &network.branches {
            let (from, to) = (network.one(branch.from), network.one(branch.to));
            if from != to && branch.admittance != Complex::ZERO {
                let driven = branch.admittance * branch.rise;
                add(&mut mesh.links[to], Link { neighbour: from, admittance: branch.admittance, driven });
                add(&mut mesh.links[from], Link { neighbour: to, admittance: branch.admittance, driven: -driven });
            }
        }
        // A current source is a link that lets nothing through: kept in one piece, what goes in at one end comes out at the
        // other to the last digit, however weakly both hang on the rest.
        for (from, to, driven) in &network.driven {
            let (from, to) = (network.one(*from), network.one(*to));
            if from != to {
                add(&mut mesh.links[to], Link { neighbour: from, admittance: Complex::ZERO, driven: *driven });
                add(&mut mesh.links[from], Link { neighbour: to, admittance: Complex::ZERO, driven: -*driven });
            }
        }
        mesh
    }

    /// Takes the node with the fewest neighbours out of those left. Earth stays.
    fn fewest_neighbours(&mut self) -> Option<usize> {
        let (at, _) = self.left.iter().enumerate().min_by_key(|(_, node)| self.links[**node].len())?;
        Some(self.left.swap_remove(at))
    }

    /// Replaces a node and its star of links by links among its neighbours.
    fn eliminate(&mut self, node: usize) -> Result<Step, NetworkError> {
        let star = std::mem::take(&mut self.links[node]);
        let sum: Complex = star.iter().map(|link| link.admittance).sum();
        let sizes: f64 = star.iter().map(|link| link.admittance.magnitude()).sum();
        if sizes == 0.0 {
            return Err(NetworkError::Floating(Node(node)));
        }
        let impedance = sum.reciprocal();
        if sum.magnitude() < CANCELLED * sizes || !impedance.is_finite() {
            return Err(NetworkError::Undetermined);
        }
        for (at, link) in star.iter().enumerate() {
            let share = link.admittance * impedance;
            if link.neighbour == 0 {
                // Nobody asks for earth's own links.
                continue;
            }
            let links = &mut self.links[link.neighbour];
            links.retain(|other| other.neighbour != node);
            for (place, other) in links.iter().enumerate() {
                self.place[other.neighbour] = place + 1;
            }
            for other in star.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, other)| other) {
                let admittance = share * other.admittance;
                let driven = share * other.driven - other.admittance * impedance * link.driven;
                match self.place[other.neighbour] {
                    0 => links.push(Link { neighbour: other.neighbour, admittance, driven }),
                    place => {
                        links[place - 1].admittance += admittance;
                        links[place - 1].driven += driven;
                    }
                }
            }
            for other in links.iter() {
                self.place[other.neighbour] = 0;
            }
        }
        self.driven[node] = star.iter().map(|link| link.driven).sum::<Complex>();
        let neighbours = star.iter().map(|link| (link.neighbour, link.admittance)).collect();
        Ok(Step { node, impedance, neighbours })
    }
}

/// Adds a link, beside one to the same neighbour if there is one.
fn add(links: &mut Vec<Link>, new: Link) {
    match links.iter_mut().find(|link| link.neighbour == new.neighbour) {
        Some(link) => {
            link.admittance += new.admittance;
            link.driven += new.driven;
        }
        None => links.push(new),
    }
}
