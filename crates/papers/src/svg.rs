//! The project's own drawings read from their SVG: the few kinds of shapes and words that they are made of.

use crate::document::Face;
use crate::page::{Mark, Shape, Stroke, Words};
use crate::typeface::Typefaces;
use roxmltree::{Document, Node};

/// A drawing, its upper left corner at nothing.
pub(crate) struct Figure {
    pub(crate) size: (f32, f32),
    pub(crate) marks: Vec<Mark>,
}

/// How far the handles of a curve stand off that stands for a quarter of a circle of radius 1.
const QUARTER: f32 = 0.552_285;

/// The drawing; nothing where it is no drawing of the kind that this project makes.
pub(crate) fn figure_of(svg: &str, faces: &Typefaces) -> Option<Figure> {
    let document = Document::parse(svg).ok()?;
    let root = document.root_element();
    let area = numbers(root.attribute("viewBox")?);
    let [left, top, width, height] = area.as_slice() else { return None };
    let drawn = root.descendants().filter_map(|node| mark_of(&node, faces));
    let marks = drawn.map(|mark| mark.moved((-left, -top))).collect();
    Some(Figure { size: (*width, *height), marks })
}

fn mark_of(node: &Node, faces: &Typefaces) -> Option<Mark> {
    let at = |name: &str| node.attribute(name).and_then(|value| value.parse::<f32>().ok()).unwrap_or(0.0);
    let path = match node.tag_name().name() {
        "text" => return words_of(node, faces),
        "line" => vec![Stroke::To(at("x1"), at("y1")), Stroke::Line(at("x2"), at("y2"))],
        "polyline" => through(&numbers(node.attribute("points")?), false),
        "polygon" => through(&numbers(node.attribute("points")?), true),
        "circle" => circle((at("cx"), at("cy")), at("r")),
        "rect" => rectangle((at("x"), at("y")), (at("width"), at("height")), at("rx")),
        "path" => half_disc(node.attribute("d")?)?,
        _ => return None,
    };
    let line = grey(node.attribute("stroke")).map(|grey| (at("stroke-width"), grey));
    let dashes = node.attribute("stroke-dasharray").map(numbers).unwrap_or_default();
    // Dashes of no length are a whole line to SVG and no line at all to PDF.
    let dashes = if dashes.iter().all(|dash| *dash <= 0.0) { Vec::new() } else { dashes };
    let fill = grey(node.attribute("fill"));
    let round = node.attribute("stroke-linecap") == Some("round");
    Some(Mark::Shape(Shape { path, line, dashes, round, fill }))
}

fn words_of(node: &Node, faces: &Typefaces) -> Option<Mark> {
    let number = |name: &str| node.attribute(name).and_then(|value| value.parse::<f32>().ok());
    let text = node.text()?.to_owned();
    let size = number("font-size")?;
    let face = if node.attribute("font-weight") == Some("bold") { Face::Bold } else { Face::Plain };
    let own = faces.width(face, &text, size);
    let wide = number("textLength").map_or(own, |reckoned| reckoned.min(own));
    let before = match node.attribute("text-anchor") {
        Some("middle") => wide / 2.0,
        Some("end") => wide,
        _ => 0.0,
    };
    let at = (number("x")? - before, number("y")?);
    Some(Mark::Words(Words {
        at,
        face,
        size,
        grey: grey(node.attribute("fill")).unwrap_or(0),
        text,
        fitted: Some(wide),
        part: None,
    }))
}

fn numbers(text: &str) -> Vec<f32> {
    let parts = text.split(|letter: char| letter == ',' || letter.is_whitespace());
    parts.filter_map(|part| part.parse().ok()).collect()
}

/// A colour as a grey of the same lightness; nothing where none is asked for.
fn grey(colour: Option<&str>) -> Option<u8> {
    let digits = colour?.strip_prefix('#')?;
    let part = |at: usize| digits.get(at..at + 2).and_then(|digits| u32::from_str_radix(digits, 16).ok());
    let (red, green, blue) = (part(0)?, part(2)?, part(4)?);
    u8::try_from((red * 299 + green * 587 + blue * 114) / 1000).ok()
}

fn through(points: &[f32], closed: bool) -> Vec<Stroke> {
    let mut path = Vec::new();
    for point in points.chunks_exact(2) {
        let (x, y) = (point[0], point[1]);
        path.push(if path.is_empty() { Stroke::To(x, y) } else { Stroke::Line(x, y) });
    }
    if closed {
        path.push(Stroke::Close);
    }
    path
}

fn circle((x, y): (f32, f32), r: f32) -> Vec<Stroke> {
    let k = r * QUARTER;
    vec![
        Stroke::To(x + r, y),
        Stroke::Curve((x + r, y + k), (x + k, y + r), (x, y + r)),
        Stroke::Curve((x - k, y + r), (x - r, y + k), (x - r, y)),
        Stroke::Curve((x - r, y - k), (x - k, y - r), (x, y - r)),
        Stroke::Curve((x + k, y - r), (x + r, y - k), (x + r, y)),
        Stroke::Close,
    ]
}

fn rectangle((left, top): (f32, f32), (width, height): (f32, f32), rounded: f32) -> Vec<Stroke> {
    let (right, bottom) = (left + width, top + height);
    if rounded <= 0.0 {
        return through(&[left, top, right, top, right, bottom, left, bottom], true);
    }
    let r = rounded.min(width / 2.0).min(height / 2.0);
    let k = r * (1.0 - QUARTER);
    vec![
        Stroke::To(left + r, top),
        Stroke::Line(right - r, top),
        Stroke::Curve((right - k, top), (right, top + k), (right, top + r)),
        Stroke::Line(right, bottom - r),
        Stroke::Curve((right, bottom - k), (right - k, bottom), (right - r, bottom)),
        Stroke::Line(left + r, bottom),
        Stroke::Curve((left + k, bottom), (left, bottom - k), (left, bottom - r)),
        Stroke::Line(left, top + r),
        Stroke::Curve((left, top + k), (left + k, top), (left + r, top)),
        Stroke::Close,
    ]
}

/// The lower half of a disc, as `M left y A r r 0 0 0 right y Z`.
fn half_disc(path: &str) -> Option<Vec<Stroke>> {
    let given = numbers(path);
    let [left, y, r, _, _, _, _, right, _] = *given.as_slice() else { return None };
    let (x, k) = ((left + right) / 2.0, r * QUARTER);
    Some(vec![
        Stroke::To(left, y),
        Stroke::Curve((left, y + k), (x - k, y + r), (x, y + r)),
        Stroke::Curve((x + k, y + r), (right, y + k), (right, y)),
        Stroke::Close,
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: four marks; the view begins at (-4, -4), so (10, 20) lies at (14, 24).
    #[test]
    fn shapes_and_words_are_read_where_they_stand() {
        let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-4 -4 80 40\"><g><title>not drawn</title>\
                   <rect x=\"-4\" y=\"-4\" width=\"80\" height=\"40\" fill=\"#ffffff\"/>\
                   <circle cx=\"1\" cy=\"2\" r=\"3\" fill=\"none\" stroke=\"#000000\" stroke-width=\"1\"/>\
                   <path d=\"M 0 5 A 5 5 0 0 0 10 5 Z\" fill=\"#000000\"/>\
                   <text x=\"10\" y=\"20\" font-size=\"6\" fill=\"#111111\">K-1</text></g></svg>";
        let faces = Typefaces::read().expect("the faces are read");
        let figure = figure_of(svg, &faces).expect("a drawing");
        assert_eq!((figure.size, figure.marks.len()), ((80.0, 40.0), 4));
        let Some(Mark::Words(words)) = figure.marks.last() else { panic!("words") };
        assert_eq!((words.text.as_str(), words.at), ("K-1", (14.0, 24.0)));
    }

    /// By hand: the line along a baseboard is whole, with dashes of no length; the one in a crawl space is broken.
    #[test]
    fn a_line_with_dashes_of_no_length_is_whole() {
        let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">\
                   <line x1=\"0\" y1=\"0\" x2=\"9\" y2=\"0\" stroke=\"#000000\" stroke-width=\"1\" stroke-dasharray=\"0\"/>\
                   <line x1=\"0\" y1=\"5\" x2=\"9\" y2=\"5\" stroke=\"#000000\" stroke-width=\"1\" stroke-dasharray=\"2 2\"/></svg>";
        let faces = Typefaces::read().expect("the faces are read");
        let figure = figure_of(svg, &faces).expect("a drawing");
        let dashes = figure.marks.iter().map(|mark| match mark {
            Mark::Shape(shape) => shape.dashes.clone(),
            _ => panic!("a line"),
        });
        assert_eq!(dashes.collect::<Vec<_>>(), [vec![], vec![2.0, 2.0]]);
    }

    #[test]
    fn what_is_no_drawing_is_none() {
        let faces = Typefaces::read().expect("the faces are read");
        assert!(figure_of("<svg", &faces).is_none() && figure_of("<svg/>", &faces).is_none());
    }
}
