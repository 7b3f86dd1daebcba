//! Dwellings made up by a seed, as surveys: varied in kind and size, for proofs of exactness and for benchmarks.

mod chance;
mod contents;
mod house;
mod ways;
mod wiring;

use chance::Chance;
use contents::{contents, quarters};
pub use house::Kind;
use house::{Spot, rooms, spots};
use rulebook::Edition;
use serde_json::{Map, Value, json};
use ways::{Ends, box_id, panel_id, source_id, ways};
use wiring::{Circuit, wiring};

/// The kind of the dwelling of a seed: they take turns.
pub fn kind_of(seed: u64) -> Kind {
    Kind::ALL[(seed % Kind::ALL.len() as u64) as usize]
}

/// Whether the survey holds a plan of the floors: where rooms, boxes, panels and ground sources lie. From one that does,
/// the planner builds ways of its own beside those that are written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plan {
    /// It does.
    Drawn,
    /// It does not.
    NotDrawn,
}

/// The survey of the dwelling of a seed, with so many boxes.
pub fn survey(boxes: usize, seed: u64, plan: Plan) -> Value {
    let mut survey = drawn_survey(boxes, seed);
    if plan == Plan::NotDrawn {
        for list in ["panel", "room", "box", "source"] {
            for row in survey[list].as_array_mut().into_iter().flatten().filter_map(Value::as_object_mut) {
                row.remove("at");
                row.remove("outline");
            }
        }
    }
    survey
}

fn drawn_survey(boxes: usize, seed: u64) -> Value {
    let kind = kind_of(seed);
    let mut chance = Chance::new(seed.wrapping_mul(1_000_003).wrapping_add(boxes as u64));
    let rooms = rooms(&mut chance, kind, boxes);
    let spots = spots(&mut chance, &rooms, boxes);
    let panels: Vec<Spot> = (0..if boxes > 60 { chance.within(1, 2) } else { 1 })
        .map(|_| chance.below(spots.len()))
        .map(|near| spots[near])
        .collect();
    let (circuits, feeding) = wiring(&mut chance, kind, &rooms, &spots, &panels);
    let mut boxes: Vec<Map<String, Value>> = Vec::new();
    for (at, spot) in spots.iter().enumerate() {
        let mut row = Map::new();
        row.insert("id".into(), json!(box_id(at)));
        row.insert("room".into(), json!(room_id(spot.room)));
        row.insert("circuit".into(), json!((feeding[at].circuit + 1).to_string()));
        if !chance.percent(2) {
            row.insert("fed_by".into(), feeding[at].parent.map_or(json!("panel"), |parent| json!(box_id(parent))));
        }
        if let Some(run) = run(&feeding[at]) {
            row.insert("run".into(), run);
        }
        row.append(&mut contents(&mut chance, kind, &rooms[spot.room], *spot, &feeding[at]));
        boxes.push(row);
    }
    let receptacles: Vec<bool> =
        boxes.iter().map(|row| !matches!(row["holds"].as_str(), Some("switch" | "luminaire" | "splice"))).collect();
    let (sources, source_spots) = sources(&mut chance, &spots, panels.len());
    let ends = Ends {
        spots: &spots,
        feeding: &feeding,
        circuits: &circuits,
        receptacles: &receptacles,
        panels: &panels,
        sources: &source_spots,
    };
    let routes = ways(&mut chance, &ends);
    json!({
        "format": 1,
        "job": job(&mut chance, kind, boxes.len(), seed),
        "panel": panels.iter().enumerate().map(|(at, spot)| panel(&mut chance, kind, at, *spot)).collect::<Vec<_>>(),
        "circuit": circuits.iter().enumerate().map(|(at, circuit)| circuit_row(circuit, at)).collect::<Vec<_>>(),
        "room": rooms.iter().enumerate().map(|(at, room)| room_row(room, at)).collect::<Vec<_>>(),
        "box": boxes,
        "source": sources,
        "route": routes,
    })
}

fn job(chance: &mut Chance, kind: Kind, boxes: usize, seed: u64) -> Value {
    let (built, dwelling_use) = match kind {
        Kind::Bungalow => (1956, "one-family"),
        Kind::TwoStorey => (1968, "one-family"),
        Kind::Flat => (1938, "apartment"),
        Kind::KnobAndTube => (1924, "one-family"),
    };
    let edition = chance.weighted(&[
        (1, Edition::Nec2008),
        (1, Edition::Nec2011),
        (2, Edition::Nec2014),
        (3, Edition::Nec2017),
        (4, Edition::Nec2020),
        (3, Edition::Nec2023),
        (1, Edition::Nec2026),
    ]);
    let name = format!("generated {} {seed} of {boxes} boxes", kind.name());
    let mut row = json!({ "name": name, "built": built, "use": dwelling_use, "edition": edition.year() });
    if let Some(row) = row.as_object_mut() {
        if chance.percent(30) {
            row.insert("outlets_behind_one_device".into(), json!(chance.within(2, 8)));
        }
        if chance.percent(20) {
            row.insert("leakage_percent".into(), json!(chance.pick(&[25, 50, 75])));
        }
    }
    row
}

fn panel(chance: &mut Chance, kind: Kind, at: usize, spot: Spot) -> Value {
    let made_for_it: &[&str] = match (kind, chance.below(4)) {
        (Kind::KnobAndTube, 0..=2) | (_, 0) => &[],
        (Kind::Flat, 1) => &["gfci"],
        (_, 1) => &["gfci", "afci", "dual"],
        (_, 2) => &["gfci", "dual", "gfci-2p", "dual-2p"],
        _ => &["gfci", "afci", "dual", "gfci-2p", "afci-2p", "dual-2p"],
    };
    json!({
        "id": panel_id(at),
        "overcurrent": "breakers",
        "made_for_it": made_for_it,
        "service": at == 0,
        "ground_bar": !chance.percent(8),
        "room_beside": chance.percent(50),
        "room": room_id(spot.room),
        "at": [quarters(spot.at.0), quarters(spot.at.1)],
    })
}

fn circuit_row(circuit: &Circuit, at: usize) -> Value {
    let mut row = json!({
        "id": (at + 1).to_string(),
        "panel": panel_id(circuit.panel),
        "breaker": format!("{} A", circuit.amperes),
        "cable": circuit.cable,
        "metal": circuit.metal,
    });
    if let Some(row) = row.as_object_mut() {
        if let Some(gauge) = circuit.gauge {
            row.insert("gauge".into(), json!(gauge));
        }
        if let Some(partner) = circuit.partner {
            row.insert("shares_neutral_with".into(), json!((partner + 1).to_string()));
        }
    }
    row
}

fn room_id(at: usize) -> String {
    format!("R{}", at + 1)
}

fn room_row(room: &house::Room, at: usize) -> Value {
    let ((x, y), (width, depth)) = (room.corner, room.size);
    let corner = |x: i64, y: i64| [quarters(x), quarters(y)];
    let mut row = json!({
        "id": room_id(at),
        "use": room.room_use,
        "floor": room.floor,
        "outline": [corner(x, y), corner(x + width, y), corner(x + width, y + depth), corner(x, y + depth)],
        "above": room.above,
        "below": room.below,
    });
    if let Some(row) = row.as_object_mut() {
        let known = [
            ("ceiling", room.ceiling.map(|height| json!(height))),
            ("walls", room.walls.map(|finish| json!(finish))),
            ("insulated", room.insulated.map(|there| json!(there))),
            ("fire_blocks", room.fire_blocks.map(|there| json!(there))),
        ];
        row.extend(known.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?))));
    }
    row
}

fn run(feeding: &wiring::Feeding) -> Option<Value> {
    let mut run = Map::new();
    if let Some(cable) = feeding.cable {
        run.insert("cable".into(), json!(cable));
    }
    if feeding.shared_neutral {
        run.insert("shared_neutral".into(), json!(true));
    }
    (!run.is_empty()).then_some(Value::Object(run))
}

/// Places to take a ground from, each near some box.
fn sources(chance: &mut Chance, spots: &[Spot], panels: usize) -> (Vec<Value>, Vec<Spot>) {
    let mut rows = Vec::new();
    let mut places = Vec::new();
    for at in 0..chance.weighted(&[(3, 0), (4, 1), (2, 2)]) {
        let kind = chance.pick(&["water-pipe", "electrode-conductor", "electrode-system", "lone-rod", "other-metal"]);
        let spot = spots[chance.below(spots.len())];
        let mut row = json!({
            "id": source_id(at),
            "kind": kind,
            "panel": panel_id(chance.below(panels)),
            "verified": chance.percent(80),
            "room": room_id(spot.room),
            "at": [quarters(spot.at.0), quarters(spot.at.1)],
        });
        if let (Some(row), "water-pipe") = (row.as_object_mut(), kind) {
            row.insert("from_entry".into(), json!(chance.pick(&["3 ft", "9 ft"])));
        }
        rows.push(row);
        places.push(spot);
    }
    (rows, places)
}

#[cfg(test)]
mod tests {
    use super::*;
    use survey::{Format, Severity, read};

    #[test]
    fn every_kind_of_every_size_reads_without_a_mistake() {
        for (boxes, seeds) in [(10, 0..40), (40, 0..40), (150, 0..8), (2_000, 0..4)] {
            for seed in seeds {
                let plan = if seed % 3 == 0 { Plan::NotDrawn } else { Plan::Drawn };
                let text = survey(boxes, seed, plan).to_string();
                let found = read(text.as_bytes(), Format::Json);
                let errors: Vec<_> =
                    found.diagnostics.iter().filter(|found| found.severity == Severity::Error).collect();
                assert!(errors.is_empty(), "{boxes} boxes, seed {seed}: {errors:?}");
                assert_eq!(found.dwelling.unwrap().boxes.len(), boxes);
            }
        }
    }

    #[test]
    fn one_seed_gives_the_same_survey_and_another_gives_another() {
        assert_eq!(survey(40, 7, Plan::Drawn), survey(40, 7, Plan::Drawn));
        assert_ne!(survey(40, 7, Plan::Drawn), survey(40, 11, Plan::Drawn));
    }

    #[test]
    fn a_survey_without_a_plan_says_all_but_where_things_lie() {
        let (drawn, plain) = (survey(40, 7, Plan::Drawn), survey(40, 7, Plan::NotDrawn));
        assert!(drawn.to_string().contains("\"outline\"") && drawn.to_string().contains("\"at\""));
        assert!(!plain.to_string().contains("\"outline\"") && !plain.to_string().contains("\"at\""));
        assert_eq!(drawn["route"], plain["route"]);
    }

    #[test]
    fn among_a_few_dwellings_are_multiwire_sets_islands_ways_and_circuits_of_five_to_twelve() {
        let text: String = (0..12).map(|seed| survey(80, seed, Plan::Drawn).to_string()).collect();
        for wanted in
            ["shares_neutral_with", "\"run\":{\"cable\":\"nm-with-ground\"", "\"new-cable\"", "\"egc\"", "\"want\""]
        {
            assert!(text.contains(wanted), "no {wanted}");
        }
        for seed in 0..12 {
            let survey = survey(80, seed, Plan::Drawn);
            let circuits = survey["circuit"].as_array().unwrap().len();
            for circuit in 1..=circuits {
                let name = circuit.to_string();
                let on_it = |row: &&Value| row["circuit"] == name.as_str();
                let boxes = survey["box"].as_array().unwrap().iter().filter(on_it).count();
                assert!((1..=12).contains(&boxes), "seed {seed}: {boxes} boxes on circuit {circuit}");
            }
        }
    }
}
