//! No label stands on another or on a symbol, and nothing leaves its sheet.

use crate::generated::survey;
use crate::reading::{
    EXAMPLES, Rectangle, both, covered, document, dwelling, groups, name, number, shown, without_a_panel,
};
use drawings::SheetAnswer;
use roxmltree::Node;
use std::collections::BTreeSet;

/// Labels and symbols of a plan: what must stand free of each other.
const STANDING_FREE: [&str; 9] =
    ["box", "panel", "source", "box-label", "panel-label", "source-label", "route-label", "run-end", "room-name"];

fn hold_legible(sheet: &SheetAnswer) {
    let document = document(sheet);
    let mut standing: Vec<(String, Rectangle)> = Vec::new();
    for class in STANDING_FREE.into_iter().chain(["run-number"]) {
        for group in groups(&document, class) {
            let name = format!("{class} {}", group.attribute("data-id").unwrap_or(""));
            let area = covered(group).unwrap_or_else(|| panic!("{name} of {} covers nothing", sheet.title));
            for (other, there) in &standing {
                assert!(!there.overlaps(&area), "{}: {name} {area:?} stands on {other} {there:?}", sheet.title);
            }
            standing.push((name, area));
        }
    }
}

/// Every symbol has its label on the sheet, and every room its name.
fn hold_named(sheet: &SheetAnswer) {
    let document = document(sheet);
    for (class, label) in [("box", "box-label"), ("panel", "panel-label"), ("source", "source-label")] {
        let labels: BTreeSet<&str> = groups(&document, label).map(name).collect();
        for symbol in groups(&document, class) {
            assert!(labels.contains(name(symbol)), "{}: {} has no label", sheet.title, name(symbol));
        }
    }
    let unnamed = document.descendants().any(|node| node.text() == Some("No room for their labels"));
    assert!(!unnamed, "{}", sheet.title);
}

/// Every word and every line, inside what is shown.
fn hold_inside(sheet: &SheetAnswer) {
    let document = document(sheet);
    let root = document.root_element();
    let shown = shown(root);
    for node in root.descendants().filter(Node::is_element) {
        if let Some(area) = covered(node) {
            assert!(shown.holds(&area), "{}: {node:?} at {area:?}", sheet.title);
        }
    }
    // Words beside the plan stand on no other words.
    let words: Vec<(String, Rectangle)> = root
        .children()
        .filter(|node| node.tag_name().name() == "text")
        .filter_map(|node| Some((node.text()?.to_owned(), covered(node)?)))
        .collect();
    for (index, (text, area)) in words.iter().enumerate() {
        for (other, there) in &words[..index] {
            assert!(!there.overlaps(area), "{}: `{text}` stands on `{other}`", sheet.title);
        }
    }
}

/// No word on another, all inside what is shown, and none on a line: on those of the groups of a class, or on any where none is
/// named. Letters in symbols of their own cover the line behind them.
pub fn hold_words_free(title: &str, root: Node, lines_of: &str) {
    let view = shown(root);
    let texts: Vec<(Node, Rectangle)> = root
        .descendants()
        .filter(|node| node.tag_name().name() == "text")
        .filter_map(|node| Some((node, covered(node)?)))
        .collect();
    for (index, (node, area)) in texts.iter().enumerate() {
        let told = node.text().unwrap_or("");
        assert!(view.holds(area), "{title}: `{told}` at {area:?}");
        for (other, there) in &texts[..index] {
            assert!(!there.overlaps(area), "{title}: `{told}` on `{}`", other.text().unwrap_or(""));
        }
    }
    let is_one = |node: &Node| {
        node.has_attribute("points")
            && (lines_of.is_empty() || node.ancestors().any(|group| group.attribute("class") == Some(lines_of)))
    };
    for line in root.descendants().filter(is_one) {
        let points = line.attribute("points").unwrap_or_default();
        let points: Vec<f64> = points.split([' ', ',']).filter_map(|part| part.parse().ok()).collect();
        let points: Vec<(f64, f64)> = points.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect();
        for pair in points.windows(2) {
            let ((x1, y1), (x2, y2)) = (pair[0], pair[1]);
            let area = Rectangle(x1.min(x2) - 0.3, y1.min(y2) - 0.3, x1.max(x2) + 0.3, y1.max(y2) + 0.3);
            for (node, there) in texts.iter().filter(|(node, _)| !is_letter(*node)) {
                assert!(!there.overlaps(&area), "{title}: a line through `{}`", node.text().unwrap_or(""));
            }
        }
    }
}

/// A letter in a symbol of its own.
fn is_letter(node: Node) -> bool {
    matches!(node.text(), Some("H" | "H2" | "N" | "G" | "M" | "S" | "J" | "?"))
}

fn hold(survey: &str) {
    for drawing in both(&dwelling(survey)) {
        assert!(!drawing.sheets.is_empty());
        for sheet in &drawing.sheets {
            hold_legible(sheet);
            hold_named(sheet);
            hold_inside(sheet);
        }
    }
}

#[test]
fn the_dwellings_that_come_with_the_program_are_drawn_legibly() {
    EXAMPLES.into_iter().for_each(hold);
}

#[test]
fn generated_dwellings_are_drawn_legibly() {
    for seed in 0..8 {
        hold(&survey(seed, 12 + seed as usize * 6, 1 + seed as usize % 2));
    }
    hold(&survey(99, 120, 3));
    hold(&without_a_panel());
    // A pipe that comes in where the panel hangs: each has its place beside the other.
    let beside = "room       = \"laundry\"\nat         = [-4, 0]";
    hold(&EXAMPLES[0].replace("room       = \"kitchen\"\nat         = [8, 0]", beside));
}

/// By hand: 7.5 in by 10 in, and a twentieth of an inch on each side.
#[test]
fn every_sheet_fits_within_the_margins_of_both_papers() {
    let drawings = both(&dwelling(EXAMPLES[0]));
    for sheet in drawings.iter().flat_map(|drawing| &drawing.sheets) {
        let document = document(sheet);
        let root = document.root_element();
        let inches = |name| root.attribute(name).unwrap().strip_suffix("in").unwrap().parse::<f64>().unwrap();
        let mut sides = [inches("width"), inches("height")];
        sides.sort_by(f64::total_cmp);
        assert_eq!(sides, [7.6, 10.1]);
        // No word is set smaller than 5.5 points.
        let smallest =
            root.descendants().filter(|node| node.tag_name().name() == "text").map(|node| number(node, "font-size"));
        assert!(smallest.fold(f64::MAX, f64::min) >= 5.5);
    }
}
