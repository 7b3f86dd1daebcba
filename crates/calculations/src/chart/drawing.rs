//! Writing an SVG: lines, bars and words in a few inks.

/// The inks: the same as the pages'.
#[derive(Clone, Copy)]
pub(super) enum Ink {
    /// Words and outlines.
    Black,
    /// What stands back.
    Quiet,
    /// What is drawn.
    Blue,
    /// What is drawn and stands back.
    PaleBlue,
    /// Where it gets dangerous.
    Red,
    /// What is advised.
    Amber,
}

impl Ink {
    const fn colour(self) -> &'static str {
        match self {
            Self::Black => "#1d1b17",
            Self::Quiet => "#77736a",
            Self::Blue => "#0b5c6b",
            Self::PaleBlue => "#9cc3ca",
            Self::Red => "#a3231c",
            Self::Amber => "#8a5a00",
        }
    }
}

/// On which side of its place a word stands.
#[derive(Clone, Copy)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// A drawing in the making.
pub(super) struct Drawing {
    width: f64,
    height: f64,
    title: String,
    description: String,
    body: String,
}

impl Drawing {
    pub(super) fn new((width, height): (f64, f64), title: impl Into<String>, description: impl Into<String>) -> Self {
        Self { width, height, title: title.into(), description: description.into(), body: String::new() }
    }

    pub(super) fn line(&mut self, from: (f64, f64), to: (f64, f64), ink: Ink, dashed: bool) {
        let dashes = if dashed { " stroke-dasharray=\"4 3\"" } else { "" };
        self.body.push_str(&format!(
            "<line x1=\"{:.1}\" y1=\"{:.1}\" x2=\"{:.1}\" y2=\"{:.1}\" stroke=\"{}\"{dashes}/>\n",
            from.0,
            from.1,
            to.0,
            to.1,
            ink.colour()
        ));
    }

    pub(super) fn path(&mut self, points: &[(f64, f64)], ink: Ink) {
        let points: Vec<String> = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
        let points = points.join(" ");
        self.body.push_str(&format!("<polyline points=\"{points}\" fill=\"none\" stroke=\"{}\"/>\n", ink.colour()));
    }

    pub(super) fn bar(&mut self, corner: (f64, f64), size: (f64, f64), ink: Ink) {
        self.body.push_str(&format!(
            "<rect x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{:.1}\" fill=\"{}\"/>\n",
            corner.0,
            corner.1,
            size.0.max(0.0),
            size.1.max(0.0),
            ink.colour()
        ));
    }

    pub(super) fn dot(&mut self, at: (f64, f64), ink: Ink) {
        self.body.push_str(&format!(
            "<circle cx=\"{:.1}\" cy=\"{:.1}\" r=\"3\" fill=\"{}\"/>\n",
            at.0,
            at.1,
            ink.colour()
        ));
    }

    pub(super) fn words(&mut self, at: (f64, f64), text: &str, ink: Ink, anchor: Anchor) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        self.body.push_str(&format!(
            "<text x=\"{:.1}\" y=\"{:.1}\" fill=\"{}\" text-anchor=\"{anchor}\">{}</text>\n",
            at.0,
            at.1,
            ink.colour(),
            escaped(text)
        ));
    }

    pub(super) fn headline(&mut self, at: (f64, f64), text: &str) {
        self.body.push_str(&format!(
            "<text x=\"{:.1}\" y=\"{:.1}\" fill=\"{}\" font-size=\"15\" font-weight=\"bold\">{}</text>\n",
            at.0,
            at.1,
            Ink::Black.colour(),
            escaped(text)
        ));
    }

    pub(super) fn finished(self) -> String {
        let (width, height) = (self.width, self.height);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"title what\" \
             font-family=\"system-ui, 'DejaVu Sans', sans-serif\" font-size=\"11\">\n\
             <title id=\"title\">{}</title>\n<desc id=\"what\">{}</desc>\n\
             <rect width=\"{width}\" height=\"{height}\" rx=\"6\" fill=\"#fbfaf7\" stroke=\"#c9c4b8\"/>\n{}</svg>\n",
            escaped(&self.title),
            escaped(&self.description),
            self.body
        )
    }
}

/// Text with the letters that drawings reserve written otherwise, and without those that no drawing may hold.
fn escaped(text: &str) -> String {
    let text: String = text.chars().filter(|letter| !letter.is_control()).collect();
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_tells_its_title_and_holds_no_letter_that_drawings_reserve() {
        let mut drawing = Drawing::new((10.0, 10.0), "a < b", "c & \u{1b}d");
        drawing.words((1.0, 1.0), "<script>", Ink::Black, Anchor::Start);
        let svg = drawing.finished();
        assert!(svg.contains("<title id=\"title\">a &lt; b</title>"));
        assert!(svg.contains("c &amp; d</desc>"));
        assert!(svg.contains("&lt;script&gt;"));
    }
}
