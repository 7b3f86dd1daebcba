//! Prints how long generated problems of several sizes take: `cargo run --release -p optimizer --example time_search`.
#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]

use std::time::{Duration, Instant};

use optimizer::{
    Cost, Group, Limits, Link, LinkEnd, Marks, Node, NodeOption, Outcome, Problem, RootOption, SupplyNeed, Tree, check,
    solve,
};

const RUNS: u64 = 200;
const FIRST: Marks = Marks(1);
const SECOND: Marks = Marks(2);
const BOTH: Marks = Marks(3);

/// Numbers that look random and are the same every time.
struct Chance(u64);

impl Chance {
    fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        ((self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33) % end as u64) as usize
    }

    fn percent(&mut self, of_hundred: usize) -> bool {
        self.below(100) < of_hundred
    }

    fn cents(&mut self, from: i64, to: i64) -> Cost {
        Cost { cents: from + self.below((to - from) as usize) as i64, openings: 0, devices: 1 }
    }
}

fn option(cost: Cost, needs: Marks, own: Marks, gives: Marks, supply: SupplyNeed) -> NodeOption {
    let protective = gives != Marks::NONE;
    NodeOption {
        cost,
        needs,
        own,
        gives,
        supply,
        most_landings: vec![2, 1],
        count_limit: protective.then_some(5),
        burden_limit: protective.then_some(2000),
    }
}

fn options(chance: &mut Chance) -> Vec<NodeOption> {
    let duty = [Marks::NONE, Marks::NONE, FIRST, SECOND, BOTH][chance.below(5)];
    let longs_for_supply = chance.percent(30);
    let mut options = vec![
        option(chance.cents(1500, 3000), duty, Marks::NONE, Marks::NONE, SupplyNeed::Supplied),
        option(chance.cents(5000, 9000), duty, FIRST, FIRST, SupplyNeed::Supplied),
        option(chance.cents(9000, 12000), duty, BOTH, BOTH, SupplyNeed::Supplied),
    ];
    if longs_for_supply {
        options.push(option(chance.cents(15000, 30000), Marks::NONE, Marks::NONE, Marks::NONE, SupplyNeed::Any));
    } else {
        options.push(option(chance.cents(1200, 2500), duty, Marks::NONE, Marks::NONE, SupplyNeed::Unsupplied));
        options.push(option(chance.cents(1800, 3500), duty | FIRST, Marks::NONE, Marks::NONE, SupplyNeed::Any));
        options.push(option(chance.cents(5500, 14000), duty, FIRST, FIRST, SupplyNeed::Any));
        options.push(option(chance.cents(9500, 19000), duty, BOTH, BOTH, SupplyNeed::Any));
    }
    options
}

/// `trees` trees with `nodes` nodes altogether; group 0 is the source; a few nodes share a group with their parent.
fn problem(chance: &mut Chance, trees: usize, nodes: usize, links: usize, far: bool) -> Problem {
    let mut groups = vec![Group { source: true, grade: 0, carries: 1 }];
    let mut problem_trees = Vec::new();
    let mut places = Vec::new();
    for tree in 0..trees {
        let size = nodes * (tree + 1) / trees - nodes * tree / trees;
        let mut members: Vec<Node> = Vec::new();
        for place in 0..size {
            let parent = if place == 0 { None } else { Some(place - 1 - chance.below(place.min(2))) };
            let group = match parent {
                Some(parent) if chance.percent(25) => members[parent].group,
                _ => {
                    let grade = usize::from(chance.percent(25));
                    groups.push(Group { source: chance.percent(5), grade, carries: grade });
                    groups.len() - 1
                }
            };
            places.push((tree, place, group));
            let options = options(chance);
            let burden = chance.below(900) as i64;
            members.push(Node { parent, behind_load: chance.percent(90), group, burden, count: 1, options });
        }
        let dear = chance.percent(30);
        let root_options = [(0, Marks::NONE), (6000, FIRST), (6500, SECOND), (7000, BOTH)].map(|(cents, gives)| {
            let cents = if dear && cents > 0 { cents + 25000 } else { cents };
            RootOption { cost: Cost { cents, openings: 0, devices: 0 }, gives, burden_limit: Some(4000) }
        });
        problem_trees.push(Tree { root_options: root_options.to_vec(), nodes: members });
    }
    let links = (0..links).map(|_| {
        let to = places[chance.below(places.len())];
        let near = places[chance.below(places.len())];
        let from_source = chance.percent(if far { 30 } else { 70 });
        let from = if from_source { LinkEnd { group: 0, lands_at: None } } else { end(near) };
        let reparents = chance.percent(15) && (from_source || near.0 == to.0);
        let cost = chance.cents(3000, if far { 9000 } else { 20000 });
        let openings = chance.below(3) as i64;
        let cost_by_grade = [0, 1500].map(|more| Cost { cents: cost.cents + more, openings, devices: 0 }).to_vec();
        Link { from, to: end(to), both_ways: !from_source && !reparents, cost_by_grade, reparents }
    });
    let links = links.collect();
    Problem { trees: problem_trees, groups, links }
}

fn end((tree, node, group): (usize, usize, usize)) -> LinkEnd {
    LinkEnd { group, lands_at: Some((tree, node)) }
}

fn main() {
    println!("nodes links  near/far   median      95 %       most   solved  links chosen");
    for (trees, nodes) in [(8, 40), (8, 60), (20, 150)] {
        for links in [10, 25, 60] {
            for far in [false, true] {
                measure(trees, nodes, links, far);
            }
        }
    }
}

fn measure(trees: usize, nodes: usize, links: usize, far: bool) {
    let mut times: Vec<Duration> = Vec::new();
    let (mut solved, mut chosen) = (0, 0);
    for seed in 0..RUNS {
        let mut chance = Chance((seed + 1).wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
        let problem = problem(&mut chance, trees, nodes, links, far);
        let start = Instant::now();
        let outcome = solve(&problem, &Limits::nodes(100_000));
        times.push(start.elapsed());
        if let Outcome::Optimal(solution) = &outcome {
            assert_eq!(check(&problem, solution), Ok(solution.cost));
            solved += 1;
            chosen += solution.links.len();
        } else if outcome != Outcome::Infeasible {
            println!("not solved to the end: seed {seed}");
        }
    }
    times.sort();
    let at = |percent: usize| format!("{:.3} ms", times[(times.len() - 1) * percent / 100].as_secs_f64() * 1000.0);
    let kind = if far { "far" } else { "near" };
    println!("{nodes:5} {links:5} {kind:>9} {:>9} {:>9} {:>10} {solved:6} {chosen:8}", at(50), at(95), at(100));
}
