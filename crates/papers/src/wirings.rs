//! Which boxes get a drawing of their wiring, and which of them share one.

use crate::document::{Block, Drawing};
use crate::job::Job;
use crate::notes::letter;
use crate::words::listed;
use drawings::{BoxWiring, CablePart, JointState, drawn_wiring};
use estimate::Task;
use remedies::{Device, OpeningAnswer, Step};

/// A drawing of the work order: its letter, and the boxes that are wired so.
pub(crate) struct Shared<'a> {
    pub(crate) letter: String,
    pub(crate) boxes: Vec<&'a BoxWiring>,
}

/// The drawings of a job in walking order: one for each wiring, however many boxes have it.
pub(crate) fn shared<'a>(job: &Job<'a>) -> Vec<Shared<'a>> {
    let mut list: Vec<(BoxWiring, Shared<'a>)> = Vec::new();
    let openings = job.rooms().into_iter().flat_map(|(_, openings)| openings);
    for opening in openings.filter(|opening| job.is_worked_on(opening)) {
        let wirings = &job.drawn.wirings;
        let Some(wiring) = wirings.iter().find(|wiring| wiring.box_id == opening.box_id) else { continue };
        if !is_drawn(opening, wiring) {
            continue;
        }
        let shape = wiring.shape();
        match list.iter_mut().find(|(known, _)| *known == shape) {
            Some((_, shared)) => shared.boxes.push(wiring),
            None => list.push((shape, Shared { letter: letter(list.len()).to_uppercase(), boxes: vec![wiring] })),
        }
    }
    list.into_iter().map(|(_, shared)| shared).collect()
}

/// Whether line and load matter at a box, a ground lands there or leaves from there, a jumper comes out, or wires are put right.
fn is_drawn(opening: &OpeningAnswer, wiring: &BoxWiring) -> bool {
    let new_pairs = wiring.protective && (opening.device != Device::Kept || opening.step == Step::UseLoadSide);
    let brought = |part| matches!(part, CablePart::Ground | CablePart::GroundOnward | CablePart::Abandoned);
    let put_right = [Task::CorrectPolarity, Task::PartGround, Task::RemoveFalseGround];
    new_pairs
        || wiring.cables.iter().any(|cable| brought(cable.part))
        || wiring.joints.iter().any(|joint| joint.state == JointState::TakeOut)
        || opening.repairs.iter().any(|task| put_right.contains(task))
}

/// The drawings as a part of the work order.
pub(crate) fn gallery(drawings: &[Shared]) -> Vec<Block> {
    if drawings.is_empty() {
        return Vec::new();
    }
    let says = "What is joined to what, not where it lies in the box. H hot (thick), H2 the other hot of a multiwire set (broken), N neutral (hollow), G \
                ground (dashes and dots). A dot joins; lines that cross without a dot are not joined.";
    let drawings = drawings.iter().map(|shared| {
        let ids: Vec<&str> = shared.boxes.iter().map(|wiring| wiring.box_id.as_str()).collect();
        let title = format!("{}: {}", shared.letter, ids.join(", "));
        let figure = match shared.boxes.as_slice() {
            [one] => drawn_wiring(one, &title),
            [first, ..] => drawn_wiring(&first.shape(), &title),
            [] => return Drawing::default(),
        };
        Drawing {
            svg: figure.svg,
            says: format!("Wiring drawing {}, for {}. {}", shared.letter, listed(&ids), figure.says),
        }
    });
    vec![
        Block::Heading(2, "Wiring drawings".to_owned()),
        Block::Paragraph(says.into()),
        Block::Drawings(drawings.collect()),
    ]
}
