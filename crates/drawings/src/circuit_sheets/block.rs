//! What stands beside a box in its tree: the run to it, its name, its ground, and what marks it.

use super::arranged::{From, Placed};
use super::belief_words as words;
use super::circuit_shown::CircuitsShown;
use super::share_bar::{HEIGHT, SIGN, draw_run_sign, draw_shares};
use crate::geometry::{Spot, spot};
use crate::label::{Label, NAME, Piece};
use crate::line_style::circuit_line;
use crate::shown::Ground as Drawn;
use crate::svg::{Anchor, Svg, Type};
use crate::symbol::{self, Kind, RADIUS};
use crate::text_width::{cut_to, wrapped as wrapped_anywhere};
use diagnosis::belief::{BoxBelief, Ground, GroundRun};
use dwelling::BoxIndex;

const TEXT: Type = Type::plain(6.4);
const SAID: Type = Type::bold(6.4);
const LINE: f64 = 8.2;
/// How far words stand from the middle of their symbol.
const BESIDE: f64 = 10.0;
/// How far each way aside stands out.
const STEP: f64 = 13.0;
/// The width of a bar where there is room, and where there is little.
const BAR: (f64, f64) = (76.0, 46.0);
/// What is left free below a box.
const BELOW: f64 = 4.5;

/// A box with all that stands beside it, laid out.
pub(crate) struct Block {
    pub(crate) placed: Placed,
    pub(crate) height: f64,
    /// How far its symbol's middle lies below its top.
    pub(crate) middle: f64,
    /// The likeliest state of its run's ground.
    pub(crate) run: Option<GroundRun>,
    /// How its ground is drawn in its symbol.
    pub(crate) ground: Drawn,
    run_lines: Vec<String>,
    name: Label,
    shares: Option<([f64; 6], f64)>,
    share_lines: Vec<(String, Type)>,
    marks: Vec<(Piece, Vec<String>)>,
    says: String,
}

/// The middle of a symbol at a level, from the left edge of a column.
pub(crate) fn across(level: usize) -> f64 {
    // So many ways aside take a circuit of hundreds of boxes.
    10.0 + STEP * level.min(8) as f64
}

/// How the ground of a box is drawn by what may be said of it.
pub(crate) fn drawn_ground(belief: Option<&BoxBelief>) -> Drawn {
    match belief.and_then(BoxBelief::verdict) {
        Some(Ground::Grounded) => Drawn::Whole,
        Some(Ground::Poor | Ground::Interrupted) => Drawn::Unsound,
        Some(Ground::Missing | Ground::False | Ground::Live) => Drawn::None,
        None => Drawn::Unknown,
    }
}

impl Block {
    /// Lays out a box in a column of a width.
    pub(crate) fn of(shown: &CircuitsShown, placed: Placed, column: f64) -> Self {
        let belief = shown.belief(placed.at);
        let wide = column - across(placed.level) - BESIDE;
        let run_words = run_words(shown, &placed, belief);
        let run_lines = first_narrower(&run_words, wide, SIGN + 2.0);
        let bar = if wide >= 190.0 { BAR.0 } else { BAR.1 };
        let shares = belief.map(|belief| (belief.ground, bar));
        let share_lines = share_lines(belief, wide - bar - 4.0);
        let marks: Vec<(Piece, Vec<String>)> = marks(shown, placed.at, belief)
            .into_iter()
            .map(|(piece, text)| {
                let lines = wrapped(&text, TEXT, wide - Label::of(vec![piece.clone()]).size().0 - 4.0);
                (piece, lines)
            })
            .collect();
        let name = name(shown, placed.at, belief, wide);
        let middle = 1.5 + run_lines.len() as f64 * LINE + LINE / 2.0 + 0.6;
        let rows = run_lines.len() + 1 + share_lines.len() + marks.iter().map(|(_, lines)| lines.len()).sum::<usize>();
        Self {
            placed,
            height: 2.1 + rows as f64 * LINE + BELOW,
            middle,
            run: belief.map(|belief| words::likeliest_run(&belief.run)),
            ground: drawn_ground(belief),
            run_lines,
            name,
            shares,
            share_lines,
            marks,
            says: says(shown, placed.at, belief),
        }
    }

    /// Draws it from the top left of its place in a column.
    pub(crate) fn draw(&self, svg: &mut Svg, shown: &CircuitsShown, column: Spot) {
        let device_box = shown.dwelling.device_box(self.placed.at);
        let left = column.x + across(self.placed.level) + BESIDE;
        let mut top = column.y + 1.5;
        let base = |top: f64| top + LINE * 0.78;
        svg.open("run-words", &device_box.id, "");
        if let Some(run) = self.run {
            draw_run_sign(svg, spot(left, top + LINE / 2.0), run);
        }
        for (index, line) in self.run_lines.iter().enumerate() {
            let indent = if index == 0 { SIGN + 2.0 } else { 0.0 };
            svg.words(spot(left + indent, base(top)), line, TEXT, Anchor::Start);
            top += LINE;
        }
        svg.close();
        let centre = spot(column.x + across(self.placed.level), column.y + self.middle);
        svg.open("box", &device_box.id, &self.says);
        symbol::draw(svg, centre, Kind::of(device_box.holds), self.ground, spot(1.0, 0.0));
        svg.close();
        svg.open("box-label", &device_box.id, "");
        self.name.draw(svg, spot(left, top));
        svg.close();
        top += LINE + 0.6;
        svg.open("belief", &device_box.id, "");
        if let Some((shares, width)) = &self.shares {
            draw_shares(svg, spot(left, top + (LINE - HEIGHT) / 2.0), *width, shares);
        }
        let beside = left + self.shares.map_or(0.0, |(_, width)| width + 4.0);
        for (line, kind) in &self.share_lines {
            svg.words(spot(beside, base(top)), line, *kind, Anchor::Start);
            top += LINE;
        }
        svg.close();
        for (piece, lines) in &self.marks {
            svg.open("mark", &device_box.id, "");
            let tag = Label::of(vec![piece.clone()]);
            tag.draw(svg, spot(left, top));
            for line in lines {
                svg.words(spot(left + tag.size().0 + 4.0, base(top)), line, TEXT, Anchor::Start);
                top += LINE;
            }
            svg.close();
        }
    }

    /// Whether its ground arrives over its run, rather than not.
    pub(crate) fn run_conducts(&self) -> bool {
        matches!(self.run, Some(GroundRun::Sound | GroundRun::Weak))
    }

    /// The place to which the line of its run leads, from the top left of its place in a column.
    pub(crate) fn arrives(&self, column: Spot) -> Spot {
        let aside = if self.placed.is_straight { spot(0.0, -RADIUS) } else { spot(-RADIUS, 0.0) };
        column.plus(spot(across(self.placed.level), self.middle)).plus(aside)
    }
}

/// Text in lines, none of which begins with the sign that belongs to the number before.
fn wrapped(text: &str, kind: Type, width: f64) -> Vec<String> {
    // A dot is as wide as a space.
    let lines = wrapped_anywhere(&text.replace(" %", "·%"), kind.size, kind.bold, width);
    lines.into_iter().map(|line| line.replace("·%", " %")).collect()
}

/// Text in lines of which the first is narrower.
fn first_narrower(text: &str, width: f64, less: f64) -> Vec<String> {
    let lines = wrapped(text, TEXT, width - less);
    let Some((first, rest)) = lines.split_first() else { return lines };
    if rest.is_empty() {
        return lines;
    }
    let rest = wrapped(&rest.join(" "), TEXT, width);
    [first.clone()].into_iter().chain(rest).collect()
}

fn run_words(shown: &CircuitsShown, placed: &Placed, belief: Option<&BoxBelief>) -> String {
    let dwelling = shown.dwelling;
    let mut text = match placed.from {
        From::Panel | From::Row(_) => String::new(),
        From::Unknown => "fed by ?; ".to_owned(),
        From::Elsewhere(parent) => {
            let circuit = dwelling.circuit_of(parent).map_or("?", |circuit| circuit.id.as_str());
            format!("fed by {} of circuit {circuit}; ", dwelling.device_box(parent).id)
        }
    };
    text.push_str(words::cable(dwelling.cable_to(placed.at)));
    if let Some(gauge) = dwelling.gauge_to(placed.at) {
        text.push_str(&format!(" {gauge}"));
    }
    if let Some(belief) = belief {
        text.push_str(&format!(": {}", words::run_shares(&belief.run)));
    }
    text
}

fn share_lines(belief: Option<&BoxBelief>, wide: f64) -> Vec<(String, Type)> {
    let Some(belief) = belief else {
        return vec![("nothing is believed of it".to_owned(), TEXT)];
    };
    let kind = if belief.verdict().is_some() { SAID } else { TEXT };
    let together = format!("{}: {}", words::ground_shares(belief), words::verdict(belief));
    if kind.width_of(&together) <= wide {
        return vec![(together, kind)];
    }
    let shares = wrapped(&words::ground_shares(belief), kind, wide);
    let verdict = wrapped(words::verdict(belief), TEXT, wide);
    shares.into_iter().chain(verdict).map(|line| (line, kind)).collect()
}

fn name(shown: &CircuitsShown, at: BoxIndex, belief: Option<&BoxBelief>, wide: f64) -> Label {
    let device_box = shown.dwelling.device_box(at);
    let circuit = shown.dwelling.circuit_of(at).map_or("?", |circuit| circuit.id.as_str());
    let mut pieces = vec![
        Piece::Words(device_box.id.clone(), NAME),
        Piece::Circuit(circuit.to_owned(), circuit_line(device_box.circuit)),
    ];
    if belief.is_some_and(words::is_dangerous) {
        pieces.push(Piece::Work("!".to_owned()));
    }
    if let Some(bad) = belief.and_then(|belief| words::bad_conductors(&belief.run)) {
        pieces.push(Piece::Work(bad.to_owned()));
    }
    let room = shown.dwelling.room(device_box.room);
    let room = room.title.as_ref().unwrap_or(&room.id);
    let note = crate::words::note(device_box.holds);
    let beside = if note.is_empty() { room.clone() } else { format!("{note}, {room}") };
    let left = wide - Label::of(pieces.clone()).size().0 - 4.0;
    pieces.push(Piece::Words(cut_to(&beside, TEXT.size, false, left.max(0.0)), TEXT));
    Label::of(pieces)
}

/// What marks a box, each with its tag.
fn marks(shown: &CircuitsShown, at: BoxIndex, belief: Option<&BoxBelief>) -> Vec<(Piece, String)> {
    let mut marks = Vec::new();
    if let Some(advice) = shown.next_at(at) {
        marks.push((Piece::Route("NEXT".to_owned()), words::test(advice)));
    }
    if let Some(advice) = shown.opened_first_at(at) {
        marks.push((Piece::Route("OPEN".to_owned()), words::test(advice)));
    }
    let wiring = belief.map_or(String::new(), words::wiring_shares);
    if !wiring.is_empty() {
        marks.push((Piece::Work("W".to_owned()), wiring));
    }
    for (numbers, says) in shown.clashes_at(at) {
        marks.push((Piece::Work(format!("CLASH {numbers}")), says));
    }
    marks
}

/// What stands at a box in a sentence, for those who point at it and for those who listen.
fn says(shown: &CircuitsShown, at: BoxIndex, belief: Option<&BoxBelief>) -> String {
    let device_box = shown.dwelling.device_box(at);
    let room = shown.dwelling.room(device_box.room);
    let mut says = format!(
        "{}, {}: {}, {}",
        device_box.id,
        room.title.as_ref().unwrap_or(&room.id),
        device_box.holds.in_words(),
        shown.feed_in_words(device_box.fed_by)
    );
    if let Some(belief) = belief {
        says.push_str(&format!("; ground: {}; {}", words::every_share(belief), words::verdict(belief)));
        says.push_str(&format!("; run: {}", words::run_shares(&belief.run)));
        let wiring = words::wiring_shares(belief);
        if !wiring.is_empty() {
            says.push_str(&format!("; device: {wiring}"));
        }
    }
    says
}
