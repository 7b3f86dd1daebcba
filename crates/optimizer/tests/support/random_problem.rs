//! Small random problems of varied shape, the same for the same seed.

use optimizer::{Cost, Forced, Group, Link, LinkEnd, Marks, Node, NodeOption, Problem, RootOption, SupplyNeed, Tree};

/// A xorshift generator.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33
    }

    /// A number below the end.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    /// True in so many of a hundred cases.
    pub fn percent(&mut self, of_hundred: usize) -> bool {
        self.below(100) < of_hundred
    }
}

/// How large a problem may be.
#[derive(Clone, Copy)]
pub struct Size {
    pub trees: usize,
    pub nodes: usize,
    pub options: usize,
    pub groups: usize,
    pub links: usize,
}

/// What can be enumerated.
pub const SMALL: Size = Size { trees: 3, nodes: 4, options: 4, groups: 5, links: 5 };

pub fn random_problem(chance: &mut Chance, size: Size) -> Problem {
    let style = Style {
        marks: [1, 2, 3, 4][chance.below(4)],
        negative: chance.percent(20),
        tight: chance.percent(30),
        range: if chance.percent(50) { 4 } else { 40 },
        needs: [5, 15, 30][chance.below(3)],
        longing: [1, 4, 7, 9][chance.below(4)],
        at_home: [85, 40][chance.below(2)],
    };
    let groups = (0..1 + chance.below(size.groups)).map(|place| Group {
        source: if place == 0 { chance.percent(85) } else { chance.percent(20) },
        grade: if chance.percent(50) { 0 } else { chance.below(3) },
        carries: if chance.percent(50) { 2 } else { chance.below(3) },
    });
    let groups: Vec<Group> = groups.collect();
    let trees: Vec<Tree> =
        (0..1 + chance.below(size.trees)).map(|_| random_tree(chance, size, style, groups.len())).collect();
    let links = size.links - chance.below(size.links + 1).min(chance.below(size.links + 1));
    let links = (0..links).map(|_| random_link(chance, style, &trees, groups.len())).collect();
    Problem { trees, groups, links }
}

#[derive(Clone, Copy)]
struct Style {
    marks: u32,
    negative: bool,
    tight: bool,
    range: usize,
    /// How many of a hundred marks are needed.
    needs: usize,
    /// How many of ten options need supply.
    longing: usize,
    /// How many of a hundred links land at a node of the group that they join.
    at_home: usize,
}

fn cost(chance: &mut Chance, style: Style) -> Cost {
    let less = if style.negative && chance.percent(30) { style.range as i64 } else { 0 };
    Cost {
        cents: chance.below(style.range) as i64 - less,
        openings: chance.below(3) as i64,
        devices: chance.below(3) as i64,
    }
}

fn marks(chance: &mut Chance, style: Style, percent: usize) -> Marks {
    Marks((0..style.marks).filter(|_| chance.percent(percent)).fold(0, |marks, bit| marks | 1 << bit))
}

fn random_tree(chance: &mut Chance, size: Size, style: Style, groups: usize) -> Tree {
    let root_options = (0..1 + chance.below(3)).map(|place| RootOption {
        cost: if place == 0 { Cost::default() } else { cost(chance, style) },
        gives: if place == 0 { Marks::NONE } else { marks(chance, style, 50) },
        burden_limit: chance.percent(40).then(|| chance.below(12) as i64),
    });
    let root_options = root_options.collect();
    let nodes = (0..1 + chance.below(size.nodes)).map(|place| Node {
        parent: (place > 0 && chance.percent(80)).then(|| chance.below(place)),
        behind_load: chance.percent(75),
        group: chance.below(groups),
        burden: chance.below(4) as i64,
        count: chance.below(3) as u32,
        options: (0..1 + chance.below(size.options)).map(|_| random_option(chance, style)).collect(),
    });
    Tree { root_options, nodes: nodes.collect() }
}

fn random_option(chance: &mut Chance, style: Style) -> NodeOption {
    let most_landings =
        if chance.percent(60) { vec![3; 3] } else { (0..chance.below(4)).map(|_| chance.below(3) as u32).collect() };
    let supply = match chance.below(10) {
        place if place < style.longing => SupplyNeed::Supplied,
        9 => SupplyNeed::Unsupplied,
        _ => SupplyNeed::Any,
    };
    let limits = if style.tight { 70 } else { 25 };
    NodeOption {
        cost: cost(chance, style),
        needs: marks(chance, style, style.needs),
        own: marks(chance, style, 25),
        gives: marks(chance, style, 35),
        supply,
        most_landings,
        count_limit: chance.percent(limits).then(|| chance.below(5) as u32),
        burden_limit: chance.percent(limits).then(|| chance.below(9) as i64),
    }
}

fn random_link(chance: &mut Chance, style: Style, trees: &[Tree], groups: usize) -> Link {
    let end = |chance: &mut Chance| {
        let tree = chance.below(trees.len());
        let node = chance.below(trees[tree].nodes.len());
        let group = if chance.percent(style.at_home) { trees[tree].nodes[node].group } else { chance.below(groups) };
        LinkEnd { group, lands_at: chance.percent(75).then_some((tree, node)) }
    };
    let (mut from, mut to) = (end(chance), end(chance));
    if chance.percent(40) {
        from = LinkEnd { group: 0, lands_at: from.lands_at.filter(|_| chance.percent(40)) };
    }
    let reparents = to.lands_at.is_some() && chance.percent(35);
    if let (true, Some((tree, _))) = (reparents, to.lands_at)
        && chance.percent(70)
    {
        let node = chance.below(trees[tree].nodes.len());
        from.lands_at = chance.percent(60).then_some((tree, node));
    }
    if chance.percent(10) {
        to.group = chance.below(groups);
    }
    let cost_by_grade = (0..3 - chance.below(3).min(chance.below(3))).map(|_| cost(chance, style)).collect();
    Link { from, to, both_ways: chance.percent(50), cost_by_grade, reparents }
}

/// Something to lay down beforehand.
pub fn random_forced(chance: &mut Chance, problem: &Problem) -> Vec<Forced> {
    let mut forced = Vec::new();
    let tree = chance.below(problem.trees.len());
    if chance.percent(60) {
        let node = chance.below(problem.trees[tree].nodes.len());
        let options = problem.trees[tree].nodes[node].options.len();
        let allowed = (0..options).filter(|_| chance.percent(50)).collect();
        forced.push(Forced::Option { tree, node, allowed });
    }
    if chance.percent(30) {
        let allowed = vec![chance.below(problem.trees[tree].root_options.len())];
        forced.push(Forced::Root { tree, allowed });
    }
    while !problem.links.is_empty() && chance.percent(50) {
        forced.push(Forced::Link { link: chance.below(problem.links.len()), chosen: chance.percent(60) });
    }
    forced
}
