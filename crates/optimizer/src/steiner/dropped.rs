//! Lines that a certificate leaves out, each with the walk that replaces it.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::certificate::Dropped;
use super::instance::{Cost, Instance};

/// Nodes and lines that one search looks at.
const EFFORT: usize = 2_000;
const UNSEEN: (Cost, Cost) = (Cost::MAX, Cost::MAX);

/// Lines of an undirected instance without prizes that some cheapest tree does without, the dearest first: a walk between its
/// ends, whose steps from terminal to terminal are no longer than the line, does the same. No line of `kept` is dropped.
pub(crate) fn droppable(instance: &Instance, kept: &[usize]) -> Vec<Dropped> {
    if !instance.is_undirected() || instance.prize_by_node().iter().any(|&prize| prize > 0) {
        return Vec::new();
    }
    let mut walks = Walks::new(instance);
    let mut order: Vec<usize> = (0..instance.lines.len()).filter(|line| kept.binary_search(line).is_err()).collect();
    order.sort_by_key(|&line| (Reverse(instance.lines[line].there), line));
    let mut dropped = Vec::new();
    for line in order {
        if let Some(walk) = walks.around(line) {
            walks.gone[line] = true;
            dropped.push(Dropped { line, walk });
        }
    }
    dropped
}

struct Walks<'a> {
    instance: &'a Instance,
    /// By node: its lines and where they lead.
    near: Vec<Vec<(usize, usize)>>,
    terminal: Vec<bool>,
    gone: Vec<bool>,
    label: Vec<(Cost, Cost)>,
    touched: Vec<usize>,
}

impl<'a> Walks<'a> {
    fn new(instance: &'a Instance) -> Self {
        let mut near = vec![Vec::new(); instance.nodes];
        for (index, line) in instance.lines.iter().enumerate() {
            near[line.from].push((index, line.to));
            near[line.to].push((index, line.from));
        }
        let mut terminal = vec![false; instance.nodes];
        instance.terminals.iter().chain(&instance.root).for_each(|&node| terminal[node] = true);
        Self {
            instance,
            near,
            terminal,
            gone: vec![false; instance.lines.len()],
            label: vec![UNSEEN; instance.nodes],
            touched: Vec::new(),
        }
    }

    /// A walk that replaces a line, by its lines in order.
    fn around(&mut self, line: usize) -> Option<Vec<usize>> {
        for node in self.touched.drain(..) {
            self.label[node] = UNSEEN;
        }
        let (start, aim, most) =
            (self.instance.lines[line].from, self.instance.lines[line].to, self.instance.lines[line].there);
        self.label[start] = (0, 0);
        self.touched.push(start);
        // How each label was reached: the one before it and the line. A node may get a better one behind a terminal that its own
        // led to, so that nodes alone do not tell the walk.
        let mut reached: Vec<(usize, usize)> = vec![(0, line)];
        let mut heap = BinaryHeap::from([Reverse((0, 0, start, 0))]);
        let mut left = EFFORT;
        while let Some(Reverse((longest, step, node, mut place))) = heap.pop() {
            if self.label[node] != (longest, step) {
                continue;
            }
            if node == aim {
                let mut walk = Vec::new();
                while place > 0 {
                    walk.push(reached[place].1);
                    place = reached[place].0;
                }
                walk.reverse();
                return Some(walk);
            }
            let step = if self.terminal[node] { 0 } else { step };
            for &(along, to) in &self.near[node] {
                left = left.checked_sub(1)?;
                let next = step + self.instance.lines[along].there;
                let label = (longest.max(next), next);
                if along != line && !self.gone[along] && label.0 <= most && label < self.label[to] {
                    if self.label[to] == UNSEEN {
                        self.touched.push(to);
                    }
                    self.label[to] = label;
                    heap.push(Reverse((label.0, label.1, to, reached.len())));
                    reached.push((place, along));
                }
            }
        }
        None
    }
}
