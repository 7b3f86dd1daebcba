//! Every box with a position stands on one plan, once, where it is; every other is listed and drawn nowhere.

use crate::generated::survey;
use crate::reading::{
    EXAMPLES, as_found, as_planned, both, covered, document, dwelling, groups, name, without_a_panel,
};
use drawings::{DrawingAnswer, SheetAnswer, ThingKind};
use dwelling::Dwelling;
use std::collections::BTreeMap;

fn symbols_by_box(drawing: &DrawingAnswer) -> BTreeMap<String, usize> {
    let mut count = BTreeMap::new();
    for sheet in &drawing.sheets {
        for group in groups(&document(sheet), "box") {
            *count.entry(name(group).to_owned()).or_insert(0) += 1;
        }
    }
    count
}

fn words_on(sheet: &SheetAnswer) -> Vec<String> {
    document(sheet).descendants().filter_map(|node| node.text()).map(str::to_owned).collect()
}

fn hold(dwelling: &Dwelling) {
    for drawing in both(dwelling) {
        let drawn = symbols_by_box(&drawing);
        let words: Vec<String> = drawing.sheets.iter().flat_map(words_on).collect();
        for device_box in &dwelling.boxes {
            let times = drawn.get(&device_box.id).copied().unwrap_or(0);
            assert_eq!(times, usize::from(device_box.at.is_some()), "{}", device_box.id);
            let listed =
                drawing.not_placed.iter().any(|thing| thing.kind == ThingKind::Box && thing.id == device_box.id);
            assert_eq!(listed, device_box.at.is_none(), "{}", device_box.id);
            if device_box.at.is_none() {
                let beside = words.iter().any(|text| text.starts_with(&format!("{}, ", device_box.id)));
                assert!(beside, "{} is listed beside no plan", device_box.id);
            }
        }
        assert_eq!(drawing.is_last_word(), dwelling.boxes.iter().all(|one| one.at.is_some()));
    }
}

#[test]
fn every_box_with_a_position_is_drawn_once_and_every_other_is_listed() {
    for example in EXAMPLES {
        hold(&dwelling(example));
    }
    for seed in 0..6 {
        hold(&dwelling(&survey(seed, 12 + 9 * seed as usize, 2)));
    }
}

/// By hand: at 1/8 in = 1 ft, which is 9 points, K-2 at 11 ft lies 63 points right of K-1 at 4 ft on the same wall, and L-1
/// at 16 ft 45 points further.
#[test]
fn boxes_stand_as_far_apart_as_they_are() {
    let bungalow = dwelling(EXAMPLES[0]);
    let drawing = as_found(&bungalow);
    let sheet = &drawing.sheets[0];
    assert_eq!(sheet.scale.as_deref(), Some("1/8 in = 1 ft"));
    let document = document(sheet);
    let middle = |id: &str| {
        let group = groups(&document, "box").find(|group| group.attribute("data-id") == Some(id)).unwrap();
        let area = covered(group).unwrap();
        ((area.0 + area.2) / 2.0, (area.1 + area.3) / 2.0)
    };
    let ((first, high), (second, also_high), (third, _)) = (middle("K-1"), middle("K-2"), middle("L-1"));
    assert!((second - first - 63.0).abs() < 0.05 && (third - second - 45.0).abs() < 0.05);
    assert!((high - also_high).abs() < 0.05);
}

/// By hand: five home runs of six circuits, 1 and 2 sharing theirs; with the panel placed none is an arrow.
#[test]
fn home_runs_lead_to_the_panel_where_its_place_is_known() {
    let count = |text: &str| {
        let drawing = as_found(&dwelling(text));
        let document = document(&drawing.sheets[0]);
        let arrows = groups(&document, "run-end").count();
        (groups(&document, "panel").count(), groups(&document, "source").count(), arrows)
    };
    assert_eq!(count(&without_a_panel()), (0, 0, 5));
    assert_eq!(count(EXAMPLES[0]), (1, 1, 0));
}

#[test]
fn equal_surveys_give_equal_drawings() {
    for text in [EXAMPLES[0].to_owned(), survey(7, 40, 2)] {
        assert_eq!(as_planned(&dwelling(&text)), as_planned(&dwelling(&text)));
    }
}

#[test]
fn a_dwelling_without_rooms_or_boxes_has_no_sheet() {
    let mut empty = dwelling(EXAMPLES[0]);
    (empty.boxes, empty.rooms, empty.routes) = (Vec::new(), Vec::new(), Vec::new());
    empty.panels.iter_mut().for_each(|panel| panel.room = None);
    empty.sources.clear();
    assert!(both(&empty).iter().all(|drawing| drawing.sheets.is_empty()));
}

/// Names that would break a drawing if they were written as they are, ids too, which no survey would let pass.
#[test]
fn names_of_any_letters_are_drawn() {
    let mut odd = dwelling(EXAMPLES[0]);
    odd.job.name = "<&> \"Łódź\" \u{1b}家".to_owned();
    odd.rooms[0].title = Some("<Küche>".to_owned());
    odd.boxes[0].id = "<1&>".to_owned();
    for drawing in both(&odd) {
        assert_eq!(symbols_by_box(&drawing).get("<1&>"), Some(&1));
        let document = document(&drawing.sheets[0]);
        let words: Vec<&str> = document.descendants().filter_map(|node| node.text()).collect();
        assert!(words.contains(&"<KÜCHE>") && words.contains(&"<&> \"Łódź\" 家"), "{words:?}");
    }
}
