//! The checker: a tree and a certificate held against the instance. It shares nothing with the search but the instance
//! and the certificate.

use super::certificate::{Case, Certificate, Cut, Step};
use super::instance::{Cost, Instance, Malformed, Tree};

/// Why a tree or a certificate is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The instance itself is malformed.
    MalformedInstance(Malformed),
    /// The tree does not start where it must, or has lines and no start.
    WrongStart,
    /// The lines do not stand by rising index, or one is not there.
    WrongLines,
    /// The lines do not lead away from the start to one another, each to a new node.
    NoTree,
    /// A terminal is not in the tree.
    TerminalMissing(usize),
    /// The cost is another: what it is.
    WrongCost(Cost),
    /// The cases are not those that hold all trees.
    WrongCases,
    /// The steps of a case do not make one tree of splits, or a node is split at twice.
    WrongSteps(usize),
    /// The line that is dropped at this position may not be: it is gone already, its walk does not do the same, or the instance
    /// has prizes or lines that differ by direction.
    WrongDrop(usize),
    /// A cut of this case is malformed.
    WrongCut(usize),
    /// A line is charged more than it costs.
    LineOvercharged(usize),
    /// A prize is charged more than it is.
    PrizeOvercharged(usize),
    /// A leaf of this case, or what is left out by all cases, stays below the bound: how high it comes.
    TooLow(usize, Cost),
}

/// Checks that the tree is one of the instance and costs what it says.
///
/// # Errors
/// Why it is refused.
pub fn check_tree(instance: &Instance, tree: &Tree) -> Result<Cost, Refusal> {
    instance.validate().map_err(Refusal::MalformedInstance)?;
    if !tree.lines.is_sorted_by(|one, next| one < next) || tree.lines.iter().any(|&line| line >= instance.lines.len()) {
        return Err(Refusal::WrongLines);
    }
    let mut inside = vec![false; instance.nodes];
    let mut lines_cost: Cost = 0;
    match tree.root {
        Some(root) if root >= instance.nodes => return Err(Refusal::WrongStart),
        Some(root) => {
            inside[root] = true;
            lines_cost = spread(instance, tree, &mut inside, root)?;
        }
        None if tree.lines.is_empty() => {}
        None => return Err(Refusal::WrongStart),
    }
    if instance.root.is_some() && instance.root != tree.root {
        return Err(Refusal::WrongStart);
    }
    if let Some(&missing) = instance.terminals.iter().find(|&&terminal| !inside[terminal]) {
        return Err(Refusal::TerminalMissing(missing));
    }
    let missed: Cost = instance.prizes.iter().filter(|&&(node, _)| !inside[node]).map(|&(_, prize)| prize).sum();
    let cost = lines_cost + missed;
    if cost == tree.cost { Ok(cost) } else { Err(Refusal::WrongCost(cost)) }
}

/// Goes along all lines from the root, each to a new node; returns what they cost.
fn spread(instance: &Instance, tree: &Tree, inside: &mut [bool], root: usize) -> Result<Cost, Refusal> {
    let mut around: Vec<Vec<(usize, Cost)>> = vec![Vec::new(); instance.nodes];
    for &index in &tree.lines {
        let line = instance.lines[index];
        around[line.from].push((line.to, line.there));
        if let Some(back) = line.back {
            around[line.to].push((line.from, back));
        }
    }
    let (mut cost, mut reached) = (0, 0);
    let mut open = vec![root];
    while let Some(node) = open.pop() {
        for &(to, step) in &around[node] {
            if !std::mem::replace(&mut inside[to], true) {
                cost += step;
                reached += 1;
                open.push(to);
            }
        }
    }
    if reached == tree.lines.len() { Ok(cost) } else { Err(Refusal::NoTree) }
}

/// Checks that the certificate proves that no tree of the instance costs less than `bound`.
///
/// # Errors
/// Why it is refused.
pub fn check_bound(instance: &Instance, bound: Cost, certificate: &Certificate) -> Result<(), Refusal> {
    instance.validate().map_err(Refusal::MalformedInstance)?;
    let starts: Vec<usize> = certificate.cases.iter().map(|case| case.start).collect();
    if starts.iter().any(|&start| start >= instance.nodes) {
        return Err(Refusal::WrongCases);
    }
    let gone = dropped(instance, certificate)?;
    let mut leaf = Leaf::new(instance, bound, &gone);
    let everywhere = match (instance.root, instance.terminals.is_empty()) {
        (Some(root), _) => starts == [root],
        (None, false) => starts.len() == 1 && instance.terminals.contains(&starts[0]),
        (None, true) => false,
    };
    if !everywhere && (instance.root.is_some() || !instance.terminals.is_empty()) {
        return Err(Refusal::WrongCases);
    }
    for (place, case) in certificate.cases.iter().enumerate() {
        if leaf.out[case.start] {
            return Err(Refusal::WrongCases);
        }
        leaf.case(place, case)?;
        leaf.out[case.start] = true;
    }
    let missed = leaf.missed();
    if !everywhere && missed < bound {
        return Err(Refusal::TooLow(starts.len(), missed));
    }
    Ok(())
}

/// By line: whether the certificate drops it. A cheapest tree with the line is cut in two without it; somewhere its walk leads from
/// one part to the other, and that step, from a terminal or an end of the line to the next, joins them for no more.
fn dropped(instance: &Instance, certificate: &Certificate) -> Result<Vec<bool>, Refusal> {
    let mut gone = vec![false; instance.lines.len()];
    let plain = instance.prizes.iter().all(|&(_, prize)| prize == 0)
        && instance.lines.iter().all(|line| line.back == Some(line.there));
    let mut terminal = vec![false; instance.nodes];
    instance.terminals.iter().chain(&instance.root).for_each(|&node| terminal[node] = true);
    for (place, one) in certificate.dropped.iter().enumerate() {
        let wrong = || Refusal::WrongDrop(place);
        let there = |line: usize| line < instance.lines.len() && !gone[line];
        if !plain || !there(one.line) || !one.walk.iter().all(|&along| there(along) && along != one.line) {
            return Err(wrong());
        }
        let line = instance.lines[one.line];
        let (mut at, mut step) = (line.from, 0);
        for &along in &one.walk {
            let next = instance.lines[along];
            at = match at {
                at if at == next.from => next.to,
                at if at == next.to => next.from,
                _ => return Err(wrong()),
            };
            step += next.there;
            if step > line.there {
                return Err(wrong());
            }
            if terminal[at] {
                step = 0;
            }
        }
        if at != line.to {
            return Err(wrong());
        }
        gone[one.line] = true;
    }
    Ok(gone)
}

struct Leaf<'a> {
    instance: &'a Instance,
    prizes: Vec<Cost>,
    bound: Cost,
    out: Vec<bool>,
    within: Vec<bool>,
    into: Vec<Vec<(usize, usize, Cost)>>,
}

enum Turn {
    Side(usize, bool),
    Back(usize),
}

impl<'a> Leaf<'a> {
    fn new(instance: &'a Instance, bound: Cost, gone: &[bool]) -> Self {
        let mut within = vec![false; instance.nodes];
        instance.terminals.iter().chain(&instance.root).for_each(|&node| within[node] = true);
        // By node, the arcs into it: their tails, their places and their costs.
        let mut into = vec![Vec::new(); instance.nodes];
        for (index, line) in instance.lines.iter().enumerate().filter(|&(index, _)| !gone[index]) {
            into[line.to].push((line.from, 2 * index, line.there));
            if let Some(back) = line.back {
                into[line.from].push((line.to, 2 * index + 1, back));
            }
        }
        Self { instance, prizes: instance.prize_by_node(), bound, out: vec![false; instance.nodes], within, into }
    }

    fn missed(&self) -> Cost {
        self.prizes.iter().zip(&self.out).filter(|&(_, &out)| out).map(|(prize, _)| prize).sum()
    }

    fn case(&mut self, place: usize, case: &Case) -> Result<(), Refusal> {
        let began_within = std::mem::replace(&mut self.within[case.start], true);
        let mut steps = case.steps.iter();
        let mut turns = Vec::new();
        loop {
            match steps.next() {
                Some(&Step::Split(node)) => {
                    if node >= self.instance.nodes || self.out[node] || self.within[node] {
                        return Err(Refusal::WrongSteps(place));
                    }
                    turns.extend([Turn::Back(node), Turn::Side(node, true), Turn::Back(node)]);
                    self.out[node] = true;
                }
                Some(Step::Leaf(cuts)) => {
                    self.leaf(place, case.start, cuts)?;
                    loop {
                        match turns.pop() {
                            Some(Turn::Back(node)) => {
                                self.out[node] = false;
                                self.within[node] = false;
                            }
                            Some(Turn::Side(node, side)) => {
                                self.within[node] = side;
                                break;
                            }
                            None => {
                                self.within[case.start] = began_within;
                                let ended = steps.next().is_none();
                                return if ended { Ok(()) } else { Err(Refusal::WrongSteps(place)) };
                            }
                        }
                    }
                }
                None => return Err(Refusal::WrongSteps(place)),
            }
        }
    }

    fn leaf(&self, place: usize, start: usize, cuts: &[Cut]) -> Result<(), Refusal> {
        let mut sum = self.missed();
        let mut charged_arc: Vec<Cost> = vec![0; 2 * self.instance.lines.len()];
        let mut charged_prize: Vec<Cost> = vec![0; self.instance.nodes];
        let mut inside = vec![usize::MAX; self.instance.nodes];
        for (index, cut) in cuts.iter().enumerate() {
            let sorted = cut.nodes.is_sorted_by(|one, next| one < next);
            let there = cut.nodes.last().is_none_or(|&last| last < self.instance.nodes);
            let holds = |node: usize| cut.nodes.binary_search(&node).is_ok();
            if !sorted || !there || holds(start) || !holds(cut.toward) || self.out[cut.toward] || cut.value < 0 {
                return Err(Refusal::WrongCut(place));
            }
            sum = sum.saturating_add(cut.value);
            if !self.within[cut.toward] {
                let charged = &mut charged_prize[cut.toward];
                *charged = charged.saturating_add(cut.value);
                if *charged > self.prizes[cut.toward] {
                    return Err(Refusal::PrizeOvercharged(cut.toward));
                }
            }
            cut.nodes.iter().for_each(|&node| inside[node] = index);
            for &node in cut.nodes.iter().filter(|&&node| !self.out[node]) {
                for &(tail, arc, cost) in &self.into[node] {
                    if inside[tail] != index && !self.out[tail] {
                        charged_arc[arc] = charged_arc[arc].saturating_add(cut.value);
                        if charged_arc[arc] > cost {
                            return Err(Refusal::LineOvercharged(arc / 2));
                        }
                    }
                }
            }
        }
        if sum < self.bound { Err(Refusal::TooLow(place, sum)) } else { Ok(()) }
    }
}
