//! Exact search under conditions beside the instance: each part of the search is relaxed to an instance without them, with
//! prices for breaking them, and split along what a tree that breaks one cannot have all of.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::cases::{missed, starts, starts_anywhere};
use super::instance::{Cost, Instance, Line, MOST, Malformed, Tree};
use super::search::SteinerLimits;
use super::side::{MalformedSide, Side};
use super::sided_tree::{Conflict, Decision, Walked, ends, most_of};
use super::solve::{Answer, solve_steiner};

/// Finds the cheapest tree that meets every condition, or the best one within the limits.
///
/// The limit on nodes counts the graphs of all relaxed instances together.
///
/// # Errors
/// Where the instance or a condition is malformed.
pub fn solve_with_sides(
    instance: &Instance,
    sides: &[Side],
    limits: &mut SteinerLimits,
) -> Result<Answer, MalformedSide> {
    instance.validate().map_err(MalformedSide::Instance)?;
    for (position, side) in sides.iter().enumerate() {
        side.validate(instance, position)?;
    }
    let mut search = SidedSearch { instance, sides, limits, best: None, upper: NO_TREE, nodes: 0, scale: 1 };
    search.scale = search.scale_that_fits();
    let bound = search.run().map_err(MalformedSide::Instance)?;
    Ok(Answer { tree: search.best.take(), bound, nodes: search.nodes })
}

/// No tree costs as much.
const NO_TREE: Cost = MOST * 2;
/// Into how many parts a unit of cost is divided for prices.
const FINENESS: Cost = 64;
/// How often the price of one condition is moved at each part of the search.
const MOVES: usize = 10;

/// A part of the search: all trees from a start under some decisions.
struct Part {
    start: usize,
    /// How many starts before it are left out.
    left_out: usize,
    decisions: Vec<Decision>,
    /// By condition: the price of a unit above its limit, in parts of a unit of cost.
    prices: Vec<Cost>,
}

/// A relaxed instance solved.
struct Relaxed {
    /// No tree of the part costs less.
    bound: Cost,
    tree: Option<Walked>,
    /// Whether the search ended.
    exact: bool,
}

struct SidedSearch<'a, 'b, 'c> {
    instance: &'a Instance,
    sides: &'a [Side],
    limits: &'b mut SteinerLimits<'c>,
    best: Option<Tree>,
    upper: Cost,
    nodes: u64,
    scale: Cost,
}

impl SidedSearch<'_, '_, '_> {
    /// Prices are in parts of a unit where all costs so divided still fit.
    fn scale_that_fits(&self) -> Cost {
        let lines = self.instance.lines.iter().map(|line| line.there + line.back.unwrap_or(0));
        let sum = lines.chain(self.instance.prizes.iter().map(|&(_, prize)| prize)).fold(0, Cost::saturating_add);
        if sum.saturating_mul(2 * FINENESS) <= MOST { FINENESS } else { 1 }
    }

    fn run(&mut self) -> Result<Option<Cost>, Malformed> {
        let starts = starts(self.instance);
        if starts_anywhere(self.instance) {
            let cost = missed(self.instance, &starts);
            self.offer(Tree { cost, root: None, lines: Vec::new() });
        }
        let mut parts: Vec<Option<Part>> = Vec::new();
        let mut open: BinaryHeap<Reverse<(Cost, Reverse<usize>)>> = BinaryHeap::new();
        for (left_out, &start) in starts.iter().enumerate() {
            let prices = vec![0; self.sides.len()];
            open.push(Reverse((missed(self.instance, &starts[..left_out]), Reverse(parts.len()))));
            parts.push(Some(Part { start, left_out, decisions: Vec::new(), prices }));
        }
        while let Some(Reverse((bound, Reverse(place)))) = open.pop() {
            if bound >= self.upper {
                break;
            }
            if (self.limits.stop)() || self.limits.nodes.is_some_and(|most| self.nodes >= most) {
                return Ok(Some(bound.min(self.upper)));
            }
            let Some(mut part) = parts[place].take() else { continue };
            let (bound, children) = match self.visit(&mut part, bound, &starts)? {
                Visited::Closed => continue,
                Visited::Stopped(bound) => {
                    let others = open.peek().map_or(bound, |Reverse((other, _))| bound.min(*other));
                    return Ok(Some(others.min(self.upper)));
                }
                Visited::Split(bound, children) => (bound, children),
            };
            for decisions in children {
                open.push(Reverse((bound, Reverse(parts.len()))));
                let prices = part.prices.clone();
                parts.push(Some(Part { start: part.start, left_out: part.left_out, decisions, prices }));
            }
        }
        Ok((self.upper < NO_TREE).then_some(self.upper))
    }

    fn visit(&mut self, part: &mut Part, known: Cost, starts: &[usize]) -> Result<Visited, Malformed> {
        let free = vec![0; self.sides.len()];
        let plain = self.relaxed(part, starts, &free)?;
        let mut bound = known.max(plain.bound);
        if bound >= self.upper {
            return Ok(Visited::Closed);
        }
        if !plain.exact {
            return Ok(Visited::Stopped(bound));
        }
        let Some(tree) = plain.tree else { return Ok(Visited::Closed) };
        let broken = match tree.conflict(self.instance, self.sides, &part.decisions) {
            // The cheapest of all trees of the part meets every condition, and was offered; or none meets them.
            Conflict::None | Conflict::Decided => return Ok(Visited::Closed),
            Conflict::Of(broken) => broken,
        };
        for side in 0..self.sides.len() {
            if matches!(self.sides[side], Side::Beyond { .. })
                || tree.above(&self.sides[side]) <= 0 && part.prices[side] == 0
            {
                continue;
            }
            bound = bound.max(self.priced(part, starts, side)?);
            if bound >= self.upper {
                return Ok(Visited::Closed);
            }
        }
        let mut children = Vec::with_capacity(broken.len());
        for (place, last) in broken.iter().enumerate() {
            let mut decisions = part.decisions.clone();
            decisions.extend(broken[..place].iter().copied());
            decisions.push(last.turned());
            children.push(decisions);
        }
        Ok(Visited::Split(bound, children))
    }

    /// Moves the price of one condition to where the bound is highest, as far as a few moves go.
    fn priced(&mut self, part: &mut Part, starts: &[usize], side: usize) -> Result<Cost, Malformed> {
        let (mut low, mut high) = (0, None);
        let mut price = part.prices[side].max(self.scale);
        let (mut best, mut best_price) = (Cost::MIN, part.prices[side]);
        for _ in 0..MOVES {
            let mut prices = part.prices.clone();
            prices[side] = price;
            let relaxed = match self.relaxed(part, starts, &prices) {
                Ok(relaxed) => relaxed,
                // Prices that no sum can hold.
                Err(Malformed::TooLarge) => break,
                Err(other) => return Err(other),
            };
            if relaxed.bound > best {
                (best, best_price) = (relaxed.bound, price);
            }
            if relaxed.bound >= self.upper || !relaxed.exact {
                break;
            }
            let Some(tree) = relaxed.tree else { break };
            match tree.above(&self.sides[side]) {
                0 => break,
                1.. => low = price,
                _ => high = Some(price),
            }
            let next = high.map_or(price.saturating_mul(4), |high| low + (high - low) / 2);
            if next == price || next == low {
                break;
            }
            price = next;
        }
        part.prices[side] = best_price;
        Ok(best)
    }

    /// Solves the part without its conditions, with a price on each.
    fn relaxed(&mut self, part: &Part, starts: &[usize], prices: &[Cost]) -> Result<Relaxed, Malformed> {
        let nothing = Relaxed { bound: NO_TREE, tree: None, exact: true };
        let scale = if prices.iter().all(|&price| price == 0) { 1 } else { self.scale };
        let Some((relaxed, names)) = self.instance_of(part, starts, prices, scale) else { return Ok(nothing) };
        let nodes = self.limits.nodes.map(|most| most.saturating_sub(self.nodes).max(1));
        let mut limits = SteinerLimits { nodes, stop: &mut *self.limits.stop, methods: self.limits.methods };
        let answer = solve_steiner(&relaxed, &mut limits)?;
        self.nodes += answer.nodes;
        let exact = answer.is_proved();
        let Some(found) = answer.bound else { return Ok(nothing) };
        let limits = self.sides.iter().zip(prices).map(|(side, price)| price.saturating_mul(most_of(side)));
        let given_back = limits.fold(0, Cost::saturating_add) - self.root_price(part.start, prices);
        let bound = ceiling(found.saturating_sub(given_back), scale);
        let tree = answer.tree.and_then(|tree| {
            let mut lines: Vec<usize> = tree.lines.iter().map(|&line| names[line]).collect();
            lines.sort_unstable();
            Walked::over(self.instance, part.start, lines)
        });
        if let Some(walked) = &tree
            && self.sides.iter().all(|side| walked.above(side) <= 0)
        {
            self.offer(walked.tree.clone());
        }
        Ok(Relaxed { bound, tree, exact })
    }

    /// What holding its start costs a tree by the prices: nothing leads into it.
    fn root_price(&self, start: usize, prices: &[Cost]) -> Cost {
        let holds = |side: &Side| matches!(side, Side::Among { nodes, .. } if nodes.contains(&start));
        self.sides.iter().zip(prices).filter(|(side, _)| holds(side)).map(|(_, price)| price).sum()
    }

    /// The instance of a part: decisions built in, prices on the arcs. `None` where the decisions leave no tree. Its lines are
    /// named by those of the whole instance.
    fn instance_of(
        &self,
        part: &Part,
        starts: &[usize],
        prices: &[Cost],
        scale: Cost,
    ) -> Option<(Instance, Vec<usize>)> {
        let whole = self.instance;
        let mut out = vec![false; whole.nodes];
        starts[..part.left_out].iter().for_each(|&node| out[node] = true);
        let mut terminals = whole.terminals.clone();
        let mut barred = vec![[false; 2]; whole.lines.len()];
        let mut only: Vec<Option<(usize, bool)>> = vec![None; whole.nodes];
        for decision in &part.decisions {
            match *decision {
                Decision::Node { node, inside: true } => terminals.push(node),
                Decision::Node { node, inside: false } => out[node] = true,
                Decision::Arc { line, back, taken: false } => barred[line][usize::from(back)] = true,
                Decision::Arc { line, back, taken: true } => {
                    let (tail, head) = ends(&whole.lines[line], back);
                    if head == part.start || only[head].is_some_and(|arc| arc != (line, back)) {
                        return None;
                    }
                    only[head] = Some((line, back));
                    terminals.extend([tail, head]);
                }
            }
        }
        if out[part.start] || terminals.iter().any(|&terminal| out[terminal]) {
            return None;
        }
        let mut lines = Vec::new();
        let mut names = Vec::new();
        for (index, line) in whole.lines.iter().enumerate() {
            let cost = |back: bool| {
                let (tail, head) = ends(line, back);
                let cost = if back { line.back? } else { line.there };
                let shut = barred[index][usize::from(back)] || out[tail] || out[head] || head == part.start;
                let other = only[head].is_some_and(|arc| arc != (index, back));
                (!shut && !other).then(|| cost.saturating_mul(scale).saturating_add(self.price_of(index, back, prices)))
            };
            // Where nothing is decided, a line that costs the same both ways stays one: the search makes more of it.
            let even = part.decisions.is_empty() && line.back == Some(line.there);
            let way_back = |back: bool| {
                let (_, head) = ends(line, back);
                even && head == part.start && !out[line.from] && !out[line.to]
            };
            let both = [false, true].map(|back| {
                cost(back).or_else(|| {
                    let price = self.price_of(index, !back, prices);
                    way_back(back).then(|| line.there.saturating_mul(scale).saturating_add(price))
                })
            });
            let made = match both {
                [Some(there), back] => Line { from: line.from, to: line.to, there, back },
                [None, Some(back)] => Line { from: line.to, to: line.from, there: back, back: None },
                [None, None] => continue,
            };
            lines.push(made);
            names.push(index);
        }
        let prizes = whole.prizes.iter().map(|&(node, prize)| (node, prize.saturating_mul(scale))).collect();
        terminals.sort_unstable();
        terminals.dedup();
        if self.sides.iter().any(|side| self.is_overrun(side, part.start, &terminals, &lines, &names)) {
            return None;
        }
        Some((Instance { nodes: whole.nodes, lines, root: Some(part.start), terminals, prizes }, names))
    }

    /// Whether more than the capacity of a line lies beyond it in every tree: terminals that nothing else leads to.
    fn is_overrun(&self, side: &Side, start: usize, terminals: &[usize], lines: &[Line], names: &[usize]) -> bool {
        let Side::Beyond { line: narrow, weights, most } = side else { return false };
        let mut around = vec![Vec::new(); self.instance.nodes];
        for (line, _) in lines.iter().zip(names).filter(|&(_, name)| name != narrow) {
            around[line.from].push(line.to);
            if line.back.is_some() {
                around[line.to].push(line.from);
            }
        }
        let mut reached = vec![false; self.instance.nodes];
        reached[start] = true;
        let mut open = vec![start];
        while let Some(node) = open.pop() {
            for &next in &around[node] {
                if !std::mem::replace(&mut reached[next], true) {
                    open.push(next);
                }
            }
        }
        let beyond = |node: usize| !reached[node] && terminals.binary_search(&node).is_ok();
        weights.iter().filter(|&&(node, _)| beyond(node)).map(|&(_, weight)| weight).sum::<Cost>() > *most
    }

    /// What the prices make an arc cost more.
    fn price_of(&self, line: usize, back: bool, prices: &[Cost]) -> Cost {
        let (tail, head) = ends(&self.instance.lines[line], back);
        let units = |side: &Side| match side {
            Side::Budget { taken, .. } => {
                if back {
                    taken[line].1
                } else {
                    taken[line].0
                }
            }
            Side::OutOf { node, .. } => Cost::from(*node == tail),
            Side::Among { nodes, .. } => Cost::from(nodes.contains(&head)),
            Side::Beyond { .. } => 0,
        };
        let priced = self.sides.iter().zip(prices).filter(|&(_, &price)| price > 0);
        priced.map(|(side, price)| price.saturating_mul(units(side))).fold(0, Cost::saturating_add)
    }

    fn offer(&mut self, tree: Tree) {
        if tree.cost < self.upper {
            self.upper = tree.cost;
            self.best = Some(tree);
        }
    }
}

/// How a part of the search was left.
enum Visited {
    Closed,
    /// The limits stopped it at this bound.
    Stopped(Cost),
    /// Its bound, and the decisions of the parts that together are the part.
    Split(Cost, Vec<Vec<Decision>>),
}

/// A sum in parts of a unit, in whole units, rounded up.
fn ceiling(parts: Cost, scale: Cost) -> Cost {
    parts.div_euclid(scale) + Cost::from(parts.rem_euclid(scale) > 0)
}
