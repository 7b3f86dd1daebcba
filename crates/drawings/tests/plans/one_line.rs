//! One-lines held against the plan: every box once, its ground and what guards it, nothing on anything else.

use crate::generated::survey;
use crate::legible::hold_words_free;
use crate::reading::{EXAMPLES, document, dwelling, groups, name, number};
use drawings::{DrawingAnswer, one_line_as_found, one_line_as_planned, one_line_before_and_after};
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::Planned;
use rulebook::{CodeInForce, Edition};
use std::collections::BTreeMap;

fn planned(dwelling: &Dwelling) -> Planned<'_> {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap_or(Edition::Nec2020);
    Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo())
        .unwrap_or_else(|fault| panic!("{fault:?}"))
}

fn surveys() -> Vec<String> {
    let generated = (0..6).map(|seed| survey(seed, 20 + seed as usize * 26, 1));
    EXAMPLES.into_iter().map(str::to_owned).chain(generated).collect()
}

fn hold_legible(drawing: &DrawingAnswer) {
    for sheet in &drawing.sheets {
        hold_words_free(&sheet.title, document(sheet).root_element(), "run");
    }
}

#[test]
fn every_box_stands_once_with_its_ground_and_what_guards_it() {
    for text in surveys() {
        let dwelling = dwelling(&text);
        let plan = planned(&dwelling);
        let drawing = one_line_as_planned(&plan);
        hold_legible(&drawing);
        hold_legible(&one_line_as_found(&dwelling, &plan.facts.diagnosis));
        let mut boxes: BTreeMap<String, usize> = BTreeMap::new();
        for sheet in &drawing.sheets {
            let document = document(sheet);
            for group in groups(&document, "box") {
                *boxes.entry(name(group).to_owned()).or_default() += 1;
                let at = dwelling.box_named(name(group)).unwrap_or_else(|| panic!("{}", name(group)));
                let words: Vec<&str> = group
                    .children()
                    .filter(|node| node.tag_name().name() == "text")
                    .filter_map(|node| node.text())
                    .collect();
                if dwelling.device_box(at).holds.is_receptacle() && words.iter().any(|word| word.contains("ground")) {
                    let has = words.iter().any(|word| ["ground", "new ground"].contains(word));
                    assert_eq!(has, plan.is_grounded(at), "{} says {words:?}", name(group));
                    let guarded = words.iter().any(|word| word.contains("GFCI"));
                    assert_eq!(
                        guarded,
                        plan.protector(at).is_some() || plan.is_gfci(at),
                        "{} says {words:?}",
                        name(group)
                    );
                }
            }
            for run in groups(&document, "run") {
                let at = dwelling.box_named(name(run)).unwrap_or_else(|| panic!("{}", name(run)));
                let widths = run.children().filter(|node| node.attribute("points").is_some());
                let thick = widths.map(|line| number(line, "stroke-width")).fold(0.0, f64::max) > 2.0;
                if dwelling.device_box(at).known_feed().is_some() {
                    assert_eq!(thick, plan.protector(at).is_some(), "the line to {}", name(run));
                }
            }
        }
        assert_eq!(boxes.len(), dwelling.boxes.len());
        assert!(boxes.values().all(|count| *count == 1), "{boxes:?}");
    }
}

/// By hand: circuits 1 and 2 of the bungalow share a neutral, so that their two handles are tied, and their openings are
/// named with their circuits.
#[test]
fn a_multiwire_set_is_one_line_of_two_breakers() {
    let bungalow = dwelling(EXAMPLES[0]);
    let drawing = one_line_as_planned(&planned(&bungalow));
    let document = document(&drawing.sheets[0]);
    let set = groups(&document, "set").next().unwrap();
    let words: Vec<&str> =
        set.descendants().filter_map(|node| node.text()).map(str::trim).filter(|word| !word.is_empty()).collect();
    assert_eq!(
        (words[0], words.contains(&"2: 20 A"), words.contains(&"one neutral for both")),
        ("1: 20 A", true, true)
    );
    assert!(words.contains(&"K-4 (2)") && words.contains(&"K-2 (1)"), "{words:?}");
}

#[test]
fn what_is_not_known_of_a_panel_is_said() {
    let bungalow = dwelling(EXAMPLES[0]);
    let drawing = one_line_as_found(&bungalow, &diagnosis::diagnose(&bungalow));
    assert!(drawing.sheets[0].svg.contains("the rating of its main is not in the survey"));
    assert!(drawing.sheets[0].svg.contains("find out where neutral and ground are bonded"));
}

/// The sheet holds both moments of the flat, each box twice, and not those of a dwelling of ninety boxes.
#[test]
fn a_small_dwelling_has_both_moments_on_one_sheet() {
    let flat = dwelling(EXAMPLES[1]);
    let sheets = one_line_before_and_after(&planned(&flat));
    assert_eq!(sheets.len(), 1);
    let document = document(&sheets[0]);
    hold_words_free(&sheets[0].title, document.root_element(), "run");
    let mut boxes: BTreeMap<String, usize> = BTreeMap::new();
    groups(&document, "box").for_each(|group| *boxes.entry(name(group).to_owned()).or_default() += 1);
    assert_eq!(boxes.len(), flat.boxes.len());
    assert!(boxes.values().all(|count| *count == 2), "{boxes:?}");
    assert!(sheets[0].svg.contains("As it was found") && sheets[0].svg.contains("As the plan leaves it"));
    let large = dwelling(&survey(3, 90, 1));
    let apart = one_line_before_and_after(&planned(&large));
    assert!(apart.len() >= 2 && apart.iter().all(|sheet| !sheet.title.contains(" and ")));
}
