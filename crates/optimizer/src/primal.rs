//! Good sets of links, found fast: what the bound's trees wish for is joined to a source, and bettered while what each
//! further supply would cost, or would spare, makes the trees wish otherwise.

use crate::ascent::Charges;
use crate::bound::{Bounder, Wish};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// The arc into each group; `None` leaves it unsupplied.
pub(crate) type Feeding = Vec<Option<usize>>;

/// At most so many rounds of wishing anew.
const MOST_ROUNDS: usize = 12;

/// Returns what a feeding costs and its state; `None` where it is none that may be chosen.
pub(crate) fn priced(bounder: &mut Bounder<'_>, feeding: &Feeding) -> Option<(Weight, LinkState)> {
    let part = bounder.part;
    let order = order_from_sources(part, feeding)?;
    let mut grade: Vec<usize> = part.groups.iter().map(|group| group.grade).collect();
    let mut links = 0;
    for &group in order.iter().rev() {
        let arc = &part.arcs[feeding[group]?];
        links = plus(links, arc.by_grade.get(grade[group]).copied().unwrap_or(IMPOSSIBLE));
        if let Some(tail) = arc.tail {
            grade[tail] = grade[tail].max(grade[group]);
        }
    }
    let chosen = |arcs: &Vec<usize>| arcs.iter().any(|arc| feeding[part.arcs[*arc].head] == Some(*arc));
    if links >= IMPOSSIBLE || !part.forced.iter().all(chosen) {
        return None;
    }
    let status = feeding.iter().map(|arc| arc.map_or(Status::Off, Status::Fed)).collect();
    let state = LinkState { status, grade, weight: vec![IMPOSSIBLE; part.arcs.len()] };
    let weight = bounder.exact(&state, links);
    (weight < IMPOSSIBLE).then_some((weight, state))
}

/// The fed groups, each after the one that feeds it; `None` where some are not fed from a source.
fn order_from_sources(part: &Part<'_>, feeding: &Feeding) -> Option<Vec<usize>> {
    let mut order = Vec::new();
    let mut placed = vec![false; feeding.len()];
    let mut way = Vec::new();
    for start in (0..feeding.len()).filter(|group| feeding[*group].is_some()) {
        let mut group = start;
        while !placed[group] {
            way.push(group);
            let tail = part.arcs[feeding[group]?].tail;
            match tail {
                Some(tail) if way.len() <= feeding.len() => group = tail,
                Some(_) => return None,
                None => break,
            }
        }
        while let Some(group) = way.pop() {
            placed[group] = true;
            order.push(group);
        }
    }
    Some(order)
}

/// Returns a feeding that gives supply to what is decided and to what is wished for, where it can be had, by ways on
/// which the links' lengths are least.
pub(crate) fn rounded(part: &Part<'_>, state: &LinkState, wishes: &[Wish], length: &[Weight]) -> Feeding {
    let wanted = |group: usize| match state.status[group] {
        Status::Fed(_) | Status::Due => true,
        Status::Open => wishes[group].wanting > 0,
        Status::Off => false,
    };
    let wanted: Vec<bool> = (0..state.status.len()).map(wanted).collect();
    joined(part, &wanted, length)
}

/// What each open arc weighs, the room for it included.
pub(crate) fn lengths(part: &Part<'_>, state: &LinkState) -> Vec<Weight> {
    part.arcs.iter().zip(&state.weight).map(|(arc, weight)| plus(*weight, arc.room)).collect()
}

/// Joins what is wanted to the sources, the nearest first.
fn joined(part: &Part<'_>, wanted: &[bool], length: &[Weight]) -> Feeding {
    let mut feeding: Feeding = vec![None; wanted.len()];
    let mut ways = Ways::new(part, length);
    ways.leave_sources(part, length);
    loop {
        let open = (0..wanted.len()).filter(|group| wanted[*group] && !ways.is_fed[*group]);
        let Some(next) = open.min_by_key(|group| (ways.far[*group], *group)) else { break };
        if ways.far[next] >= IMPOSSIBLE {
            break;
        }
        ways.take(part, next, &mut feeding);
        ways.spread(part, length);
    }
    feeding
}

/// How far each group is from what is fed, and by which arc it is reached.
struct Ways {
    far: Vec<Weight>,
    by: Vec<Option<usize>>,
    is_fed: Vec<bool>,
    /// The arcs that leave each group; those that leave a source stand last.
    out_of: Vec<Vec<usize>>,
    open: Vec<usize>,
}

impl Ways {
    fn new(part: &Part<'_>, length: &[Weight]) -> Self {
        let size = part.groups.len();
        let mut out_of = vec![Vec::new(); size + 1];
        for (index, arc) in part.arcs.iter().enumerate().filter(|(index, _)| length[*index] < IMPOSSIBLE) {
            out_of[arc.tail.unwrap_or(size)].push(index);
        }
        Self { far: vec![IMPOSSIBLE; size], by: vec![None; size], is_fed: vec![false; size], out_of, open: Vec::new() }
    }

    /// The distances from the sources alone.
    fn leave_sources(&mut self, part: &Part<'_>, length: &[Weight]) {
        self.relax(part, length, part.groups.len(), 0);
        self.spread(part, length);
    }

    /// Brings the distances up to date after what is open came nearer or was fed.
    fn spread(&mut self, part: &Part<'_>, length: &[Weight]) {
        let mut next = 0;
        while let Some(&group) = self.open.get(next) {
            next += 1;
            let far = self.far[group];
            self.relax(part, length, group, far);
        }
        self.open.clear();
    }

    fn relax(&mut self, part: &Part<'_>, length: &[Weight], from: usize, far: Weight) {
        for &index in &self.out_of[from] {
            let head = part.arcs[index].head;
            let through = far + length[index].max(1);
            if through < self.far[head] {
                self.far[head] = through;
                self.by[head] = Some(index);
                self.open.push(head);
            }
        }
    }

    /// Feeds a group by the way to it.
    fn take(&mut self, part: &Part<'_>, group: usize, feeding: &mut Feeding) {
        let mut at = Some(group);
        while let Some(group) = at.filter(|group| !self.is_fed[*group]) {
            let Some(arc) = self.by[group] else { return };
            self.is_fed[group] = true;
            self.far[group] = 0;
            feeding[group] = Some(arc);
            self.open.push(group);
            at = part.arcs[arc].tail;
        }
    }
}

/// Wishes anew while that betters a feeding: what is not fed is offered at what it would cost to join, what is fed at
/// what it spares to leave it out.
pub(crate) fn bettered(
    bounder: &mut Bounder<'_>,
    open: &LinkState,
    start: Feeding,
    weight: Weight,
) -> (Weight, Feeding) {
    let part = bounder.part;
    let lengths = lengths(part, open);
    let (mut best, mut feeding) = (weight, start);
    for _ in 0..MOST_ROUNDS {
        let mut state = open.clone();
        let charges = marginal(part, &mut state, &feeding);
        let bound = bounder.bound_at(&state, charges);
        let mut tried = rounded(part, open, &bound.wishes, &lengths);
        if tried == feeding {
            break;
        }
        let Some((weight, _)) = priced(bounder, &tried) else { break };
        if weight >= best {
            break;
        }
        best = weight;
        std::mem::swap(&mut feeding, &mut tried);
    }
    (best, feeding)
}

/// Adds or leaves out one open group at a time while that costs less.
pub(crate) fn flipped(
    bounder: &mut Bounder<'_>,
    open: &LinkState,
    start: Feeding,
    weight: Weight,
) -> (Weight, Feeding) {
    let part = bounder.part;
    let lengths = lengths(part, open);
    let (mut best, mut feeding) = (weight, start);
    let groups: Vec<usize> = (0..feeding.len())
        .filter(|group| open.status[*group] == Status::Open && !part.groups[*group].nodes.is_empty())
        .collect();
    let mut wanted: Vec<bool> = (0..feeding.len())
        .map(|group| match open.status[group] {
            Status::Fed(_) | Status::Due => true,
            Status::Open => feeding[group].is_some() && !part.groups[group].nodes.is_empty(),
            Status::Off => false,
        })
        .collect();
    let mut unchanged = 0;
    let mut next = 0;
    while unchanged < groups.len() {
        let group = groups[next % groups.len()];
        next += 1;
        wanted[group] = !wanted[group];
        let tried = joined(part, &wanted, &lengths);
        match priced(bounder, &tried) {
            Some((weight, _)) if weight < best => {
                (best, feeding) = (weight, tried);
                unchanged = 0;
            }
            _ => {
                wanted[group] = !wanted[group];
                unchanged += 1;
            }
        }
    }
    (best, feeding)
}

/// What supply costs each group more, where it is not fed, or less, where it is left out of a feeding.
fn marginal(part: &Part<'_>, state: &mut LinkState, feeding: &Feeding) -> Charges {
    let mut uses = vec![0_u32; feeding.len()];
    for arc in feeding.iter().flatten() {
        if let Some(tail) = part.arcs[*arc].tail {
            uses[tail] += 1;
        }
    }
    let mut ways = Ways::new(part, &state.weight);
    ways.leave_sources(part, &state.weight);
    for group in (0..feeding.len()).filter(|group| feeding[*group].is_some()) {
        ways.is_fed[group] = true;
        ways.far[group] = 0;
        ways.open.push(group);
    }
    ways.spread(part, &state.weight);
    let mut charges = Charges {
        by_node: part.trees.iter().map(|tree| vec![0; tree.supply.len()]).collect(),
        certain: 0,
        left: state.weight.clone(),
        ..Charges::default()
    };
    for group in 0..feeding.len() {
        if state.status[group] != Status::Open {
            continue;
        }
        let mut charge = ways.far[group];
        if feeding[group].is_some() {
            let (mut at, mut spared) = (Some(group), 0);
            let mut first = true;
            while let Some(here) = at
                && let Some(arc) = feeding[here]
                && (if first { uses[here] == 0 } else { uses[here] == 1 && part.groups[here].nodes.is_empty() })
            {
                spared = plus(spared, state.weight[arc]);
                at = part.arcs[arc].tail;
                first = false;
            }
            charge = spared;
        }
        if charge >= IMPOSSIBLE {
            state.status[group] = Status::Off;
        } else if let Some((tree, node)) = part.groups[group].nodes.first() {
            charges.by_node[*tree][*node] = charge;
        }
    }
    charges
}
