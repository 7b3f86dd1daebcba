//! What feeds what: no ring, no other circuit, no other panel.

use crate::diagnostic::Span;
use crate::mistakes::{
    box_feeds_itself, boxes_in_a_ring, cables_fewer_than_fed, fed_by_other_panel, fed_from_other_circuit,
};
use crate::notes::Notes;
use crate::row::Row;
use dwelling::{BoxIndex, Dwelling, Feed};

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    rings(notes, draft, rows);
    let mut fed = vec![0u32; draft.boxes.len()];
    for (index, device_box) in draft.boxes.iter().enumerate() {
        let row = &rows[index];
        match device_box.fed_by {
            Some(Feed::Box(parent)) if parent.0 != index => {
                if let Some(count) = fed.get_mut(parent.0) {
                    *count += 1;
                }
                other_circuit(notes, draft, rows, BoxIndex(index), parent);
            }
            Some(Feed::Panel(panel)) => {
                let own = device_box.circuit.and_then(|circuit| draft.circuits.get(circuit.0));
                let own = own.filter(|circuit| circuit.panel != panel && draft.panels.get(circuit.panel.0).is_some());
                if let (Some(circuit), Some(written)) = (own, draft.panels.get(panel.0)) {
                    let own_panel = &draft.panels[circuit.panel.0].id;
                    let places = (row.place_of("fed_by"), row.place_of("circuit"));
                    notes.push(fed_by_other_panel::mistake(&written.id, &circuit.id, own_panel, places));
                }
            }
            _ => {}
        }
    }
    for (index, device_box) in draft.boxes.iter().enumerate() {
        let by_order = fed[index] + u32::from(device_box.fed_by.is_some());
        if let Some(counted) = device_box.cables_in_box.filter(|counted| *counted < by_order) {
            let feeds = fed[index];
            let place = rows[index].place_of("cables_in_box");
            notes.push(cables_fewer_than_fed::mistake(counted, device_box.fed_by.is_some(), feeds, place));
        }
    }
}

fn other_circuit(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>], index: BoxIndex, parent: BoxIndex) {
    let parent_circuit = draft.boxes.get(parent.0).and_then(|parent| parent.circuit);
    let (Some(own), Some(theirs)) = (draft.device_box(index).circuit, parent_circuit) else { return };
    if own == theirs || draft.partner_of(own) == Some(theirs) || draft.partner_of(theirs) == Some(own) {
        return;
    }
    let (own, theirs) = (&draft.circuit(own).id, &draft.circuit(theirs).id);
    let places = (rows[index.0].place_of("fed_by"), rows[parent.0].place_of("circuit"));
    notes.push(fed_from_other_circuit::mistake((own, theirs), &draft.device_box(parent).id, places));
}

/// Reports every ring of boxes once, and every box that is written as its own feed.
fn rings(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    // The walk from which a box was first reached; a walk that meets itself has found a ring.
    let mut reached_by = vec![usize::MAX; draft.boxes.len()];
    for start in 0..draft.boxes.len() {
        let mut path = Vec::new();
        let mut at = start;
        while reached_by[at] == usize::MAX {
            reached_by[at] = start;
            path.push(at);
            match draft.boxes[at].fed_by {
                Some(Feed::Box(parent)) if parent.0 < draft.boxes.len() => at = parent.0,
                _ => break,
            }
        }
        let closes = reached_by[at] == start
            && matches!(draft.boxes[path.last().copied().unwrap_or(at)].fed_by, Some(Feed::Box(parent)) if parent.0 == at);
        let Some(first) = path.iter().position(|member| *member == at).filter(|_| closes) else { continue };
        let ring: Vec<(&str, Span)> = path[first..]
            .iter()
            .map(|member| (draft.boxes[*member].id.as_str(), rows[*member].place_of("fed_by")))
            .collect();
        match ring.as_slice() {
            [(id, place)] => notes.push(box_feeds_itself::mistake(id, *place)),
            _ => notes.push(boxes_in_a_ring::mistake(&ring)),
        }
    }
}
