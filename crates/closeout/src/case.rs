//! The case: the plan, the wiring as it leaves it, and what was read and seen afterwards.

use crate::ground_tie::grounds_tied;
use crate::seen::Seen;
use calculations::{Check, CheckRow, State, checks_of};
use diagnosis::{Condition, Diagnosis, diagnose};
use dwelling::{BoxIndex, Dwelling};
use remedies::{OpeningAnswer, PlanAnswer, Planned};

/// Everything that a claim is judged on.
pub(crate) struct Case<'a> {
    pub(crate) planned: &'a Planned<'a>,
    pub(crate) plan: &'a PlanAnswer,
    /// The wiring as the plan leaves it.
    pub(crate) state: State,
    /// What the readings after the work look like by themselves.
    pub(crate) looks_like: Diagnosis,
    /// How full each box is afterwards.
    pub(crate) fills: Vec<CheckRow>,
    /// By box: the number of the group of grounds it belongs to afterwards.
    pub(crate) ground_group: Vec<usize>,
}

/// One opening of it.
#[derive(Clone, Copy)]
pub(crate) struct OpeningCase<'a> {
    pub(crate) case: &'a Case<'a>,
    pub(crate) at: BoxIndex,
    pub(crate) opening: &'a OpeningAnswer,
    pub(crate) seen: Seen<'a>,
}

impl<'a> Case<'a> {
    pub(crate) fn of(planned: &'a Planned<'a>, plan: &'a PlanAnswer) -> Self {
        let state = State::after(planned);
        let looks_like = diagnose(&as_read_afterwards(&state.dwelling));
        let mut fills = checks_of(&state);
        fills.retain(|row| row.check == Check::Fill);
        let ground_group = grounds_tied(&state);
        Self { planned, plan, state, looks_like, fills, ground_group }
    }

    pub(crate) fn dwelling(&self) -> &'a Dwelling {
        self.planned.facts.dwelling
    }

    pub(crate) fn id(&self, at: BoxIndex) -> &'a str {
        &self.dwelling().device_box(at).id
    }

    pub(crate) fn seen(&self, at: BoxIndex) -> Seen<'a> {
        Seen(&self.dwelling().device_box(at).after)
    }

    pub(crate) fn openings(&'a self) -> impl Iterator<Item = OpeningCase<'a>> {
        self.plan.openings.iter().filter_map(|opening| {
            let at = self.dwelling().box_named(&opening.box_id)?;
            Some(OpeningCase { case: self, at, opening, seen: self.seen(at) })
        })
    }
}

impl OpeningCase<'_> {
    /// What the readings after the work look like here, where they look like one of these, the most certain first.
    pub(crate) fn looks_like(&self, any: &[Condition]) -> Option<String> {
        let found = self.case.looks_like.findings_at(self.at).filter(|finding| any.contains(&finding.condition));
        found.min_by_key(|finding| finding.sure).map(|finding| finding.says.clone())
    }
}

/// The dwelling with what was read after the work in place of what was found.
fn as_read_afterwards(dwelling: &Dwelling) -> Dwelling {
    let mut read = dwelling.clone();
    for device_box in &mut read.boxes {
        device_box.found = device_box.after.iter().map(|after| after.reading.clone()).collect();
    }
    read
}
