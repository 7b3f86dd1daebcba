//! The search under conditions beside the instance agrees with trying every set of lines, and the checker holds its trees.

mod steiner_support;

use optimizer::steiner::{
    Answer, Cost, Instance, Line, MalformedSide, Methods, Side, SideRefusal, SteinerLimits, Tree, check_sides,
    solve_with_sides,
};
use steiner_support::{Chance, KINDS, Kind, instance, least};

/// Of each kind of condition, and of all kinds mixed.
const OF_EACH_KIND: u64 = 1_400;

fn solved(instance: &Instance, sides: &[Side], nodes: Option<u64>) -> Answer {
    let mut limits = SteinerLimits { nodes, stop: &mut || false, methods: Methods::default() };
    solve_with_sides(instance, sides, &mut limits).unwrap_or_else(|fault| panic!("{fault:?} {instance:?} {sides:?}"))
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Asked {
    Budget,
    OutOf,
    Among,
    Beyond,
    Mixed,
}

fn side(chance: &mut Chance, instance: &Instance, asked: Asked) -> Side {
    let of_each = [Asked::Budget, Asked::OutOf, Asked::Among, Asked::Beyond];
    match asked {
        Asked::Mixed => {
            let rooted = instance.root.is_some();
            let asked = if rooted { of_each[chance.below(4)] } else { [Asked::Budget, Asked::Among][chance.below(2)] };
            side(chance, instance, asked)
        }
        Asked::Budget => {
            let taken = instance.lines.iter().map(|_| {
                let there = chance.below(5) as Cost;
                (there, if instance.root.is_some() { chance.below(5) as Cost } else { there })
            });
            let taken: Vec<_> = taken.collect();
            Side::Budget { taken, most: chance.below(12) as Cost }
        }
        Asked::OutOf => Side::OutOf { node: chance.below(instance.nodes), most: chance.below(3) },
        Asked::Among => {
            let nodes = (0..instance.nodes).filter(|_| chance.below(2) == 0).collect();
            Side::Among { nodes, most: 1 + chance.below(4) }
        }
        Asked::Beyond => {
            let weights = (0..instance.nodes).map(|node| (node, chance.below(4) as Cost)).collect();
            Side::Beyond { line: chance.below(instance.lines.len()), weights, most: chance.below(8) as Cost }
        }
    }
}

/// The least cost of a tree that meets the conditions, by trying every set of lines from every start.
fn least_with(instance: &Instance, sides: &[Side]) -> Option<Cost> {
    let prizes = instance.prize_by_node();
    let starts: Vec<usize> = instance.root.map_or_else(|| (0..instance.nodes).collect(), |root| vec![root]);
    let empty = instance.root.is_none() && instance.terminals.is_empty();
    let mut best = empty.then(|| prizes.iter().sum::<Cost>());
    for chosen in 0u32..1 << instance.lines.len() {
        for &start in &starts {
            let mut into: Vec<Option<(usize, usize, bool)>> = vec![None; instance.nodes];
            let mut inside = vec![false; instance.nodes];
            inside[start] = true;
            let (mut cost, mut used) = (0, 0u32);
            while let Some((line, index, back)) = instance.lines.iter().enumerate().find_map(|(index, line)| {
                let free = chosen >> index & 1 == 1 && used >> index & 1 == 0;
                let there = free && inside[line.from] && !inside[line.to];
                let back = free && inside[line.to] && !inside[line.from] && line.back.is_some();
                (there || back).then_some((line, index, back))
            }) {
                let (tail, head) = if back { (line.to, line.from) } else { (line.from, line.to) };
                cost += if back { line.back.expect("gone along back") } else { line.there };
                used |= 1 << index;
                inside[head] = true;
                into[head] = Some((tail, index, back));
            }
            let all = used == chosen && instance.terminals.iter().all(|&terminal| inside[terminal]);
            if all && sides.iter().all(|side| met(side, &inside, &into)) {
                let missed: Cost = (0..instance.nodes).filter(|&node| !inside[node]).map(|node| prizes[node]).sum();
                best = Some(best.map_or(cost + missed, |best| best.min(cost + missed)));
            }
        }
    }
    best
}

fn met(side: &Side, inside: &[bool], into: &[Option<(usize, usize, bool)>]) -> bool {
    match side {
        Side::Budget { taken, most } => {
            let arcs = into.iter().flatten();
            arcs.map(|&(_, line, back)| if back { taken[line].1 } else { taken[line].0 }).sum::<Cost>() <= *most
        }
        Side::OutOf { node, most } => into.iter().flatten().filter(|(tail, ..)| tail == node).count() <= *most,
        Side::Among { nodes, most } => nodes.iter().filter(|&&node| inside[node]).count() <= *most,
        Side::Beyond { line, weights, most } => {
            let beyond = |node: usize| {
                let mut at = node;
                while let Some((tail, along, _)) = into[at] {
                    if along == *line {
                        return true;
                    }
                    at = tail;
                }
                false
            };
            weights.iter().filter(|&&(node, _)| beyond(node)).map(|&(_, weight)| weight).sum::<Cost>() <= *most
        }
    }
}

/// By trying every set of lines.
fn agrees(asked: Asked) {
    let (mut feasible, mut dearer, mut tried) = (0, 0, 0);
    for seed in 1..=OF_EACH_KIND {
        let mut chance = Chance::new(seed + 40_000);
        let kind = match (KINDS[seed as usize % KINDS.len()], asked) {
            (Kind::SteinerTree | Kind::PrizeCollecting, Asked::OutOf | Asked::Beyond) => Kind::Arborescence,
            (kind, _) => kind,
        };
        let instance = instance(&mut chance, kind, 7, 9);
        if instance.lines.is_empty() && asked != Asked::OutOf && asked != Asked::Among {
            continue;
        }
        let sides: Vec<Side> = (0..1 + chance.below(2)).map(|_| side(&mut chance, &instance, asked)).collect();
        let expected = least_with(&instance, &sides);
        let answer = solved(&instance, &sides, None);
        let told = format!("{asked:?} {kind:?} {seed} {instance:?} {sides:?} {answer:?}");
        assert_eq!(answer.tree.as_ref().map(|tree| tree.cost), expected, "{told}");
        assert!(answer.is_proved(), "{told}");
        if let Some(tree) = &answer.tree {
            assert_eq!(check_sides(&instance, &sides, tree), Ok(tree.cost), "{told}");
        }
        tried += 1;
        feasible += u64::from(expected.is_some());
        dearer += u64::from(expected.is_some() && expected != least(&instance));
    }
    assert!(tried >= 1_000 && feasible > tried / 4 && dearer > 40, "{asked:?}: {tried}, {feasible}, {dearer}");
}

#[test]
fn budgets_cost_what_trying_everything_costs() {
    agrees(Asked::Budget);
}

#[test]
fn limits_on_the_arcs_out_of_a_node_cost_what_trying_everything_costs() {
    agrees(Asked::OutOf);
}

#[test]
fn limits_on_how_many_nodes_are_served_cost_what_trying_everything_costs() {
    agrees(Asked::Among);
}

#[test]
fn capacities_cost_what_trying_everything_costs() {
    agrees(Asked::Beyond);
}

#[test]
fn conditions_of_all_kinds_together_cost_what_trying_everything_costs() {
    agrees(Asked::Mixed);
}

/// By trying every set of lines.
#[test]
fn a_search_under_conditions_that_is_stopped_never_claims_more_than_it_knows() {
    let mut stopped = 0;
    for seed in 1..=400 {
        let mut chance = Chance::new(seed + 80_000);
        let instance = instance(&mut chance, Kind::Rooted, 7, 9);
        if instance.lines.is_empty() {
            continue;
        }
        let sides = [side(&mut chance, &instance, Asked::Mixed)];
        let expected = least_with(&instance, &sides);
        for nodes in [0, 1, 2] {
            let answer = solved(&instance, &sides, Some(nodes));
            if let (Some(bound), Some(expected)) = (answer.bound, expected) {
                assert!(bound <= expected, "{seed} {nodes}: {answer:?}");
            }
            assert!(answer.bound.is_some() || expected.is_none(), "{seed} {nodes}: {answer:?}");
            if let Some(tree) = &answer.tree {
                assert_eq!(check_sides(&instance, &sides, tree), Ok(tree.cost));
            }
            stopped += u64::from(!answer.is_proved());
        }
    }
    assert!(stopped > 200, "{stopped}");
}

/// The cheapest tree by what its arcs take tells where budgets begin to leave a tree; without a budget that binds, the cost is
/// that of the instance alone; and more budget never costs more.
#[test]
fn budgets_on_larger_instances_begin_where_the_least_taken_does_and_end_at_the_plain_optimum() {
    let mut levels = 0;
    for seed in 1..=40 {
        let mut chance = Chance::new(seed + 90_000);
        let instance = instance(&mut chance, Kind::SteinerTree, 24, 50);
        let taken: Vec<(Cost, Cost)> =
            instance.lines.iter().map(|_| chance.below(9) as Cost).map(|units| (units, units)).collect();
        let by_taken = Instance {
            lines: instance
                .lines
                .iter()
                .zip(&taken)
                .map(|(line, units)| Line { there: units.0, back: Some(units.1), ..*line })
                .collect(),
            ..instance.clone()
        };
        let Some(plain) = solved(&instance, &[], None).tree else { continue };
        let least = solved(&by_taken, &[], None).tree.expect("the same lines").cost;
        let of_plain: Cost = plain.lines.iter().map(|&line| taken[line].0).sum();
        let with = |most| solved(&instance, &[Side::Budget { taken: taken.clone(), most }], None);
        if least > 0 {
            let none = with(least - 1);
            assert_eq!((none.tree, none.bound), (None, None), "{seed}");
        }
        let mut last = Cost::MAX;
        for most in least..=of_plain {
            let answer = with(most);
            let tree = answer.tree.clone().expect("within the budget");
            assert!(answer.is_proved() && answer.gap() == Some(0) && tree.cost <= last, "{seed} {most}");
            last = tree.cost;
            levels += 1;
        }
        assert_eq!(with(of_plain).tree.map(|tree| tree.cost), Some(plain.cost), "{seed}");
    }
    assert!(levels > 80, "{levels}");
}

fn along(from: usize, to: usize, there: Cost) -> Line {
    Line { from, to, there, back: None }
}

/// A star: the root 0 leads to 1, 2 and 3 for 1 each; 1 leads on to 2 and to 3 for 5 each.
fn star() -> Instance {
    Instance {
        nodes: 4,
        lines: vec![along(0, 1, 1), along(0, 2, 1), along(0, 3, 1), along(1, 2, 5), along(1, 3, 5)],
        root: Some(0),
        terminals: vec![1, 2, 3],
        prizes: Vec::new(),
    }
}

/// By hand: three arcs out of the root cost 3; with two, one node hangs behind 1 for 5; with one, both do.
#[test]
fn fewer_arcs_out_of_the_root_lead_through_its_neighbour() {
    for (most, cost) in [(3, 3), (2, 7), (1, 11)] {
        let answer = solved(&star(), &[Side::OutOf { node: 0, most }], None);
        assert_eq!((answer.tree.map(|tree| tree.cost), answer.bound), (Some(cost), Some(cost)), "{most}");
    }
    let answer = solved(&star(), &[Side::OutOf { node: 0, most: 0 }], None);
    assert_eq!((answer.tree, answer.bound), (None, None));
}

/// By hand: a root with one line has all terminals beyond it, whatever the tree: a capacity below their number leaves none, and
/// that is told without trying the trees of a grid of 8 by 8.
#[test]
fn a_line_that_everything_must_pass_is_overrun_at_once() {
    let even = |from, to| Line { from, to, there: 1, back: Some(1) };
    let mut lines = vec![even(64, 0)];
    for node in 0..64 {
        if node % 8 < 7 {
            lines.push(even(node, node + 1));
        }
        if node < 56 {
            lines.push(even(node, node + 8));
        }
    }
    let terminals = vec![7, 27, 36, 56, 63];
    let weights: Vec<_> = terminals.iter().map(|&node| (node, 1)).collect();
    let instance = Instance { nodes: 65, lines, root: Some(64), terminals, prizes: Vec::new() };
    let with = |most| solved(&instance, &[Side::Beyond { line: 0, weights: weights.clone(), most }], None);
    assert_eq!((with(4).tree, with(4).bound), (None, None));
    assert!(with(5).is_proved() && with(5).tree.is_some());
}

/// By hand: beyond the line 0–1 hang 1 and what is led through it: with one arc out of the root all three.
#[test]
fn a_tree_that_breaks_a_condition_is_refused_and_told_how_far_it_comes() {
    let through = Tree { cost: 11, root: Some(0), lines: vec![0, 3, 4] };
    let weights = vec![(1, 1), (2, 1), (3, 1)];
    let beyond = |most| Side::Beyond { line: 0, weights: weights.clone(), most };
    assert_eq!(check_sides(&star(), &[beyond(3)], &through), Ok(11));
    assert_eq!(check_sides(&star(), &[beyond(3), beyond(2)], &through), Err(SideRefusal::Broken(1, 3)));
    let budget = Side::Budget { taken: vec![(2, 0); 5], most: 5 };
    assert_eq!(check_sides(&star(), &[budget], &through), Err(SideRefusal::Broken(0, 6)));
    let among = Side::Among { nodes: vec![0, 1, 2], most: 2 };
    assert_eq!(check_sides(&star(), &[among], &through), Err(SideRefusal::Broken(0, 3)));
    assert_eq!(check_sides(&star(), &[Side::OutOf { node: 1, most: 1 }], &through), Err(SideRefusal::Broken(0, 2)));
}

#[test]
fn conditions_that_cannot_be_asked_are_refused() {
    let limits = || SteinerLimits { nodes: None, stop: Box::leak(Box::new(|| false)), methods: Methods::default() };
    let refused = |instance: &Instance, side: Side| solve_with_sides(instance, &[side], &mut limits()).unwrap_err();
    let short = Side::Budget { taken: vec![(1, 1)], most: 3 };
    assert_eq!(refused(&star(), short), MalformedSide::WrongNames(0));
    let below = Side::Budget { taken: vec![(-1, 1); 5], most: 3 };
    assert_eq!(refused(&star(), below), MalformedSide::WrongAmounts(0));
    assert_eq!(refused(&star(), Side::OutOf { node: 9, most: 1 }), MalformedSide::WrongNames(0));
    assert_eq!(refused(&star(), Side::Among { nodes: vec![1, 1], most: 1 }), MalformedSide::WrongNames(0));
    let free = Instance {
        nodes: 2,
        lines: vec![Line { from: 0, to: 1, there: 1, back: Some(1) }],
        terminals: vec![0, 1],
        ..Instance::default()
    };
    assert_eq!(refused(&free, Side::OutOf { node: 0, most: 1 }), MalformedSide::WithoutRoot(0));
}
