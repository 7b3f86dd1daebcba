//! The circuits of a generated dwelling: which boxes are on which, what feeds what, and what the runs are.

use super::chance::Chance;
use super::house::{Kind, Room, Spot};
use std::collections::BTreeMap;

/// A circuit.
pub struct Circuit {
    /// The panel, by index.
    pub panel: usize,
    /// The rating of its breaker.
    pub amperes: u32,
    /// Its wiring method.
    pub cable: &'static str,
    /// The size of its conductors, where it is known.
    pub gauge: Option<u32>,
    /// The metal of its conductors.
    pub metal: &'static str,
    /// The other circuit of a multiwire set.
    pub partner: Option<usize>,
}

/// How a box is fed.
#[derive(Clone)]
pub struct Feeding {
    /// Its circuit.
    pub circuit: usize,
    /// The box that feeds it; a home run where there is none.
    pub parent: Option<usize>,
    /// The wiring method of its run, where it differs from its circuit's.
    pub cable: Option<&'static str>,
    /// Whether its run is said to carry the neutral of a multiwire set.
    pub shared_neutral: bool,
    /// Whether its runs are a ground all the way to the panel.
    pub grounded: bool,
    /// How many boxes it feeds.
    pub feeds: usize,
}

/// Ground-bearing wiring methods that islands are made of.
const WITH_GROUND: [&str; 4] = ["nm-with-ground", "nm-with-ground", "armored-with-strip", "metal-conduit"];

/// The circuits over these boxes, and how each box is fed.
pub fn wiring(
    chance: &mut Chance,
    kind: Kind,
    rooms: &[Room],
    spots: &[Spot],
    panels: &[Spot],
) -> (Vec<Circuit>, Vec<Feeding>) {
    let mut circuits: Vec<Circuit> = Vec::new();
    let mut feeding: BTreeMap<usize, Feeding> = BTreeMap::new();
    let mut members: Vec<Vec<usize>> = Vec::new();
    for (boxes, wet) in shares(chance, rooms, spots) {
        let panel = chance.below(panels.len());
        let circuit = circuits.len();
        circuits.push(new_circuit(chance, kind, panel, wet));
        feed(chance, circuit, &boxes, spots, panels[panel], &mut feeding);
        members.push(boxes);
    }
    share_neutrals(chance, &mut circuits, &members, &mut feeding);
    for (circuit, boxes) in members.iter().enumerate() {
        islands(chance, boxes, circuits[circuit].cable, &mut feeding);
    }
    let mut feeding: Vec<Feeding> = feeding.into_values().collect();
    for at in 0..feeding.len() {
        if let Some(parent) = feeding[at].parent {
            feeding[parent].feeds += 1;
        }
        feeding[at].grounded = is_grounded(&circuits, &feeding, at);
    }
    (circuits, feeding)
}

/// Splits the boxes into shares of 5 to 12 neighbours; rooms with water often have circuits of their own.
fn shares(chance: &mut Chance, rooms: &[Room], spots: &[Spot]) -> Vec<(Vec<usize>, bool)> {
    let own: Vec<bool> = rooms
        .iter()
        .map(|room| matches!(room.room_use, "kitchen" | "bathroom" | "laundry" | "garage") && chance.percent(60))
        .collect();
    let mut shares = Vec::new();
    for wet in [true, false] {
        let mut left: Vec<usize> = (0..spots.len()).filter(|at| own[spots[*at].room] == wet).collect();
        left.reverse();
        while !left.is_empty() {
            let most = chance.within(5, 12);
            // The last few join the last share rather than being one too small.
            let size = if left.len() < most + 3 && left.len() <= 12 { left.len() } else { most.min(left.len()) };
            shares.push((left.split_off(left.len() - size).into_iter().rev().collect(), wet));
        }
    }
    shares
}

fn new_circuit(chance: &mut Chance, kind: Kind, panel: usize, wet: bool) -> Circuit {
    let cable = match kind {
        Kind::Bungalow => {
            chance.weighted(&[(12, "nm-two-wire"), (2, "nm-with-ground"), (1, "nm-reduced-ground"), (1, "unknown")])
        }
        Kind::TwoStorey => {
            chance.weighted(&[(9, "nm-two-wire"), (4, "nm-with-ground"), (2, "armored-no-strip"), (1, "knob-and-tube")])
        }
        Kind::Flat => chance.weighted(&[
            (8, "armored-no-strip"),
            (3, "armored-with-strip"),
            (2, "flexible-metal-conduit"),
            (2, "metal-conduit"),
            (1, "armored-unknown"),
        ]),
        Kind::KnobAndTube => chance.weighted(&[(11, "knob-and-tube"), (3, "nm-two-wire"), (2, "nm-with-ground")]),
    };
    let amperes = if wet { chance.weighted(&[(4, 20), (1, 15)]) } else { chance.weighted(&[(8, 15), (3, 20)]) };
    let metal = if kind == Kind::TwoStorey && chance.percent(12) { "aluminium" } else { "copper" };
    let gauge = if amperes == 20 || metal == "aluminium" { 12 } else { 14 };
    Circuit { panel, amperes, cable, gauge: chance.percent(95).then_some(gauge), metal, partner: None }
}

/// Feeds each box from the nearest one before it that has a knockout left, the first from the panel.
fn feed(
    chance: &mut Chance,
    circuit: usize,
    boxes: &[usize],
    spots: &[Spot],
    panel: Spot,
    feeding: &mut BTreeMap<usize, Feeding>,
) {
    let mut left: Vec<usize> = boxes.to_vec();
    let mut placed: Vec<(usize, usize)> = Vec::new();
    while !left.is_empty() {
        let nearest = |left: &[usize], to: Spot| {
            (0..left.len()).min_by_key(|place| (spots[left[*place]].distance(to), left[*place])).unwrap_or(0)
        };
        let parent = if placed.is_empty() || (placed.len() > 2 && chance.percent(6)) {
            None
        } else if chance.percent(70) {
            Some(placed.len() - 1)
        } else {
            Some(chance.below(placed.len()))
        };
        let parent = parent.filter(|place| placed[*place].1 < 3);
        let from = parent.map_or(panel, |place| spots[placed[place].0]);
        let at = left.remove(nearest(&left, from));
        let fed_by = parent.map(|place| {
            placed[place].1 += 1;
            placed[place].0
        });
        placed.push((at, 0));
        let run = Feeding { circuit, parent: fed_by, cable: None, shared_neutral: false, grounded: false, feeds: 0 };
        feeding.insert(at, run);
    }
}

/// Makes multiwire sets of some neighbouring circuits. In every other one the shared run goes on to a box of the first,
/// from which the second is fed.
fn share_neutrals(
    chance: &mut Chance,
    circuits: &mut [Circuit],
    members: &[Vec<usize>],
    feeding: &mut BTreeMap<usize, Feeding>,
) {
    let mut first = 0;
    while first + 1 < circuits.len() {
        let second = first + 1;
        if !chance.percent(12) || circuits[first].cable == "knob-and-tube" {
            first += 1;
            continue;
        }
        circuits[second].panel = circuits[first].panel;
        (circuits[first].partner, circuits[second].partner) = (Some(second), Some(first));
        let home = |members: &[usize], feeding: &BTreeMap<usize, Feeding>| {
            members.iter().copied().find(|at| feeding[at].parent.is_none())
        };
        let homes = (home(&members[first], feeding), home(&members[second], feeding));
        if let (Some(from), Some(to)) = homes
            && chance.percent(50)
        {
            for (at, parent) in [(from, None), (to, Some(from))] {
                if let Some(run) = feeding.get_mut(&at) {
                    (run.parent, run.shared_neutral) = (parent, true);
                }
            }
        }
        first += 2;
    }
}

/// Newer cable behind some boxes of old circuits: bonded groups that do not reach the panel.
fn islands(chance: &mut Chance, boxes: &[usize], cable: &str, feeding: &mut BTreeMap<usize, Feeding>) {
    if bears_ground(cable) {
        return;
    }
    for _ in 0..chance.weighted(&[(5, 0), (5, 1), (2, 2)]) {
        let head = boxes[chance.below(boxes.len())];
        let newer = chance.pick(&WITH_GROUND);
        let behind: Vec<usize> = boxes.iter().copied().filter(|at| is_behind(feeding, *at, head)).collect();
        for at in behind {
            if let Some(run) = feeding.get_mut(&at) {
                run.cable = Some(newer);
            }
        }
    }
}

fn is_behind(feeding: &BTreeMap<usize, Feeding>, at: usize, head: usize) -> bool {
    let mut below = at;
    while let Some(parent) = feeding[&below].parent {
        if parent == head {
            return true;
        }
        below = parent;
    }
    false
}

fn bears_ground(cable: &str) -> bool {
    matches!(cable, "nm-with-ground" | "armored-with-strip" | "metal-conduit" | "metal-clad-with-ground")
}

fn is_grounded(circuits: &[Circuit], feeding: &[Feeding], at: usize) -> bool {
    let mut below = at;
    loop {
        let run = &feeding[below];
        if !bears_ground(run.cable.unwrap_or(circuits[run.circuit].cable)) {
            return false;
        }
        match run.parent {
            Some(parent) => below = parent,
            None => return true,
        }
    }
}
