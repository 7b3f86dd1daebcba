//! What a price rests on where the survey or the price book leaves something open, as sentences.

use super::estimate::all_lines;
use crate::network::Origin;
use crate::planned::Planned;
use dwelling::{BoxIndex, RoomIndex};
use estimate::{Line, WorkCondition};
use std::collections::BTreeSet;

/// What the prices of a plan take for granted.
pub(super) fn pricing_notes(plan: &Planned) -> Vec<String> {
    let mut list = Vec::new();
    let charges = plan.book.charges();
    for name in without_price(plan) {
        list.push(format!("no price in the book for `{name}`: it adds nothing to the sums, and has to be priced"));
    }
    if charges.trip.0 > 0 && plan.total().time.0 > 0 {
        list.push(format!(
            "{} for the trip of each working day of {} hours is charged for the days of this plan, and steers no choice: among \
             plans that cost nearly as much, one could take a day less",
            charges.trip, charges.hours_a_day
        ));
    }
    let by_wall = WorkCondition::ALL.iter().any(|condition| plan.book.percent(*condition) != 100);
    let unstated: Vec<&str> =
        walls_unstated(plan).iter().map(|room| plan.facts.dwelling.room(*room).id.as_str()).collect();
    if by_wall && !unstated.is_empty() {
        list.push(format!(
            "what the walls of {} are finished with is not stated: work in them is reckoned at the plain time, as in board",
            unstated.join(", ")
        ));
    }
    let stated = |link: &&optimizer::ChosenLink| matches!(plan.bought(link).origin, Origin::Stated(_));
    if by_wall && plan.solution.links.iter().any(|link| stated(&link)) {
        list.push(
            "a route that the survey states does not say what it leads through: it is reckoned at the plain time"
                .to_owned(),
        );
    }
    list
}

/// The names of what is bought or worked and the price book has no price for.
pub(super) fn without_price(plan: &Planned) -> Vec<&'static str> {
    let without = all_lines(plan).into_iter().filter_map(|line| plan.book.without_price(line));
    without.collect::<BTreeSet<&str>>().into_iter().collect()
}

/// The rooms in whose walls the plan works without anybody saying what these are finished with.
fn walls_unstated(plan: &Planned) -> BTreeSet<RoomIndex> {
    let dwelling = plan.facts.dwelling;
    let in_walls = |line: &Line| matches!(line, Line::Work(task, times, _) if *times > 0 && task.is_in_a_wall());
    let at_box = |at: BoxIndex| {
        let room = dwelling.device_box(at).room;
        let is_space = WorkCondition::of_place(dwelling.room(room).room_use).is_some();
        (!is_space && plan.chosen(at).lines.iter().any(in_walls)).then_some(room)
    };
    let boxes = dwelling.box_indices().filter_map(at_box);
    let edges = &plan.assembled.network.graph.edges;
    let walked = plan.solution.links.iter().flat_map(|link| match &plan.bought(link).origin {
        Origin::Built(walked) => walked.iter().filter_map(|(edge, _)| edges[*edge].walls).collect(),
        Origin::Stated(_) => Vec::new(),
    });
    boxes.chain(walked).filter(|room| dwelling.room(*room).walls.is_none()).collect()
}
