//! How long the whole rulebook takes for a dwelling of 60 boxes: `cargo run --release -p rulebook --example time_rules`.
#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "a stopwatch for people, no part of the crate")]

use dwelling::{CableInBox, CableKind, Cables, Clamps, Equipment, GroundFact, Holding, RoomUse};
use electrical::{Amperes, ConductorMetal, Gauge, Volume};
use rulebook::{CodeInForce, Edition, FillContents, Opening, judge};
use std::time::Instant;

const BOXES: usize = 60;
const TIMES: u32 = 200;

fn openings() -> Vec<Opening> {
    let grounds = [GroundFact::None, GroundFact::Connected, GroundFact::Unknown, GroundFact::CutOff, GroundFact::None];
    let cable = CableInBox {
        kind: CableKind::NmTwoWire,
        gauge: Some(Gauge::AWG_14),
        metal: ConductorMetal::Copper,
        insulated: 2,
    };
    let rooms = RoomUse::ALL.iter().cycle().zip(grounds.iter().cycle());
    let opening = |(at, (room, ground)): (usize, (&RoomUse, &GroundFact))| Opening {
        holds: if at % 3 == 0 { Holding::ThreeSlot } else { Holding::TwoSlot },
        breaker: Some(Amperes::new(if at % 2 == 0 { 15 } else { 20 })),
        gauge: Some(Gauge::AWG_14),
        ground: *ground,
        serves: if at % 4 == 0 { vec![Equipment::Computer] } else { Vec::new() },
        on_shared_neutral: at % 7 == 0,
        fill: FillContents {
            volume: Some(Volume::hundredths(1800)),
            cables: Cables { known: vec![cable; 2], complete: true },
            clamps: Some(Clamps::Inside),
            gangs: 1,
            ..FillContents::default()
        },
        ..Opening::unexamined(*room)
    };
    rooms.take(BOXES).enumerate().map(opening).collect()
}

fn main() {
    let openings = openings();
    for edition in Edition::ALL {
        let code = CodeInForce::published(edition);
        let started = Instant::now();
        let mut conditions = 0;
        for _ in 0..TIMES {
            let judgements = openings.iter().map(|opening| judge(opening, &code));
            conditions += judgements
                .flat_map(|judgement| judgement.remedies)
                .map(|verdict| verdict.conditions.len())
                .sum::<usize>();
        }
        let each = started.elapsed() / TIMES;
        println!("{edition}: {each:?} for {BOXES} boxes, {} conditions", conditions / TIMES as usize);
    }
}
