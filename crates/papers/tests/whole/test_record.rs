//! The test record held against the readings that the network solver expects.

use crate::planned_job::{EXAMPLES, with_example};
use papers::{Block, Cell, test_record};

#[test]
fn every_receptacle_stands_once_with_what_must_be_read_there() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let paper = test_record(job);
            let tables = paper.blocks.iter().filter_map(|block| match block {
                Block::Table(table) => Some(table),
                _ => None,
            });
            let rows: Vec<&Vec<Cell>> = tables.flat_map(|table| &table.rows).collect();
            let words = |cell: &Cell| match cell {
                Cell::Words(text) => text.words(),
                Cell::Tick => String::new(),
            };
            for reading in job.readings {
                let of_it: Vec<_> = rows.iter().filter(|row| words(&row[0]) == reading.box_id).collect();
                assert_eq!(of_it.len(), 1, "{name}: {}", reading.box_id);
                let (quiet, loaded) = (words(&of_it[0][1]), words(&of_it[0][3]));
                match (&reading.find_out, &reading.no_load, &reading.heavy_load) {
                    (Some(missing), _, _) => assert_eq!(quiet, format!("not checked: {missing}")),
                    (None, Some(volts), Some(load)) => {
                        assert!(quiet.contains(&volts.hn.words) && loaded.contains(&load.hn.words), "{quiet} {loaded}");
                        assert_eq!(quiet.contains("H–G open"), !reading.grounded, "{name}: {}", reading.box_id);
                    }
                    _ => panic!("{name}: {} says nothing", reading.box_id),
                }
            }
        });
    }
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
