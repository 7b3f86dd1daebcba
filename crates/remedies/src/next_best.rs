//! The next best to what a plan does at an opening, and what it would cost the whole.

use crate::candidate::{Candidate, Step};
use crate::changes::{changes, done_at};
use crate::obstacles::shortfalls_added;
use crate::planned::{PlanFault, Planned, Proof};
use dwelling::BoxIndex;
use optimizer::Forced;

/// The best plan that deals with one opening in another way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextBest {
    /// What it does at the opening, in words; nothing where nothing else is possible there at all.
    pub instead: Option<String>,
    /// What the whole costs more, in cents. Nothing where it leaves something unlawful or equipment without its ground that
    /// the plan does not: such a plan has no price.
    pub costs_more_cents: Option<i64>,
    /// What it would fall short of, in sentences.
    pub falls_short: Vec<String>,
    /// What it does differently elsewhere.
    pub elsewhere: Vec<String>,
    /// Whether the search for it went to its end.
    pub exact: bool,
}

/// The ways to deal with an opening; what fits within one is not the next best of it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Leave,
    TwoSlot,
    Gfci,
    Protected,
    Restored,
    Brought,
    TakenOut,
    Unresolved,
}

const fn way_of(step: Step) -> Way {
    match step {
        Step::Leave | Step::UseLoadSide => Way::Leave,
        Step::FitTwoSlot => Way::TwoSlot,
        Step::MarkGfci | Step::FitGfci => Way::Gfci,
        Step::MarkProtected | Step::FitProtected => Way::Protected,
        Step::RestoreKept | Step::RestoreFitted => Way::Restored,
        Step::GroundArrives | Step::ConnectKept | Step::ConnectFitted => Way::Brought,
        Step::TakeOut => Way::TakenOut,
        Step::Unresolved => Way::Unresolved,
    }
}

impl Planned<'_> {
    /// The best plan that deals with an opening in another way than this one, under the same wishes; nothing for a box
    /// without a receptacle and for one for which nothing lawful was found.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::of`].
    pub fn next_best(&self, at: BoxIndex) -> Result<Option<NextBest>, PlanFault> {
        let chosen = self.chosen(at);
        if !self.facts.at(at).as_found.holds.is_receptacle() || chosen.step == Step::Unresolved {
            return Ok(None);
        }
        let (tree, node) = self.node_of(at);
        let another = |one: &Candidate| way_of(one.step) != way_of(chosen.step);
        let candidates = self.assembled.candidates[at.0].iter().enumerate();
        let allowed = candidates.filter(|(_, one)| another(one)).map(|(index, _)| index).collect();
        let held = self.held.iter().filter(|(of, _)| *of != Some(at)).map(|(_, forced)| forced);
        let laid_down = self.forced.iter().chain(held).cloned();
        let forced: Vec<Forced> = laid_down.chain([Forced::Option { tree, node, allowed }]).collect();
        let nothing = || NextBest {
            instead: None,
            costs_more_cents: None,
            falls_short: vec![if self.forced.is_empty() && self.held.is_empty() {
                "nothing else can be done there".to_owned()
            } else {
                "nothing else can be done there with what was asked for".to_owned()
            }],
            elsewhere: Vec::new(),
            exact: true,
        };
        let Some((other, proof)) = self.best_with(&forced)? else { return Ok(Some(nothing())) };
        let (before, after) = (self.standing(), self.standing_of(&other));
        let more = after.price.total().0 - before.price.total().0;
        Ok(Some(NextBest {
            instead: (self.chosen_in(&other, at).step != Step::Unresolved).then(|| done_at(self, &other, at)),
            costs_more_cents: after.is_as_lawful_as(&before).then_some(more),
            falls_short: shortfalls_added(self, &before, &after).into_iter().map(|(_, told)| told).collect(),
            elsewhere: changes(self, &other, Some(at)),
            exact: proof == Proof::Cheapest,
        }))
    }
}
