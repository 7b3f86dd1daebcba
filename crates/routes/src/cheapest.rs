//! The cheapest way of one new cable through the graph: past junctions, never through a box or a panel on the way.

use crate::graph::{PlaceKind, RouteGraph};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A graph made ready to look for cheapest ways in, each edge at its own cost.
#[derive(Clone, Debug)]
pub struct CheapestWays<'a> {
    graph: &'a RouteGraph,
    costs: Vec<i64>,
    /// By place: the edges at it.
    at: Vec<Vec<usize>>,
}

impl<'a> CheapestWays<'a> {
    /// Makes a graph ready. An edge without a cost, or with one below zero, is not walked.
    #[must_use]
    pub fn new(graph: &'a RouteGraph, cost: impl Fn(usize) -> Option<i64>) -> Self {
        let costs: Vec<i64> = (0..graph.edges.len()).map(|edge| cost(edge).unwrap_or(-1)).collect();
        let mut at = vec![Vec::new(); graph.places.len()];
        for (position, edge) in graph.edges.iter().enumerate() {
            if costs[position] >= 0 {
                at[edge.from].push(position);
                at[edge.to].push(position);
            }
        }
        Self { graph, costs, at }
    }

    /// The edges of the cheapest way from one place to each of others, in the order they are walked; none where no way
    /// leads there. Of equal ways the one whose last edges were built first.
    #[must_use]
    pub fn ways(&self, from: usize, to: &[usize]) -> Vec<Option<Vec<usize>>> {
        let mut best: Vec<Option<(i64, usize)>> = vec![None; self.graph.places.len()];
        let mut settled = vec![false; self.graph.places.len()];
        let mut open = BinaryHeap::from([Reverse((0_i64, from))]);
        let mut missing = to.iter().filter(|place| **place != from).count();
        while let Some(Reverse((cost, place))) = open.pop() {
            if std::mem::replace(&mut settled[place], true) {
                continue;
            }
            missing -= to.iter().filter(|wanted| **wanted == place && place != from).count();
            if missing == 0 {
                break;
            }
            let passable = place == from || matches!(self.graph.places[place].is, PlaceKind::Junction(_));
            for edge in self.at[place].iter().filter(|_| passable) {
                let ends = &self.graph.edges[*edge];
                let next = if ends.from == place { ends.to } else { ends.from };
                let reached = (cost.saturating_add(self.costs[*edge]), *edge);
                if !settled[next] && best[next].is_none_or(|known| reached < known) {
                    best[next] = Some(reached);
                    open.push(Reverse((reached.0, next)));
                }
            }
        }
        to.iter().map(|place| if settled[*place] { self.back(from, *place, &best) } else { None }).collect()
    }

    fn back(&self, from: usize, to: usize, best: &[Option<(i64, usize)>]) -> Option<Vec<usize>> {
        let (mut way, mut at) = (Vec::new(), to);
        while at != from {
            let (_, edge) = best[at]?;
            way.push(edge);
            let ends = &self.graph.edges[edge];
            at = if ends.from == at { ends.to } else { ends.from };
        }
        way.reverse();
        Some(way)
    }
}
