//! The work at a box in letters short enough for a plan, and what each letter means.

use dwelling::BoxIndex;
use remedies::{BoxWork, Device, Planned, Step, work_first};

/// One piece of work at a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum WorkMark {
    Nothing,
    Danger,
    Fault,
    Box,
    WideBox,
    Extension,
    TakenOut,
    New,
    LoadSide,
    Joined,
    Restored,
    Marked,
    Tested,
}

impl WorkMark {
    pub(crate) const ALL: [Self; 13] = [
        Self::Nothing,
        Self::Danger,
        Self::Fault,
        Self::Box,
        Self::WideBox,
        Self::Extension,
        Self::TakenOut,
        Self::New,
        Self::LoadSide,
        Self::Joined,
        Self::Restored,
        Self::Marked,
        Self::Tested,
    ];

    pub(crate) const fn letters(self) -> &'static str {
        match self {
            Self::Nothing | Self::Danger => "!",
            Self::Fault => "F",
            Self::Box => "B",
            Self::WideBox => "BB",
            Self::Extension => "X",
            Self::TakenOut => "C",
            Self::New => "N",
            Self::LoadSide => "L",
            Self::Joined => "E",
            Self::Restored => "R",
            Self::Marked => "M",
            Self::Tested => "T",
        }
    }

    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Nothing => "nothing lawful was found: read the plan",
            Self::Danger => "someone can be hurt here as it stands: read the findings",
            Self::Fault => "put a fault right first (false ground, polarity, a ground to part)",
            Self::Box => "cut the box out for a larger old-work box",
            Self::WideBox => "cut the box out for a two-gang old-work box",
            Self::Extension => "set a surface extension on the box",
            Self::TakenOut => "take the receptacle out, close the box with a blank cover",
            Self::New => "fit the new device that is named beside it",
            Self::LoadSide => "its load side feeds and protects what comes next",
            Self::Joined => "join it to the new ground",
            Self::Restored => "restore the ground that is in the box",
            Self::Marked => "mark it with the words that the plan names",
            Self::Tested => "test only: its ground arrives through what is joined already",
        }
    }
}

/// The work that a plan does at a box, in the order in which it is done.
pub(crate) fn work_at(plan: &Planned, at: BoxIndex) -> Vec<WorkMark> {
    let chosen = plan.chosen(at);
    if chosen.step == Step::Unresolved {
        return vec![WorkMark::Nothing];
    }
    let ends_here = plan.solution.links.iter().any(|link| plan.bought(link).ends_at(dwelling::RouteEnd::Box(at)));
    let box_work = match chosen.box_work {
        BoxWork::Keep => None,
        BoxWork::Replace => Some(WorkMark::Box),
        BoxWork::ReplaceWide => Some(WorkMark::WideBox),
        BoxWork::Extend => Some(WorkMark::Extension),
    };
    let device = match chosen.device {
        Device::Kept => None,
        Device::Blank => Some(WorkMark::TakenOut),
        Device::TwoSlot | Device::ThreeSlot | Device::Gfci | Device::Afci | Device::Dual => Some(WorkMark::New),
    };
    let joined = ends_here || matches!(chosen.step, Step::ConnectKept | Step::ConnectFitted);
    let restored = matches!(chosen.step, Step::RestoreKept | Step::RestoreFitted);
    let feeds = chosen.gives_protection() && !plan.behind_load(at).is_empty();
    let when = |is_done: bool, mark| is_done.then_some(mark);
    let work = [
        when(!work_first(plan, at).is_empty(), WorkMark::Fault),
        box_work,
        device,
        when(feeds, WorkMark::LoadSide),
        when(joined, WorkMark::Joined),
        when(restored, WorkMark::Restored),
        when(!chosen.markings.is_empty(), WorkMark::Marked),
        when(chosen.step == Step::GroundArrives, WorkMark::Tested),
    ];
    work.into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_pieces_of_work_that_can_stand_on_one_sheet_share_their_letters() {
        let on_a_plan: Vec<_> = WorkMark::ALL.into_iter().filter(|mark| *mark != WorkMark::Danger).collect();
        for (index, mark) in on_a_plan.iter().enumerate() {
            assert!(on_a_plan[..index].iter().all(|other| other.letters() != mark.letters()), "{mark:?}");
        }
    }
}
