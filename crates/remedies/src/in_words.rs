//! The words that pages and papers use for what a plan does.

use crate::answer::{DangerAnswer, OpeningAnswer};
use crate::candidate::Step;
use crate::dangers::DangerWork;
use crate::device::{BoxWork, Device};
use dwelling::{GroundFact, Holding};
use estimate::Task;

/// What an opening holds and how its ground stands, as found.
#[must_use]
pub fn as_found(holds: Holding, ground: GroundFact) -> String {
    let ground = match ground {
        GroundFact::None => "no ground",
        GroundFact::Connected => "grounded",
        GroundFact::Poor => "poor ground",
        GroundFact::Loose => "ground loose in the box",
        GroundFact::CutOff => "ground cut off",
        GroundFact::False => "FALSE ground",
        GroundFact::Disputed => "ground disputed",
        GroundFact::Unknown => "ground unknown",
    };
    format!("{}, {ground}", holds.in_words())
}

/// Words that begin with a capital.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// What is done at an opening, as an order.
#[must_use]
pub fn order(opening: &OpeningAnswer) -> String {
    let box_work = match opening.box_work {
        BoxWork::Keep => "",
        BoxWork::Replace => ", new 20 in³ old-work box",
        BoxWork::Extend => ", surface extension box on the old one",
        BoxWork::ReplaceWide => ", new two-gang old-work box",
    };
    let device = device(opening.device);
    let order = match opening.step {
        Step::Leave if !opening.routes_joined.is_empty() => "join the new ground in this box".to_owned(),
        Step::Leave => "leave as it is".to_owned(),
        Step::UseLoadSide => "keep it, join what it feeds to its load side".to_owned(),
        Step::MarkProtected | Step::MarkGfci => "keep the receptacle, mark it".to_owned(),
        Step::FitTwoSlot | Step::FitGfci | Step::FitProtected => format!("fit {device}"),
        Step::RestoreKept => "restore the ground, keep the receptacle".to_owned(),
        Step::RestoreFitted => format!("fit {device} on the ground that is there"),
        Step::GroundArrives => "test only: its ground arrives".to_owned(),
        Step::ConnectKept => "keep the receptacle, join it to the new ground".to_owned(),
        Step::ConnectFitted => format!("fit {device} on the new ground"),
        Step::TakeOut => "take the receptacle out: splices and a blank cover".to_owned(),
        Step::Unresolved => "NOTHING LAWFUL FOUND".to_owned(),
    };
    order + box_work
}

/// What is put right before anything else.
#[must_use]
pub fn repairs(opening: &OpeningAnswer) -> String {
    let words = opening.repairs.iter().map(|task| match task {
        Task::RemoveFalseGround => "take out the false ground",
        Task::CorrectPolarity => "put hot and neutral right",
        Task::PartGround => "part the grounding conductor that joins it to others without a ground",
        other => other.name(),
    });
    words.collect::<Vec<_>>().join(", ")
}

/// What is done about a danger at a place, with the boxes and circuits it is about and what rating takes the place of what.
#[must_use]
pub fn danger_repair(
    work: DangerWork,
    id: &str,
    boxes: &[String],
    circuits: &[String],
    (found, instead): (String, String),
) -> String {
    let (boxes, circuits) = (boxes.join(", "), circuits.join(" and "));
    match work {
        DangerWork::TakeOutFalseGround => format!("look for a jumper or a false ground at {boxes}, and take it out"),
        DangerWork::FindOpenNeutral => {
            format!("find where the neutral of circuit {circuits} is interrupted, and make the joint anew")
        }
        DangerWork::MendNeutral => format!("make the neutral joints at {boxes} anew"),
        DangerWork::ClearLiveMetal => format!("find why metal at {boxes} is live, and part it from what makes it so"),
        DangerWork::TakeOutNeutralFuse => {
            format!("look for a fuse in the neutral at panel {id}; take it out and join the neutral through")
        }
        DangerWork::FitSmallerBreaker => {
            format!("fit a breaker of {instead} in place of {found} on circuit {circuits}")
        }
        DangerWork::FitSmallerFuse => format!(
            "fit a fuse of {instead} in place of {found} on circuit {circuits}, with an adapter that takes no larger one"
        ),
    }
}

/// Where a danger is: a box by its id, circuits and panels by what they are and theirs.
#[must_use]
pub fn place_of_danger(danger: &DangerAnswer) -> String {
    match danger.at {
        "circuit" => format!("circuit {}", danger.circuits.join(" + ")),
        "box" => danger.id.clone(),
        at => format!("{at} {}", danger.id),
    }
}

/// What is done about a danger, why, and on what its price rests where that is an allowance.
#[must_use]
pub fn danger(danger: &DangerAnswer) -> String {
    let rests = danger.rests_on.as_ref().map_or_else(String::new, |on| format!(" (allowance; it rests on {on})"));
    format!("repair what is dangerous: {}{rests}. Why: {}", danger.says, danger.because)
}

/// A device, as one of its kind.
#[must_use]
pub const fn device(device: Device) -> &'static str {
    match device {
        Device::Kept => "a receptacle",
        Device::TwoSlot => "a two-slot receptacle",
        Device::ThreeSlot => "a three-slot receptacle",
        Device::Gfci => "a GFCI receptacle",
        Device::Afci => "an AFCI receptacle",
        Device::Dual => "a GFCI/AFCI receptacle",
        Device::Blank => "a blank cover",
    }
}

/// A device at the panel end, and where it is: in its panel or beside it.
#[must_use]
pub fn device_at(name: &str, panel: &str) -> String {
    match name {
        "dead-front-gfci" => format!("GFCI device beside {panel}"),
        "dead-front-dual" => format!("GFCI/AFCI device beside {panel}"),
        breaker => format!("{} in {panel}", at_panel(breaker)),
    }
}

/// What is put at the panel end, in words.
#[must_use]
pub fn at_panel(name: &str) -> &str {
    match name {
        "as-it-is" => "as it is",
        "breaker-gfci" => "GFCI breaker",
        "breaker-afci" => "AFCI breaker",
        "breaker-dual" => "GFCI/AFCI breaker",
        "breaker-gfci-2p" => "two-pole GFCI breaker",
        "breaker-afci-2p" => "two-pole AFCI breaker",
        "breaker-dual-2p" => "two-pole GFCI/AFCI breaker",
        "dead-front-gfci" => "GFCI device beside the panel",
        "dead-front-dual" => "GFCI/AFCI device beside the panel",
        other => other,
    }
}
