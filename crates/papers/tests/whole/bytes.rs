//! The bytes of papers: the same for the same survey, and set whatever the survey writes.

use crate::planned_job::{EXAMPLES, with_dwelling, with_example, with_survey};
use papers::{LabelSheet, PaperSize, set_of, typeset, work_order};

#[test]
fn the_same_job_gives_the_same_bytes_and_every_paper_passes_the_checks_of_tagged_pdf() {
    for name in EXAMPLES {
        with_example(name, |job| {
            for size in [PaperSize::Letter, PaperSize::A4] {
                // Setting fails where a paper does not hold to PDF/UA-1.
                let once = set_of(job, size, &LabelSheet::usual(size)).unwrap();
                let again = set_of(job, size, &LabelSheet::usual(size)).unwrap();
                assert_eq!(once, again, "{name} {size}");
                assert!(once.iter().all(|file| file.bytes.starts_with(b"%PDF-1.7") && file.told.pages > 0));
            }
        });
    }
}

#[test]
fn names_of_any_letters_and_lengths_are_set() {
    let survey = "format = 1\n[job]\nname = \"台所 \\u200F ﷽ 🏠 \\\"<&>\\\"\"\nedition = 2020\n[[panel]]\nid = \"p\"\n\
                  [[circuit]]\nid = \"1\"\npanel = \"p\"\n[[room]]\nid = \"r\"\ntitle = \"שלום\"\nuse = \"bedroom\"\n[[box]]\n\
                  id = \"B\"\nroom = \"r\"\ncircuit = \"1\"\nholds = \"three-slot\"\nnote = \"LONG\"\n";
    let survey = survey.replace("LONG", &format!("{} {}", "word ".repeat(200), "x".repeat(900)));
    with_survey(&survey, |job| {
        let files = set_of(job, PaperSize::Letter, &LabelSheet::usual(PaperSize::Letter)).unwrap();
        assert!(files.iter().any(|file| file.told.pages >= 2));
    });
}

#[test]
fn a_dwelling_without_boxes_has_a_work_order_of_one_page() {
    with_example("bungalow", |job| {
        let mut empty = job.dwelling.clone();
        (empty.boxes, empty.rooms, empty.routes) = (Vec::new(), Vec::new(), Vec::new());
        empty.panels.iter_mut().for_each(|panel| panel.room = None);
        empty.sources.clear();
        with_dwelling(&empty, |job| {
            assert!(work_order(job).words().contains("Nothing is changed at the panel."));
            assert_eq!(typeset(&work_order(job), PaperSize::A4).unwrap().pages, 1);
        });
    });
}
