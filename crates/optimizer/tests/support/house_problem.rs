//! Problems shaped like houses: circuits of a few boxes, rooms on a plan, ways through an attic and a crawl space.

use optimizer::{Cost, Group, Link, LinkEnd, Marks, Node, NodeOption, Problem, RootOption, SupplyNeed, Tree};

use crate::support::random_problem::Chance;

const GFCI: Marks = Marks(1);
const AFCI: Marks = Marks(2);
const BOTH: Marks = Marks(3);
/// More than any sum of money.
const WISH: i64 = 100_000_000;
/// The leakage in microamperes and the outlets that one device may have behind it.
const BURDEN: i64 = 3_999;
const OUTLETS: u32 = 12;

/// A box on the plan, in feet.
struct Place {
    x: i64,
    y: i64,
    floor: i64,
    node: (usize, usize),
    group: usize,
}

struct House<'c> {
    chance: &'c mut Chance,
    boxes: usize,
    groups: Vec<Group>,
    links: Vec<Link>,
    places: Vec<Place>,
}

/// Returns a house of so many boxes.
pub fn house_problem(chance: &mut Chance, boxes: usize) -> Problem {
    let source = Group { source: true, grade: 0, carries: 2 };
    let mut house = House { chance, boxes, groups: vec![source], links: Vec::new(), places: Vec::new() };
    let mut trees = Vec::new();
    while house.places.len() < boxes {
        let size = (5 + house.chance.below(8)).min(boxes - house.places.len());
        trees.push(house.tree(trees.len(), size));
    }
    house.ways_through_spaces();
    house.ways_between_neighbours();
    house.cables(&trees);
    Problem { trees, groups: house.groups, links: house.links }
}

fn money(cents: i64) -> Cost {
    Cost { cents, openings: 0, devices: 0 }
}

impl House<'_> {
    fn between(&mut self, from: i64, to: i64) -> i64 {
        from + self.chance.below((to - from) as usize) as i64
    }

    fn tree(&mut self, tree: usize, size: usize) -> Tree {
        let grade = usize::from(self.chance.percent(30));
        let mut nodes: Vec<Node> = Vec::new();
        let side = ((self.boxes as f64).sqrt() * 6.0) as i64 + 8;
        let (x, y) = (self.between(0, side), self.between(0, side));
        let floor = i64::from(self.boxes > 25 && self.chance.percent(45));
        let armored = self.chance.percent(15);
        for place in 0..size {
            let parent = (place > 0).then(|| place - 1 - self.chance.below(place.min(2)));
            let group = match parent {
                Some(parent) if armored || self.chance.percent(8) => nodes[parent].group,
                _ => {
                    self.groups.push(Group { source: self.chance.percent(6), grade, carries: 2 });
                    self.groups.len() - 1
                }
            };
            let place_x = x + self.between(-12, 13);
            let place_y = y + self.between(-12, 13);
            self.places.push(Place { x: place_x, y: place_y, floor, node: (tree, place), group });
            let burden = [0, 0, 0, 0, 0, 0, 500, 500, 500, 1_000][self.chance.below(10)];
            let count = u32::from(self.chance.percent(85));
            nodes.push(Node { parent, behind_load: parent.is_some(), group, burden, count, options: self.options() });
        }
        let breakers = [(0, Marks::NONE), (6_300, GFCI), (6_700, AFCI), (7_900, BOTH)];
        let made_for_it = self.chance.percent(70);
        let root_options = breakers.iter().map(|(cents, gives)| RootOption {
            cost: Cost {
                cents: if made_for_it { *cents } else { cents * 4 },
                openings: 0,
                devices: i64::from(*cents > 0),
            },
            gives: *gives,
            burden_limit: Some(BURDEN),
        });
        Tree { root_options: root_options.collect(), nodes }
    }

    fn options(&mut self) -> Vec<NodeOption> {
        let duty = [Marks::NONE, AFCI, AFCI, AFCI, GFCI, BOTH][self.chance.below(6)];
        let small_box = if self.chance.percent(35) { self.between(3_000, 9_000) } else { 0 };
        let needs_ground = self.chance.percent(12);
        let wishes_slots = self.chance.percent(60);
        let wishes_ground = self.chance.percent(6);
        let (equipment, unlawful) = (WISH * (self.boxes as i64 + 1), WISH * (self.boxes as i64 + 1).pow(2));
        let mut options = Vec::new();
        let mut add = |cents: i64, needs: Marks, own: Marks, supply: SupplyNeed, slots: bool, worse: i64| {
            let unmet = i64::from(wishes_slots && !slots) + i64::from(wishes_ground && supply != SupplyNeed::Supplied);
            let without = if needs_ground && supply != SupplyNeed::Supplied { equipment } else { 0 };
            let devices = i64::from(cents > 0);
            options.push(NodeOption {
                cost: Cost { cents: cents + WISH * unmet + without + worse, openings: 0, devices },
                needs,
                own,
                gives: own,
                supply,
                most_landings: if small_box > 0 { vec![0; 3] } else { vec![4, 4, 1] },
                count_limit: (own != Marks::NONE).then_some(OUTLETS),
                burden_limit: own.covers(GFCI).then_some(BURDEN),
            });
        };
        add(1_400, duty, Marks::NONE, SupplyNeed::Unsupplied, false, 0);
        add(1_600, duty, Marks::NONE, SupplyNeed::Supplied, true, 0);
        add(2_000, duty | GFCI, Marks::NONE, SupplyNeed::Any, true, 0);
        for (cents, own) in [(5_600, GFCI), (6_400, AFCI), (9_800, BOTH)] {
            let needed = if own.covers(GFCI) { duty } else { duty | GFCI };
            add(cents + small_box, needed, own, SupplyNeed::Any, true, 0);
            add(cents + small_box - 100, duty, own, SupplyNeed::Supplied, true, 0);
        }
        add(0, Marks::NONE, Marks::NONE, SupplyNeed::Any, true, unlawful);
        if small_box > 0 {
            let larger = options.clone().into_iter().map(|option| NodeOption {
                cost: option.cost
                    + Cost { cents: if option.own == Marks::NONE { small_box } else { 500 }, openings: 1, devices: 0 },
                most_landings: vec![4; 3],
                ..option
            });
            options.extend(larger.collect::<Vec<_>>());
        }
        options
    }

    fn end(&self, place: usize) -> LinkEnd {
        LinkEnd { group: self.places[place].group, lands_at: Some(self.places[place].node) }
    }

    fn way(&mut self, from: LinkEnd, to: LinkEnd, cents: i64, openings: i64, feet: i64) {
        let cost = |grade: i64| Cost { cents: cents + feet * 30 * grade, openings, devices: 0 };
        let cost_by_grade = vec![cost(0), cost(1), cost(2)];
        self.links.push(Link { from, to, both_ways: true, cost_by_grade, reparents: false });
    }

    /// A junction over or under each box, the nearest of them joined, and the panel joined to the middle ones.
    fn ways_through_spaces(&mut self) {
        for floor in [0, 1] {
            let at_floor: Vec<usize> = (0..self.places.len()).filter(|at| self.places[*at].floor == floor).collect();
            if at_floor.is_empty() {
                continue;
            }
            let first = self.groups.len();
            for &at in &at_floor {
                self.groups.push(Group { source: false, grade: 0, carries: 2 });
                let outside = self.chance.percent(35);
                let (cents, openings) =
                    if outside { (self.between(9_000, 16_000), 1) } else { (self.between(4_500, 7_500), 0) };
                let junction = LinkEnd { group: self.groups.len() - 1, lands_at: None };
                if self.chance.percent(90) {
                    self.way(junction, self.end(at), cents, openings, 9);
                }
            }
            let panel = LinkEnd { group: 0, lands_at: None };
            self.way(panel, LinkEnd { group: first, lands_at: None }, 6_000 + 4_000 * floor, floor, 15);
            for (place, &at) in at_floor.iter().enumerate() {
                let mut others: Vec<(i64, usize)> = (0..at_floor.len())
                    .filter(|other| *other != place)
                    .map(|other| (self.feet(at, at_floor[other]), other))
                    .collect();
                others.sort_unstable();
                let nearest_before = others.iter().find(|(_, other)| *other < place).copied();
                let near = others.iter().take(2).copied().filter(|(_, other)| *other > place);
                for (feet, other) in near.chain(nearest_before) {
                    let [from, to] = [place, other].map(|one| LinkEnd { group: first + one, lands_at: None });
                    self.way(from, to, 150 * feet + 300, 0, feet);
                }
            }
        }
    }

    fn feet(&self, one: usize, other: usize) -> i64 {
        let (one, other) = (&self.places[one], &self.places[other]);
        (one.x - other.x).abs() + (one.y - other.y).abs() + 10 * (one.floor - other.floor).abs()
    }

    /// Back to back through a wall, or along the baseboard.
    fn ways_between_neighbours(&mut self) {
        for one in 0..self.places.len() {
            for other in one + 1..self.places.len() {
                let feet = self.feet(one, other);
                if feet <= 2 {
                    self.way(self.end(one), self.end(other), 3_500, 0, 1);
                } else if feet <= 9 && self.places[one].floor == self.places[other].floor {
                    self.way(self.end(one), self.end(other), 2_500 + 700 * feet, 0, feet);
                }
            }
        }
    }

    /// A new cable in place of each run, and home runs to some boxes.
    fn cables(&mut self, trees: &[Tree]) {
        for at in 0..self.places.len() {
            let (tree, node) = self.places[at].node;
            let parent = trees[tree].nodes[node].parent;
            let feet = parent.map_or(20, |parent| {
                let first = at - node;
                self.feet(at, first + parent)
            });
            let cents = 11_000 + 450 * feet;
            let cost_by_grade = vec![money(cents), money(cents + 90 * feet)];
            let from = match parent {
                Some(parent) => self.end(at - node + parent),
                None => LinkEnd { group: 0, lands_at: None },
            };
            let to = self.end(at);
            if from.group != to.group {
                self.links.push(Link { from, to, both_ways: false, cost_by_grade, reparents: false });
            }
            if parent.is_some() && self.chance.percent(50) {
                let cents = 16_000 + 450 * self.between(15, 50);
                let from = LinkEnd { group: 0, lands_at: None };
                let cost_by_grade = vec![money(cents), money(cents + 2_000)];
                self.links.push(Link { from, to, both_ways: false, cost_by_grade, reparents: true });
            }
        }
    }
}
