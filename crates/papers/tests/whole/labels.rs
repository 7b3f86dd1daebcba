//! The labels held against the plan.

use crate::planned_job::{EXAMPLES, with_example};
use papers::{LabelSheet, Paper, PaperSize, labels, typeset_labels};
use std::collections::BTreeMap;

#[test]
fn there_is_a_label_with_its_markings_for_every_opening_that_carries_any() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let made: BTreeMap<String, Vec<&str>> =
                labels(job).into_iter().map(|label| (label.box_id, label.markings)).collect();
            let planned: BTreeMap<String, Vec<&str>> = (job.plan.openings.iter())
                .filter(|opening| !opening.markings.is_empty())
                .map(|opening| (opening.box_id.clone(), opening.markings.clone()))
                .collect();
            assert_eq!(made, planned, "{name}");
        });
    }
}

#[test]
fn a_label_says_where_the_device_is_tested_that_protects() {
    with_example("bungalow", |job| {
        let of = |id: &str| labels(job).into_iter().find(|label| label.box_id == id).unwrap();
        assert_eq!(of("K-1").protected_by, "tested at panel main: two-pole GFCI/AFCI breaker");
        assert_eq!(of("LA-2").protected_by, "tested at box LA-1: the device there");
        assert_eq!(of("Y-1").protected_by, "tested at this opening: its own device");
        assert_eq!((of("Y-1").room.as_str(), of("K-1").circuit.as_deref()), ("Outdoors", Some("1")));
    });
}

/// By hand: 11 labels on sheets of 2 by 2 take 3 sheets.
#[test]
fn labels_go_on_further_sheets_where_one_does_not_hold_them() {
    with_example("bungalow", |job| {
        let paper = Paper { title: "Labels".into(), dwelling: "A house".into(), date: None, blocks: Vec::new() };
        let sheet = LabelSheet { grid: (2, 2), ..LabelSheet::usual(PaperSize::A4) };
        let needed = labels(job);
        assert_eq!(needed.len(), 11);
        assert_eq!(typeset_labels(&paper, &needed, &sheet).unwrap().pages, 3);
    });
}
