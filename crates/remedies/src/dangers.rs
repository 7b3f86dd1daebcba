//! What is dangerous and is put right whatever else is chosen: the works that every whole of a dwelling contains, priced, and by
//! an allowance where nobody can know how far they go before boxes are open.

use crate::facts::{Facts, breaker_to_fit};
use crate::planned::Planned;
use crate::repairs::{repairs_at, work_at};
use diagnosis::{Certainty, Condition, Finding, Site};
use dwelling::{BoxIndex, CircuitIndex, CircuitTree, Overcurrent, ProtectiveBreaker, names};
use electrical::Amperes;
use estimate::{Line, Material, Price, PriceBook, Task};

names! {
    /// What is done about a danger.
    DangerWork {
        /// A jumper or a false ground that the readings speak for is looked for and taken out.
        TakeOutFalseGround = "take-out-false-ground",
        /// The place where a neutral is interrupted is found, and the joint made anew.
        FindOpenNeutral = "find-open-neutral",
        /// Neutral joints that are failing are made anew.
        MendNeutral = "mend-neutral",
        /// Why metal is live is found, and it is parted from what makes it so.
        ClearLiveMetal = "clear-live-metal",
        /// A fuse is taken out of a neutral.
        TakeOutNeutralFuse = "take-out-neutral-fuse",
        /// A breaker that is too large for its conductors is changed for a smaller one.
        FitSmallerBreaker = "fit-smaller-breaker",
        /// A fuse that is too large for its conductors is changed for a smaller one.
        FitSmallerFuse = "fit-smaller-fuse",
    }
}

/// A danger that is put right, with what that takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DangerRepair {
    /// What is done.
    pub work: DangerWork,
    /// Where it is told of.
    pub at: Site,
    /// The boxes that it is about.
    pub boxes: Vec<BoxIndex>,
    /// The circuits that it is about.
    pub circuits: Vec<CircuitIndex>,
    /// The findings that it answers, by their place in the diagnosis.
    pub findings: Vec<usize>,
    /// What its price rests on, where nobody can know how far the work goes: it is an allowance then.
    pub rests_on: Option<&'static str>,
    /// What is bought and worked for it.
    pub lines: Vec<Line>,
    /// What it costs: the price of its lines.
    pub price: Price,
}

impl Planned<'_> {
    /// What is dangerous and is put right besides what is done at openings: at the panel ends, then wherever else.
    #[must_use]
    pub fn danger_repairs(&self) -> Vec<&DangerRepair> {
        let at_panels = (0..self.facts.trees.len()).filter_map(|tree| self.chosen_at_panel(tree).repair.as_ref());
        at_panels.chain(&self.assembled.dangers).collect()
    }

    /// The breaker or fuse of a circuit once the plan is carried out: one that is too large for its conductors is changed.
    #[must_use]
    pub fn rating_afterwards(&self, circuit: CircuitIndex) -> Option<Amperes> {
        largest_lawful(&self.facts, circuit).or(self.facts.dwelling.circuit(circuit).breaker)
    }
}

/// The dangers found in a dwelling that are put right wherever a plan leaves them, panels first. What changes with the choice at
/// the panel end stands with that choice, and what is put right at an opening with the opening.
#[must_use]
pub fn danger_repairs(facts: &Facts, book: &PriceBook) -> Vec<DangerRepair> {
    let mut found: Vec<DangerRepair> = Vec::new();
    for (index, finding) in facts.diagnosis.findings.iter().enumerate() {
        let Some((work, at, boxes)) = work_for(facts, finding) else { continue };
        match found.iter_mut().find(|repair| repair.work == work && repair.at == at) {
            Some(repair) => {
                repair.findings.push(index);
                let new: Vec<BoxIndex> = boxes.into_iter().filter(|at| !repair.boxes.contains(at)).collect();
                repair.boxes.extend(new);
            }
            None => found.push(DangerRepair {
                work,
                at,
                boxes,
                circuits: circuits_of(facts, at),
                findings: vec![index],
                rests_on: rests_on(work),
                lines: Vec::new(),
                price: Price::default(),
            }),
        }
    }
    for repair in &mut found {
        repair.lines = lines_of(facts, repair);
        repair.price = book.price(&repair.lines);
    }
    found.sort_by_key(|repair| (repair.at, repair.work));
    found
}

/// What a breaker or fuse that is too large for its conductors asks for at the panel end of a tree, where what is fitted there
/// stays.
#[must_use]
pub fn smaller_overcurrent(facts: &Facts, book: &PriceBook, tree: &CircuitTree) -> Option<DangerRepair> {
    let too_large: Vec<CircuitIndex> =
        tree.circuits.iter().copied().filter(|circuit| largest_lawful(facts, *circuit).is_some()).collect();
    let first = *too_large.first()?;
    let overcurrent = facts.dwelling.panel(tree.panel).overcurrent;
    let count = u32::try_from(too_large.len()).unwrap_or(u32::MAX);
    let fitted = too_large.iter().find_map(|circuit| facts.dwelling.circuit(*circuit).fitted);
    let (work, lines) = match (overcurrent, fitted) {
        (Some(Overcurrent::Fuses), _) => (
            DangerWork::FitSmallerFuse,
            vec![Line::Thing(Material::Fuse, count), Line::Work(Task::ChangeFuse, count, None)],
        ),
        (_, fitted) => {
            let breaker = match fitted {
                Some(protective) => protective_breaker(protective),
                None if tree.is_multiwire() => Material::BreakerStandardTwoPole,
                None => Material::BreakerStandard,
            };
            (DangerWork::FitSmallerBreaker, vec![Line::Thing(breaker, 1), Line::once(Task::ChangeBreaker)])
        }
    };
    let reckoned = "there being a breaker: whether it is a breaker or a fuse was not written down";
    Some(DangerRepair {
        work,
        at: Site::Circuit(first),
        boxes: Vec::new(),
        circuits: too_large,
        findings: Vec::new(),
        rests_on: overcurrent.is_none().then_some(reckoned),
        price: book.price(&lines),
        lines,
    })
}

/// The largest breaker or fuse that all conductors of a circuit bear, where the one that is there is larger.
#[must_use]
pub fn largest_lawful(facts: &Facts, circuit: CircuitIndex) -> Option<Amperes> {
    let on_it = facts.sites.iter().filter(|at| facts.dwelling.device_box(at.index).circuit == Some(circuit));
    on_it.filter_map(|at| breaker_to_fit(&at.as_found, &facts.code)).min()
}

/// A protective breaker as a thing that is bought.
#[must_use]
pub const fn protective_breaker(breaker: ProtectiveBreaker) -> Material {
    match breaker {
        ProtectiveBreaker::Gfci => Material::BreakerGfci,
        ProtectiveBreaker::Afci => Material::BreakerAfci,
        ProtectiveBreaker::Dual => Material::BreakerDual,
        ProtectiveBreaker::GfciTwoPole => Material::BreakerGfciTwoPole,
        ProtectiveBreaker::AfciTwoPole => Material::BreakerAfciTwoPole,
        ProtectiveBreaker::DualTwoPole => Material::BreakerDualTwoPole,
    }
}

/// What a finding asks for that no opening's own work is, where it is sure enough to be planned: the place that it is reckoned
/// for, so that what one work answers is reckoned once, and the boxes.
fn work_for(facts: &Facts, finding: &Finding) -> Option<(DangerWork, Site, Vec<BoxIndex>)> {
    if !finding.danger || finding.sure == Certainty::Possible {
        return None;
    }
    let here: Vec<BoxIndex> = match finding.at {
        Site::Box(at) => vec![at],
        Site::Circuit(_) | Site::Panel(_) => finding.next.as_ref().map(|next| next.boxes.clone()).unwrap_or_default(),
    };
    let tree = tree_of(facts, finding.at);
    let of_tree = || Some(Site::Circuit(*tree?.circuits.first()?));
    let of_group = |at: BoxIndex| Site::Box(facts.groups.group_of(at).members.iter().copied().min().unwrap_or(at));
    match (finding.condition, finding.at) {
        (Condition::OpenNeutral, Site::Box(_) | Site::Circuit(_)) => {
            Some((DangerWork::FindOpenNeutral, of_tree()?, here))
        }
        // Two legs on one neutral: that it is open is what puts too much on one of them.
        (Condition::OverVoltage, Site::Box(_)) if tree.is_some_and(CircuitTree::is_multiwire) => {
            Some((DangerWork::FindOpenNeutral, of_tree()?, here))
        }
        (Condition::PoorNeutral, Site::Box(at)) => {
            let boxes = finding.next.as_ref().map_or(here, |next| next.boxes.clone());
            Some((DangerWork::MendNeutral, of_tree().unwrap_or(Site::Box(at)), boxes))
        }
        (Condition::NeutralFuse, Site::Panel(_)) => Some((DangerWork::TakeOutNeutralFuse, finding.at, here)),
        (Condition::LiveEnclosure, Site::Box(at)) => Some((DangerWork::ClearLiveMetal, of_group(at), here)),
        (Condition::GroundContradicted, Site::Box(at)) if !takes_out_a_false_ground(facts, at) => {
            Some((DangerWork::TakeOutFalseGround, of_group(at), here))
        }
        _ => None,
    }
}

/// Whether a false ground is taken out at a box with the opening's own work.
pub(crate) fn takes_out_a_false_ground(facts: &Facts, at: BoxIndex) -> bool {
    repairs_at(facts, at).contains(&Task::RemoveFalseGround)
}

fn tree_of<'a>(facts: &'a Facts, at: Site) -> Option<&'a CircuitTree> {
    match at {
        Site::Box(at) => facts.at(at).tree.map(|tree| &facts.trees[tree]),
        Site::Circuit(circuit) => facts.trees.iter().find(|tree| tree.circuits.contains(&circuit)),
        Site::Panel(_) => None,
    }
}

fn circuits_of(facts: &Facts, at: Site) -> Vec<CircuitIndex> {
    match at {
        Site::Circuit(_) => tree_of(facts, at).map(|tree| tree.circuits.clone()).unwrap_or_default(),
        Site::Box(at) => facts.dwelling.device_box(at).circuit.into_iter().collect(),
        Site::Panel(_) => Vec::new(),
    }
}

fn lines_of(facts: &Facts, repair: &DangerRepair) -> Vec<Line> {
    let once_at = |task: Task| match repair.boxes.first() {
        Some(at) => work_at(facts, *at, task, 1),
        None => Line::once(task),
    };
    let count = |all: usize| u32::try_from(all).unwrap_or(u32::MAX);
    match repair.work {
        DangerWork::TakeOutFalseGround => vec![once_at(Task::RemoveFalseGround)],
        DangerWork::ClearLiveMetal => vec![once_at(Task::ClearLiveMetal)],
        // Where on the circuit it will be is what nobody knows, so no place makes it longer or shorter.
        DangerWork::FindOpenNeutral => vec![
            Line::once(Task::FindOpenNeutral),
            Line::once(Task::MendNeutral),
            Line::Thing(Material::NeutralFittings, 1),
        ],
        DangerWork::MendNeutral => {
            let joints = repair.boxes.iter().map(|at| work_at(facts, *at, Task::MendNeutral, 1));
            joints.chain([Line::Thing(Material::NeutralFittings, count(repair.boxes.len()))]).collect()
        }
        DangerWork::TakeOutNeutralFuse => {
            let fuses = count(repair.findings.len());
            vec![Line::Work(Task::TakeOutNeutralFuse, fuses, None), Line::Thing(Material::NeutralFittings, fuses)]
        }
        DangerWork::FitSmallerBreaker | DangerWork::FitSmallerFuse => Vec::new(),
    }
}

/// What the price of a work rests on whose extent nobody can know before.
const fn rests_on(work: DangerWork) -> Option<&'static str> {
    match work {
        DangerWork::TakeOutFalseGround => Some("one false join, in a box that can be reached"),
        DangerWork::FindOpenNeutral => Some(
            "one place where it is interrupted, at a joint in a box that can be reached: a second one, or a break inside a \
             wall, is not in it",
        ),
        DangerWork::MendNeutral => Some("the joints that fail being in the boxes named"),
        DangerWork::ClearLiveMetal => {
            Some("one cause, in a box or a device that can be reached: damaged cable inside a wall is not in it")
        }
        DangerWork::TakeOutNeutralFuse => Some("there being such a fuse: nobody has seen it yet"),
        DangerWork::FitSmallerBreaker | DangerWork::FitSmallerFuse => None,
    }
}
