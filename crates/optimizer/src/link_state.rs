//! Which links are decided, and what follows from that at once.

use crate::part::Part;
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// What is decided for an open group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Status {
    /// Nothing.
    Open,
    /// It is not supplied.
    Off,
    /// It is supplied, by whichever arc.
    Due,
    /// It is supplied by this arc.
    Fed(usize),
}

/// The links so far.
#[derive(Clone, Debug)]
pub(crate) struct LinkState {
    pub status: Vec<Status>,
    /// The highest grade that each group and what it is known to supply need.
    pub grade: Vec<usize>,
    /// The least weight of each arc; one that cannot be chosen any more is impossible.
    pub weight: Vec<Weight>,
}

impl LinkState {
    /// Returns the state with nothing decided; what follows is not drawn yet.
    pub fn undecided(part: &Part<'_>) -> Self {
        Self {
            status: vec![Status::Open; part.groups.len()],
            grade: part.groups.iter().map(|group| group.grade).collect(),
            weight: part.arcs.iter().map(|arc| arc.least_weight(0)).collect(),
        }
    }

    /// Draws what follows from what is decided. Returns whether it can hold.
    pub fn settle(&mut self, part: &Part<'_>) -> bool {
        loop {
            self.raise_grades(part);
            self.weigh_arcs(part);
            let Some(changed) = self.infer(part) else { return false };
            if !changed {
                return true;
            }
        }
    }

    /// The least weight of an arc that can still supply the group.
    pub fn least_into(&self, part: &Part<'_>, group: usize) -> Weight {
        part.groups[group].arcs.iter().map(|arc| self.weight[*arc]).min().unwrap_or(IMPOSSIBLE)
    }

    /// The arc of that weight; the first of equal ones.
    pub fn best_into(&self, part: &Part<'_>, group: usize) -> Option<usize> {
        let arcs = part.groups[group].arcs.iter().copied().filter(|arc| self.weight[*arc] < IMPOSSIBLE);
        arcs.min_by_key(|arc| self.weight[*arc])
    }

    /// The arc into each group, where one is chosen.
    pub fn feeding(&self) -> Vec<Option<usize>> {
        let fed = |status: &Status| if let Status::Fed(arc) = status { Some(*arc) } else { None };
        self.status.iter().map(fed).collect()
    }

    /// Whether every group is decided.
    pub fn is_complete(&self) -> bool {
        !self.status.iter().any(|status| matches!(status, Status::Open | Status::Due))
    }

    /// Gives up the arcs that cost too much to be worth it: from a source through what is left to pay of them at least
    /// what is spare. Returns whether any was open.
    ///
    /// What is left to pay of a link that moves a node is in its tree's bound already: it counts besides what that tree
    /// costs more where some link moves a node of it.
    pub fn give_up(&mut self, part: &Part<'_>, left: &[Weight], moved: &[Weight], spare: Weight) -> bool {
        let besides = |index: usize| match part.arcs[index].moves {
            None => left[index].max(0),
            Some(_) => 0,
        };
        let far = self.distances(part, besides);
        let mut any = false;
        for (index, arc) in part.arcs.iter().enumerate() {
            let reach = arc.tail.map_or(0, |tail| far[tail]);
            let more = match arc.moves {
                None => plus(reach, besides(index)),
                Some((tree, _)) => plus(reach, (left[index] + moved[tree]).max(0)),
            };
            if self.weight[index] < IMPOSSIBLE && self.status[arc.head] != Status::Fed(index) && more >= spare {
                self.weight[index] = IMPOSSIBLE;
                any = true;
            }
        }
        any
    }

    /// How far each group is from a source by what is left to pay.
    fn distances(&self, part: &Part<'_>, besides: impl Fn(usize) -> Weight) -> Vec<Weight> {
        let mut far = vec![IMPOSSIBLE; self.status.len()];
        loop {
            let mut nearer = false;
            for (index, arc) in part.arcs.iter().enumerate().filter(|(index, _)| self.weight[*index] < IMPOSSIBLE) {
                let through = plus(arc.tail.map_or(0, |tail| far[tail]), besides(index));
                if through < far[arc.head] {
                    far[arc.head] = through;
                    nearer = true;
                }
            }
            if !nearer {
                return far;
            }
        }
    }

    fn raise_grades(&mut self, part: &Part<'_>) {
        loop {
            let mut raised = false;
            for group in 0..self.status.len() {
                if let Status::Fed(arc) = self.status[group]
                    && let Some(tail) = part.arcs[arc].tail
                    && self.grade[tail] < self.grade[group]
                {
                    self.grade[tail] = self.grade[group];
                    raised = true;
                }
            }
            if !raised {
                return;
            }
        }
    }

    fn weigh_arcs(&mut self, part: &Part<'_>) {
        for (index, arc) in part.arcs.iter().enumerate() {
            let fed = |arc: usize| self.status[part.arcs[arc].head] == Status::Fed(arc);
            let head_open = match self.status[arc.head] {
                Status::Open | Status::Due => true,
                Status::Off => false,
                Status::Fed(by) => by == index,
            };
            let tail_open = arc.tail.is_none_or(|tail| self.status[tail] != Status::Off);
            let open = self.weight[index] < IMPOSSIBLE && head_open && tail_open && !arc.twin.is_some_and(fed);
            self.weight[index] = if open { arc.least_weight(self.grade[arc.head]) } else { IMPOSSIBLE };
        }
    }

    /// One round of conclusions: `None` where nothing can hold, else whether anything was concluded.
    fn infer(&mut self, part: &Part<'_>) -> Option<bool> {
        let reached = self.reached(part);
        let mut changed = false;
        for (group, reached) in reached.into_iter().enumerate() {
            match self.status[group] {
                Status::Open if !reached => {
                    self.status[group] = Status::Off;
                    changed = true;
                }
                Status::Due | Status::Fed(_) if !reached => return None,
                Status::Due => {
                    let mut open = part.groups[group].arcs.iter().filter(|arc| self.weight[**arc] < IMPOSSIBLE);
                    if let (Some(only), None) = (open.next(), open.next()) {
                        self.status[group] = Status::Fed(*only);
                        changed = true;
                    }
                }
                Status::Fed(arc) => {
                    if let Some(tail) = part.arcs[arc].tail
                        && self.status[tail] == Status::Open
                    {
                        self.status[tail] = Status::Due;
                        changed = true;
                    }
                }
                Status::Open | Status::Off => {}
            }
        }
        for arcs in &part.forced {
            let mut open = arcs.iter().copied().filter(|arc| self.weight[*arc] < IMPOSSIBLE);
            let (first, second) = (open.next()?, open.next());
            let head = part.arcs[first].head;
            if second.is_none() && self.status[head] != Status::Fed(first) {
                self.status[head] = Status::Fed(first);
                changed = true;
            }
        }
        Some(changed)
    }

    /// Whether supply can still reach each group.
    fn reached(&self, part: &Part<'_>) -> Vec<bool> {
        let mut reached = vec![false; self.status.len()];
        loop {
            let mut more = false;
            for (index, arc) in part.arcs.iter().enumerate() {
                if self.weight[index] < IMPOSSIBLE && !reached[arc.head] && arc.tail.is_none_or(|tail| reached[tail]) {
                    reached[arc.head] = true;
                    more = true;
                }
            }
            if !more {
                return reached;
            }
        }
    }
}
