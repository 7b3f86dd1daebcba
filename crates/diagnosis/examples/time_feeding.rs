//! How long it takes to look at every feeding order of so many unknown boxes, and to rank every test: `--release`.

#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]

use diagnosis::feeding::{Fact, Onward, Question, weigh};
use std::time::Instant;

fn main() {
    for (boxes, facts) in [(8, 0), (10, 0), (12, 0), (12, 6), (13, 0), (14, 0)] {
        let mut question = Question {
            known: vec![None; boxes],
            weight: vec![vec![1.0; boxes]; boxes + 1],
            onward: vec![Onward { shares: vec![1.0, 1.0, 0.3, 0.1], beyond: 0.2 }; boxes + 1],
            facts: Vec::new(),
        };
        for (feed, weights) in question.weight.iter_mut().enumerate() {
            for (at, weight) in weights.iter_mut().enumerate() {
                *weight = 1.0 / (1.0 + feed.abs_diff(at) as f64);
            }
        }
        question.facts =
            (0..facts).map(|at| Fact { above: 4, below: 5 + at, holds: at % 2 == 0, said_by: 0 }).collect();
        let started = Instant::now();
        let times = 3;
        let mut orders = 0;
        for _ in 0..times {
            orders = weigh(&question, 3).map_or(0, |weighing| weighing.orders);
        }
        let each = started.elapsed() / times;
        println!("{boxes} boxes of unknown feed, {facts} facts: {orders} orders, {each:.1?}");
    }
}
