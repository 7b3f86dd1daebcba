//! The same survey in TOML and in JSON is the same dwelling, and every key reaches its place.

use dwelling::{
    BoxIndex, BoxSeen, ButtonTest, CircuitIndex, Day, Feed, FittedAtPanel, Holding, LabelSeen, MeterKind, Overcurrent,
    PanelIndex, Point, PowerCut, RoomIndex, RouteEnd, SourceIndex, TesterVerdict, WallFinish,
};
use electrical::{Amperes, ConductorMetal, Gauge, Length, Milliamperes, Ohms, Volts, Volume};
use survey::{Format, read};

const TOML: &str = include_str!("surveys/rich.toml");
const JSON: &str = include_str!("surveys/rich.json");

fn rich() -> dwelling::Dwelling {
    let found = read(TOML.as_bytes(), Format::Toml);
    assert_eq!(found.diagnostics, []);
    let Some(dwelling) = found.dwelling else { panic!("a survey without mistakes gives a dwelling") };
    dwelling
}

#[test]
fn the_same_survey_in_json_is_the_same_dwelling() {
    let found = read(JSON.as_bytes(), Format::Json);
    assert_eq!(found.diagnostics, []);
    assert_eq!(found.dwelling.unwrap(), rich());
}

#[test]
fn line_endings_and_a_byte_order_mark_change_nothing() {
    let marked = format!("\u{feff}{}", TOML.replace('\n', "\r\n"));
    assert_eq!(read(marked.as_bytes(), Format::Toml).dwelling.unwrap(), rich());
    let marked = format!("\u{feff}{}", JSON.replace('\n', "\r\n"));
    assert_eq!(read(marked.as_bytes(), Format::Json).dwelling.unwrap(), rich());
}

#[test]
fn what_is_unknown_can_be_left_out_or_said() {
    let said = r#"{"format": 1, "job": {"name": "x", "built": "unknown", "use": "unknown"}, "room": [{"id": "a", "use": "unknown"}],
        "box": [{"id": "b", "room": "a", "circuit": "unknown", "fed_by": "unknown", "run": "unknown", "at": "unknown",
        "height": "unknown", "body": "unknown", "holds": "unknown", "cables_in_box": "unknown", "found": "unknown",
        "serves": "unknown", "want": "unknown", "countertop": "unknown", "sink": "unknown", "wetness": "unknown", "note": "unknown"}]}"#;
    let left_out = r#"{"format": 1, "job": {"name": "x"}, "room": [{"id": "a"}], "box": [{"id": "b", "room": "a"}]}"#;
    let (said, left_out) = (read(said.as_bytes(), Format::Json), read(left_out.as_bytes(), Format::Json));
    assert_eq!(said.diagnostics, []);
    assert_eq!(said.dwelling.unwrap(), left_out.dwelling.unwrap());
}

#[test]
fn the_job_and_the_panels_are_as_written() {
    let rich = rich();
    assert_eq!((rich.job.built, rich.job.edition), (Some(1956), Some(2020)));
    assert_eq!(rich.job.amendments.as_deref(), Some("larch-county.toml"));
    assert_eq!(rich.panels[0].made_for_it.as_ref().map(Vec::len), Some(3));
    assert_eq!(rich.panels[0].room_beside, Some(false));
    assert_eq!(rich.panels[0].fault_current.map(|current| current.get()), Some(1500));
    assert_eq!(rich.panels[0].room, Some(RoomIndex(1)));
    assert_eq!(rich.panels[0].at, Some(Point { x: Length::feet_and_inches(23, 6), y: Length::feet(4) }));
    assert_eq!(rich.panels[1].made_for_it, Some(Vec::new()));
    assert_eq!(rich.panels[1].ground_bar, None);
    assert_eq!(rich.panels[1].overcurrent, Some(Overcurrent::Fuses), "a fused circuit says so");
}

#[test]
fn the_walls_of_a_room_are_as_written() {
    let room = &rich().rooms[0];
    assert_eq!(room.ceiling, Some(Length::feet_and_inches(7, 9)));
    assert_eq!((room.walls, room.insulated, room.fire_blocks), (Some(WallFinish::Plaster), Some(false), Some(true)));
}

#[test]
fn the_circuits_are_as_written() {
    let rich = rich();
    assert_eq!(rich.circuits[0].breaker, Some(Amperes::new(15)));
    assert_eq!(rich.circuits[1].gauge, Some(Gauge::AWG_14));
    assert_eq!((rich.circuits[2].breaker, rich.circuits[2].gauge), (Some(Amperes::new(20)), Some(Gauge::AWG_12)));
    assert_eq!(rich.circuits[2].metal, ConductorMetal::Aluminium);
    assert_eq!(rich.circuits[0].shares_neutral_with, Some(dwelling::CircuitIndex(1)));
}

/// Published: NEC Table 314.16(A), 3 x 2 x 2-1/2 in.: 12.5 in³, 205 cm³. By hand: two gangs are 25 in³.
#[test]
fn the_boxes_are_as_written() {
    let rich = rich();
    let [first, second, third, fourth, fifth] = rich.boxes.as_slice() else { panic!("five boxes") };
    assert_eq!(first.fed_by, Some(Feed::Panel(PanelIndex(0))));
    assert_eq!(
        (first.body.volume, first.body.added_volume),
        (Some(Volume::hundredths(2500)), Some(Volume::hundredths(400)))
    );
    assert_eq!(first.at, Some(Point { x: Length::feet_and_inches(0, 6), y: Length::feet(4) }));
    assert_eq!(first.height, Some(Length::feet_and_inches(1, 4)));
    assert_eq!(second.fed_by, Some(Feed::Box(BoxIndex(0))));
    assert_eq!(second.run.length, Some(Length::feet_and_inches(5, 6)));
    assert_eq!(second.found.len(), 2);
    assert_eq!(second.found[0].tester, Some(TesterVerdict::OpenGround));
    assert_eq!(second.found[0].neutral_ground, Some(Volts::new(12)));
    assert_eq!(second.found[1].hot_neutral, Some(Volts::millivolts(118_500)));
    assert_eq!(second.found[1].neutral_earth, Some(Volts::millivolts(400)));
    assert_eq!(second.found[1].ground_impedance, Some(Ohms::milliohms(800)));
    assert_eq!(third.body.volume, Some(Volume::hundredths(1250)));
    assert_eq!(third.sink.as_ref().map(|sink| (sink.distance, sink.passes.len())), Some((Length::feet(3), 1)));
    assert_eq!(third.tub.as_ref().map(|tub| tub.distance), Some(Length::micrometres(12_000_000)));
    assert!(third.do_not_disturb);
    assert_eq!(fourth.fed_by, Some(Feed::Panel(PanelIndex(1))));
    assert_eq!((fifth.fed_by, fifth.body.gangs), (None, 1));
}

/// By hand: as the rich survey has it, 20 cubic inches being 2,000 hundredths.
#[test]
fn what_was_read_after_the_work_is_as_written() {
    let rich = rich();
    let day = |text: &str| text.parse::<Day>().ok();
    assert_eq!(rich.close_out.offer, Some(2));
    let panel = rich.panels[0].after.as_ref().unwrap();
    assert_eq!(
        (panel.directory, panel.taken.day, panel.taken.by.as_deref()),
        (Some(true), day("2026-11-23"), Some("JR"))
    );
    let circuit = rich.circuits[0].after.as_ref().unwrap();
    assert_eq!((circuit.fitted, circuit.test_button), (Some(FittedAtPanel::DualTwoPole), Some(ButtonTest::Trips)));
    assert_eq!(circuit.taken.day, day("2026-11-20"), "what is unknown here is as for all");
    let [seen, quiet, loaded] = rich.boxes[1].after.as_slice() else { panic!("three sets") };
    assert_eq!((seen.fitted, seen.box_work), (Some(Holding::Gfci), Some(BoxSeen::Replaced)));
    assert_eq!(seen.box_volume, Some(Volume::hundredths(2000)));
    assert_eq!((seen.tamper_resistant, seen.weather_resistant), (Some(true), Some(false)));
    assert_eq!(seen.labels, Some(vec![LabelSeen::NoEquipmentGround]));
    assert_eq!((seen.reading.own_test_trips, seen.dead_when_tripped), (Some(true), Some(true)));
    assert_eq!(seen.reading.meter, Some(MeterKind::HighImpedance), "as for all");
    assert_eq!((seen.taken.day, seen.taken.by.as_deref()), (day("2026-11-20"), Some("MK")));
    assert_eq!(quiet.reading.tester, Some(TesterVerdict::OpenGround));
    assert_eq!(quiet.reading.meter, Some(MeterKind::LowImpedance), "its own");
    assert_eq!((quiet.taken.day, quiet.taken.by.as_deref()), (day("2026-11-21"), Some("JR")));
    assert_eq!(loaded.load_current, Some(Milliamperes::new(12_500)));
    assert_eq!((loaded.load_at, loaded.reading.neutral_ground), (Some(BoxIndex(0)), Some(Volts::millivolts(1_400))));
}

#[test]
fn the_sources_and_routes_are_as_written() {
    let rich = rich();
    assert_eq!(rich.sources[0].gauge.map(Gauge::number), Some(0));
    assert_eq!(rich.sources[0].room, Some(RoomIndex(2)));
    assert_eq!(rich.sources[0].at, Some(Point { x: Length::feet(24), y: Length::feet_and_inches(1, 6) }));
    let [first, second, third] = rich.routes.as_slice() else { panic!("three routes") };
    assert_eq!((first.closed, second.closed, third.closed, third.length), (false, false, true, Length::ZERO));
    assert_eq!((first.from, first.to), (RouteEnd::Panel(PanelIndex(0)), RouteEnd::Box(BoxIndex(0))));
    assert_eq!((first.minutes, first.openings, first.length), (Some(90), 2, Length::feet(40)));
    assert_eq!((second.id.as_str(), second.from), ("pipe to K-1", RouteEnd::Source(SourceIndex(0))));
    assert_eq!((second.minutes, second.length), (Some(45), Length::micrometres(350_000)));
}

#[test]
fn the_observations_are_as_written_and_tell_the_circuit_of_a_box() {
    let rich = rich();
    let [breaker, opened, lifted] = rich.dead_when.as_slice() else { panic!("three observations") };
    assert_eq!(breaker.cut, PowerCut::Breaker(CircuitIndex(2)));
    assert_eq!(
        (breaker.dead.as_slice(), breaker.alive.as_slice()),
        (&[BoxIndex(3), BoxIndex(4)][..], &[BoxIndex(1), BoxIndex(2)][..])
    );
    assert_eq!((opened.cut, opened.dead.as_slice()), (PowerCut::Opened(BoxIndex(0)), &[BoxIndex(1)][..]));
    assert_eq!(lifted.cut, PowerCut::LoadSideLifted(BoxIndex(1)));
    assert!(lifted.note.is_some());
    assert_eq!(rich.boxes[4].circuit, Some(CircuitIndex(2)), "it went dead with that breaker");
}

#[test]
fn a_breaker_of_a_shared_neutral_does_not_tell_which_of_the_two_circuits_a_box_is_on() {
    let text = TOML.replace("breaker_off = \"F1\"\ndead = [\"P-1\", \"P-2\"]", "breaker_off = \"3\"\ndead = [\"P-2\"]");
    let text = text.replace("alive = [\"B2-1\", \"K-1\"]", "alive = [\"P-1\"]");
    let found = read(text.as_bytes(), Format::Toml);
    assert_eq!(found.diagnostics, []);
    assert_eq!(found.dwelling.unwrap().boxes[4].circuit, None);
}

#[test]
fn every_key_of_every_table_is_used_in_the_rich_survey() {
    let schema = survey::schema();
    let mut tables = vec![&schema];
    tables.extend(schema["$defs"].as_object().unwrap().values());
    for table in tables {
        for key in table["properties"].as_object().unwrap().keys() {
            let used = [format!("\n{key} = "), format!("{key} = "), format!("[{key}]"), format!(".{key}]]")];
            assert!(used.iter().any(|used| TOML.contains(used.as_str())), "{key}");
        }
    }
}

#[test]
fn a_file_is_json_by_its_name() {
    assert_eq!(Format::of_file_name("larch.JSON"), Format::Json);
    assert_eq!(Format::of_file_name("larch.toml"), Format::Toml);
    assert_eq!(Format::of_file_name("larch"), Format::Toml);
}
