//! What a one-line shows: the trees at a moment, and of every box what it holds, its ground and what protects it.

use crate::answer::{NotPlaced, ThingKind};
use crate::shown::{Ground, Moment, held_after};
use crate::words;
use diagnosis::Diagnosis;
use dwelling::{
    BoxIndex, CircuitIndex, CircuitTree, Dwelling, Feed, GroundFact, Holding, ProtectiveBreaker, RouteEnd, RouteKind,
    circuit_trees,
};
use remedies::{AtPanel, Planned};
use std::borrow::Cow;

/// What guards an opening.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Guard {
    pub(super) gfci: bool,
    pub(super) afci: bool,
}

impl Guard {
    pub(super) const fn in_words(self) -> &'static str {
        match (self.gfci, self.afci) {
            (true, true) => "GFCI AFCI",
            (true, false) => "GFCI",
            (false, true) => "AFCI",
            (false, false) => "",
        }
    }

    const fn of_breaker(breaker: Option<ProtectiveBreaker>) -> Self {
        match breaker {
            Some(breaker) => Self { gfci: breaker.is_gfci(), afci: breaker.is_afci() },
            None => Self { gfci: false, afci: false },
        }
    }

    const fn of_device(holds: Holding) -> Self {
        Self {
            gfci: matches!(holds, Holding::Gfci | Holding::Dual | Holding::DeadFront),
            afci: matches!(holds, Holding::Afci | Holding::Dual),
        }
    }

    const fn and(self, other: Self) -> Self {
        Self { gfci: self.gfci || other.gfci, afci: self.afci || other.afci }
    }
}

/// A box of a one-line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Opening {
    pub(super) holds: Holding,
    pub(super) ground: Ground,
    /// Whether what looks like a ground there is none.
    pub(super) false_ground: bool,
    /// What guards what is plugged in here.
    pub(super) guard: Guard,
    /// What guards its conductors, from before it.
    pub(super) line: Guard,
    /// Whether its own device is what guards it.
    pub(super) own: bool,
}

/// What stands at the panel end of a tree.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct AtStart {
    pub(super) guard: Guard,
    pub(super) words: &'static str,
    pub(super) is_new: bool,
    /// Whether it stands in a box of its own beside the panel.
    pub(super) beside: bool,
}

/// Everything that a one-line shows.
pub(super) struct Fed<'a> {
    pub(super) dwelling: Cow<'a, Dwelling>,
    pub(super) moment: Moment,
    pub(super) edition: Option<u16>,
    pub(super) trees: Vec<CircuitTree>,
    pub(super) starts: Vec<AtStart>,
    pub(super) boxes: Vec<Opening>,
}

impl<'a> Fed<'a> {
    pub(super) fn as_found(dwelling: &'a Dwelling, diagnosis: &Diagnosis) -> Self {
        let dwelling = dwelling.as_surveyed();
        let trees = circuit_trees(&dwelling);
        let starts = trees.iter().map(|tree| fitted(&dwelling, tree)).collect();
        let opening = |at: BoxIndex| Opening {
            holds: dwelling.device_box(at).holds,
            ground: Ground::of(diagnosis.ground[at.0].fact),
            false_ground: diagnosis.ground[at.0].fact == GroundFact::False,
            guard: Guard::default(),
            line: Guard::default(),
            own: false,
        };
        let boxes = dwelling.box_indices().map(opening).collect();
        let mut fed = Self { moment: Moment::Before, edition: None, trees, starts, boxes, dwelling };
        fed.guard(|_, _| Guard::default());
        fed
    }

    pub(super) fn as_planned(plan: &Planned<'a>) -> Self {
        let facts = &plan.facts;
        let mut dwelling = facts.dwelling.as_surveyed().into_owned();
        for way in plan.ways().iter().filter(|way| way.kind == RouteKind::NewCable) {
            dwelling.boxes[way.to.0].fed_by = match way.from {
                RouteEnd::Panel(panel) => Some(Feed::Panel(panel)),
                RouteEnd::Box(from) => Some(Feed::Box(from)),
                RouteEnd::Source(_) => dwelling.boxes[way.to.0].fed_by,
            };
        }
        for at in 0..dwelling.circuits.len() {
            dwelling.circuits[at].breaker = plan.rating_afterwards(CircuitIndex(at));
        }
        let trees = circuit_trees(&dwelling);
        let starts = trees.iter().map(|tree| {
            let position = facts.trees.iter().position(|before| before.circuits == tree.circuits);
            let chosen = position.map_or(AtPanel::AsItIs, |position| plan.chosen_at_panel(position).choice);
            match chosen {
                AtPanel::AsItIs => fitted(&dwelling, tree),
                chosen => AtStart {
                    guard: Guard { gfci: chosen.is_gfci(), afci: chosen.is_afci() },
                    words: words::at_panel(chosen),
                    is_new: true,
                    beside: matches!(chosen, AtPanel::DeadFrontGfci | AtPanel::DeadFrontDual),
                },
            }
        });
        let starts = starts.collect();
        let opening = |at: BoxIndex| Opening {
            holds: held_after(plan, at),
            ground: crate::shown::ground_after(plan, at),
            false_ground: false,
            guard: Guard::default(),
            line: Guard::default(),
            own: false,
        };
        let boxes = dwelling.box_indices().map(opening).collect();
        let edition = Some(facts.code.edition.year());
        let mut fed = Self { moment: Moment::After, edition, trees, starts, boxes, dwelling: Cow::Owned(dwelling) };
        fed.guard(|parent, child| {
            let behind = plan.chosen(parent).gives_protection() && plan.behind_load(parent).contains(&child);
            if behind { Guard::of_device(held_after(plan, parent)) } else { Guard::default() }
        });
        fed
    }

    /// Finds out what guards each opening; `behind` tells what a box's device guards of another box that it feeds.
    fn guard(&mut self, behind: impl Fn(BoxIndex, BoxIndex) -> Guard) {
        for (tree, start) in self.trees.iter().zip(&self.starts) {
            for at in tree.members.iter().chain(&tree.unplaced) {
                let line = match self.dwelling.device_box(*at).fed_by {
                    Some(Feed::Box(parent)) => self.boxes[parent.0].line.and(behind(parent, *at)).and(start.guard),
                    _ => start.guard,
                };
                let opening = &mut self.boxes[at.0];
                let own = Guard::of_device(opening.holds);
                opening.line = line;
                opening.own = own != Guard::default();
                opening.guard = line.and(own);
            }
        }
    }

    /// The boxes of which nobody knows what feeds them, or which circuit they are on.
    pub(super) fn not_placed(&self) -> Vec<NotPlaced> {
        let of = |at: BoxIndex, find_out: &str| {
            let device_box = self.dwelling.device_box(at);
            let floor = self.dwelling.room(device_box.room).floor;
            NotPlaced { kind: ThingKind::Box, id: device_box.id.clone(), floor, find_out: find_out.to_owned() }
        };
        let unplaced = self.trees.iter().flat_map(|tree| &tree.unplaced);
        let unplaced = unplaced.map(|at| of(*at, "find out what feeds it, up to the panel"));
        let on_none = self.on_no_circuit();
        unplaced
            .chain(on_none.into_iter().map(|at| of(at, "find out which circuit it is on, and what feeds it")))
            .collect()
    }

    pub(super) fn on_no_circuit(&self) -> Vec<BoxIndex> {
        self.dwelling.box_indices().filter(|at| self.dwelling.device_box(*at).circuit.is_none()).collect()
    }
}

/// What is fitted at the start of a tree already.
fn fitted(dwelling: &Dwelling, tree: &CircuitTree) -> AtStart {
    let breaker = tree.circuits.iter().find_map(|circuit| dwelling.circuit(*circuit).fitted);
    let words = breaker.map_or("", |breaker| words::at_panel(AtPanel::Breaker(breaker)));
    AtStart { guard: Guard::of_breaker(breaker), words, is_new: false, beside: false }
}
