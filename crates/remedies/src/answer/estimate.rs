//! The estimate of a plan: piece by piece with the lines of each, what is bought, what is worked, and what the owner pays.

use super::dangers::NotPricedAnswer;
use super::lines::{AS_STATED, LineAnswer, LineOf};
use super::opening::MoneyAnswer;
use super::owner::OwnerPriceAnswer;
use super::plan::{PlanAnswer, PlanStatus};
use super::pricing_notes::{pricing_notes, without_price};
use crate::in_words;
use crate::planned::Planned;
use dwelling::names;
use estimate::{Counter, Line, Material, WorkCondition, added_up, packs_for};
use schemars::JsonSchema;
use serde::Serialize;

/// The estimate of a plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct EstimateAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// What the job is called.
    pub job: String,
    /// The offer it is of, counted from 1; null where it is of the plan itself.
    pub offer: Option<usize>,
    /// How far the plan can be relied on.
    pub status: PlanStatus,
    /// Whether the price is of invented demo figures.
    pub demo_prices: bool,
    /// Everything that costs something: what is dangerous, panel ends, openings by room in walking order, routes.
    pub pieces: Vec<PieceAnswer>,
    /// What is bought, counter by counter.
    pub material: Vec<TakeoffAnswer>,
    /// What is worked.
    pub labour: Vec<LabourAnswer>,
    /// The price of all material and labour.
    pub price: MoneyAnswer,
    /// What the owner pays.
    pub owner: OwnerPriceAnswer,
    /// What was found dangerous and the price holds nothing for.
    pub not_priced: Vec<NotPricedAnswer>,
    /// The names of what is bought or worked and the price book has no price for: it adds nothing to the sums.
    pub without_price: Vec<&'static str>,
    /// What the price takes for granted.
    pub notes: Vec<String>,
}

names! {
    /// What a piece of an estimate is.
    PieceAt {
        /// Something dangerous that is put right whatever else is chosen.
        Danger = "danger",
        /// The panel end of a circuit or multiwire set.
        Panel = "panel",
        /// An opening.
        Opening = "opening",
        /// A route.
        Route = "route",
    }
}

/// A piece of an estimate: something dangerous, a panel end, an opening or a route.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PieceAnswer {
    /// What it is.
    pub at: PieceAt,
    /// The circuits, the box, the panel or the route; of something dangerous in words, such as `circuit 3`.
    pub id: String,
    /// The room in which its things are needed: of a route that of the box it leads to; null where unknown.
    pub room: Option<String>,
    /// What is done, in plain words.
    pub says: String,
    /// Whether its price is an allowance: how far the work goes can be known only when boxes are open.
    pub allowance: bool,
    /// What it costs.
    pub price: MoneyAnswer,
    /// The lines of that price.
    pub lines: Vec<LineAnswer>,
}

/// A thing that is bought.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TakeoffAnswer {
    /// Its name in the price book.
    pub line: &'static str,
    /// What it is.
    pub says: &'static str,
    /// The counter at which it is bought.
    pub counter: Counter,
    /// Pieces or feet.
    pub of: LineOf,
    /// How many pieces are fitted, or how many feet are measured: what is charged.
    pub measured: u32,
    /// How many are needed: feet with their waste, rounded up.
    pub needed: u64,
    /// The packs to buy, the largest first; empty where it is bought by the piece or the foot.
    pub packs: Vec<PackAnswer>,
    /// How many are bought so.
    pub bought: u64,
    /// What one costs, in cents, before waste, markup and tax.
    pub cost_cents: i64,
    /// What one is charged at, in cents.
    pub unit_cents: i64,
    /// What all that is measured is charged at, in cents.
    pub cents: i64,
}

/// So many packs of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PackAnswer {
    /// Pieces or feet in one.
    pub size: u32,
    /// How many.
    pub count: u32,
}

/// A piece of work that is done, as often as the whole plan does it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LabourAnswer {
    /// Its name in the price book; `as-stated` for work whose minutes the survey states.
    pub line: &'static str,
    /// What it is.
    pub says: &'static str,
    /// What makes it longer or shorter than plain; null where nothing that is known does.
    pub condition: Option<WorkCondition>,
    /// The minutes of the price book, or those that the survey states.
    pub book_minutes: u32,
    /// What the condition makes of them, in percent.
    pub percent: u32,
    /// Whether it takes an electrician and a helper.
    pub for_two: bool,
    /// What an hour of it costs, in cents, a helper's included.
    pub hour_cents: i64,
    /// How often.
    pub times: u32,
    /// What it costs once, in cents.
    pub unit_cents: i64,
    /// What all of it costs, in cents.
    pub cents: i64,
    /// Minutes on the site, rounded half up.
    pub minutes: u32,
}

/// The estimate of a plan and its answer.
#[must_use]
pub fn estimate_answer(plan: &Planned, answer: &PlanAnswer) -> EstimateAnswer {
    let all = added_up(all_lines(plan));
    let mut material: Vec<TakeoffAnswer> = all.iter().filter_map(|line| takeoff(plan, *line)).collect();
    material.sort_by_key(|thing| thing.counter);
    EstimateAnswer {
        format: 1,
        job: answer.job.name.clone(),
        offer: answer.offers.as_ref().map(|offers| offers.taken),
        status: answer.status,
        demo_prices: answer.totals.demo_prices,
        pieces: pieces(plan, answer),
        material,
        labour: all.iter().filter_map(|line| labour(plan, *line)).collect(),
        price: answer.totals.price,
        owner: answer.totals.owner,
        not_priced: answer.not_priced.clone(),
        without_price: without_price(plan),
        notes: pricing_notes(plan),
    }
}

/// Every line of the price of a plan.
pub(super) fn all_lines(plan: &Planned) -> Vec<Line> {
    let boxes = plan.facts.dwelling.box_indices().flat_map(|at| plan.chosen(at).lines.clone());
    let panels = (0..plan.facts.trees.len()).flat_map(|tree| plan.chosen_at_panel(tree).lines.clone());
    let routes = plan.solution.links.iter().flat_map(|link| plan.lines_of(link));
    let dangers = plan.danger_repairs().into_iter().flat_map(|repair| repair.lines.clone());
    boxes.chain(panels).chain(routes).chain(dangers).collect()
}

fn pieces(plan: &Planned, answer: &PlanAnswer) -> Vec<PieceAnswer> {
    let dwelling = plan.facts.dwelling;
    let room_of_panel = |id: &str| {
        let panel = dwelling.panels.iter().find(|panel| panel.id == id);
        panel.and_then(|panel| panel.room).map(|room| dwelling.room(room).id.clone())
    };
    let room_of_box =
        |id: &str| dwelling.box_named(id).map(|at| dwelling.room(dwelling.device_box(at).room).id.clone());
    let dangers = answer.dangers.iter().map(|danger| PieceAnswer {
        at: PieceAt::Danger,
        id: in_words::place_of_danger(danger),
        room: match danger.at {
            "box" => room_of_box(&danger.id),
            "panel" => room_of_panel(&danger.id),
            _ => None,
        },
        says: in_words::danger(danger),
        allowance: danger.allowance,
        price: danger.price,
        lines: danger.lines.clone(),
    });
    let panels = answer.circuits.iter().map(|circuit| PieceAnswer {
        at: PieceAt::Panel,
        id: circuit.circuits.join(" + "),
        room: room_of_panel(&circuit.panel),
        says: format!("{}: {}", circuit.panel, in_words::at_panel(circuit.at_panel)),
        allowance: false,
        price: circuit.price,
        lines: circuit.lines.clone(),
    });
    let openings = answer.openings.iter().map(|opening| PieceAnswer {
        at: PieceAt::Opening,
        id: opening.box_id.clone(),
        room: Some(opening.room.clone()),
        says: in_words::order(opening),
        allowance: false,
        price: opening.price,
        lines: opening.lines.clone(),
    });
    let routes = answer.routes.iter().map(|route| PieceAnswer {
        at: PieceAt::Route,
        id: route.id.clone(),
        room: room_of_box(&route.to),
        says: format!("{} from {} to {}, {}", route.size, route.from, route.to, route.length),
        allowance: false,
        price: route.price,
        lines: route.lines.clone(),
    });
    dangers.chain(panels).chain(openings).chain(routes).filter(|piece| !piece.lines.is_empty()).collect()
}

fn takeoff(plan: &Planned, line: Line) -> Option<TakeoffAnswer> {
    let Line::Thing(thing, measured) = line else { return None };
    let needed = needed(plan, thing, measured);
    let bought = packs_for(needed, plan.book.packs(thing));
    let unit = plan.book.charged(thing);
    Some(TakeoffAnswer {
        line: thing.name(),
        says: thing.meaning().trim(),
        counter: thing.counter(),
        of: if thing.is_by_the_foot() { LineOf::Feet } else { LineOf::Pieces },
        measured,
        needed,
        packs: bought.packs.iter().map(|(size, count)| PackAnswer { size: *size, count: *count }).collect(),
        bought: bought.quantity,
        cost_cents: plan.book.cost(thing).0,
        unit_cents: unit.0,
        cents: (unit * i64::from(measured)).0,
    })
}

/// Feet with their waste, rounded up to the foot.
fn needed(plan: &Planned, thing: Material, measured: u32) -> u64 {
    let waste = if thing.is_by_the_foot() { plan.book.charges().waste } else { estimate::Percent::default() };
    let parts = i128::from(measured) * waste.on_top();
    u64::try_from((parts + estimate::Percent::ONE - 1) / estimate::Percent::ONE).unwrap_or(u64::MAX)
}

fn labour(plan: &Planned, line: Line) -> Option<LabourAnswer> {
    let (name, says, condition, book_minutes, for_two) = match line {
        Line::Thing(..) => return None,
        Line::Work(task, _, condition) => {
            (task.name(), task.meaning().trim(), condition, plan.book.minutes(task), plan.book.takes_two(task))
        }
        Line::AsStated(minutes) => (AS_STATED, "Work whose minutes the survey states.", None, minutes, false),
    };
    let unit = plan.book.unit(line);
    let all = unit * line.quantity();
    let hour = match line {
        Line::Work(task, ..) => plan.book.hour_of(task),
        _ => plan.book.hour(),
    };
    Some(LabourAnswer {
        hour_cents: hour.0,
        line: name,
        says,
        condition,
        book_minutes,
        percent: condition.map_or(100, |condition| plan.book.percent(condition)),
        for_two,
        times: line.quantity(),
        unit_cents: unit.labour.0,
        cents: all.labour.0,
        minutes: all.minutes(),
    })
}
