//! The circuit directory held against the plan.

use crate::planned_job::{EXAMPLES, with_example};
use papers::{Block, Cell, Paper, circuit_directory};

/// The rows of the tables, as words.
fn rows(paper: &Paper) -> Vec<Vec<String>> {
    let tables = paper.blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    let words = |cell: &Cell| match cell {
        Cell::Words(text) => text.words(),
        Cell::Tick | Cell::Lines(_) => String::new(),
    };
    tables.flat_map(|table| &table.rows).map(|row| row.iter().map(words).collect()).collect()
}

#[test]
fn every_circuit_stands_once_with_every_box_that_it_feeds() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let rows = rows(&circuit_directory(job));
            for circuit in &job.dwelling.circuits {
                let of_it: Vec<_> = rows.iter().filter(|row| row[1] == circuit.id).collect();
                assert_eq!(of_it.len(), 1, "{name}: {}", circuit.id);
                let boxes = job.plan.openings.iter().filter(|opening| opening.circuit.as_ref() == Some(&circuit.id));
                for opening in boxes {
                    let serves = of_it[0][3].split([' ', ',', '.', ';']);
                    assert_eq!(serves.filter(|word| *word == opening.box_id).count(), 1, "{name}: {}", opening.box_id);
                }
            }
        });
    }
}

/// By hand, from the survey and its plan: circuits 1 and 2 share a neutral; K-2 alone of their boxes gets a ground.
#[test]
fn partners_protection_and_what_has_no_ground_are_told() {
    with_example("bungalow", |job| {
        let rows = rows(&circuit_directory(job));
        assert_eq!(rows[0][2], "20 A, two-pole GFCI/AFCI breaker; shares its neutral with 2: both open together");
        assert_eq!((rows[0][4].as_str(), rows[1][4].as_str()), ("K-1", "K-3, K-4"));
        assert!(rows.last().unwrap().iter().all(String::is_empty), "lines are left for spares");
    });
}

/// By hand, from the survey: one receptacle and one switch in the hall, three receptacles in the front bedroom.
#[test]
fn one_is_not_told_as_several() {
    with_example("bungalow", |job| {
        let rows = rows(&circuit_directory(job));
        assert!(rows[4][3].starts_with("Hall: receptacle H-1; switch H-2."), "{}", rows[4][3]);
        assert!(rows[3][3].starts_with("Front bedroom: receptacles B1-1, B1-2, B1-3."), "{}", rows[3][3]);
    });
}
