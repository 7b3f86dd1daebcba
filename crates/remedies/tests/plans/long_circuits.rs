//! Circuits longer and wider than any house has.

use crate::generated::{Size, generated};
use dwelling::{BoxIndex, DeviceBox, Dwelling, Feed, Holding, PanelIndex, RouteEnd, Want};
use estimate::PriceBook;
use remedies::{LawAnswer, Planned, Step, plan_answer};
use rulebook::CodeInForce;

const BOXES: usize = 1_500;

/// One circuit of many ungrounded three-slot receptacles, each fed as told.
fn circuit(fed_by: impl Fn(usize) -> Feed) -> (Dwelling, CodeInForce) {
    let (mut dwelling, code) = generated(11, Size { boxes: (2, 2), circuits: (1, 1), routes: (0, 0) });
    dwelling.circuits[0].cable = dwelling::CableKind::NmTwoWire;
    let plain = DeviceBox { circuit: Some(dwelling::CircuitIndex(0)), want: Want::Leave, ..dwelling.boxes[0].clone() };
    dwelling.boxes = (0..BOXES)
        .map(|at| DeviceBox {
            id: format!("B{at}"),
            fed_by: Some(fed_by(at)),
            run: dwelling::Run::default(),
            holds: Holding::ThreeSlot,
            found: Vec::new(),
            serves: Vec::new(),
            do_not_disturb: false,
            ..plain.clone()
        })
        .collect();
    (dwelling, code)
}

fn every_opening_is_answered(dwelling: &Dwelling, code: CodeInForce) {
    let plan = Planned::of(dwelling, code, &PriceBook::demo()).unwrap();
    let answer = plan_answer(&plan, &LawAnswer::of(&plan.facts.code), true);
    assert_eq!(answer.openings.len(), BOXES);
    assert!(
        dwelling.box_indices().all(|at| plan.chosen(at).step != Step::Leave),
        "ungrounded three-slot receptacles stay"
    );
}

#[test]
fn a_chain_of_1500_boxes_is_planned() {
    let fed_by = |at| if at == 0 { Feed::Panel(PanelIndex(0)) } else { Feed::Box(BoxIndex(at - 1)) };
    let (dwelling, code) = circuit(fed_by);
    every_opening_is_answered(&dwelling, code);
}

#[test]
fn a_chain_of_1500_boxes_listed_from_its_far_end_is_planned() {
    let fed_by = |at| if at + 1 == BOXES { Feed::Panel(PanelIndex(0)) } else { Feed::Box(BoxIndex(at + 1)) };
    let (mut dwelling, code) = circuit(fed_by);
    // Nobody knows what feeds the first of them, so that none is known to reach the panel.
    dwelling.boxes[BOXES - 1].fed_by = None;
    every_opening_is_answered(&dwelling, code);
}

#[test]
fn a_circuit_of_1500_boxes_straight_from_the_panel_is_planned() {
    let (dwelling, code) = circuit(|_| Feed::Panel(PanelIndex(0)));
    every_opening_is_answered(&dwelling, code);
}

#[test]
fn a_grounded_chain_of_1500_boxes_is_one_group() {
    let fed_by = |at| if at == 0 { Feed::Panel(PanelIndex(0)) } else { Feed::Box(BoxIndex(at - 1)) };
    let (mut dwelling, code) = circuit(fed_by);
    dwelling.boxes.iter_mut().skip(1).for_each(|at| at.run.cable = Some(dwelling::CableKind::NmWithGround));
    let plan = Planned::of(&dwelling, code, &PriceBook::demo()).unwrap();
    let same =
        dwelling.box_indices().all(|at| plan.facts.groups.index_of(at) == plan.facts.groups.index_of(BoxIndex(0)));
    assert!(same && !plan.is_grounded(BoxIndex(0)));
    assert!(
        plan.solution.links.is_empty() && !dwelling.routes.iter().any(|route| matches!(route.to, RouteEnd::Box(_)))
    );
}
