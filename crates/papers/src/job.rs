//! What the papers of a job are made from.

use crate::document::Paper;
use crate::drawn::Drawn;
use calculations::{CheckRow, ReadingAnswer};
use closeout::ProofAnswer;
use drawings::SheetAnswer;
use dwelling::{BoxIndex, CircuitIndex, Dwelling, Feed};
use remedies::{Device, EstimateAnswer, OpeningAnswer, PlanAnswer, Step};

/// A job: the dwelling, its plan, and what else was worked out of them.
#[derive(Clone, Debug)]
pub struct Job<'a> {
    /// The dwelling, as the plan was made on it.
    pub dwelling: &'a Dwelling,
    /// Its plan; with offers where there is to be a proposal.
    pub plan: &'a PlanAnswer,
    /// What is bought and worked for it.
    pub estimate: &'a EstimateAnswer,
    /// What a meter must read at every receptacle afterwards.
    pub readings: &'a [ReadingAnswer],
    /// The checks of the dwelling as the plan leaves it.
    pub checks: &'a [CheckRow],
    /// What was read after the work, held against the plan; none where nothing was.
    pub proof: Option<&'a ProofAnswer>,
    /// The floors as they were found.
    pub floors_before: &'a [SheetAnswer],
    /// The floors as the plan leaves them.
    pub floors_after: &'a [SheetAnswer],
    /// What else is drawn of it.
    pub drawn: &'a Drawn,
    /// The day that stands on the papers; none leaves a line to fill in.
    pub date: Option<String>,
}

impl<'a> Job<'a> {
    /// The rooms in walking order, each with its openings; rooms without any are left out.
    pub(crate) fn rooms(&self) -> Vec<(&'a str, Vec<&'a OpeningAnswer>)> {
        let plan = self.plan;
        let of = |room: &'a str| {
            let openings: Vec<&'a OpeningAnswer> =
                plan.openings.iter().filter(|opening| opening.room == room).collect();
            (room, openings)
        };
        let dwelling = self.dwelling;
        let rooms = dwelling.rooms.iter().map(|room| of(&room.id));
        rooms.filter(|(_, openings)| !openings.is_empty()).collect()
    }

    /// Whether something is done, found out or warned of at an opening.
    pub(crate) fn is_worked_on(&self, opening: &OpeningAnswer) -> bool {
        let quiet = opening.findings.iter().all(|finding| !finding.danger) && opening.open_questions.is_empty();
        let untouched = opening.step == Step::Leave && opening.routes_joined.is_empty();
        !(untouched && quiet && opening.shortfalls.is_empty() && opening.price.total_cents == 0)
    }

    /// A paper of this job that says nothing yet.
    pub(crate) fn paper(&self, title: &str) -> Paper {
        let dwelling = self.plan.job.name.clone();
        Paper { title: title.to_owned(), dwelling, date: self.date.clone(), blocks: Vec::new() }
    }

    /// The circuit of an opening, where known.
    pub(crate) fn circuit_index(&self, opening: &OpeningAnswer) -> Option<CircuitIndex> {
        let id = opening.circuit.as_ref()?;
        self.dwelling.circuits.iter().position(|circuit| circuit.id == *id).map(CircuitIndex)
    }

    /// Whether a receptacle is there after the work that has no ground, as far as is known.
    pub(crate) fn is_receptacle_without_ground(&self, opening: &OpeningAnswer) -> bool {
        opening.holds.is_receptacle() && opening.device != Device::Blank && !opening.grounded
    }

    /// The rating of a circuit, as people say it.
    pub(crate) fn rating_of(&self, circuit: &str) -> String {
        let circuit = self.dwelling.circuits.iter().find(|known| known.id == circuit);
        circuit.and_then(|circuit| circuit.breaker).map_or("rating unknown".to_owned(), |amperes| amperes.to_string())
    }

    /// The rating of a circuit once the plan is carried out: what is too large for its conductors is changed.
    pub(crate) fn rating_afterwards(&self, circuit: &str) -> String {
        let of = self.plan.circuits.iter().find_map(|answer| {
            let position = answer.circuits.iter().position(|id| id == circuit)?;
            answer.amperes_afterwards.get(position).copied()
        });
        of.flatten().map_or_else(|| self.rating_of(circuit), |amperes| format!("{amperes} A"))
    }

    /// The boxes that are fed straight from a box.
    pub(crate) fn fed_from(&self, at: BoxIndex) -> impl Iterator<Item = &'a str> {
        let boxes = self.dwelling.boxes.iter();
        boxes.filter(move |other| other.fed_by == Some(Feed::Box(at))).map(|other| other.id.as_str())
    }
}
