//! Circuits: shared neutrals that hold together, and overcurrent devices that fit their panel.

use crate::mistakes::{
    aluminium_too_thin, breaker_fitted_on_fuse, fitted_not_made_for_panel, fuse_among_breakers, neutral_across_panels,
    neutral_shared_one_sidedly, neutral_shared_with_itself,
};
use crate::notes::Notes;
use crate::row::Row;
use dwelling::{Circuit, Dwelling, Overcurrent};
use electrical::{ConductorMetal, Gauge};

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    for (index, (circuit, row)) in draft.circuits.iter().zip(rows).enumerate() {
        shared_neutral(notes, draft, rows, index);
        overcurrent(notes, draft, circuit, row);
        if circuit.metal == ConductorMetal::Aluminium && circuit.gauge.is_some_and(|gauge| gauge < Gauge::AWG_12) {
            notes.push(aluminium_too_thin::mistake(row.place_of("gauge"), Some(row.place_of("metal"))));
        }
    }
}

fn shared_neutral(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>], index: usize) {
    let (circuit, place) = (&draft.circuits[index], rows[index].place_of("shares_neutral_with"));
    let Some(partner_index) = circuit.shares_neutral_with.map(|partner| partner.0) else { return };
    if partner_index == index {
        notes.push(neutral_shared_with_itself::mistake(&circuit.id, place));
        return;
    }
    let (Some(partner), Some(partner_row)) = (draft.circuits.get(partner_index), rows.get(partner_index)) else {
        return;
    };
    let both_known = draft.panels.get(circuit.panel.0).is_some() && draft.panels.get(partner.panel.0).is_some();
    if both_known && circuit.panel != partner.panel && (index < partner_index || partner.shares_neutral_with.is_none())
    {
        notes.push(neutral_across_panels::mistake((&circuit.id, place), (&partner.id, partner_row.place_of("panel"))));
    }
    // Two circuits that both name the same third contradict it as much as one that names another.
    let others_claim = draft.circuits.iter().enumerate().find(|(other, claimant)| {
        *other != index
            && *other != partner_index
            && claimant.shares_neutral_with.is_some_and(|third| third.0 == partner_index)
    });
    match partner.shares_neutral_with {
        Some(third) if third.0 != index => {
            let back = partner_row.place_of("shares_neutral_with");
            notes.push(neutral_shared_one_sidedly::mistake((&circuit.id, place), (&partner.id, back)));
        }
        None => {
            if let Some((other, claimant)) = others_claim.filter(|(other, _)| *other < index) {
                let theirs = rows[other].place_of("shares_neutral_with");
                notes.push(neutral_shared_one_sidedly::mistake((&circuit.id, place), (&claimant.id, theirs)));
            }
        }
        Some(_) => {}
    }
}

fn overcurrent(notes: &mut Notes, draft: &Dwelling, circuit: &Circuit, row: &Row<'_>) {
    let Some(panel) = draft.panels.get(circuit.panel.0) else { return };
    let fused = row.get("fuse").is_some();
    if fused && circuit.fitted.is_some() {
        notes.push(breaker_fitted_on_fuse::mistake(row.place_of("fitted"), row.place_of("fuse")));
        return;
    }
    if fused && panel.overcurrent == Some(Overcurrent::Breakers) {
        notes.push(fuse_among_breakers::mistake(&panel.id, row.place_of("fuse")));
    }
    if let (Some(fitted), Some(made_for_it)) = (circuit.fitted, &panel.made_for_it)
        && !made_for_it.contains(&fitted)
    {
        notes.push(fitted_not_made_for_panel::mistake(fitted.name(), &panel.id, row.place_of("fitted")));
    }
}
