//! No way crosses what the survey does not open, in any house.

use dwelling::{Dwelling, Point, Space};
use proptest::prelude::*;
use routes::{EdgeKind, Layer, LinePoint, RouteGraph};
use survey::{Format, read};

const ROOM: i64 = 10;

/// A house of three by three rooms, 10 ft each, with what lies above and below each, and boxes at odd places.
fn house(above: &[usize], below: &[usize], boxes: &[(usize, usize)]) -> Dwelling {
    let spaces = ["attic", "roof", "closed", "another dwelling", "finished room", "unknown"];
    let under = ["crawl space", "slab", "closed", "crawl space", "basement", "unknown"];
    let mut text = String::from(
        "format = 1\n[job]\nname = \"x\"\n[[panel]]\nid = \"main\"\nroom = \"r0\"\nat = [0, 5]\n[[circuit]]\nid = \"1\"\npanel = \"main\"\n",
    );
    for room in 0..9_usize {
        let (x, y) = ((room % 3) as i64 * ROOM, (room / 3) as i64 * ROOM);
        let (right, top) = (x + ROOM, y + ROOM);
        text.push_str(&format!(
            "[[room]]\nid = \"r{room}\"\nfloor = 1\noutline = [[{x}, {y}], [{right}, {y}], [{right}, {top}], [{x}, {top}]]\n\
             above = \"{}\"\nbelow = \"{}\"\n",
            spaces[above[room] % spaces.len()],
            under[below[room] % under.len()],
        ));
    }
    for (index, (room, along)) in boxes.iter().enumerate() {
        let (x, y) = ((room % 3) as i64 * ROOM, (room / 3) as i64 * ROOM);
        let along = *along as i64;
        let at = match along / ROOM {
            0 => (x + along % ROOM, y),
            1 => (x + ROOM, y + along % ROOM),
            2 => (x + along % ROOM, y + ROOM),
            _ => (x, y + along % ROOM),
        };
        text.push_str(&format!(
            "[[box]]\nid = \"b{index}\"\nroom = \"r{room}\"\ncircuit = \"1\"\nat = [{}, {}]\n",
            at.0, at.1
        ));
    }
    let found = read(text.as_bytes(), Format::Toml);
    found.dwelling.unwrap_or_else(|| panic!("{:?}", found.diagnostics))
}

/// Whether a point lies inside or on the border of a room that opens to a layer: the rooms are squares.
fn is_open(dwelling: &Dwelling, layer: Layer, at: Point) -> bool {
    dwelling.rooms.iter().any(|room| {
        let opens = match layer {
            Layer::Attic => room.above == Some(Space::Attic),
            Layer::CrawlSpace => room.below == Some(Space::CrawlSpace),
            Layer::Basement => room.below == Some(Space::Basement),
            Layer::Wall | Layer::Surface => true,
        };
        let (low, high) = (room.outline[0], room.outline[2]);
        opens && (low.x..=high.x).contains(&at.x) && (low.y..=high.y).contains(&at.y)
    })
}

/// A hundred and one points along a stretch.
fn points(pair: &[LinePoint]) -> Vec<Point> {
    let part = |from: i64, to: i64, step: i64| electrical::Length::micrometres(from + (to - from) * step / 100);
    let (from, to) = (pair[0].at, pair[1].at);
    let coordinate = |step| Point {
        x: part(from.x.as_micrometres(), to.x.as_micrometres(), step),
        y: part(from.y.as_micrometres(), to.y.as_micrometres(), step),
    };
    (0..=100).map(coordinate).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn no_way_crosses_a_closed_place(
        above in prop::collection::vec(0..12_usize, 9),
        below in prop::collection::vec(0..6_usize, 9),
        boxes in prop::collection::vec((0..9_usize, 0..40_usize), 1..30),
    ) {
        // Half of the rooms have an attic.
        let above: Vec<usize> = above.into_iter().map(|space| space.saturating_sub(6)).collect();
        let dwelling = house(&above, &below, &boxes);
        let graph = RouteGraph::of(&dwelling);
        for edge in graph.edges.iter().filter(|edge| edge.kind == EdgeKind::Along) {
            for pair in edge.line.windows(2) {
                for at in points(pair) {
                    prop_assert!(is_open(&dwelling, pair[1].layer, at), "{:?} at {at:?}", edge.reason);
                }
            }
        }
        prop_assert!(graph.edges.iter().all(|edge| edge.from < graph.places.len() && edge.to < graph.places.len()));
        prop_assert_eq!(RouteGraph::of(&dwelling), graph);
    }
}
