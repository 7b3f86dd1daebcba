//! Writing an SVG: lines, shapes and words, every number rounded alike so that equal drawings are equal bytes.

use crate::geometry::{Area, Spot};
use crate::text_width::text_width;

/// What is left white around a sheet, beyond the margins of a printer.
const EDGE: f64 = 3.6;

/// What a shape is filled and lined with.
#[derive(Clone, Debug)]
pub(crate) struct Pen {
    pub(crate) colour: &'static str,
    pub(crate) width: f64,
    pub(crate) dashes: &'static str,
    pub(crate) fill: &'static str,
    pub(crate) round: bool,
}

/// The colour of words, walls and symbols.
pub(crate) const BLACK: &str = "#111111";
/// The colour of what stands back: dark enough for a photocopy.
pub(crate) const QUIET: &str = "#4a4a4a";
/// The paper.
pub(crate) const WHITE: &str = "#ffffff";

impl Pen {
    pub(crate) const fn line(colour: &'static str, width: f64) -> Self {
        Self { colour, width, dashes: "", fill: "none", round: false }
    }

    pub(crate) const fn dashed(self, dashes: &'static str) -> Self {
        Self { dashes, ..self }
    }

    pub(crate) const fn filled(self, fill: &'static str) -> Self {
        Self { fill, ..self }
    }

    /// With round ends, so that lines that meet leave no notch.
    pub(crate) const fn round(self) -> Self {
        Self { round: true, ..self }
    }

    fn attributes(&self) -> String {
        let dashes =
            if self.dashes.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{}\"", self.dashes) };
        let fill = self.fill;
        let round = if self.round { " stroke-linecap=\"round\"" } else { "" };
        if self.width <= 0.0 {
            return format!(" fill=\"{fill}\"");
        }
        format!(" fill=\"{fill}\" stroke=\"{}\" stroke-width=\"{}\"{dashes}{round}", self.colour, number(self.width))
    }
}

/// On which side of its place a text stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// A text's type.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Type {
    pub(crate) size: f64,
    pub(crate) bold: bool,
    pub(crate) colour: &'static str,
}

impl Type {
    pub(crate) const fn plain(size: f64) -> Self {
        Self { size, bold: false, colour: BLACK }
    }

    pub(crate) const fn bold(size: f64) -> Self {
        Self { size, bold: true, colour: BLACK }
    }

    pub(crate) const fn quiet(self) -> Self {
        Self { colour: QUIET, ..self }
    }

    pub(crate) const fn in_colour(self, colour: &'static str) -> Self {
        Self { colour, ..self }
    }

    pub(crate) fn width_of(&self, text: &str) -> f64 {
        text_width(text, self.size, self.bold)
    }
}

/// An SVG in the making.
#[derive(Clone, Debug, Default)]
pub(crate) struct Svg {
    body: String,
}

impl Svg {
    /// Opens a group of a kind that stands for something; its words are shown where a viewer shows any.
    pub(crate) fn open(&mut self, class: &str, of: &str, says: &str) {
        let of = if of.is_empty() { String::new() } else { format!(" data-id=\"{}\"", escaped(of)) };
        self.body.push_str(&format!("<g class=\"{class}\"{of}>\n"));
        if !says.is_empty() {
            self.body.push_str(&format!("<title>{}</title>\n", escaped(says)));
        }
    }

    pub(crate) fn close(&mut self) {
        self.body.push_str("</g>\n");
    }

    pub(crate) fn line(&mut self, from: Spot, to: Spot, pen: &Pen) {
        self.body.push_str(&format!(
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n",
            number(from.x),
            number(from.y),
            number(to.x),
            number(to.y),
            pen.attributes()
        ));
    }

    pub(crate) fn path(&mut self, points: &[Spot], pen: &Pen) {
        self.body.push_str(&format!("<polyline points=\"{}\"{}/>\n", listed(points), pen.attributes()));
    }

    pub(crate) fn polygon(&mut self, points: &[Spot], pen: &Pen) {
        self.body.push_str(&format!("<polygon points=\"{}\"{}/>\n", listed(points), pen.attributes()));
    }

    pub(crate) fn circle(&mut self, centre: Spot, radius: f64, pen: &Pen) {
        let (x, y, radius) = (number(centre.x), number(centre.y), number(radius));
        self.body.push_str(&format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"{}/>\n", pen.attributes()));
    }

    /// The lower half of a disc.
    pub(crate) fn half_disc(&mut self, centre: Spot, radius: f64, pen: &Pen) {
        let (left, right) = (number(centre.x - radius), number(centre.x + radius));
        let (y, radius) = (number(centre.y), number(radius));
        let path = format!("M {left} {y} A {radius} {radius} 0 0 0 {right} {y} Z");
        self.body.push_str(&format!("<path d=\"{path}\"{}/>\n", pen.attributes()));
    }

    pub(crate) fn area(&mut self, area: &Area, rounded: f64, pen: &Pen) {
        self.body.push_str(&format!(
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\"{}/>\n",
            number(area.left),
            number(area.top),
            number(area.width()),
            number(area.height()),
            number(rounded),
            pen.attributes()
        ));
    }

    /// Words on a base line. Their width is stated, so that every viewer draws them as wide as they were reckoned.
    pub(crate) fn words(&mut self, at: Spot, text: &str, kind: Type, anchor: Anchor) {
        if text.trim().is_empty() {
            return;
        }
        let anchor = match anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let bold = if kind.bold { " font-weight=\"bold\"" } else { "" };
        self.body.push_str(&format!(
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\" fill=\"{}\"{bold}{anchor} textLength=\"{}\" \
             lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
            number(at.x),
            number(at.y),
            number(kind.size),
            kind.colour,
            number(kind.width_of(text)),
            escaped(text)
        ));
    }

    pub(crate) fn append(&mut self, other: &Self) {
        self.body.push_str(&other.body);
    }

    /// The whole drawing, of a size in points.
    pub(crate) fn finished(self, (width, height): (f64, f64), title: &str, says: &str) -> String {
        let (left, wide, high) = (number(-EDGE), width + 2.0 * EDGE, height + 2.0 * EDGE);
        let (inches_wide, inches_high) = (number(wide / 72.0), number(high / 72.0));
        let (width, height) = (number(wide), number(high));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{inches_wide}in\" height=\"{inches_high}in\" \
             viewBox=\"{left} {left} {width} {height}\" role=\"img\" aria-labelledby=\"title says\" \
             font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\">\n\
             <title id=\"title\">{}</title>\n<desc id=\"says\">{}</desc>\n\
             <rect x=\"{left}\" y=\"{left}\" width=\"{width}\" height=\"{height}\" fill=\"{WHITE}\"/>\n{}</svg>\n",
            escaped(title),
            escaped(says),
            self.body
        )
    }
}

fn listed(points: &[Spot]) -> String {
    let points: Vec<String> = points.iter().map(|at| format!("{},{}", number(at.x), number(at.y))).collect();
    points.join(" ")
}

/// A number in hundredths at most, without a sign where it is nothing.
fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Text with the letters that drawings reserve written otherwise, and without those that no drawing may hold.
fn escaped(text: &str) -> String {
    let allowed = |letter: &char| !letter.is_control() && !matches!(letter, '\u{fffe}' | '\u{ffff}');
    let text: String = text.chars().filter(allowed).collect();
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::spot;

    #[test]
    fn letters_that_drawings_reserve_are_written_otherwise() {
        let mut svg = Svg::default();
        svg.open("box", "a\"b", "c & \u{1b}d");
        svg.words(spot(1.0, 2.0), "<script>", Type::plain(6.0), Anchor::Start);
        svg.close();
        let text = svg.finished((72.0, 36.0), "a < b", "");
        assert!(text.contains("<title id=\"title\">a &lt; b</title>"));
        assert!(text.contains("data-id=\"a&quot;b\"") && text.contains("c &amp; d"));
        assert!(text.contains(">&lt;script&gt;</text>"));
        assert!(text.contains("width=\"1.1in\" height=\"0.6in\""));
    }

    #[test]
    fn numbers_are_short() {
        assert_eq!([1.0, 0.5, 0.126, -0.001, 100.0].map(number), ["1", "0.5", "0.13", "0", "100"]);
    }
}
