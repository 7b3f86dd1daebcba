//! Dual ascent over the [net](crate::net): what must be paid for at least.
//!
//! While a place that must be reached is not, take all places from which it could be reached at nothing more to pay, and
//! for a way whose element is paid for, one of its needs that is not reached. Whatever is chosen, some element outside
//! that set is used to get in. So the least that is left to pay of those elements is owed, and taken off each. What is
//! owed beyond a supply that a node's option asks for is charged to that node; options that helped to pay it are credited
//! as much, so that each tree can then be solved for itself.

use crate::link_state::{LinkState, Status};
use crate::net::{Element, Net, TreeNode};
use crate::part::Part;
use crate::raised::Raised;
use crate::weight::{IMPOSSIBLE, Weight, plus};

/// What the supply of the nodes is charged, and what of the links' weights is not charged.
#[derive(Clone, Debug, Default)]
pub(crate) struct Charges {
    /// By tree and node: what taking an open supply is charged there.
    pub by_node: Vec<Vec<Weight>>,
    /// What is charged for supplies that are due.
    pub certain: Weight,
    /// By arc, and in the ascent by element: what choosing it costs beyond what is charged.
    pub left: Vec<Weight>,
    /// By element: what an option or root option is credited, since it helps to bring a supply that is charged.
    pub credits: Vec<Weight>,
}

/// Which of several needs that are not reached a set takes in. No choice is best everywhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Preference {
    /// The last of the way's needs: room and choices that go with a supply before the supply itself.
    Last,
    /// The first of the way's needs: marks before supplies, supplies before room.
    First,
    /// Now the one, now the other.
    Mixed,
    /// The one that costs most to reach by what is left to pay.
    Farthest,
}

impl Preference {
    pub const ALL: [Self; 4] = [Self::Last, Self::Mixed, Self::First, Self::Farthest];
}

/// More than any number of links.
const TWICE: usize = 1 << 20;

impl Charges {
    /// What taking an open supply is charged at a node. A complete state has no charges.
    pub fn at(&self, tree: usize, node: usize) -> Weight {
        self.by_node.get(tree).map_or(0, |nodes| nodes[node])
    }

    /// What choosing the arc costs beyond what is charged to the nodes.
    pub fn beyond(&self, arc: usize) -> Weight {
        self.left.get(arc).copied().unwrap_or(0)
    }

    /// Nothing charged yet but what links pay for their choice.
    fn at_first(net: &Net, part: &Part<'_>, state: &LinkState) -> Self {
        let mut left = net.weights.clone();
        for (index, arc) in part.arcs.iter().enumerate() {
            let mut below = 0;
            for (level, grade) in net.grades.iter().enumerate() {
                let weight = if state.weight[index] < IMPOSSIBLE { arc.least_weight(*grade) } else { IMPOSSIBLE };
                left[level * net.arcs + index] = if weight < IMPOSSIBLE { weight - below } else { IMPOSSIBLE };
                below = weight;
            }
        }
        let mut by_node: Vec<Vec<Weight>> = part.trees.iter().map(|tree| vec![0; tree.supply.len()]).collect();
        let mut certain = 0;
        // A link that pays for its choice is credited at once to the group it supplies; at most one of them is chosen.
        for (group, status) in part.groups.iter().zip(&state.status) {
            let credit = group.arcs.iter().map(|arc| left[*arc]).min().unwrap_or(0).min(0);
            for &arc in &group.arcs {
                if left[arc] < IMPOSSIBLE {
                    left[arc] -= credit;
                }
            }
            match (status, group.nodes.first()) {
                (Status::Off, _) => {}
                (Status::Open, Some((tree, node))) => by_node[*tree][*node] += credit,
                _ => certain += credit,
            }
        }
        Self { by_node, certain, left, credits: vec![0; net.ways_of.len()] }
    }
}

/// Places that came nearer, the nearest first.
type Nearer = std::collections::BinaryHeap<std::cmp::Reverse<(Weight, u32)>>;

/// The ascent for one state of the search.
pub(crate) struct Ascent<'n> {
    net: &'n Net,
    charges: Charges,
    preference: Preference,
    reached: Vec<bool>,
    /// By way: how many of its needs are not reached.
    unreached: Vec<u32>,
    /// The set being built: by place, the round in which it was last a member; its members; the elements that lead in.
    round: u32,
    member: Vec<u32>,
    members: Vec<u32>,
    /// The same of the part of it from which the supply that is asked for could come.
    beyond: Vec<u32>,
    members_beyond: Vec<u32>,
    counted: Vec<u32>,
    counted_beyond: Vec<u32>,
    leading_in: Vec<u32>,
    leading_beyond: Vec<u32>,
    /// The node whose option first asks the set for a supply.
    asks: Option<TreeNode>,
    /// By place: what is left to pay at least until it is reached, of the dearest of the needs on each way.
    far: Vec<Weight>,
    /// The elements of which less is left to pay than when that was reckoned.
    lowered: Vec<u32>,
    /// What was raised, where that is asked for.
    raised: Option<Vec<Raised>>,
    /// By tree: whether an option of it was credited since that was last asked for.
    credited: Vec<bool>,
}

impl<'n> Ascent<'n> {
    /// Raises everything of a settled state that must be reached, as far as it goes. The guide tells, by element, what a
    /// good choice uses: what it would pay for twice is raised last.
    pub fn new(net: &'n Net, part: &Part<'_>, state: &LinkState, (guide, preference): (&[bool], Preference)) -> Self {
        Self::noting(net, part, state, (guide, preference), None)
    }

    /// The same, noting every raise in a list where one is given.
    pub fn noting(
        net: &'n Net,
        part: &Part<'_>,
        state: &LinkState,
        (guide, preference): (&[bool], Preference),
        raised: Option<Vec<Raised>>,
    ) -> Self {
        let mut ascent = Self::with(net, Charges::at_first(net, part, state), preference);
        ascent.raised = raised;
        for group in 0..part.groups.len() {
            if matches!(state.status[group], Status::Due | Status::Fed(_)) {
                ascent.raise_fully(net.supply(group, net.level_of(state.grade[group])));
            }
        }
        ascent.raise_in_turn(guide);
        ascent
    }

    /// The charges as they stand.
    pub fn charges(&self) -> &Charges {
        &self.charges
    }

    /// The charges at the end.
    pub fn into_charges(self) -> Charges {
        self.charges
    }

    /// The raises noted.
    pub fn take_raised(&mut self) -> Vec<Raised> {
        self.raised.take().unwrap_or_default()
    }

    /// Whether options of a tree were credited since this was last asked: it can then be had for less.
    pub fn take_credited(&mut self, tree: usize) -> bool {
        std::mem::take(&mut self.credited[tree])
    }

    /// The same with one node charged more.
    pub fn with_more_at(&mut self, at: TreeNode, more: Weight, ask: impl FnOnce(&Charges) -> Weight) -> Weight {
        self.charges.by_node[at.tree][at.node] += more;
        let answer = ask(&self.charges);
        self.charges.by_node[at.tree][at.node] -= more;
        answer
    }

    /// Charges a node more, and no more than so much, for a supply that it takes at its charge. Returns whether it had to be.
    pub fn raise_supply(&mut self, group: usize, grade: usize, at: TreeNode, most: Weight) -> bool {
        let supply = self.net.supply(group, self.net.level_of(grade));
        if self.reached[supply as usize] {
            return false;
        }
        self.gather_supply(supply, Some(at));
        self.raise(false, most)
    }

    fn with(net: &'n Net, charges: Charges, preference: Preference) -> Self {
        let unreached = net.ways.iter().map(|way| net.needs(way).len() as u32).collect();
        let mut ascent = Self {
            net,
            reached: vec![false; net.places],
            unreached,
            charges,
            preference,
            round: 0,
            member: vec![0; net.places],
            members: Vec::new(),
            beyond: vec![0; net.places],
            members_beyond: Vec::new(),
            counted: vec![0; net.ways_of.len()],
            counted_beyond: vec![0; net.ways_of.len()],
            leading_in: Vec::new(),
            leading_beyond: Vec::new(),
            asks: None,
            far: Vec::new(),
            lowered: Vec::new(),
            raised: None,
            credited: vec![false; net.first_of.len()],
        };
        for element in 0..net.ways_of.len() {
            if ascent.charges.left[element] == 0 {
                ascent.paid(element);
            }
        }
        ascent
    }

    /// Brings up to date how far each place is, each way by its farthest need: nearer only, as what is left to pay falls.
    fn reckon_far(&mut self) {
        let net = self.net;
        let mut nearer = std::collections::BinaryHeap::new();
        if self.far.is_empty() {
            self.far = self.reached.iter().map(|reached| if *reached { 0 } else { IMPOSSIBLE }).collect();
            self.lowered.clear();
            (0..net.ways.len()).for_each(|way| self.come_nearer(way, &mut nearer));
        }
        for element in std::mem::take(&mut self.lowered) {
            let (from, to) = net.ways_of[element as usize];
            (from..to).for_each(|way| self.come_nearer(way as usize, &mut nearer));
        }
        while let Some(std::cmp::Reverse((far, place))) = nearer.pop() {
            if far == self.far[place as usize] {
                net.out_of.of(place).iter().for_each(|way| self.come_nearer(*way as usize, &mut nearer));
            }
        }
    }

    /// Takes a way into account where its target comes nearer by it.
    fn come_nearer(&mut self, way: usize, nearer: &mut Nearer) {
        let way = &self.net.ways[way];
        let left = way.element.map_or(0, |element| self.charges.left[element as usize]);
        let farthest = self.net.needs(way).iter().map(|need| self.far[*need as usize]).max().unwrap_or(0);
        let through = plus(farthest, left);
        if through < self.far[way.target as usize] {
            self.far[way.target as usize] = through;
            nearer.push(std::cmp::Reverse((through, way.target)));
        }
    }

    /// Draws what is reached now that an element is paid for.
    fn paid(&mut self, element: usize) {
        let net = self.net;
        let (from, to) = net.ways_of[element];
        for way in from..to {
            if self.unreached[way as usize] == 0 {
                self.reach(net.ways[way as usize].target);
            }
        }
    }

    fn reach(&mut self, place: u32) {
        let net = self.net;
        if std::mem::replace(&mut self.reached[place as usize], true) {
            return;
        }
        let mut open = vec![place];
        while let Some(place) = open.pop() {
            for &index in net.out_of.of(place) {
                self.unreached[index as usize] -= 1;
                let way = &net.ways[index as usize];
                let is_paid = way.element.is_none_or(|element| self.charges.left[element as usize] == 0);
                if self.unreached[index as usize] == 0
                    && is_paid
                    && !std::mem::replace(&mut self.reached[way.target as usize], true)
                {
                    open.push(way.target);
                }
            }
        }
    }

    fn raise_fully(&mut self, supply: u32) {
        while !self.reached[supply as usize] {
            self.gather_supply(supply, None);
            if !self.raise(true, IMPOSSIBLE) {
                return;
            }
        }
    }

    /// Raises the place of the fewest elements that lead in first.
    fn raise_in_turn(&mut self, guide: &[bool]) {
        let mut open: std::collections::BinaryHeap<std::cmp::Reverse<(usize, u32)>> =
            self.net.choices.iter().map(|choice| std::cmp::Reverse((0, *choice))).collect();
        while let Some(std::cmp::Reverse((_, place))) = open.pop() {
            if self.reached[place as usize] {
                continue;
            }
            self.gather(place);
            let taken = self.leading_in.iter().filter(|element| guide.get(**element as usize) == Some(&true)).count();
            let links = self.net.arcs * self.net.grades.len();
            let of_links = self.leading_in.iter().filter(|element| (**element as usize) < links).count();
            let size = of_links + TWICE * taken.saturating_sub(1);
            if open.peek().is_some_and(|next| next.0.0 < size) {
                open.push(std::cmp::Reverse((size, place)));
                continue;
            }
            if self.raise(false, IMPOSSIBLE) && !self.reached[place as usize] {
                open.push(std::cmp::Reverse((size, place)));
            }
        }
    }

    /// Gathers the set from which the place could be reached at nothing more to pay, and the elements that lead in.
    fn gather(&mut self, place: u32) {
        self.start();
        self.join(place);
        let mut next = 0;
        while let Some(&place) = self.members.get(next) {
            next += 1;
            for &index in self.net.into.of(place) {
                if let Some(need) = self.need_to_join(index, &self.member) {
                    self.join(need);
                    if self.net.is_supply(need)
                        && self.asks.is_none()
                        && let Some(at) = self.option_at(index)
                    {
                        self.asks = Some(at);
                        self.gather_beyond(need);
                    }
                }
            }
        }
        self.count();
    }

    /// Gathers the set from which a supply could come at nothing more to pay.
    fn gather_supply(&mut self, supply: u32, at: Option<TreeNode>) {
        self.start();
        self.asks = at;
        self.join(supply);
        self.gather_beyond(supply);
        self.count();
    }

    fn start(&mut self) {
        if self.preference == Preference::Farthest {
            self.reckon_far();
        }
        self.round += 1;
        self.members.clear();
        self.members_beyond.clear();
        self.asks = None;
    }

    fn join(&mut self, place: u32) {
        if self.member[place as usize] != self.round {
            self.member[place as usize] = self.round;
            self.members.push(place);
        }
    }

    fn join_beyond(&mut self, place: u32) {
        self.beyond[place as usize] = self.round;
        self.members_beyond.push(place);
    }

    fn gather_beyond(&mut self, supply: u32) {
        self.join_beyond(supply);
        let mut next = 0;
        while let Some(&place) = self.members_beyond.get(next) {
            next += 1;
            self.join(place);
            for &index in self.net.into.of(place) {
                if let Some(need) = self.need_to_join(index, &self.beyond) {
                    self.join_beyond(need);
                }
            }
        }
    }

    /// One of the needs of a way that is paid for, unless one is in the set.
    fn need_to_join(&self, index: u32, set: &[u32]) -> Option<u32> {
        let way = &self.net.ways[index as usize];
        if way.element.is_some_and(|element| self.charges.left[element as usize] != 0) {
            return None;
        }
        let needs = self.net.needs(way);
        if needs.iter().any(|need| set[*need as usize] == self.round) {
            return None;
        }
        let mut open = needs.iter().copied().filter(|need| !self.reached[*need as usize]);
        match self.preference {
            Preference::Last => open.next_back(),
            Preference::First => open.next(),
            Preference::Mixed if index.is_multiple_of(2) => open.next_back(),
            Preference::Mixed => open.next(),
            Preference::Farthest => open.max_by_key(|need| self.far[*need as usize]),
        }
    }

    fn option_at(&self, index: u32) -> Option<TreeNode> {
        match self.net.stands_for[self.net.ways[index as usize].element? as usize] {
            Element::Option { at, .. } => Some(at),
            Element::Arc | Element::Root { .. } => None,
        }
    }

    /// Counts the elements that lead into the set, and into its part beyond the supply that is asked for.
    fn count(&mut self) {
        self.leading_in.clear();
        self.leading_beyond.clear();
        for at in 0..self.members.len() {
            for &index in self.net.into.of(self.members[at]) {
                if let Some(element) = self.leads_in(index, &self.member)
                    && std::mem::replace(&mut self.counted[element as usize], self.round) != self.round
                {
                    self.leading_in.push(element);
                }
            }
        }
        for at in 0..self.members_beyond.len() {
            for &index in self.net.into.of(self.members_beyond[at]) {
                if let Some(element) = self.leads_in(index, &self.beyond) {
                    if std::mem::replace(&mut self.counted_beyond[element as usize], self.round) != self.round {
                        self.leading_beyond.push(element);
                    }
                    if std::mem::replace(&mut self.counted[element as usize], self.round) != self.round {
                        self.leading_in.push(element);
                    }
                }
            }
        }
    }

    fn leads_in(&self, index: u32, set: &[u32]) -> Option<u32> {
        let way = &self.net.ways[index as usize];
        let element = way.element?;
        let left = self.charges.left[element as usize];
        let inside = |need: &u32| set[*need as usize] == self.round;
        (left > 0 && left < IMPOSSIBLE && !self.net.needs(way).iter().any(inside)).then_some(element)
    }

    /// Takes what is owed off the elements that lead in. Returns whether any does.
    fn raise(&mut self, is_certain: bool, most: Weight) -> bool {
        let left = |element: &u32| self.charges.left[*element as usize];
        let Some(owed) = self.leading_in.iter().map(left).min() else { return false };
        let owed = owed.min(most);
        self.note(owed, is_certain);
        if is_certain {
            self.charges.certain += owed;
        } else if let Some(at) = self.asks {
            self.charges.by_node[at.tree][at.node] += owed;
        }
        if is_certain || self.asks.is_some() {
            let links = self.net.arcs * self.net.grades.len();
            for element in self.leading_beyond.iter().filter(|element| **element as usize >= links) {
                self.charges.credits[*element as usize] += owed;
                if let Element::Option { at, .. } = self.net.stands_for[*element as usize] {
                    self.credited[at.tree] = true;
                }
            }
        }
        let leading_in = std::mem::take(&mut self.leading_in);
        for &element in &leading_in {
            self.charges.left[element as usize] -= owed;
        }
        if self.preference == Preference::Farthest {
            self.lowered.extend(&leading_in);
        }
        for &element in &leading_in {
            if self.charges.left[element as usize] == 0 {
                self.paid(element as usize);
            }
        }
        self.leading_in = leading_in;
        true
    }

    fn note(&mut self, owed: Weight, is_certain: bool) {
        let at = self.asks.filter(|_| !is_certain);
        if let Some(raised) = &mut self.raised
            && (is_certain || at.is_some())
        {
            raised.extend(Raised::of(self.net, owed, at, &self.members_beyond));
        }
    }
}
