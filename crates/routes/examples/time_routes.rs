//! Times the building of the route graph: `cargo run --release -p routes --example time_routes`.

#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "it measures and prints")]

use dwelling::Dwelling;
use routes::RouteGraph;
use std::time::Instant;
use survey::{Format, read};

const RUNS: usize = 101;
/// Rooms are squares of so many feet, three to a row.
const ROOM: usize = 12;

fn main() {
    println!("boxes  places  edges  median ms  worst ms");
    for boxes in [40, 150, 500, 2_000] {
        let Some(dwelling) = house(boxes) else { continue };
        let mut times = Vec::new();
        let mut size = (0, 0);
        for _ in 0..RUNS {
            let start = Instant::now();
            let graph = RouteGraph::of(&dwelling);
            times.push(start.elapsed().as_secs_f64() * 1_000.0);
            size = (graph.places.len(), graph.edges.len());
        }
        times.sort_by(f64::total_cmp);
        println!("{boxes:>5}  {:>6}  {:>5}  {:>9.2}  {:>8.2}", size.0, size.1, times[RUNS / 2], times[RUNS - 1]);
    }
}

/// A house of rooms with five boxes each, an attic over it and a crawl space under it.
fn house(boxes: usize) -> Option<Dwelling> {
    let mut text = String::from(
        "format = 1\n[job]\nname = \"x\"\n[[panel]]\nid = \"main\"\nroom = \"r0\"\nat = [0, 5]\n[[circuit]]\nid = \"1\"\npanel = \"main\"\n",
    );
    for room in 0..boxes.div_ceil(5) {
        let (x, y) = ((room % 3) * ROOM, (room / 3) * ROOM);
        let (right, top) = (x + ROOM, y + ROOM);
        text.push_str(&format!(
            "[[room]]\nid = \"r{room}\"\nfloor = 1\noutline = [[{x}, {y}], [{right}, {y}], [{right}, {top}], [{x}, {top}]]\n\
             above = \"attic\"\nbelow = \"crawl space\"\n"
        ));
    }
    for index in 0..boxes {
        let (room, place) = (index / 5, index % 5);
        let (x, y) = ((room % 3) * ROOM, (room / 3) * ROOM);
        let (x, y) = [(x + 3, y), (x + 9, y), (x + ROOM, y + 5), (x + 4, y + ROOM), (x, y + 7)][place];
        text.push_str(&format!("[[box]]\nid = \"b{index}\"\nroom = \"r{room}\"\ncircuit = \"1\"\nat = [{x}, {y}]\n"));
    }
    read(text.as_bytes(), Format::Toml).dwelling
}
