//! Drawings of surveys, read back from their SVG.

use diagnosis::belief::{Priors, Stakes, believe};
use drawings::{DrawingAnswer, SheetAnswer, drawn_as_found, drawn_as_planned, drawn_circuits, text_width};
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::Planned;
use roxmltree::{Document, Node};
use rulebook::{CodeInForce, Edition};

/// The dwellings that come with the program.
pub const EXAMPLES: [&str; 3] = [
    include_str!("../../../../examples/bungalow.toml"),
    include_str!("../../../../examples/flat.toml"),
    include_str!("../../../../examples/knob-and-tube.toml"),
];

/// The bungalow without a place for its panel and for its water pipe.
pub fn without_a_panel() -> String {
    let text = EXAMPLES[0].replacen("room        = \"laundry\"\nat          = [-4, 0]\n", "", 1);
    text.replacen("room       = \"kitchen\"\nat         = [8, 0]\n", "", 1)
}

/// The dwelling of a survey.
pub fn dwelling(survey: &str) -> Dwelling {
    let read = survey::read(survey.as_bytes(), survey::Format::Toml);
    read.dwelling.unwrap_or_else(|| panic!("{:?}", read.diagnostics))
}

/// The drawing of a dwelling as it was found.
pub fn as_found(dwelling: &Dwelling) -> DrawingAnswer {
    drawn_as_found(dwelling, &diagnosis::diagnose(dwelling), None)
}

/// The drawing of a dwelling as its plan leaves it.
pub fn as_planned(dwelling: &Dwelling) -> DrawingAnswer {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap_or(Edition::Nec2020);
    let planned = Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo());
    drawn_as_planned(&planned.unwrap_or_else(|fault| panic!("{fault:?}")), None)
}

/// The drawing of the circuits of a dwelling.
pub fn circuits_of(dwelling: &Dwelling) -> DrawingAnswer {
    let beliefs = believe(dwelling, &Priors::default());
    drawn_circuits(dwelling, &beliefs, &beliefs.advice(dwelling, &Stakes::default()), None)
}

/// Both drawings of a dwelling.
pub fn both(dwelling: &Dwelling) -> [DrawingAnswer; 2] {
    [as_found(dwelling), as_planned(dwelling)]
}

/// A sheet read back.
pub fn document(sheet: &SheetAnswer) -> Document<'_> {
    Document::parse(&sheet.svg).unwrap_or_else(|error| panic!("{}: {error}", sheet.title))
}

/// A rectangle: left, top, right, bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle(pub f64, pub f64, pub f64, pub f64);

impl Rectangle {
    /// Whether two overlap by more than a hair, which rounding to hundredths of a point may make.
    pub fn overlaps(&self, other: &Self) -> bool {
        let hair = 0.05;
        self.0 + hair < other.2 && other.0 + hair < self.2 && self.1 + hair < other.3 && other.1 + hair < self.3
    }

    pub fn holds(&self, inner: &Self) -> bool {
        self.0 <= inner.0 && self.1 <= inner.1 && self.2 >= inner.2 && self.3 >= inner.3
    }
}

/// The number of an attribute.
pub fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|text| text.parse().ok()).unwrap_or_else(|| panic!("no {name} on {node:?}"))
}

/// The name that a group carries.
pub fn name<'a>(group: Node<'a, 'a>) -> &'a str {
    group.attribute("data-id").unwrap_or_else(|| panic!("no data-id on {group:?}"))
}

/// What a drawing shows of its plane.
pub fn shown(root: Node<'_, '_>) -> Rectangle {
    let numbers: Vec<f64> = root.attribute("viewBox").unwrap_or("").split(' ').filter_map(|n| n.parse().ok()).collect();
    match numbers[..] {
        [left, top, width, height] => Rectangle(left, top, left + width, top + height),
        _ => panic!("no viewBox"),
    }
}

/// The groups of a kind.
pub fn groups<'a>(document: &'a Document<'a>, class: &'a str) -> impl Iterator<Item = Node<'a, 'a>> {
    document.descendants().filter(move |node| node.attribute("class") == Some(class))
}

/// What a node and what is in it covers: reckoned from its numbers alone, words by the estimate of their width.
pub fn covered(node: Node<'_, '_>) -> Option<Rectangle> {
    let own = match node.tag_name().name() {
        "circle" => {
            let (x, y, radius) = (number(node, "cx"), number(node, "cy"), number(node, "r"));
            Some(Rectangle(x - radius, y - radius, x + radius, y + radius))
        }
        "rect" => {
            let (x, y) = (number(node, "x"), number(node, "y"));
            Some(Rectangle(x, y, x + number(node, "width"), y + number(node, "height")))
        }
        "line" => {
            let (x1, x2, y1, y2) = (number(node, "x1"), number(node, "x2"), number(node, "y1"), number(node, "y2"));
            Some(Rectangle(x1.min(x2), y1.min(y2), x1.max(x2), y1.max(y2)))
        }
        "polyline" | "polygon" => {
            let numbers: Vec<f64> =
                node.attribute("points").unwrap_or("").split([' ', ',']).filter_map(|n| n.parse().ok()).collect();
            let points = numbers.chunks_exact(2).map(|pair| Rectangle(pair[0], pair[1], pair[0], pair[1]));
            points.reduce(joined)
        }
        "text" => {
            let size = number(node, "font-size");
            let text = node.text().unwrap_or("");
            let width = text_width(text, size, node.attribute("font-weight") == Some("bold"));
            assert!((width - number(node, "textLength")).abs() < 0.01, "{text}");
            let (x, base) = (number(node, "x"), number(node, "y"));
            let left = match node.attribute("text-anchor") {
                Some("middle") => x - width / 2.0,
                Some("end") => x - width,
                _ => x,
            };
            // Capitals and figures rise 0.72 of the size above the base line, and few letters fall 0.21 below.
            Some(Rectangle(left, base - 0.72 * size, left + width, base + 0.21 * size))
        }
        _ => None,
    };
    node.children().filter_map(covered).chain(own).reduce(joined)
}

fn joined(one: Rectangle, other: Rectangle) -> Rectangle {
    Rectangle(one.0.min(other.0), one.1.min(other.1), one.2.max(other.2), one.3.max(other.3))
}
