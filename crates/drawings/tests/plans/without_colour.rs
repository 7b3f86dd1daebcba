//! What colours tell is told without them too.

use crate::reading::{EXAMPLES, as_found, as_planned, document, dwelling, groups, number};
use std::collections::{BTreeMap, BTreeSet};

/// Two circuits of one dwelling differ in their dashes, as long as there are dashes left, and each line has its number.
#[test]
fn circuits_differ_by_their_dashes_and_are_numbered() {
    let drawing = as_planned(&dwelling(EXAMPLES[0]));
    let document = document(&drawing.sheets[0]);
    let mut dashes: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for run in groups(&document, "run") {
        let line = run.children().find(|node| node.tag_name().name() == "polyline").unwrap();
        let says = run.children().find(|node| node.tag_name().name() == "title").unwrap().text().unwrap();
        let circuit = says.strip_prefix("circuit ").unwrap().split(',').next().unwrap();
        // The home run that a multiwire set shares is drawn as its first circuit.
        let circuit = circuit.split('+').next().unwrap();
        let dash = line.attribute("stroke-dasharray").unwrap_or("").to_owned();
        dashes.entry(circuit.to_owned()).or_default().insert(dash);
    }
    assert!(dashes.values().all(|kinds| kinds.len() == 1), "{dashes:?}");
    let kinds: BTreeSet<&BTreeSet<String>> = dashes.values().collect();
    assert_eq!(kinds.len(), dashes.len(), "{dashes:?}");
    for label in groups(&document, "box-label") {
        let words: Vec<&str> = label
            .descendants()
            .filter(|node| node.tag_name().name() == "text")
            .filter_map(|node| node.text())
            .collect();
        let circuit =
            dwelling(EXAMPLES[0]).boxes.into_iter().find(|one| one.id == words[0]).unwrap().circuit.unwrap().0;
        assert_eq!(words[1], (circuit + 1).to_string());
    }
}

/// A ground is told by the filling of a symbol, a route by the width of its line and its number.
#[test]
fn grounds_and_routes_are_told_by_shape() {
    let bungalow = dwelling(EXAMPLES[0]);
    let drawing = as_planned(&bungalow);
    let document = document(&drawing.sheets[0]);
    let has_half_disc = |id: &str| {
        let group = groups(&document, "box").find(|group| group.attribute("data-id") == Some(id)).unwrap();
        group.children().any(|node| node.tag_name().name() == "path")
    };
    // The route to B2-3 grounds the den behind it; nothing grounds the bedroom.
    assert!(["B2-3", "DN-1", "DN-4", "L-4", "K-2", "LA-1"].into_iter().all(has_half_disc));
    assert!(!["B2-1", "BA-1", "K-1"].into_iter().any(has_half_disc));
    let route = groups(&document, "route").find(|group| group.attribute("data-id") == Some("R-wall")).unwrap();
    let line = route.children().find(|node| node.tag_name().name() == "polyline").unwrap();
    assert!(number(line, "stroke-width") > 2.0);
    let labels: Vec<&str> = groups(&document, "route-label").filter_map(|group| group.attribute("data-id")).collect();
    assert!(["R-wall", "to B2-3", "to LA-1", "R-fridge"].into_iter().all(|id| labels.contains(&id)), "{labels:?}");
}

/// The false ground at L-3 and the reversed wires at B1-3 can hurt someone.
#[test]
fn dangers_are_marked_on_the_plan_of_what_was_found() {
    let drawing = as_found(&dwelling(EXAMPLES[0]));
    let document = document(&drawing.sheets[0]);
    let marked: Vec<&str> = groups(&document, "box-label")
        .filter(|label| label.descendants().any(|node| node.text() == Some("!")))
        .filter_map(|label| label.attribute("data-id"))
        .collect();
    assert!(marked.contains(&"L-3"), "{marked:?}");
    assert!(!marked.contains(&"K-1"), "{marked:?}");
}
