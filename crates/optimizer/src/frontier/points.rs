//! A choice of a part as a point: what it costs, opens and is worth.

use crate::frontier::corners::Corners;
use crate::frontier::priced_part::{of_openings, of_worth};
use crate::frontier::prices::Prices;
use crate::frontier::tree_openings::{TreePoint, tree_points};
use crate::frontier::value::{Value, unbeaten};
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::problem::{Cost, Problem};
use crate::tree_solver::Chosen;
use crate::weight::{Weight, cost_of, weight_of};

/// A choice of a part.
#[derive(Clone, Debug)]
pub(super) struct Point {
    pub state: LinkState,
    /// By tree: the root option and what is chosen at each node; nothing where it is the lightest choice.
    pub trees: Option<Vec<(usize, Vec<Chosen>)>>,
}

/// Makes points of complete states.
pub(super) struct PointMaker<'p> {
    pub problem: &'p Problem,
    pub part: &'p Part<'p>,
    pub worth: &'p [i128],
    /// Whether choices at nodes or roots open walls: then one set of links has several points.
    trees_open_walls: bool,
}

impl<'p> PointMaker<'p> {
    pub fn new(problem: &'p Problem, part: &'p Part<'p>, worth: &'p [i128]) -> Self {
        let opens = |tree: &crate::part::PartTree<'_>| {
            let given = tree.compiled.given;
            let nodes = given.nodes.iter().flat_map(|node| &node.options);
            let roots = given.root_options.iter().map(|option| option.cost);
            nodes.map(|option| option.cost).chain(roots).any(|cost| cost.openings != 0)
        };
        Self { problem, part, worth, trees_open_walls: part.trees.iter().any(opens) }
    }

    /// What a complete state supplies is worth.
    pub fn worth_of(&self, state: &LinkState) -> i128 {
        let supplied = state.status.iter().zip(self.worth);
        supplied.filter(|(status, _)| matches!(status, Status::Fed(_))).map(|(_, worth)| worth).sum()
    }

    /// The openings that its links make.
    pub fn openings_of_links(&self, state: &LinkState) -> i64 {
        let fed = state.status.iter().zip(&state.grade);
        fed.map(|(status, grade)| match status {
            Status::Fed(arc) => {
                let costs = &self.problem.links[self.part.arcs[*arc].link].cost_by_grade;
                costs.get(*grade).map_or(0, |cost| cost.openings)
            }
            _ => 0,
        })
        .sum()
    }

    /// Adds the points of a complete state that weighs so much at prices.
    pub fn add(&self, prices: Prices, weight: Weight, state: &LinkState, corners: &mut Corners<Point>) {
        let (openings, worth) = (self.openings_of_links(state), self.worth_of(state));
        if !self.trees_open_walls {
            let weight = weight - of_openings(prices, openings) + of_worth(prices, worth);
            let value = Value { cents: cost_of(weight).cents, openings, worth };
            corners.add(value, || Point { state: state.clone(), trees: None });
            return;
        }
        let links: i64 =
            state.status.iter().zip(&state.grade).map(|(status, grade)| self.cents_of(*status, *grade)).sum();
        let mut sums = vec![(Value { cents: links, openings, worth }, Vec::new())];
        for place in 0..self.part.trees.len() {
            let points = tree_points(self.part, place, state);
            let pairs: Vec<(usize, &TreePoint)> =
                (0..sums.len()).flat_map(|sum| points.iter().map(move |point| (sum, point))).collect();
            let values: Vec<Value> = pairs.iter().map(|(sum, point)| sums[*sum].0.with(&point.value())).collect();
            let kept = unbeaten(&values).into_iter().map(|at| {
                let (sum, point) = pairs[at];
                let mut trees: Vec<(usize, Vec<Chosen>)> = sums[sum].1.clone();
                trees.push((point.root, point.chosen.clone()));
                (values[at], trees)
            });
            sums = kept.collect();
        }
        for (value, trees) in sums {
            corners.add(value, || Point { state: state.clone(), trees: Some(trees) });
        }
    }

    /// The point that is cheapest at prices.
    pub fn lightest<'c>(&self, prices: Prices, corners: &'c Corners<Point>) -> Option<&'c LinkState> {
        let weight = |value: &Value| {
            weight_of(Cost { cents: value.cents, ..Cost::default() }) + of_openings(prices, value.openings)
                - of_worth(prices, value.worth)
        };
        corners.points.iter().min_by_key(|(value, _)| weight(value)).map(|(_, point)| &point.state)
    }

    fn cents_of(&self, status: Status, grade: usize) -> i64 {
        let Status::Fed(arc) = status else { return 0 };
        let costs = &self.problem.links[self.part.arcs[arc].link].cost_by_grade;
        costs.get(grade).map_or(0, |cost| cost.cents)
    }
}
