//! The circuits of a dwelling as trees, with what is believed of every box and run.

mod arranged;
mod belief_words;
mod block;
mod circuit_shown;
pub(crate) mod share_bar;
mod sheets;
mod tree_legend;

use crate::answer::{DrawingAnswer, NotPlaced, SheetAnswer, ThingKind};
use crate::shown::Moment;
use circuit_shown::CircuitsShown;
use diagnosis::belief::{Advice, Beliefs};
use dwelling::{CircuitIndex, CircuitTree, Dwelling, circuit_trees};

/// Draws the circuits of a dwelling as trees with what is believed of them: one circuit with the one that shares its
/// neutral, or all of them. The advice is what [`Beliefs::advice`] gives, best first.
#[must_use]
pub fn drawn_circuits(
    dwelling: &Dwelling,
    beliefs: &Beliefs,
    advice: &[Advice],
    only: Option<CircuitIndex>,
) -> DrawingAnswer {
    let shown = CircuitsShown::of(dwelling, beliefs, advice);
    let trees = circuit_trees(dwelling).into_iter();
    let trees: Vec<CircuitTree> = trees.filter(|tree| only.is_none_or(|only| tree.circuits.contains(&only))).collect();
    let id = |at: &CircuitIndex| dwelling.circuit(*at).id.clone();
    let sheets = sheets::sheets_of(&shown, &trees, only.is_none()).into_iter().map(|sheet| SheetAnswer {
        floor: None,
        circuits: sheet.circuits.iter().map(id).collect(),
        title: sheet.title,
        scale: None,
        boxes: sheet.boxes.iter().map(|at| dwelling.device_box(*at).id.clone()).collect(),
        svg: sheet.svg,
        wiring: None,
    });
    DrawingAnswer {
        format: 1,
        job: dwelling.job.name.clone(),
        moment: Moment::Before,
        sheets: sheets.collect(),
        not_placed: not_placed(dwelling, &trees, only.is_none()),
    }
}

/// The boxes of which nobody knows what feeds them, or which circuit they are on.
fn not_placed(dwelling: &Dwelling, trees: &[CircuitTree], all: bool) -> Vec<NotPlaced> {
    let of = |at: dwelling::BoxIndex, find_out: &str| {
        let device_box = dwelling.device_box(at);
        let floor = dwelling.room(device_box.room).floor;
        NotPlaced { kind: ThingKind::Box, id: device_box.id.clone(), floor, find_out: find_out.to_owned() }
    };
    let unplaced = trees.iter().flat_map(|tree| arranged::unplaced_rows(dwelling, tree));
    let unplaced = unplaced.map(|row| of(row.at, "find out what feeds it, up to the panel"));
    let on_none = sheets::on_no_circuit(dwelling).into_iter().filter(|_| all);
    unplaced.chain(on_none.map(|at| of(at, "find out which circuit it is on, and what feeds it"))).collect()
}
