//! The test record held against the readings that the network solver expects.

use crate::planned_job::{EXAMPLES, with_example, with_survey};
use papers::{Block, Cell, Paper, test_record};

/// The rows of all tables of a paper.
fn rows<'a>(paper: &'a Paper) -> Vec<&'a Vec<Cell>> {
    let inside = |block: &'a Block| match block {
        Block::Together(blocks) => blocks.as_slice(),
        block => std::slice::from_ref(block),
    };
    let tables = paper.blocks.iter().flat_map(inside).filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    tables.flat_map(|table| &table.rows).collect()
}

#[test]
fn every_receptacle_stands_once_with_what_must_be_read_there() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let paper = test_record(job);
            let rows = rows(&paper);
            let words = |cell: &Cell| match cell {
                Cell::Words(text) => text.words(),
                Cell::Lines(names) => names.join(" "),
                Cell::Tick => String::new(),
            };
            let all = paper.words();
            for reading in job.readings {
                let of_it: Vec<_> = rows.iter().filter(|row| words(&row[0]) == reading.box_id).collect();
                assert_eq!(of_it.len(), 1, "{name}: {}", reading.box_id);
                let (quiet, loaded) = (words(&of_it[0][1]), words(&of_it[0][3]));
                match (&reading.find_out, &reading.no_load, &reading.heavy_load) {
                    (Some(missing), Some(volts), None) => {
                        assert!(
                            quiet.contains(&volts.hn.words) && loaded.contains("H–N not checked"),
                            "{quiet} {loaded}"
                        );
                        assert_eq!(loaded.contains("H–G the sum of"), reading.grounded, "{name}: {}", reading.box_id);
                        assert!(all.contains(&format!(": {missing}")), "{missing}");
                    }
                    (None, Some(volts), Some(load)) => {
                        assert!(quiet.contains(&volts.hn.words) && loaded.contains(&load.hn.words), "{quiet} {loaded}");
                        assert_eq!(quiet.contains("H–G open"), !reading.grounded, "{name}: {}", reading.box_id);
                    }
                    _ => panic!("{name}: {} says nothing", reading.box_id),
                }
                let lines = |cell: &Cell| if let Cell::Lines(names) = cell { names.len() } else { 0 };
                let expected = if reading.grounded { (3, 5) } else { (3, 2) };
                assert_eq!((lines(&of_it[0][2]), lines(&of_it[0][4])), expected, "{name}: {}", reading.box_id);
            }
        });
    }
}

/// By hand: five openings of circuit A hang on one run of unknown length, and it is asked for once.
#[test]
fn a_length_that_many_openings_wait_for_is_asked_for_once() {
    with_example("knob-and-tube", |job| {
        let words = test_record(job).words();
        assert_eq!(words.matches("find out the length of the run to P-1").count(), 1, "{words}");
        assert!(words.contains("P-1, P-2, P-3, DI-1, DI-2: find out the length of the run to P-1."), "{words}");
        assert!(words.contains("Heavy load: 12 A, plugged in at each opening in turn."), "{words}");
        assert!(words.contains("the GFCI/AFCI device beside panel fuses: every opening"), "{words}");
    });
}

#[test]
fn the_button_that_counts_is_named_where_there_is_no_ground() {
    with_example("bungalow", |job| {
        let words = test_record(job).words();
        assert!(words.contains("A plug-in tester cannot trip a GFCI where no ground is."));
        assert!(words.contains("Press the test button of the GFCI/AFCI breaker in panel main"));
        assert!(words.contains("at box LA-1: the device there; labels seen"));
    });
}

/// By hand: in the half-done cottage K-1 reads 119.3 V under 12.5 A, L-2 stays alive, and BA-1 was not read.
#[test]
fn what_was_read_stands_in_its_cells_with_its_verdict_in_words_and_a_mark() {
    with_example("cottage-half-done", |job| {
        let paper = test_record(job);
        let rows = rows(&paper);
        let words = |cell: &Cell| match cell {
            Cell::Words(text) => text.words(),
            Cell::Lines(names) => format!("to write: {}", names.join(", ")),
            Cell::Tick => "room to tick".to_owned(),
        };
        let row = |id: &str| -> Vec<String> {
            let of_it = rows.iter().find(|row| words(&row[0]) == id).unwrap();
            of_it.iter().map(words).collect()
        };
        let kitchen = row("K-1");
        assert_eq!(kitchen[2], "H–N 120.9 V\nH–G 120.9 V\nN–G 0 V\ntester: correct");
        assert_eq!(kitchen[4], "H–N 119.3 V\nH–G 119.3 V\nN–G 0 V\nwith 12.5 A");
        assert!(kitchen[6].starts_with("! contra"), "{kitchen:?}");
        assert!(row("L-2")[5].contains("dead with it: NO; labels seen: NO"), "{:?}", row("L-2"));
        assert_eq!((row("H-1")[6].as_str(), row("H-1")[7].as_str()), ("+ proved", "2026-11-20, MK"));
        let bath = row("BA-1");
        assert_eq!((bath[2].as_str(), bath[6].as_str()), ("to write: H–N, H–earth, N–earth", "room to tick"));
        assert_eq!(bath[4], "to write: H–N, load, A");
        let all = paper.words();
        assert!(all.contains("! CONTRADICTS the plan: the ground is one of its own"), "{all}");
        assert!(all.contains("A plug-in tester says at L-1, L-2 “open ground”. That is expected"), "{all}");
    });
}

/// By hand, from the survey: the fault current at the panel of the bungalow is stated; where it is not, all five circuits and sets say so.
#[test]
fn readings_behind_a_supply_that_nobody_knows_say_what_they_take_for_granted() {
    let known = include_str!("../../../../examples/bungalow.toml");
    let lines: Vec<&str> = known.lines().filter(|line| !line.starts_with("fault_current")).collect();
    let told = "How strong the supply of panel main is was not surveyed";
    with_survey(known, |job| assert!(!test_record(job).words().contains(told)));
    with_survey(&lines.join("\n"), |job| assert_eq!(test_record(job).words().matches(told).count(), 5));
}
