//! A part as a net of things to be reached: a supply, a mark at a node, a lawful choice at a node.
//!
//! Every link, option and root option is an *element* with a weight. An element is used in one or more *ways*: a way
//! reaches its target once all its needs are reached. An option reaches the choice at its node and its marks at the
//! children behind it; a link reaches its head's supply. Every choice must be reached. A supply
//! also needs room where its link lands and choices that go with it, and reaches one level for each grade. What this
//! leaves out, such as limits on several subtrees together, only makes a choice dearer: what the net costs at least bounds
//! the part.

use std::collections::BTreeMap;

use crate::compiled_tree::CompiledOption;
use crate::part::{NodeSupply, Part};
use crate::problem::SupplyNeed;
use crate::weight::Weight;

/// A way in which an element is used.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Way {
    /// The element; `None` costs nothing.
    pub element: Option<u32>,
    /// What it reaches.
    pub target: u32,
    needs_from: u32,
    needs_to: u32,
}

/// A node of a tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct TreeNode {
    pub tree: usize,
    pub node: usize,
}

/// What an element stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Element {
    /// An arc of the part, at a level.
    Arc,
    /// An option at the root of a tree.
    Root { tree: usize, option: usize },
    /// An option at a node.
    Option { at: TreeNode, option: usize },
}

/// The net of a part.
#[derive(Debug, Default)]
pub(crate) struct Net {
    /// The ways, those of one element beside each other.
    pub ways: Vec<Way>,
    needs: Vec<u32>,
    /// By element: its weight. The part's arcs come first; theirs are in the state of the search.
    pub weights: Vec<Weight>,
    /// By element: its ways.
    pub ways_of: Vec<(u32, u32)>,
    /// By place: the ways that reach it, and the ways that need it.
    pub into: Lists,
    pub out_of: Lists,
    /// The choices to be reached besides supplies.
    pub choices: Vec<u32>,
    /// By tree: the element of its first root option, and by node that of the node's first option.
    pub first_of: Vec<(usize, Vec<usize>)>,
    /// By element: what it stands for.
    pub stands_for: Vec<Element>,
    /// The places; the supplies of the part's groups come first, level by level.
    pub places: usize,
    /// The groups of the part, and its arcs.
    pub groups: usize,
    pub arcs: usize,
    /// The grades that groups of the part need, rising: the levels of supply. Each level has an element by arc: what it
    /// costs beyond the level below.
    pub grades: Vec<usize>,
    /// The places of room for what lands at a node, and of choices there that go with its supply.
    pub room_at: BTreeMap<u32, TreeNode>,
    pub fitting_at: BTreeMap<u32, TreeNode>,
}

/// Lists of ways, one after the other.
#[derive(Debug, Default)]
pub(crate) struct Lists {
    starts: Vec<u32>,
    ways: Vec<u32>,
}

impl Lists {
    fn new(places: usize, pairs: &[(u32, u32)]) -> Self {
        let mut starts = vec![0_u32; places + 1];
        for (place, _) in pairs {
            starts[*place as usize + 1] += 1;
        }
        for place in 0..places {
            starts[place + 1] += starts[place];
        }
        let mut next = starts.clone();
        let mut ways = vec![0; pairs.len()];
        for (place, way) in pairs {
            ways[next[*place as usize] as usize] = *way;
            next[*place as usize] += 1;
        }
        Self { starts, ways }
    }

    /// The ways listed for a place.
    pub fn of(&self, place: u32) -> &[u32] {
        &self.ways[self.starts[place as usize] as usize..self.starts[place as usize + 1] as usize]
    }
}

impl Net {
    /// Builds the net of a part.
    pub fn new(part: &Part<'_>) -> Self {
        // A group without nodes carries what others need, unless a link pays for being chosen.
        let all = part.arcs.iter().any(|arc| arc.least_weight(0) < 0);
        let of_groups = part.groups.iter().filter(|group| all || !group.nodes.is_empty()).map(|group| group.grade);
        let mut grades: Vec<usize> = of_groups.collect();
        grades.sort_unstable();
        grades.dedup();
        if grades.is_empty() {
            grades.push(0);
        }
        let (groups, arcs) = (part.groups.len(), part.arcs.len());
        let mut net = Self { places: groups * grades.len(), groups, arcs, grades, ..Self::default() };
        let marks: Vec<TreeMarks> = (0..part.trees.len()).map(|tree| TreeMarks::new(part, tree, &mut net)).collect();
        let room = net.room_for_landings(part);
        let moved: Vec<u32> = part.trees.iter().map(|_| net.place()).collect();
        let (arrival, fitting) = net.fitting_choices(part);
        for arc in &part.arcs {
            let first = net.ways.len();
            let landed = arc.landings.iter().filter_map(|(tree, node)| room[*tree][*node]);
            let needs = arc.tail.map(|tail| tail as u32).into_iter().chain(landed);
            net.way(Some(net.ways_of.len()), arrival[arc.head].unwrap_or(arc.head as u32), needs);
            if let Some((tree, one)) = arc.moves {
                net.way(Some(net.ways_of.len()), moved[tree], std::iter::empty());
                for &mark in &marks[tree].marks {
                    let above = marks[tree].place(one.parent, mark);
                    let beside = std::iter::once(above).chain(arc.tail.map(|tail| tail as u32));
                    net.way(Some(net.ways_of.len()), marks[tree].place(Some(one.node), mark), beside);
                }
            }
            net.element(0, first, Element::Arc);
        }
        for level in 1..net.grades.len() {
            for arc in &part.arcs {
                let first = net.ways.len();
                let of_tail = arc.tail.map(|tail| net.supply(tail, level));
                let needs = of_tail.into_iter().chain(std::iter::once(net.supply(arc.head, level - 1)));
                net.way(Some(net.ways_of.len()), net.supply(arc.head, level), needs);
                net.element(0, first, Element::Arc);
            }
        }
        for (place, of_tree) in marks.iter().enumerate() {
            net.add_tree(part, place, of_tree, moved[place], &room[place], &fitting[place]);
        }
        net.index();
        net
    }

    /// The place of a group's supply at a level.
    pub fn supply(&self, group: usize, level: usize) -> u32 {
        (level * self.groups + group) as u32
    }

    /// The level that carries a grade.
    pub fn level_of(&self, grade: usize) -> usize {
        self.grades.iter().position(|level| *level >= grade).unwrap_or(self.grades.len() - 1)
    }

    /// Whether a place is a supply.
    pub fn is_supply(&self, place: u32) -> bool {
        (place as usize) < self.groups * self.grades.len()
    }

    /// The places that a way needs.
    pub fn needs(&self, way: &Way) -> &[u32] {
        &self.needs[way.needs_from as usize..way.needs_to as usize]
    }

    fn place(&mut self) -> u32 {
        self.places += 1;
        (self.places - 1) as u32
    }

    fn way(&mut self, element: Option<usize>, target: u32, needs: impl Iterator<Item = u32>) {
        let needs_from = self.needs.len() as u32;
        self.needs.extend(needs);
        let needs_to = self.needs.len() as u32;
        self.ways.push(Way { element: element.map(|element| element as u32), target, needs_from, needs_to });
    }

    fn element(&mut self, weight: Weight, first_way: usize, stands_for: Element) {
        self.weights.push(weight);
        self.stands_for.push(stands_for);
        self.ways_of.push((first_way as u32, self.ways.len() as u32));
    }

    /// By tree and node: the place of room for what lands there, where not every choice has it.
    fn room_for_landings(&mut self, part: &Part<'_>) -> Vec<Vec<Option<u32>>> {
        let mut room: Vec<Vec<Option<u32>>> = part.trees.iter().map(|tree| vec![None; tree.supply.len()]).collect();
        for (tree, node) in part.arcs.iter().flat_map(|arc| &arc.landings) {
            let options = &part.trees[*tree].compiled.options[*node];
            let grade = part.least_grade_landing(*tree, *node);
            let is_covered = matches!(part.trees[*tree].supply[*node],
                NodeSupply::As { group } if part.groups[group].lands_at == Some((*tree, *node)));
            if room[*tree][*node].is_none() && !is_covered && !options.iter().all(|option| option.has_room(grade)) {
                let place = self.place();
                room[*tree][*node] = Some(place);
                self.room_at.insert(place, TreeNode { tree: *tree, node: *node });
            }
        }
        room
    }

    /// By group: where its supply arrives, where not every choice at its nodes goes with it; and by tree and node: the
    /// place of a choice that does.
    fn fitting_choices(&mut self, part: &Part<'_>) -> (Vec<Option<u32>>, Vec<Vec<Option<u32>>>) {
        let mut fitting: Vec<Vec<Option<u32>>> = part.trees.iter().map(|tree| vec![None; tree.supply.len()]).collect();
        let mut arrival = vec![None; part.groups.len()];
        for (index, group) in part.groups.iter().enumerate() {
            for (tree, node) in &group.nodes {
                let options = &part.trees[*tree].compiled.options[*node];
                if !options.iter().all(|option| part.goes_with_supply(option, *tree, *node)) {
                    let place = self.place();
                    fitting[*tree][*node] = Some(place);
                    self.fitting_at.insert(place, TreeNode { tree: *tree, node: *node });
                }
            }
            let needs: Vec<u32> = group.nodes.iter().filter_map(|(tree, node)| fitting[*tree][*node]).collect();
            if !needs.is_empty() {
                let arrives = self.place();
                arrival[index] = Some(arrives);
                self.way(None, index as u32, std::iter::once(arrives).chain(needs));
            }
        }
        (arrival, fitting)
    }

    fn add_tree(
        &mut self,
        part: &Part<'_>,
        place: usize,
        marks: &TreeMarks,
        moved: u32,
        room: &[Option<u32>],
        fitting: &[Option<u32>],
    ) {
        let tree = &part.trees[place];
        self.first_of.push((self.ways_of.len(), Vec::new()));
        let chosen_root = self.place();
        self.choices.push(chosen_root);
        let least_root = tree.compiled.roots.iter().map(|root| root.weight).min().unwrap_or(0);
        for root in &tree.compiled.roots {
            let first = self.ways.len();
            let element = Some(self.ways_of.len());
            self.way(element, chosen_root, std::iter::empty());
            for &mark in marks.marks.iter().filter(|mark| root.gives.0 & **mark != 0) {
                self.way(element, marks.place(None, mark), std::iter::empty());
            }
            self.element(root.weight - least_root, first, Element::Root { tree: place, option: root.index });
        }
        let loads = Loads::new(part, place);
        let mut children = vec![Vec::new(); tree.compiled.given.nodes.len()];
        for (node, given) in tree.compiled.given.nodes.iter().enumerate() {
            for &mark in &marks.marks {
                self.way(None, marks.place(Some(node), mark), std::iter::once(marks.place(given.parent, mark)));
            }
            if let Some(parent) = given.parent.filter(|_| given.behind_load) {
                children[parent].push(node);
            }
        }
        for (node, children) in children.iter().enumerate() {
            self.first_of[place].1.push(self.ways_of.len());
            self.add_options(
                part,
                TreeNode { tree: place, node },
                marks,
                (children, &loads, moved),
                [room[node], fitting[node]],
            );
        }
    }

    fn add_options(
        &mut self,
        part: &Part<'_>,
        at: TreeNode,
        marks: &TreeMarks,
        (children, loads, moved): (&[usize], &Loads, u32),
        [room, fitting]: [Option<u32>; 2],
    ) {
        let tree = &part.trees[at.tree];
        let choice = self.place();
        self.choices.push(choice);
        let supply = tree.supply[at.node];
        let grade = part.least_grade_landing(at.tree, at.node);
        let least = tree.compiled.options[at.node].iter().map(|option| option.weight).min().unwrap_or(0);
        for option in &tree.compiled.options[at.node] {
            let first = self.ways.len();
            let element = Some(self.ways_of.len());
            let seen = marks.marks.iter().filter(|mark| option.needs_from_above.0 & **mark != 0);
            let group = match supply {
                NodeSupply::As { group } if option.supply == SupplyNeed::Supplied => Some(group),
                _ => None,
            };
            let needed = |group: usize| self.supply(group, self.level_of(part.groups[group].grade));
            let needs: Vec<u32> = seen.map(|mark| marks.place(Some(at.node), *mark)).chain(group.map(needed)).collect();
            let has_room = option.has_room(grade);
            let lacks_room = group.is_some_and(|group| {
                let group = &part.groups[group];
                group.lands_at == Some((at.tree, at.node)) && !option.has_room(group.grade)
            });
            let fails = match option.supply {
                SupplyNeed::Supplied => supply == NodeSupply::Never || lacks_room,
                SupplyNeed::Unsupplied => supply == NodeSupply::Always,
                SupplyNeed::Any => false,
            };
            if !fails && !marks.lack(option.needs_from_above.0) {
                self.way(element, choice, needs.iter().copied());
                for &child in children {
                    let with_move = match loads.borne_by(option, child) {
                        Borne::Whole => None,
                        Borne::AfterAMove => Some(moved),
                        Borne::Never => continue,
                    };
                    for &mark in marks.marks.iter().filter(|mark| option.gives.0 & **mark != 0) {
                        let needs = needs.iter().copied().chain(with_move);
                        self.way(element, marks.place(Some(child), mark), needs);
                    }
                }
                // What lands comes before the supply that it brings, so that room has no needs of its own.
                if let Some(room) = room.filter(|_| has_room) {
                    self.way(element, room, std::iter::empty());
                }
                if let Some(fitting) = fitting.filter(|_| part.goes_with_supply(option, at.tree, at.node)) {
                    self.way(element, fitting, std::iter::empty());
                }
            }
            self.element(option.weight - least, first, Element::Option { at, option: option.index });
        }
    }

    fn index(&mut self) {
        let into: Vec<(u32, u32)> = self.ways.iter().zip(0..).map(|(way, index)| (way.target, index)).collect();
        let mut out_of = Vec::with_capacity(self.needs.len());
        for (way, index) in self.ways.iter().zip(0..) {
            out_of.extend(self.needs(way).iter().map(|need| (*need, index)));
        }
        self.into = Lists::new(self.places, &into);
        self.out_of = Lists::new(self.places, &out_of);
    }
}

/// How heavy the subtrees of a tree are: whole, and at least, whatever links move out of them.
struct Loads {
    whole: Vec<(u64, i64)>,
    least: Vec<(u64, i64)>,
}

/// Whether a subtree can be behind an option's load side.
enum Borne {
    Whole,
    AfterAMove,
    Never,
}

impl Loads {
    fn new(part: &Part<'_>, tree: usize) -> Self {
        let nodes = &part.trees[tree].compiled.given.nodes;
        let mut is_movable = vec![false; nodes.len()];
        for (of, one) in part.trees[tree].arcs.iter().filter_map(|arc| part.arcs[*arc].moves) {
            is_movable[one.node] |= of == tree;
        }
        let own: Vec<(u64, i64)> = nodes.iter().map(|node| (u64::from(node.count), node.burden)).collect();
        let (mut whole, mut least) = (own.clone(), own);
        for (node, given) in nodes.iter().enumerate().rev() {
            if let Some(parent) = given.parent {
                let add = |loads: &mut Vec<(u64, i64)>| {
                    let (count, burden) = loads[node];
                    loads[parent].0 += count;
                    loads[parent].1 += burden;
                };
                add(&mut whole);
                if !is_movable[node] {
                    add(&mut least);
                }
            }
        }
        // What links may hang below a node makes it heavier, never lighter.
        Self { whole, least }
    }

    fn borne_by(&self, option: &CompiledOption<'_>, child: usize) -> Borne {
        let fits = |(count, burden): (u64, i64)| count <= option.count_limit && burden <= option.burden_left;
        if fits(self.whole[child]) {
            Borne::Whole
        } else if fits(self.least[child]) {
            Borne::AfterAMove
        } else {
            Borne::Never
        }
    }
}

/// Where the marks of a tree stand in the net.
struct TreeMarks {
    /// The marks that can be seen in the tree, one bit each.
    marks: Vec<u8>,
    first: u32,
}

impl TreeMarks {
    fn new(part: &Part<'_>, tree: usize, net: &mut Net) -> Self {
        let sights = &part.trees[tree].compiled.sights;
        let seen = sights.iter().fold(0, |seen, sight| seen | sight.0);
        let marks: Vec<u8> = (0..4).map(|bit| 1 << bit).filter(|mark| seen & mark != 0).collect();
        let first = net.places as u32;
        net.places += marks.len() * (part.trees[tree].compiled.given.nodes.len() + 1);
        Self { marks, first }
    }

    /// The place of a mark at a node, or below the root.
    fn place(&self, node: Option<usize>, mark: u8) -> u32 {
        let at = self.marks.iter().position(|known| *known == mark).unwrap_or(0);
        self.first + (node.map_or(0, |node| node + 1) * self.marks.len() + at) as u32
    }

    /// Whether any of these marks can never be seen.
    fn lack(&self, needs: u8) -> bool {
        needs & !self.marks.iter().fold(0, |all, mark| all | mark) != 0
    }
}
