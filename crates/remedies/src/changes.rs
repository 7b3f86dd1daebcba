//! What differs between two plans of one dwelling, thing by thing, in words.

use crate::candidate::Step;
use crate::device::{AtPanel, BoxWork, Device};
use crate::planned::Planned;
use crate::ways::Way;
use dwelling::BoxIndex;
use optimizer::Solution;

/// What another plan does differently, in sentences: panels, then routes, then boxes, the box that is asked about left out.
#[must_use]
pub fn changes(plan: &Planned, other: &Solution, asked_about: Option<BoxIndex>) -> Vec<String> {
    let mut list = at_panels(plan, other);
    let (before, after) = (plan.ways(), plan.ways_in(other));
    let same = |one: &Way, two: &Way| (&one.id, one.from, one.to, one.kind) == (&two.id, two.from, two.to, two.kind);
    let new = after.iter().filter(|way| !before.iter().any(|known| same(way, known)));
    list.extend(new.map(|way| format!("route {} is bought", way.id)));
    let gone = before.iter().filter(|way| !after.iter().any(|kept| same(way, kept)));
    list.extend(gone.map(|way| format!("route {} is not bought", way.id)));
    for at in plan.facts.dwelling.box_indices().filter(|at| Some(*at) != asked_about) {
        let (before, after) = (done_at(plan, &plan.solution, at), done_at(plan, other, at));
        if before != after {
            list.push(format!("{}: {after} instead of {before}", plan.facts.dwelling.device_box(at).id));
        }
    }
    list
}

fn at_panels(plan: &Planned, other: &Solution) -> Vec<String> {
    let mut list = Vec::new();
    for (tree, choices) in plan.assembled.at_panel.iter().enumerate() {
        let chosen = |solution: &Solution| choices.get(solution.roots[tree]).map(|one| one.choice);
        let (Some(before), Some(after)) = (chosen(&plan.solution), chosen(other)) else { continue };
        if before != after {
            let circuits = plan.facts.trees[tree].circuits.iter();
            let ids: Vec<&str> = circuits.map(|at| plan.facts.dwelling.circuit(*at).id.as_str()).collect();
            list.push(format!("circuit {}: {} instead of {}", ids.join("+"), panel_words(after), panel_words(before)));
        }
    }
    list
}

/// What is put at the panel end, in words.
#[must_use]
pub const fn panel_words(choice: AtPanel) -> &'static str {
    use dwelling::ProtectiveBreaker::{Afci, AfciTwoPole, Dual, DualTwoPole, Gfci, GfciTwoPole};
    match choice {
        AtPanel::AsItIs => "as it is at the panel",
        AtPanel::Breaker(Gfci) => "a GFCI breaker",
        AtPanel::Breaker(Afci) => "an AFCI breaker",
        AtPanel::Breaker(Dual) => "a GFCI/AFCI breaker",
        AtPanel::Breaker(GfciTwoPole) => "a two-pole GFCI breaker",
        AtPanel::Breaker(AfciTwoPole) => "a two-pole AFCI breaker",
        AtPanel::Breaker(DualTwoPole) => "a two-pole GFCI/AFCI breaker",
        AtPanel::DeadFrontGfci => "a GFCI device beside the panel",
        AtPanel::DeadFrontDual => "a GFCI/AFCI device beside the panel",
    }
}

/// What a plan does at a box, in words.
#[must_use]
pub fn done_at(plan: &Planned, solution: &Solution, at: BoxIndex) -> String {
    let chosen = plan.chosen_in(solution, at);
    let device = match chosen.device {
        Device::Kept => "the receptacle that is there",
        Device::TwoSlot => "a two-slot receptacle",
        Device::ThreeSlot => "a three-slot receptacle",
        Device::Gfci => "a GFCI receptacle",
        Device::Afci => "an AFCI receptacle",
        Device::Dual => "a GFCI/AFCI receptacle",
        Device::Blank => "a blank cover",
    };
    let work = match chosen.box_work {
        BoxWork::Keep => "",
        BoxWork::Extend => " with a surface extension",
        BoxWork::Replace | BoxWork::ReplaceWide => " in a new box",
    };
    let done = match chosen.step {
        Step::Leave => return format!("left as it is{work}"),
        Step::MarkProtected => "marked behind protection".to_owned(),
        Step::MarkGfci => "its GFCI marked".to_owned(),
        Step::UseLoadSide => "kept with its load side in use".to_owned(),
        Step::FitTwoSlot | Step::FitGfci => device.to_owned(),
        Step::FitProtected => format!("{device} behind protection"),
        Step::RestoreKept => "kept, its ground restored".to_owned(),
        Step::RestoreFitted => format!("{device} on the ground that is there"),
        Step::GroundArrives => "grounded through its conductors".to_owned(),
        Step::ConnectKept => "kept and joined to a new ground".to_owned(),
        Step::ConnectFitted => format!("{device} on a new ground"),
        Step::TakeOut => "taken out for a blank cover".to_owned(),
        Step::Unresolved => "nothing lawful".to_owned(),
    };
    done + work
}
