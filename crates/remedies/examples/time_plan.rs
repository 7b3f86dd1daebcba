//! Times the five steps of a plan on generated dwellings: `cargo run --release -p remedies --example time_plan`.

#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]
#![allow(dead_code, reason = "it makes dwellings as the tests do, and no more")]

#[path = "../tests/plans/generated.rs"]
mod generated;
#[path = "../tests/plans/random.rs"]
mod random;

use dwelling::{BoxIndex, CableKind, CircuitIndex, DeviceBox, Dwelling, Feed, Holding, PanelIndex, Run};
use estimate::PriceBook;
use generated::{Size, generated};
use remedies::{Facts, LawAnswer, Planned, assemble, plan_answer};
use rulebook::CodeInForce;
use std::time::Instant;

const DWELLINGS: u64 = 31;

fn main() {
    println!("median and worst of {DWELLINGS} dwellings, milliseconds");
    for (boxes, circuits, routes) in [(30, 6, 6), (60, 10, 12), (150, 16, 20)] {
        let size = Size { boxes: (boxes, boxes), circuits: (circuits, circuits), routes: (routes, routes) };
        let times = (0..DWELLINGS).map(|seed| times_of(&generated(4_000_000 + seed, size)));
        print(&format!("{boxes} boxes, {routes} routes"), times.collect());
    }
    for boxes in [300, 1_500] {
        print(&format!("chain of {boxes}"), vec![times_of(&chain(boxes))]);
    }
}

/// One circuit of ungrounded three-slot receptacles on which each box feeds the next.
fn chain(boxes: usize) -> (Dwelling, CodeInForce) {
    let (mut dwelling, code) = generated(11, Size { boxes: (2, 2), circuits: (1, 1), routes: (0, 0) });
    dwelling.circuits[0].cable = CableKind::NmTwoWire;
    let plain = DeviceBox {
        circuit: Some(CircuitIndex(0)),
        run: Run::default(),
        holds: Holding::ThreeSlot,
        found: Vec::new(),
        serves: Vec::new(),
        do_not_disturb: false,
        ..dwelling.boxes[0].clone()
    };
    let fed_by = |at| if at == 0 { Feed::Panel(PanelIndex(0)) } else { Feed::Box(BoxIndex(at - 1)) };
    let at = |at| DeviceBox { id: format!("B{at}"), fed_by: Some(fed_by(at)), ..plain.clone() };
    dwelling.boxes = (0..boxes).map(at).collect();
    (dwelling, code)
}

/// Milliseconds of gathering, assembling, searching, checking and answering.
fn times_of((dwelling, code): &(Dwelling, CodeInForce)) -> [f64; 5] {
    let book = PriceBook::demo();
    let start = Instant::now();
    let facts = Facts::gather(dwelling, code.clone());
    let gathered = start.elapsed();
    let start = Instant::now();
    let assembled = assemble(&facts, &book);
    let put_together = start.elapsed();
    let start = Instant::now();
    let outcome = optimizer::solve(&assembled.problem, &optimizer::Limits::nodes(400_000));
    let solved = start.elapsed();
    let start = Instant::now();
    assert!(outcome.solution().is_some_and(|solution| optimizer::check(&assembled.problem, solution).is_ok()));
    let checked = start.elapsed();
    let plan = Planned::of(dwelling, code.clone(), &book);
    let start = Instant::now();
    let answer = plan.as_ref().map(|plan| plan_answer(plan, &LawAnswer::of(&plan.facts.code), true));
    let answered = start.elapsed();
    assert!(answer.is_ok_and(|answer| answer.openings.len() == dwelling.boxes.len()));
    [gathered, put_together, solved, checked, answered].map(|time| time.as_secs_f64() * 1_000.0)
}

fn print(what: &str, times: Vec<[f64; 5]>) {
    let step = |at: usize| {
        let mut sorted: Vec<f64> = times.iter().map(|times| times[at]).collect();
        sorted.sort_by(f64::total_cmp);
        format!("{:>9.2} {:>9.2}", sorted[sorted.len() / 2], sorted[sorted.len() - 1])
    };
    let steps = ["gather", "assemble", "solve", "check", "answer"].into_iter().enumerate();
    let steps: Vec<String> = steps.map(|(at, name)| format!("{name} {}", step(at))).collect();
    println!("{what:<22} {}", steps.join("  "));
}
