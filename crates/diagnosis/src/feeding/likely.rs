//! The most probable orders, the best first, by always carrying on with what can still become best.

use super::inside::{Inside, divisions, subsets};
use super::question::Node;
use super::shape::{Heads, Shape};
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// A whole order with its weight.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Order {
    /// The product of all that weighs.
    pub(crate) weight: f64,
    /// By box: what feeds it.
    pub(crate) feeds: Vec<Node>,
}

/// Something of an order that is not worked out yet.
#[derive(Clone, Copy, Debug)]
enum Open {
    /// Everything below a node is this set.
    Below(Node, Heads),
    /// The first of its known runs, and its further runs, lead to this set.
    Joined(Node, usize, Heads),
    /// This many further runs, at the last number this many or more, lead to this set.
    Runs(Node, usize, Heads),
}

/// A part of an order, with what it can become at best.
struct Partial {
    /// The best weight that the whole can have.
    best: f64,
    /// The runs that are settled, box and feed.
    settled: Vec<(usize, Node)>,
    open: Vec<Open>,
    /// When it was made: of two alike the one made first goes first.
    number: usize,
}

impl PartialEq for Partial {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Partial {}
impl PartialOrd for Partial {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Partial {
    fn cmp(&self, other: &Self) -> Ordering {
        self.best.total_cmp(&other.best).then_with(|| other.number.cmp(&self.number))
    }
}

/// A way to carry on: the factor it costs, the run it settles, what it leaves open.
struct Step {
    value: f64,
    run: Option<(usize, Node)>,
    open: Vec<Open>,
}

impl Inside<'_> {
    /// The most probable orders, at most this many.
    pub(crate) fn likeliest(&self, most: usize) -> Vec<Order> {
        let root = self.shape.question.root();
        let mut found: Vec<Order> = Vec::new();
        let mut heap = BinaryHeap::new();
        let mut made = 0;
        let total = self.total().weightiest;
        if total > 0.0 && most > 0 {
            heap.push(Partial {
                best: total,
                settled: Vec::new(),
                open: vec![Open::Below(root, self.shape.all())],
                number: 0,
            });
        }
        while let Some(mut partial) = heap.pop() {
            let Some(open) = partial.open.pop() else {
                found.push(self.order(&partial));
                if found.len() == most {
                    break;
                }
                continue;
            };
            let value = self.value(open);
            let mut steps = self.steps(open);
            // Only the best of them can be part of the best orders: each has a whole order of its own.
            steps.sort_by(|one, other| other.value.total_cmp(&one.value));
            steps.truncate(most - found.len());
            for step in steps {
                made += 1;
                let mut settled = partial.settled.clone();
                settled.extend(step.run);
                let mut open = partial.open.clone();
                open.extend(step.open);
                heap.push(Partial { best: partial.best / value * step.value, settled, open, number: made });
            }
        }
        found
    }

    fn order(&self, partial: &Partial) -> Order {
        let question = self.shape.question;
        let mut feeds: Vec<Node> = question.known.iter().map(|known| known.unwrap_or(question.root())).collect();
        for (at, feed) in &partial.settled {
            feeds[*at] = *feed;
        }
        Order { weight: question.weight_of(&feeds), feeds }
    }

    /// The best that something open can become.
    fn value(&self, open: Open) -> f64 {
        match open {
            Open::Below(node, set) => self.below_at(node, set).weightiest,
            Open::Joined(node, position, set) => self.joined[node][position][set as usize].weightiest,
            Open::Runs(node, level, set) => self.runs[node][set as usize * self.shape.levels(node) + level].weightiest,
        }
    }

    /// Every way to carry on from something open that leads to an order.
    fn steps(&self, open: Open) -> Vec<Step> {
        let shape = self.shape;
        let mut steps = Vec::new();
        let mut add = |value: f64, run: Option<(usize, Node)>, open: Vec<Open>| {
            if value > 0.0 {
                steps.push(Step { value, run, open });
            }
        };
        match open {
            Open::Below(node, set) => {
                add(self.value(open), None, vec![Open::Joined(node, shape.feeds[node].len(), set)]);
            }
            Open::Joined(node, 0, set) => {
                for (level, share) in shape.onward[node].shares.iter().enumerate() {
                    let runs = Open::Runs(node, level, set);
                    add(share * self.value(runs), None, vec![runs]);
                }
            }
            Open::Joined(node, position, set) => {
                let fed = shape.feeds[node][position - 1];
                for part in subsets(set) {
                    let (behind, rest) = (Open::Below(fed, part), Open::Joined(node, position - 1, set & !part));
                    add(self.value(behind) * self.value(rest), None, vec![rest, behind]);
                }
            }
            Open::Runs(_, 0, 0) => add(1.0, None, Vec::new()),
            Open::Runs(node, level, set) => {
                let last = shape.levels(node) - 1;
                for (first, others) in divisions(set) {
                    if self.run_at(node, first).is_none() {
                        continue;
                    }
                    for bit in Shape::bits(first) {
                        let head = shape.heads[bit];
                        let behind = Open::Below(head, first & !(1 << bit));
                        let run = shape.question.weight[node][head] * self.value(behind);
                        if level > 0 {
                            let rest = Open::Runs(node, level - 1, others);
                            add(run * self.value(rest), Some((head, node)), vec![rest, behind]);
                        }
                        if level == last {
                            let rest = Open::Runs(node, last, others);
                            let value = run * shape.onward[node].beyond * self.value(rest);
                            add(value, Some((head, node)), vec![rest, behind]);
                        }
                    }
                }
            }
        }
        steps
    }
}
