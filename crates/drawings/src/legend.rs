//! The rows beside the plan of a floor: its legend, its routes, what is tied together, and what has no place on it.

use crate::floor_plan::FloorPlan;
use crate::label::Piece;
use crate::line_style::circuit_line;
use crate::lists::{Picture, Row};
use crate::places::{FloorNumber, floor_of, place_of_box, place_of_end};
use crate::shown::{Bought, Ground, Layer, Moment, Shown};
use crate::symbol::Kind;
use crate::words;
use crate::work_mark::WorkMark;
use dwelling::{BondedGroups, BoxIndex, CircuitTree, PanelIndex, Reach, RouteEnd, SourceIndex};

/// Every row for a floor; the plan is missing where nothing could be drawn.
pub(crate) fn rows(shown: &Shown, floor: FloorNumber, plan: Option<&FloorPlan>) -> Vec<Row> {
    let mut rows = Vec::new();
    let here: Vec<BoxIndex> =
        shown.dwelling.box_indices().filter(|at| floor_of(shown.dwelling, *at) == floor).collect();
    if plan.is_none() {
        rows.push(Row::Caution(
            "No plan: the survey has no outline of a room and no position of a box on this floor.".to_owned(),
        ));
    }
    let drawn = plan.map_or(&[] as &[BoxIndex], |plan| &plan.drawn);
    not_placed(&mut rows, shown, &here, drawn);
    bought(&mut rows, shown, floor);
    circuits(&mut rows, shown, &here);
    if !here.is_empty() {
        symbols(&mut rows, shown, (floor, &here), drawn);
    }
    ties(&mut rows, shown, &here);
    if let Some(plan) = plan.filter(|plan| !plan.without_label.is_empty()) {
        rows.push(Row::Heading("No room for their labels".to_owned()));
        rows.push(Row::Words(plan.without_label.join(", ")));
    }
    rows
}

/// The boxes of a floor whose place nobody stated, by room in walking order.
fn not_placed(rows: &mut Vec<Row>, shown: &Shown, here: &[BoxIndex], drawn: &[BoxIndex]) {
    let mut missing: Vec<BoxIndex> = here.iter().filter(|at| !drawn.contains(at)).copied().collect();
    missing.sort_by_key(|at| shown.dwelling.device_box(*at).room);
    if missing.is_empty() {
        return;
    }
    rows.push(Row::Heading("On this floor, place not stated".to_owned()));
    for at in missing {
        let (device_box, box_shown) = (shown.dwelling.device_box(at), &shown.boxes[at.0]);
        let room = shown.dwelling.room(device_box.room);
        let circuit = shown.dwelling.circuit_of(at).map_or("?", |circuit| circuit.id.as_str());
        let mut says = format!(
            "{}; circuit {circuit}, {}; {}",
            box_shown.holds.in_words(),
            shown.feed_in_words(box_shown.feed),
            box_shown.ground.meaning()
        );
        if !box_shown.work.is_empty() {
            let letters: Vec<&str> = box_shown.work.iter().map(|mark| mark.letters()).collect();
            says.push_str(&format!("; work: {}", letters.join(" ")));
        }
        rows.push(Row::Named(format!("{}, {}", device_box.id, room.title.as_ref().unwrap_or(&room.id)), says));
    }
}

/// The routes that end on a floor.
fn bought(rows: &mut Vec<Row>, shown: &Shown, floor: FloorNumber) {
    let is_here = |end: RouteEnd| match end {
        RouteEnd::Box(at) => floor_of(shown.dwelling, at) == floor,
        end => place_of_end(shown.dwelling, end).is_some_and(|place| place.floor == floor),
    };
    let here: Vec<_> = shown.bought.iter().filter(|route| is_here(route.ends.0) || is_here(route.ends.1)).collect();
    if here.is_empty() {
        return;
    }
    rows.push(Row::Heading("New grounds and cables".to_owned()));
    for route in here {
        let openings = match route.openings {
            0 => "no opening in finished walls".to_owned(),
            1 => "1 opening in finished walls".to_owned(),
            many => format!("{many} openings in finished walls"),
        };
        rows.push(Row::Explained(
            Picture::Piece(Piece::Route(route.number.clone())),
            route_in_words(shown, route) + &openings,
        ));
    }
    let kinds = [dwelling::RouteKind::Egc, dwelling::RouteKind::NewCable];
    for kind in kinds.into_iter().filter(|kind| shown.bought.iter().any(|route| route.kind == *kind)) {
        let says = match kind {
            dwelling::RouteKind::Egc => "grounding conductor (EGC) that is brought",
            dwelling::RouteKind::NewCable => "new cable with a ground, in place of the old run",
        };
        rows.push(Row::Explained(Picture::Route(kind, ""), says.to_owned()));
    }
    let stretches = || shown.bought.iter().flat_map(|route| &route.path).filter(|stretch| stretch.floor == floor);
    for layer in Layer::ALL.into_iter().filter(|layer| stretches().any(|stretch| stretch.layer == *layer)) {
        rows.push(Row::Explained(Picture::Route(dwelling::RouteKind::Egc, layer.dashes()), layer.meaning().to_owned()));
    }
    if stretches().next().is_some() {
        rows.push(Row::Explained(Picture::Ring, "goes up or down here".to_owned()));
    }
}

/// A route in words, but for what it opens.
fn route_in_words(shown: &Shown, route: &Bought) -> String {
    let (from, to) = (shown.end_name(route.ends.0), shown.end_name(route.ends.1));
    // A way that was built has no name but its end.
    let name = if route.id == format!("to {to}") { String::new() } else { format!("{}: ", route.id) };
    let from = match &route.branches_off {
        Some(other) => format!("off {other}"),
        None => from.to_owned(),
    };
    format!("{name}{} {}, {}, {from} to {to}; ", words::route_kind(route.kind), route.size, route.length)
}

/// The circuits that reach a floor, each with its line.
fn circuits(rows: &mut Vec<Row>, shown: &Shown, here: &[BoxIndex]) {
    let on = |tree: &CircuitTree| {
        here.iter().any(|at| shown.dwelling.device_box(*at).circuit.is_some_and(|own| tree.circuits.contains(&own)))
    };
    let trees: Vec<_> = shown.trees.iter().filter(|(tree, _)| on(tree)).collect();
    if trees.is_empty() {
        return;
    }
    rows.push(Row::Heading("Circuits: lines show what feeds what, not where cables lie".to_owned()));
    for (tree, protection) in trees {
        for at in &tree.circuits {
            let circuit = shown.dwelling.circuit(*at);
            let rating = circuit.breaker.map_or("? A".to_owned(), |rating| rating.to_string());
            let mut says = format!("{rating} {}", words::overcurrent(shown.dwelling, tree.panel));
            if !protection.is_empty() {
                says = format!("{rating}, {protection}");
            }
            if shown.dwelling.panels.len() > 1 {
                says.push_str(&format!(", {}", shown.panel_name(tree.panel)));
            }
            if let Some(partner) = shown.dwelling.partner_of(*at) {
                says.push_str(&format!("; shares its neutral with {}", shown.dwelling.circuit(partner).id));
            }
            rows.push(Row::Explained(Picture::Line(circuit_line(Some(*at)), circuit.id.clone()), says));
        }
    }
}

/// The symbols, grounds and letters that are used.
fn symbols(rows: &mut Vec<Row>, shown: &Shown, (floor, here): (FloorNumber, &[BoxIndex]), drawn: &[BoxIndex]) {
    let boxes = || here.iter().map(|at| &shown.boxes[at.0]);
    let on_plan = || drawn.iter().map(|at| &shown.boxes[at.0]);
    if !drawn.is_empty() {
        rows.push(Row::Heading("Symbols".to_owned()));
        for kind in Kind::ALL.into_iter().filter(|kind| on_plan().any(|one| Kind::of(one.holds) == *kind)) {
            rows.push(Row::Explained(Picture::Symbol(kind, Ground::None), kind.meaning().to_owned()));
        }
        for ground in Ground::ALL.into_iter().filter(|ground| on_plan().any(|one| one.ground == *ground)) {
            rows.push(Row::Explained(Picture::Symbol(Kind::Receptacle, ground), ground.meaning().to_owned()));
        }
        let is_here = |end| place_of_end(shown.dwelling, end).is_some_and(|place| place.floor == floor);
        if (0..shown.dwelling.panels.len()).any(|at| is_here(RouteEnd::Panel(PanelIndex(at)))) {
            rows.push(Row::Explained(Picture::Panel, "panel".to_owned()));
        }
        if (0..shown.dwelling.sources.len()).any(|at| is_here(RouteEnd::Source(SourceIndex(at)))) {
            rows.push(Row::Explained(Picture::Source, "place at which a ground might be taken".to_owned()));
        }
        rows.push(Row::Explained(Picture::Wall(true), "outside wall; thin: inside wall".to_owned()));
    }
    let marks: Vec<_> = WorkMark::ALL.into_iter().filter(|mark| boxes().any(|one| one.work.contains(mark))).collect();
    if !marks.is_empty() {
        let heading = match shown.moment {
            Moment::Before => "Mark at a box",
            Moment::After => "Work at a box; no letter: leave it as it is",
        };
        rows.push(Row::Heading(heading.to_owned()));
        for mark in marks {
            let piece = Picture::Piece(Piece::Work(mark.letters().to_owned()));
            rows.push(Row::Explained(piece, mark.meaning().to_owned()));
        }
    }
}

/// The boxes that a ground ties together, of those that have one on this floor.
fn ties(rows: &mut Vec<Row>, shown: &Shown, here: &[BoxIndex]) {
    let groups = BondedGroups::of(shown.dwelling);
    let ties: Vec<_> = shown.ties.iter().filter(|tie| tie.members.iter().any(|at| here.contains(at))).collect();
    if ties.is_empty() {
        return;
    }
    rows.push(Row::Heading("Tied together by a ground as found".to_owned()));
    for tie in ties {
        let names: Vec<&str> = tie.members.iter().map(|at| shown.dwelling.device_box(*at).id.as_str()).collect();
        let reach = match groups.group_of(tie.members[0]).reach {
            Reach::Panel => "reaches the panel",
            Reach::Disputed => "reaches the panel over a path that may not be accepted",
            Reach::Unknown => "find out whether it reaches the panel",
            Reach::Isolated => "does not reach the panel",
        };
        let says = format!("{}: {reach}", names.join(", "));
        rows.push(Row::Explained(Picture::Piece(Piece::Tie(tie.letter.clone())), says));
    }
}

/// The boxes that have a place on no plan.
pub(crate) fn boxes_without_place(shown: &Shown) -> Vec<BoxIndex> {
    shown.dwelling.box_indices().filter(|at| place_of_box(shown.dwelling, *at).is_none()).collect()
}
