//! The sheets of a one-line: each panel with its bar at the left, a circuit or multiwire set at each branch of it.

use super::fed::{AtStart, Fed};
use super::legend::legend;
use super::rows::{Arrives, COLUMNS, Cell, cells};
use super::signs::{BREAKER, NAME, SMALL, draw_beside, draw_opening, draw_overcurrent, draw_tie, line};
use crate::geometry::{Area, Spot, spot};
use crate::lists::{GUTTER, columns, flow};
use crate::sheet::{FOOT, TITLE, UPRIGHT, framed};
use crate::shown::Moment;
use crate::svg::{Anchor, BLACK, Pen, QUIET, Svg, Type};
use crate::symbol::{RADIUS, draw_source};
use crate::text_width::{cut_to, wrapped};
use crate::words;
use dwelling::{BoxIndex, CircuitIndex, CircuitTree, Feed, Overcurrent, PanelIndex};

/// The bar of a panel.
const BAR: f64 = 6.0;
/// Where the first box of a row stands.
const FIRST: f64 = 122.0;
const ROW: f64 = 28.0;
/// Above the first row of a set: the words over its line.
const OVER: f64 = 11.0;
/// Below the last row of a set, and below its label: the words that stand under a line.
const BELOW: f64 = 20.0;
const BELOW_LABEL: f64 = 25.0;
const HEAD_LINE: f64 = 8.2;
/// What the words about a circuit may take.
const LABEL: f64 = FIRST - RADIUS - 10.0 - (BAR + BREAKER + 6.0);
/// What two breakers of a set stand apart.
const APART: f64 = 25.0;
const LEGEND: f64 = 66.0;

/// A sheet of a one-line.
pub(super) struct LineSheet {
    pub(super) circuits: Vec<CircuitIndex>,
    pub(super) boxes: Vec<BoxIndex>,
    pub(super) title: String,
    pub(super) svg: String,
}

/// A piece that stays whole: the head of a panel, or rows of a set.
pub(super) enum Piece<'a> {
    Head(PanelIndex, Vec<String>),
    Rows { tree: &'a CircuitTree, set: usize, cells: Vec<Cell>, rows: (usize, usize), has_label: bool },
    Loose(Vec<BoxIndex>),
}

impl Piece<'_> {
    pub(super) fn height(&self) -> f64 {
        match self {
            Self::Head(_, lines) => lines.len() as f64 * HEAD_LINE + 26.0,
            Self::Rows { tree, rows, has_label, .. } => {
                let down = |count: usize, apart: f64| count.saturating_sub(1) as f64 * apart;
                let label = if *has_label { down(tree.circuits.len(), APART) + BELOW_LABEL } else { 0.0 };
                OVER + label.max(down(rows.1 - rows.0, ROW) + BELOW)
            }
            Self::Loose(boxes) => boxes.len().div_ceil(COLUMNS) as f64 * ROW + OVER + 14.0,
        }
    }
}

/// What is left of a sheet for its lines.
pub(super) fn body() -> Area {
    Area::new(0.0, TITLE, UPRIGHT.0, UPRIGHT.1 - FOOT - LEGEND - GUTTER)
}

/// The moment of a one-line in words.
pub(super) fn when(fed: &Fed) -> String {
    match (fed.moment, fed.edition) {
        (Moment::Before, _) => "as it was found".to_owned(),
        (Moment::After, Some(edition)) => format!("as the plan leaves it, by the {edition} edition"),
        (Moment::After, None) => "as the plan leaves it".to_owned(),
    }
}

/// Draws the sheets.
pub(super) fn sheets(fed: &Fed) -> Vec<LineSheet> {
    let body = body();
    let mut pages: Vec<Vec<(Piece, f64)>> = vec![Vec::new()];
    let mut top = body.top;
    let most = ((body.height() - OVER) / ROW).floor() as usize;
    for piece in pieces(fed, most) {
        let height = piece.height();
        // The head of a panel does not stand alone at the foot of a sheet.
        let follows = if matches!(piece, Piece::Head(..)) { ROW + OVER + APART } else { 0.0 };
        if top + height + follows > body.bottom && top > body.top {
            pages.push(Vec::new());
            top = body.top;
        }
        if let Some(page) = pages.last_mut() {
            page.push((piece, top));
        }
        top += height;
    }
    let count = pages.len();
    pages.iter().enumerate().map(|(number, page)| sheet(fed, page, (number, count), &body)).collect()
}

/// Everything in order; a set of more rows than a sheet holds is in several pieces.
pub(super) fn pieces<'a>(fed: &'a Fed, most: usize) -> Vec<Piece<'a>> {
    let mut list = Vec::new();
    for number in 0..fed.dwelling.panels.len() {
        let panel = PanelIndex(number);
        list.push(Piece::Head(panel, head_lines(fed, panel)));
        for (set, tree) in fed.trees.iter().enumerate().filter(|(_, tree)| tree.panel == panel) {
            let (all, rows) = cells(fed, tree);
            let mut from = 0;
            loop {
                let to = (from + most).min(rows.max(1));
                let here = all.iter().filter(|cell| (from..to).contains(&cell.row)).copied().collect();
                list.push(Piece::Rows { tree, set, cells: here, rows: (from, to), has_label: from == 0 });
                from = to;
                if from >= rows {
                    break;
                }
            }
        }
    }
    let loose = fed.on_no_circuit();
    if !loose.is_empty() {
        list.push(Piece::Loose(loose));
    }
    list
}

/// What is said of a panel.
fn head_lines(fed: &Fed, at: PanelIndex) -> Vec<String> {
    let panel = fed.dwelling.panel(at);
    let service = match panel.service {
        Some(true) => "Service equipment: neutral and ground are bonded in it; see that the bond is there.",
        Some(false) => "Not the service equipment: neutral and ground stay apart in it.",
        None => "Not known whether it is the service equipment: find out where neutral and ground are bonded.",
    };
    let bar = match panel.ground_bar {
        Some(true) => "It has a bar for grounding conductors.",
        Some(false) => "It has no bar for grounding conductors.",
        None => "Not known whether it has a bar for grounding conductors.",
    };
    let mut lines = vec![service.to_owned(), bar.to_owned()];
    lines.extend(panel.fault_current.map(|amperes| format!("Fault current at it: {amperes}.")));
    let sources = fed.dwelling.sources.iter().filter(|source| source.panel == Some(at));
    lines.extend(sources.map(|source| {
        let verified = if source.verified == Some(true) { "verified" } else { "not verified" };
        format!("{}: {}, {verified}.", source.id, source.kind.name().replace('-', " "))
    }));
    lines
}

fn sheet(fed: &Fed, pieces: &[(Piece, f64)], (number, count): (usize, usize), body: &Area) -> LineSheet {
    let mut svg = Svg::default();
    let mut bars: Vec<(f64, f64)> = Vec::new();
    let (circuits, boxes) = draw_pieces(&mut svg, fed, pieces, &mut bars, body.top);
    let part = if count > 1 { format!(", sheet {} of {count}", number + 1) } else { String::new() };
    let line = format!("One-line, {}{part}", when(fed));
    let (title, svg) = on_paper(&[(fed, &boxes)], (svg, bars), &line, &said(fed, pieces));
    LineSheet { circuits, boxes, title, svg }
}

/// Draws pieces at their places, and tells the bars of their panels, their circuits and their boxes.
pub(super) fn draw_pieces(
    svg: &mut Svg,
    fed: &Fed,
    pieces: &[(Piece, f64)],
    bars: &mut Vec<(f64, f64)>,
    body_top: f64,
) -> (Vec<CircuitIndex>, Vec<BoxIndex>) {
    let (mut circuits, mut boxes) = (Vec::new(), Vec::new());
    for (piece, top) in pieces {
        match piece {
            Piece::Head(panel, lines) => {
                draw_head(svg, fed, *panel, lines, *top);
                let start = top + piece.height() - 8.0;
                bars.push((start, start));
            }
            Piece::Rows { tree, set, cells, has_label, .. } => {
                let low = draw_set(svg, fed, (tree, *set), piece, *top);
                match bars.last_mut() {
                    Some(bar) if *has_label => bar.1 = low,
                    None if *has_label => bars.push((body_top, low)),
                    _ => {}
                }
                circuits.extend(tree.circuits.iter().filter(|_| *has_label));
                boxes.extend(cells.iter().map(|cell| cell.at));
            }
            Piece::Loose(loose) => {
                draw_loose(svg, fed, loose, *top);
                boxes.extend(loose);
            }
        }
    }
    (circuits, boxes)
}

/// What was drawn as a sheet with its title and its legend: its title and the drawing.
pub(super) fn on_paper(
    shown: &[(&Fed, &[BoxIndex])],
    (drawn, bars): (Svg, Vec<(f64, f64)>),
    line: &str,
    says: &str,
) -> (String, String) {
    let body = body();
    let mut whole = Svg::default();
    for (from, to) in bars {
        whole.line(spot(BAR, from), spot(BAR, to), &Pen::line(BLACK, 3.0));
    }
    whole.append(&drawn);
    let below = body.bottom + GUTTER / 2.0;
    whole.line(spot(0.0, below), spot(UPRIGHT.0, below), &Pen::line(BLACK, 0.6));
    let area = Area::new(0.0, body.bottom + GUTTER, UPRIGHT.0, UPRIGHT.1 - FOOT);
    let left_over = flow(&mut whole, &legend(shown), &columns(&area));
    debug_assert!(left_over.is_empty());
    let name = shown.first().map_or("", |(fed, _)| &fed.dwelling.job.name);
    let title = format!("{name}: {line}");
    let svg = framed(whole, name, line, UPRIGHT, None).finished(UPRIGHT, &title, says);
    (title, svg)
}

fn draw_head(svg: &mut Svg, fed: &Fed, at: PanelIndex, lines: &[String], top: f64) {
    let panel = fed.dwelling.panel(at);
    svg.open("panel", &panel.id, &format!("panel {}", panel.id));
    // What feeds the panel comes from above, through a main whose rating the survey does not hold.
    let (feed, main) = (spot(BAR, top + 4.0), spot(BAR, top + 16.0));
    svg.line(feed, spot(BAR, top + lines.len() as f64 * HEAD_LINE + 18.0), &Pen::line(BLACK, 1.1));
    let tip = feed.plus(spot(0.0, 6.0));
    svg.polygon(&[tip, feed.plus(spot(-3.0, 0.0)), feed.plus(spot(3.0, 0.0))], &Pen::line(BLACK, 0.0).filled(BLACK));
    svg.area(&Area::around(main, (8.0, 9.0)), 0.0, &Pen::line(BLACK, 1.0).dashed("1.6 1.4").filled("#ffffff"));
    svg.words(main.plus(spot(0.0, 2.4)), "?", NAME, Anchor::Middle);
    if panel.ground_bar == Some(true) {
        draw_source(svg, spot(BAR + 14.0, top + 17.0), 4.0);
    }
    svg.close();
    let kind = match panel.overcurrent {
        Some(Overcurrent::Breakers) => "breakers",
        Some(Overcurrent::Fuses) => "fuses",
        None => "breakers or fuses",
    };
    let title = format!("Panel {}, {kind}; the rating of its main is not in the survey", panel.id);
    svg.words(spot(BAR + 24.0, top + 9.0), &cut_to(&title, 8.0, true, 500.0), Type::bold(8.0), Anchor::Start);
    for (number, line) in lines.iter().enumerate() {
        let base = top + 18.0 + number as f64 * HEAD_LINE;
        svg.words(spot(BAR + 24.0, base), &cut_to(line, 7.0, false, 500.0), Type::plain(7.0), Anchor::Start);
    }
}

/// The place of a cell.
fn place(cell: &Cell, from_row: usize, top: f64) -> Spot {
    spot(FIRST + cell.column as f64 * pitch(), top + OVER + (cell.row - from_row) as f64 * ROW)
}

const fn pitch() -> f64 {
    (UPRIGHT.0 - FIRST + 6.0) / COLUMNS as f64
}

/// Draws a set, and tells how far down its last branch of the bar stands.
fn draw_set(svg: &mut Svg, fed: &Fed, (tree, set): (&CircuitTree, usize), piece: &Piece, top: f64) -> f64 {
    let Piece::Rows { cells, rows, has_label, .. } = piece else { return top };
    let start = &fed.starts[set];
    let y = top + OVER;
    let mut low = top;
    svg.open("set", &fed.dwelling.circuit(tree.circuits[0]).id, "");
    if *has_label {
        low = draw_starts(svg, fed, tree, start, y);
        // Every cable that leaves the panel begins at the end of this line.
        let homes: Vec<f64> = cells
            .iter()
            .filter(|cell| cell.arrives == Arrives::FromPanel)
            .map(|cell| place(cell, rows.0, top).y)
            .collect();
        let end = spot(FIRST - RADIUS - 8.0, y);
        let pen = line(start.guard.gfci);
        if let Some(lowest) = homes.iter().copied().reduce(f64::max) {
            // What stands beside the panel guards what comes after it.
            svg.path(&[spot(BAR + BREAKER, y), end], &line(start.guard.gfci && !start.beside));
            if lowest > y {
                svg.path(&[end, spot(end.x, lowest)], &pen);
            }
        }
    }
    for cell in cells {
        draw_arrival(svg, fed, (cells, cell), *rows, top);
    }
    if *has_label && start.beside {
        draw_beside(svg, spot(FIRST - RADIUS - 8.0, y), start);
    }
    let multiwire = tree.is_multiwire();
    for cell in cells {
        let device_box = fed.dwelling.device_box(cell.at);
        let circuit = device_box.circuit.filter(|_| multiwire).map(|at| fed.dwelling.circuit(at).id.as_str());
        let name = circuit.map_or(device_box.id.clone(), |circuit| format!("{} ({circuit})", device_box.id));
        svg.open("box", &device_box.id, &says_of(fed, cell.at));
        draw_opening(svg, place(cell, rows.0, top), &name, &fed.boxes[cell.at.0], pitch());
        svg.close();
    }
    svg.close();
    low
}

/// The breakers of a set with what is said of each.
fn draw_starts(svg: &mut Svg, fed: &Fed, tree: &CircuitTree, start: &AtStart, y: f64) -> f64 {
    let panel = fed.dwelling.panel(tree.panel);
    let left = BAR + BREAKER + 5.0;
    for (number, at) in tree.circuits.iter().enumerate() {
        let circuit = fed.dwelling.circuit(*at);
        let y = y + number as f64 * APART;
        draw_overcurrent(svg, spot(BAR, y), panel.overcurrent);
        let rating = circuit.breaker.map_or("? A".to_owned(), |rating| rating.to_string());
        let name = cut_to(&format!("{}: {rating}", circuit.id), 7.4, true, LABEL);
        svg.words(spot(left, y - 2.8), &name, Type::bold(7.4), Anchor::Start);
        let kind = match (tree.is_multiwire(), number) {
            (true, 1..) => "one neutral for both".to_owned(),
            _ => at_panel(fed, tree, start),
        };
        let face = if start.is_new { Type::bold(SMALL.size) } else { SMALL };
        for (line, text) in wrapped(&kind, face.size, face.bold, LABEL).into_iter().take(3).enumerate() {
            svg.words(spot(left, y + 7.6 + line as f64 * 6.6), &text, face, Anchor::Start);
        }
    }
    if let (true, count) = (tree.is_multiwire(), tree.circuits.len()) {
        let low = y + (count - 1) as f64 * APART;
        draw_tie(svg, spot(BAR, y), spot(BAR, low));
        let joined = BAR + BREAKER;
        svg.line(spot(joined, y), spot(joined, low), &Pen::line(BLACK, 1.1));
        return low;
    }
    y
}

/// What stands at the panel end of a tree, in words.
fn at_panel(fed: &Fed, tree: &CircuitTree, start: &AtStart) -> String {
    let plain = match tree.is_multiwire() {
        true => format!("{}s", words::overcurrent(&fed.dwelling, tree.panel)),
        false => format!("1-pole {}", words::overcurrent(&fed.dwelling, tree.panel)),
    };
    let new = if start.is_new { "NEW " } else { "" };
    match (start.words, start.beside) {
        ("", _) => plain,
        (words, true) => format!("{plain}; {new}{words}"),
        (words, false) => format!("{new}{words}"),
    }
}

/// Draws the line on which a box is fed.
fn draw_arrival(svg: &mut Svg, fed: &Fed, (cells, cell): (&[Cell], &Cell), rows: (usize, usize), top: f64) {
    let at = place(cell, rows.0, top);
    let to = at.minus(spot(RADIUS, 0.0));
    let pen = line(fed.boxes[cell.at.0].line.gfci);
    svg.open("run", &fed.dwelling.device_box(cell.at).id, "");
    match cell.arrives {
        Arrives::FromPanel => svg.path(&[to.minus(spot(8.0, 0.0)), to], &pen),
        Arrives::FromLeft => svg.path(&[to.minus(spot(pitch() - 2.0 * RADIUS, 0.0)), to], &pen),
        Arrives::FromAbove(row) if row >= rows.0 => {
            let above = spot(at.x, at.y - (cell.row - row) as f64 * ROW);
            let (down, aside) = (above.y + RADIUS + 3.2, at.x - 7.4);
            let points = [above.plus(spot(0.0, RADIUS)), spot(at.x, down), spot(aside, down), spot(aside, at.y), to];
            svg.path(&points, &pen);
        }
        Arrives::GoesOn(from) => from_elsewhere(svg, fed, from, to, &pen),
        Arrives::FromAbove(_) => {
            let feed = fed.dwelling.device_box(cell.at).fed_by;
            if let Some(Feed::Box(from)) = feed {
                from_elsewhere(svg, fed, from, to, &pen);
            }
        }
        Arrives::Unknown => {
            svg.line(to.minus(spot(10.0, 0.0)), to, &Pen::line(QUIET, 1.1).dashed("1 2"));
            if cell.column == 0 {
                svg.words(to.minus(spot(13.0, -2.2)), "fed by ?", Type::bold(SMALL.size), Anchor::End);
            }
        }
    }
    // What follows a box that ends its row goes on below.
    let follows = cells.iter().any(|other| other.arrives == Arrives::GoesOn(cell.at));
    if follows && cell.column + 1 == COLUMNS {
        let from = at.plus(spot(RADIUS, 0.0));
        svg.path(&[from, from.plus(spot(26.0, 0.0))], &pen);
    }
    svg.close();
}

fn from_elsewhere(svg: &mut Svg, fed: &Fed, from: BoxIndex, to: Spot, pen: &Pen) {
    svg.path(&[to.minus(spot(10.0, 0.0)), to], pen);
    let text = format!("from {}", fed.dwelling.device_box(from).id);
    svg.words(to.minus(spot(13.0, -2.2)), &cut_to(&text, SMALL.size, true, 70.0), Type::bold(SMALL.size), Anchor::End);
}

fn draw_loose(svg: &mut Svg, fed: &Fed, loose: &[BoxIndex], top: f64) {
    svg.words(spot(0.0, top + 8.0), "Circuit not known: find out", Type::bold(8.0), Anchor::Start);
    for (number, at) in loose.iter().enumerate() {
        let (row, column) = (number / COLUMNS, number % COLUMNS);
        let here = spot(FIRST + column as f64 * pitch(), top + 14.0 + OVER + row as f64 * ROW);
        let id = &fed.dwelling.device_box(*at).id;
        svg.open("box", id, &says_of(fed, *at));
        draw_opening(svg, here, id, &fed.boxes[at.0], pitch());
        svg.close();
    }
}

/// What stands at a box in a sentence.
fn says_of(fed: &Fed, at: BoxIndex) -> String {
    let (device_box, opening) = (fed.dwelling.device_box(at), &fed.boxes[at.0]);
    let guard = match opening.guard.in_words() {
        "" => "no GFCI or AFCI".to_owned(),
        words if opening.own => format!("its own {words}"),
        words => words.to_owned(),
    };
    format!("{}: {}, {}, {guard}", device_box.id, opening.holds.in_words(), opening.ground.meaning())
}

/// The whole sheet in words: every circuit with what stands at the panel and what it feeds, in order.
pub(super) fn said(fed: &Fed, pieces: &[(Piece, f64)]) -> String {
    let mut parts = Vec::new();
    for (piece, _) in pieces {
        match piece {
            Piece::Head(panel, lines) => {
                parts.push(format!("Panel {}. {}", fed.dwelling.panel(*panel).id, lines.join(" ")))
            }
            Piece::Rows { tree, set, cells, .. } => {
                let circuits: Vec<String> = tree
                    .circuits
                    .iter()
                    .map(|at| {
                        let circuit = fed.dwelling.circuit(*at);
                        format!(
                            "{} {}",
                            circuit.id,
                            circuit.breaker.map_or("? A".to_owned(), |rating| rating.to_string())
                        )
                    })
                    .collect();
                let start = fed.starts[*set].words;
                let start = if start.is_empty() { String::new() } else { format!(", {start}") };
                let boxes: Vec<String> = cells
                    .iter()
                    .map(|cell| {
                        let feed = match fed.dwelling.device_box(cell.at).fed_by {
                            Some(Feed::Panel(_)) => "from the panel".to_owned(),
                            Some(Feed::Box(from)) => format!("from {}", fed.dwelling.device_box(from).id),
                            None => "fed by what is not known".to_owned(),
                        };
                        format!("{}, {feed}", says_of(fed, cell.at))
                    })
                    .collect();
                parts.push(format!("Circuit {}{start}: {}.", circuits.join(" and "), boxes.join("; ")));
            }
            Piece::Loose(boxes) => {
                let ids: Vec<String> = boxes.iter().map(|at| says_of(fed, *at)).collect();
                parts.push(format!("Circuit not known: {}.", ids.join("; ")));
            }
        }
    }
    parts.join(" ")
}
