//! Sheets of circuits: each tree down a column, small ones together, a large one over columns and sheets.

use super::arranged::{From, Placed, placed_rows, unplaced_rows};
use super::block::{Block, across};
use super::circuit_shown::CircuitsShown;
use super::tree_legend::{height_of, legend_rows};
use crate::geometry::{Area, Spot, spot};
use crate::label::{Label, NAME, Piece};
use crate::line_style::circuit_line;
use crate::lists::{GUTTER, Row, columns, flow, rule};
use crate::sheet::{FOOT, TITLE, UPRIGHT, framed};
use crate::svg::{Anchor, BLACK, Pen, QUIET, Svg, Type, WHITE};
use crate::symbol::{RADIUS, draw_panel};
use crate::text_width::wrapped;
use crate::words;
use dwelling::{BoxIndex, CircuitIndex, CircuitTree, Dwelling};

/// The width of a column: two stand on a sheet.
const COLUMN: f64 = (UPRIGHT.0 - GUTTER) / 2.0;
const HEADING: Type = Type::bold(8.2);
const HEADING_HEIGHT: f64 = 13.0;
const PANEL_HEIGHT: f64 = 15.0;
const NOTE: Type = Type::plain(6.6);
const NOTE_LINE: f64 = 8.4;
const BETWEEN: f64 = 9.0;
/// What a tree loses at most where it goes over from one column to the next: a heading, and most of a box.
const BREAK: f64 = HEADING_HEIGHT + 40.0;

/// A drawn sheet of circuits.
pub(crate) struct CircuitSheet {
    pub(crate) circuits: Vec<CircuitIndex>,
    pub(crate) boxes: Vec<BoxIndex>,
    pub(crate) title: String,
    pub(crate) svg: String,
}

/// The boxes of which nobody knows the circuit.
pub(crate) fn on_no_circuit(dwelling: &Dwelling) -> Vec<BoxIndex> {
    dwelling.box_indices().filter(|at| dwelling.device_box(*at).circuit.is_none()).collect()
}

/// Something in a column.
enum Item {
    Heading(String),
    /// The panel with the circuits of this section.
    Panel,
    Note(Vec<String>),
    Block(Box<Block>),
}

impl Item {
    fn height(&self) -> f64 {
        match self {
            Self::Heading(_) => HEADING_HEIGHT,
            Self::Panel => PANEL_HEIGHT,
            Self::Note(lines) => lines.len() as f64 * NOTE_LINE + 5.0,
            Self::Block(block) => block.height,
        }
    }
}

/// A circuit or set of circuits, or the boxes that are on none.
struct Section {
    circuits: Vec<CircuitIndex>,
    title: String,
    items: Vec<Item>,
}

/// Where something lies: its column, counted over all sheets, and its top in it.
#[derive(Clone, Copy)]
struct Place {
    column: usize,
    top: f64,
}

/// Draws the sheets of these trees; with all of them, the boxes that are on no circuit too.
pub(crate) fn sheets_of(shown: &CircuitsShown, trees: &[CircuitTree], all: bool) -> Vec<CircuitSheet> {
    let mut sections: Vec<Section> = trees.iter().map(|tree| section_of(shown, tree)).collect();
    if all {
        sections.extend(section_of_no_circuit(shown));
    }
    let boxes: Vec<BoxIndex> = sections.iter().flat_map(blocks_of).map(|block| block.placed.at).collect();
    if sections.is_empty() {
        return Vec::new();
    }
    let legend = legend_rows(shown, &boxes);
    let legend_height = height_of(&legend, UPRIGHT.0);
    let body = Area::new(0.0, TITLE, UPRIGHT.0, UPRIGHT.1 - FOOT - legend_height - GUTTER);
    let places = places(&sections, body.height());
    let count = places.iter().flatten().map(|place| place.column / 2 + 1).max().unwrap_or(0);
    (0..count).map(|number| sheet(shown, &sections, &places, (number, count), (&legend, &body))).collect()
}

fn blocks_of(section: &Section) -> impl Iterator<Item = &Block> {
    section.items.iter().filter_map(|item| match item {
        Item::Block(block) => Some(block.as_ref()),
        _ => None,
    })
}

fn section_of(shown: &CircuitsShown, tree: &CircuitTree) -> Section {
    let names: Vec<&str> = tree.circuits.iter().map(|at| shown.dwelling.circuit(*at).id.as_str()).collect();
    let title = match names.as_slice() {
        [one] => format!("Circuit {one}"),
        more => format!("Circuits {}: one shared neutral", more.join(" and ")),
    };
    let mut items = vec![Item::Heading(title.clone())];
    if shown.reads_as_nothing(&tree.circuits) && !(tree.members.is_empty() && tree.unplaced.is_empty()) {
        let text = "No state of this circuit reads as what was found here: one of its readings or sightings is wrong.";
        items.push(Item::Note(wrapped(text, NOTE.size, true, COLUMN - 8.0)));
    }
    items.push(Item::Panel);
    let block = |placed: Placed| Item::Block(Box::new(Block::of(shown, placed, COLUMN)));
    items.extend(placed_rows(tree).into_iter().map(block));
    if tree.members.is_empty() {
        items.push(Item::Note(vec!["no box of the survey is known to be fed by it".to_owned()]));
    }
    // The rows of what is not placed are counted from the first of them on.
    let unplaced = unplaced_rows(shown.dwelling, tree);
    if !unplaced.is_empty() {
        items.push(Item::Heading(format!("Feeding not known, circuit {}", names.join("+"))));
        let before = tree.members.len();
        items.extend(
            unplaced
                .into_iter()
                .map(|placed| match placed.from {
                    From::Row(row) => Placed { from: From::Row(row + before), ..placed },
                    _ => placed,
                })
                .map(block),
        );
    }
    Section { circuits: tree.circuits.clone(), title, items }
}

fn section_of_no_circuit(shown: &CircuitsShown) -> Option<Section> {
    let boxes = on_no_circuit(shown.dwelling);
    let title = "Circuit not known".to_owned();
    let placed = |at: BoxIndex| {
        let from = match shown.dwelling.device_box(at).fed_by {
            Some(dwelling::Feed::Box(parent)) => From::Elsewhere(parent),
            _ => From::Unknown,
        };
        Placed { at, level: 0, from, is_straight: true }
    };
    let items = boxes.iter().map(|at| Item::Block(Box::new(Block::of(shown, placed(*at), COLUMN))));
    let items: Vec<Item> = [Item::Heading(title.clone())].into_iter().chain(items).collect();
    (!boxes.is_empty()).then_some(Section { circuits: Vec::new(), title, items })
}

/// The place of every item of every section, in columns of a height.
fn places(sections: &[Section], high: f64) -> Vec<Vec<Place>> {
    let mut at = Place { column: 0, top: 0.0 };
    let mut all = Vec::new();
    for section in sections {
        let height: f64 = section.items.iter().map(Item::height).sum();
        let start = if at.top > 0.0 { at.top + BETWEEN } else { 0.0 };
        let is_left = at.column.is_multiple_of(2);
        if start + height <= high {
            at.top = start;
        } else if height <= high {
            at = Place { column: at.column + usize::from(at.top > 0.0), top: 0.0 };
        } else if is_left && start + height + BREAK <= 2.0 * high {
            at.top = start;
        } else if at.top > 0.0 || !is_left {
            at = Place { column: (at.column / 2 + 1) * 2, top: 0.0 };
        }
        all.push(places_of(section, high, &mut at));
    }
    all
}

/// The places of the items of one section, from a place on, which is moved behind them.
fn places_of(section: &Section, high: f64, at: &mut Place) -> Vec<Place> {
    let mut places = Vec::new();
    let mut index = 0;
    while let Some(item) = section.items.get(index) {
        // What heads does not stand at the foot of a column, away from the first of what it heads.
        let mut together = item.height();
        let mut following = index;
        while !matches!(section.items[following], Item::Block(_)) {
            following += 1;
            match section.items.get(following) {
                Some(next) => together += next.height(),
                None => break,
            }
        }
        if at.top > 0.0 && at.top + together > high && !is_headed(section, index) {
            *at = Place { column: at.column + 1, top: HEADING_HEIGHT };
        }
        places.push(*at);
        at.top += item.height();
        index += 1;
    }
    places
}

/// Whether what stands before an item heads it, so that both stay together.
fn is_headed(section: &Section, index: usize) -> bool {
    index > 0 && !matches!(section.items[index - 1], Item::Block(_))
}

/// The left top of a column on its sheet.
fn column_corner(column: usize, body: &Area) -> Spot {
    spot((column % 2) as f64 * (COLUMN + GUTTER), body.top)
}

fn sheet(
    shown: &CircuitsShown,
    sections: &[Section],
    places: &[Vec<Place>],
    (number, count): (usize, usize),
    (legend, body): (&[Row], &Area),
) -> CircuitSheet {
    let (mut lines, mut symbols) = (Svg::default(), Svg::default());
    let (mut circuits, mut boxes, mut titles) = (Vec::new(), Vec::new(), Vec::new());
    for (section, places) in sections.iter().zip(places) {
        let columns: Vec<usize> = places.iter().map(|place| place.column).collect();
        if !columns.iter().any(|column| column / 2 == number) {
            continue;
        }
        circuits.extend(&section.circuits);
        titles.push(section.title.clone());
        draw_lines(&mut lines, shown, section, places, (number, body));
        let first = columns.first().copied().unwrap_or(0);
        for (index, (item, place)) in section.items.iter().zip(places).enumerate() {
            if place.column / 2 != number {
                continue;
            }
            let corner = column_corner(place.column, body).plus(spot(0.0, place.top));
            if place.column != first && (index == 0 || columns[index - 1] != place.column) {
                let heading = goes_on(shown, section, places, place.column);
                draw_heading(&mut symbols, &heading, column_corner(place.column, body));
            }
            match item {
                Item::Heading(text) => draw_heading(&mut symbols, text, corner),
                Item::Panel => draw_panel_row(&mut symbols, shown, section, corner),
                Item::Note(text) => draw_note(&mut symbols, text, corner),
                Item::Block(block) => {
                    block.draw(&mut symbols, shown, corner);
                    boxes.push(block.placed.at);
                }
            }
        }
    }
    let mut svg = Svg::default();
    let middle = COLUMN + GUTTER / 2.0;
    rule(&mut svg, spot(middle, body.top), spot(middle, body.bottom));
    svg.append(&lines);
    svg.append(&symbols);
    let below = body.bottom + GUTTER / 2.0;
    svg.line(spot(0.0, below), spot(UPRIGHT.0, below), &Pen::line(BLACK, 0.6));
    let area = Area::new(0.0, body.bottom + GUTTER, UPRIGHT.0, UPRIGHT.1 - FOOT);
    flow(&mut svg, legend, &columns(&area));
    let name = &shown.dwelling.job.name;
    let part = if count > 1 { format!(", sheet {} of {count}", number + 1) } else { String::new() };
    let below = format!("Circuits as they were found, and what is believed of them{part}");
    let title = format!("{name}: {}", titles.join("; "));
    let says = format!(
        "{} boxes as they are fed from the panel. Shares are what is believed by all that was read and seen; they prove \
         nothing. Point at a box for what is said of it.",
        boxes.len()
    );
    let svg = framed(svg, name, &below, UPRIGHT, None).finished(UPRIGHT, &title, &says);
    CircuitSheet { circuits, boxes, title, svg }
}

/// The heading of a column in which a tree goes on: where its lines come from, from left to right.
fn goes_on(shown: &CircuitsShown, section: &Section, places: &[Place], column: usize) -> String {
    let rows: Vec<(&Block, Place)> = blocks_with_places(section, places).collect();
    let panel_column = places.first().map_or(0, |place| place.column);
    let mut lines: Vec<(usize, &str)> = Vec::new();
    for (block, _) in rows.iter().filter(|(block, place)| block.placed.is_straight && place.column >= column) {
        match block.placed.from {
            From::Row(row) => {
                if let Some((parent, _)) = rows.get(row).filter(|(_, at)| at.column < column) {
                    let id = &shown.dwelling.device_box(parent.placed.at).id;
                    lines.push((parent.placed.level, id));
                }
            }
            From::Panel if panel_column < column => lines.push((0, "the panel")),
            _ => {}
        }
    }
    lines.sort_unstable();
    let names: Vec<&str> = lines.iter().map(|(_, name)| *name).collect();
    match names.as_slice() {
        [] => format!("{}, goes on", section.title),
        names => format!("{}, goes on from {}", section.title, names.join(", ")),
    }
}

fn blocks_with_places<'a>(section: &'a Section, places: &'a [Place]) -> impl Iterator<Item = (&'a Block, Place)> {
    section.items.iter().zip(places).filter_map(|(item, place)| match item {
        Item::Block(block) => Some((block.as_ref(), *place)),
        _ => None,
    })
}

fn draw_heading(svg: &mut Svg, text: &str, corner: Spot) {
    let text = crate::text_width::cut_to(text, HEADING.size, true, COLUMN);
    svg.words(corner.plus(spot(0.0, 8.0)), &text, HEADING, Anchor::Start);
    svg.line(corner.plus(spot(0.0, 10.6)), corner.plus(spot(COLUMN, 10.6)), &Pen::line(BLACK, 0.6));
}

fn draw_note(svg: &mut Svg, lines: &[String], corner: Spot) {
    let kind = if lines.len() > 1 { Type::bold(NOTE.size) } else { NOTE };
    if lines.len() > 1 {
        let frame = Area::new(corner.x, corner.y, corner.x + COLUMN, corner.y + lines.len() as f64 * NOTE_LINE + 3.0);
        svg.area(&frame, 0.0, &Pen::line(BLACK, 1.0).filled(WHITE));
    }
    for (index, line) in lines.iter().enumerate() {
        let base = 1.5 + index as f64 * NOTE_LINE + NOTE_LINE * 0.8;
        svg.words(corner.plus(spot(4.0, base)), line, kind, Anchor::Start);
    }
}

fn draw_panel_row(svg: &mut Svg, shown: &CircuitsShown, section: &Section, corner: Spot) {
    let Some(first) = section.circuits.first() else { return };
    let panel = shown.dwelling.circuit(*first).panel;
    let id = &shown.dwelling.panel(panel).id;
    svg.open("panel", id, &format!("panel {id}"));
    draw_panel(svg, corner.plus(spot(across(0), 7.0)), spot(0.0, 1.0));
    svg.close();
    let mut pieces = vec![Piece::Words(format!("panel {id}"), NAME)];
    for at in &section.circuits {
        let circuit = shown.dwelling.circuit(*at);
        pieces.push(Piece::Circuit(circuit.id.clone(), circuit_line(Some(*at))));
        let rating = circuit.breaker.map_or("? A".to_owned(), |rating| rating.to_string());
        pieces.push(Piece::Words(format!("{rating} {}", words::overcurrent(shown.dwelling, panel)), NOTE));
    }
    svg.open("panel-label", id, "");
    Label::of(pieces).draw(svg, corner.plus(spot(across(0) + 13.0, 3.0)));
    svg.close();
}

/// Draws the lines of a section that lie on a sheet.
fn draw_lines(svg: &mut Svg, shown: &CircuitsShown, section: &Section, places: &[Place], sheet: (usize, &Area)) {
    let rows: Vec<(&Block, Place)> = blocks_with_places(section, places).collect();
    let panel = section.items.iter().zip(places).find(|(item, _)| matches!(item, Item::Panel));
    let panel = panel.map(|(_, place)| Place { column: place.column, top: place.top + 11.0 });
    let ends: Vec<(usize, f64)> = rows.iter().map(|(block, place)| (place.column, place.top + block.height)).collect();
    for (block, place) in &rows {
        let id = &shown.dwelling.device_box(block.placed.at).id;
        let (start, level) = match block.placed.from {
            From::Panel => match panel {
                Some(panel) => (panel, 0),
                None => continue,
            },
            From::Row(row) => match rows.get(row) {
                Some((parent, at)) => {
                    (Place { column: at.column, top: at.top + parent.middle + RADIUS }, parent.placed.level)
                }
                None => continue,
            },
            From::Unknown | From::Elsewhere(_) => {
                if place.column / 2 == sheet.0 {
                    let to = block.arrives(column_corner(place.column, sheet.1).plus(spot(0.0, place.top)));
                    svg.line(to.minus(spot(0.0, 9.0)), to, &Pen::line(QUIET, 1.1).dashed("1 2"));
                }
                continue;
            }
        };
        let pen = circuit_line(shown.dwelling.device_box(block.placed.at).circuit);
        svg.open("run", id, &format!("run to {id}"));
        let to = block.arrives(column_corner(place.column, sheet.1).plus(spot(0.0, place.top)));
        let on_sheet = place.column / 2 == sheet.0;
        if block.placed.is_straight {
            for column in start.column..=place.column {
                if column / 2 != sheet.0 {
                    continue;
                }
                let corner = column_corner(column, sheet.1);
                let x = corner.x + across(level);
                let top = if column == start.column { corner.y + start.top } else { corner.y + HEADING_HEIGHT };
                let foot = ends.iter().filter(|(at, _)| *at == column).map(|(_, end)| *end).fold(0.0, f64::max);
                let bottom = if column == place.column { to.y } else { corner.y + foot };
                draw_run(svg, (spot(x, top), spot(x, bottom)), spot(2.4, 0.0), &pen, block);
            }
        } else if on_sheet {
            let x = column_corner(place.column, sheet.1).x + across(level);
            draw_run(svg, (spot(x, to.y), to), spot(0.0, 2.4), &pen, block);
        }
        svg.close();
    }
}

/// Draws a stretch of a run; a second line beside it where its ground likely conducts.
fn draw_run(svg: &mut Svg, (from, to): (Spot, Spot), aside: Spot, pen: &Pen, block: &Block) {
    svg.path(&[from, to], pen);
    if block.run_conducts() {
        svg.path(&[from.plus(aside), to.plus(aside)], &Pen::line(BLACK, 0.7));
    }
}
