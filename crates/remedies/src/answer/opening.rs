//! One opening of a plan, as an answer.

use super::duties::{RequiresAnswer, sections};
use super::fill::FillAnswer;
use super::findings::{FindingAnswer, finding_answer, ids};
use super::lines::LineAnswer;
use super::reasons::{open_questions, shortfalls, why};
use crate::candidate::{AFCI, Candidate, GFCI, Shortfall, Step};
use crate::device::{BoxWork, Device};
use crate::planned::{Planned, Protector};
use crate::repairs::{parts_a_ground, repairs_at};
use crate::room_in_box::{GRADES, fit_after};
use dwelling::{BoxIndex, GroundFact, Holding, RouteEnd};
use estimate::{Price, Task};
use optimizer::{ChosenLink, Marks};
use rulebook::{Citation, Condition, DeviceSpace, Fit, Judgement, Lawful, Remedy, RemedyVerdict};
use schemars::JsonSchema;
use serde::Serialize;

/// What a plan does at one opening, and why.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OpeningAnswer {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// The room it is in.
    pub room: String,
    /// Its circuit; null where unknown.
    pub circuit: Option<String>,
    /// What it holds.
    pub holds: Holding,
    /// What is known of its ground.
    pub ground: GroundFact,
    /// The evidence for that.
    pub ground_because: Vec<String>,
    /// What was found there.
    pub findings: Vec<FindingAnswer>,
    /// What it is owed when its receptacle is replaced.
    pub requires: RequiresAnswer,
    /// The remedy; null where nothing lawful was found.
    pub remedy: Option<Remedy>,
    /// What is done.
    pub step: Step,
    /// The device that is there afterwards.
    pub device: Device,
    /// What is done with the box.
    pub box_work: BoxWork,
    /// Faults that are put right first.
    pub repairs: Vec<Task>,
    /// The routes whose conductors end in this box and are joined here.
    pub routes_joined: Vec<String>,
    /// The boxes that the load side of its device feeds directly; the line side feeds all others.
    pub load_side_feeds: Vec<String>,
    /// Whether its conductors must be left alone.
    pub do_not_disturb: bool,
    /// What protects it from ground faults: a panel, a box, or the device itself.
    pub protected_by: Option<String>,
    /// What protects its wiring from arc faults: a panel, a box, or the device itself.
    pub arc_protected_by: Option<String>,
    /// Whether it has a real equipment ground afterwards.
    pub grounded: bool,
    /// The route that brings its ground, where one is bought.
    pub ground_by: Option<String>,
    /// The words it must carry, exactly.
    pub markings: Vec<&'static str>,
    /// The conditions under which the remedy is lawful.
    pub conditions: Vec<String>,
    /// The sections that allow it.
    pub cites: Vec<String>,
    /// The authorities whose changes or answers have a part in the remedy.
    pub changed_by: Vec<String>,
    /// What it costs at the opening itself.
    pub price: MoneyAnswer,
    /// The lines of that price.
    pub lines: Vec<LineAnswer>,
    /// Why this.
    pub why: String,
    /// The remedies that the code rules out here, and why.
    pub ruled_out: Vec<RuledOut>,
    /// The count of the box as it will be; null where the box is not touched.
    pub fill: Option<FillAnswer>,
    /// What the plan does not give that was needed or asked for.
    pub shortfalls: Vec<String>,
    /// What must be found out or asked before this can be relied on.
    pub open_questions: Vec<String>,
    /// Cautions that go with it.
    pub cautions: Vec<String>,
    /// The remark of the survey.
    pub note: Option<String>,
}

/// A price in cents, its parts kept apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct MoneyAnswer {
    /// Material, in cents.
    pub material_cents: i64,
    /// Labour, in cents.
    pub labour_cents: i64,
    /// Both, in cents.
    pub total_cents: i64,
    /// Minutes of work on the site, rounded half up.
    pub minutes: u32,
}

/// A remedy that was ruled out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RuledOut {
    /// The remedy.
    pub remedy: Remedy,
    /// Why.
    pub why_not: String,
}

impl MoneyAnswer {
    /// A price as an answer.
    #[must_use]
    pub fn of(price: Price) -> Self {
        Self {
            material_cents: price.material.0,
            labour_cents: price.labour.0,
            total_cents: price.total().0,
            minutes: price.minutes(),
        }
    }
}

/// The opening of a plan as an answer.
#[must_use]
pub(super) fn opening_answer(plan: &Planned, index: BoxIndex) -> OpeningAnswer {
    let facts = &plan.facts;
    let (dwelling, at) = (facts.dwelling, facts.at(index));
    let device_box = dwelling.device_box(index);
    let chosen = plan.chosen(index);
    let remedy = remedy_of(plan, index);
    let judged = judged_for(plan, index);
    let verdict = remedy.and_then(|remedy| verdict_on(judged, remedy));
    let conditions = verdict.map(|verdict| conditions_left(verdict, chosen)).unwrap_or_default();
    let state = &facts.diagnosis.ground[index.0];
    OpeningAnswer {
        box_id: device_box.id.clone(),
        room: dwelling.room(device_box.room).id.clone(),
        circuit: dwelling.circuit_of(index).map(|circuit| circuit.id.clone()),
        holds: device_box.holds,
        ground: state.fact,
        ground_because: state.because.clone(),
        findings: facts.diagnosis.findings_at(index).map(|finding| finding_answer(dwelling, finding)).collect(),
        requires: RequiresAnswer::of(&at.judged_as_found),
        remedy,
        step: chosen.step,
        device: chosen.device,
        box_work: chosen.box_work,
        repairs: work_first(plan, index),
        routes_joined: links_ending_at(plan, index).map(|link| plan.name_of(link)).collect(),
        load_side_feeds: if chosen.gives == Marks::NONE { Vec::new() } else { ids(dwelling, &plan.behind_load(index)) },
        do_not_disturb: device_box.do_not_disturb,
        protected_by: protected_by(plan, index, GFCI, plan.protector(index)),
        arc_protected_by: protected_by(plan, index, AFCI, plan.arc_protector(index)),
        grounded: plan.is_grounded(index)
            && chosen.device != Device::Blank
            && !matches!(device_box.holds, Holding::TwoSlot if chosen.device == Device::Kept),
        ground_by: plan.ground_brought_by(index).map(|link| plan.name_of(link)),
        markings: chosen.markings.iter().map(|marking| marking.name()).collect(),
        conditions: conditions.iter().map(|condition| condition.text()).collect(),
        cites: verdict.map(|verdict| sections(&verdict.cites)).unwrap_or_default(),
        changed_by: verdict.map(|verdict| verdict.changed_by.clone()).unwrap_or_default(),
        price: MoneyAnswer::of(chosen.price),
        lines: LineAnswer::all(&plan.book, chosen.lines.iter().copied()),
        why: why(plan, index),
        ruled_out: ruled_out(judged, remedy, at.as_found.taking_out.is_some()),
        fill: fill_afterwards(plan, index),
        shortfalls: shortfalls(plan, index),
        open_questions: open_questions(plan, index),
        cautions: at.judged_as_found.cautions.clone(),
        note: device_box.note.clone(),
    }
}

/// What is put right or parted before anything else at an opening.
#[must_use]
pub fn work_first(plan: &Planned, index: BoxIndex) -> Vec<Task> {
    let mut work = repairs_at(&plan.facts, index);
    if parts_a_ground(&plan.facts, index, plan.chosen(index).step) {
        work.push(Task::PartGround);
    }
    work
}

/// The judgement under which the plan's choice at an opening stands.
fn judged_for<'a>(plan: &'a Planned, index: BoxIndex) -> &'a Judgement {
    &plan.facts.at(index).judged_to_plan
}

fn verdict_on(judged: &Judgement, remedy: Remedy) -> Option<&RemedyVerdict> {
    judged.remedies.iter().find(|verdict| verdict.remedy == remedy)
}

/// Rules whose conditions the plan meets by itself: it sees to the protection that the place asks for.
const MET_BY_THE_PLAN: &[&str] = &["replacement.gfci-locations", "replacement.afci"];
/// Rules that speak of a new receptacle, and say nothing where the old one stays.
const OF_A_NEW_RECEPTACLE: &[&str] =
    &["receptacle.tamper-resistant", "receptacle.weather-resistant", "receptacle.rating"];

/// What a condition says of the box that was found, and not of one that takes its place.
const OF_THE_OLD_BOX: &str = "this small box";

/// The conditions that are left for whoever does the work.
fn conditions_left<'a>(verdict: &'a RemedyVerdict, chosen: &Candidate) -> Vec<&'a Condition> {
    let kept = chosen.device == Device::Kept;
    let new_box = matches!(chosen.box_work, BoxWork::Replace | BoxWork::ReplaceWide);
    let settled = |condition: &&Condition| {
        MET_BY_THE_PLAN.contains(&condition.rule)
            || (kept && OF_A_NEW_RECEPTACLE.contains(&condition.rule))
            || (new_box && condition.text().contains(OF_THE_OLD_BOX))
    };
    verdict.conditions.iter().filter(|condition| !settled(condition)).collect()
}

/// The citations on which the plan's choice at an opening stands, those of the conditions that are left included.
pub(super) fn cites_of(plan: &Planned, index: BoxIndex) -> Vec<Citation> {
    let verdict = remedy_of(plan, index).and_then(|remedy| verdict_on(judged_for(plan, index), remedy));
    let Some(verdict) = verdict else { return Vec::new() };
    let left = conditions_left(verdict, plan.chosen(index));
    verdict.cites.iter().chain(left.into_iter().flat_map(|condition| &condition.cites)).copied().collect()
}

/// The remedy that the plan's step at an opening amounts to.
pub(super) fn remedy_of(plan: &Planned, index: BoxIndex) -> Option<Remedy> {
    let by_cable = || plan.ground_brought_by(index).is_some_and(|link| plan.is_by_cable(link));
    Some(match plan.chosen(index).step {
        Step::Leave | Step::UseLoadSide => Remedy::Leave,
        Step::MarkGfci | Step::FitGfci => Remedy::GfciReceptacle,
        Step::FitTwoSlot => Remedy::NongroundingReceptacle,
        Step::MarkProtected | Step::FitProtected => match plan.protector(index) {
            Some(Protector::Device(_)) => Remedy::DownstreamOfGfci,
            _ => Remedy::GfciBreaker,
        },
        Step::RestoreKept | Step::RestoreFitted => Remedy::RestoreExistingGround,
        Step::TakeOut => Remedy::BlankCover,
        Step::GroundArrives | Step::ConnectKept | Step::ConnectFitted => {
            if by_cable() {
                Remedy::NewCable
            } else {
                Remedy::SeparateEgc
            }
        }
        Step::Unresolved => return None,
    })
}

fn protected_by(plan: &Planned, index: BoxIndex, mark: Marks, upstream: Option<Protector>) -> Option<String> {
    let chosen = plan.chosen(index);
    if chosen.own.covers(mark) {
        return Some("itself".into());
    }
    Some(match upstream? {
        Protector::Device(at) => format!("box {}", plan.facts.dwelling.device_box(at).id),
        Protector::AtPanel(tree) => {
            let panel = plan.facts.trees[tree].panel;
            format!("panel {}: {}", plan.facts.dwelling.panel(panel).id, plan.chosen_at_panel(tree).choice.name())
        }
    })
}

fn ruled_out(judged: &Judgement, remedy: Option<Remedy>, may_be_taken_out: bool) -> Vec<RuledOut> {
    let asked = |remedy: Remedy| remedy != Remedy::BlankCover || may_be_taken_out;
    let barred = judged
        .remedies
        .iter()
        .filter(|verdict| verdict.lawful == Lawful::No && Some(verdict.remedy) != remedy && asked(verdict.remedy));
    barred.map(|verdict| RuledOut { remedy: verdict.remedy, why_not: verdict.why_not.join("; ") }).collect()
}

/// The chosen links whose conductors end in a box.
pub(super) fn links_ending_at<'a>(plan: &'a Planned, index: BoxIndex) -> impl Iterator<Item = &'a ChosenLink> {
    plan.solution.links.iter().filter(move |link| plan.bought(link).ends_at(RouteEnd::Box(index)))
}

/// The count of a box as the plan leaves it, where the plan touches it.
pub(super) fn fill_afterwards(plan: &Planned, index: BoxIndex) -> Option<FillAnswer> {
    fill_of(plan, index).map(|fit| FillAnswer::of(&fit))
}

/// The same count as the rulebook makes it.
pub(super) fn fill_of(plan: &Planned, index: BoxIndex) -> Option<Fit> {
    let (at, chosen) = (plan.facts.at(index), plan.chosen(index));
    let landings: Vec<usize> = links_ending_at(plan, index).map(|link| link.grade).collect();
    if !plan.touches(index) {
        return None;
    }
    let gauge = GRADES[landings.iter().copied().max().unwrap_or(0)];
    let strap = at.as_found.holds.has_strap() && chosen.device != Device::Blank;
    let space = if strap { DeviceSpace::Strap } else { DeviceSpace::None };
    let count = u32::try_from(landings.len()).unwrap_or(u32::MAX);
    Some(fit_after(&plan.facts, at, chosen.box_work, space, count, gauge))
}

/// What a choice falls short of.
pub(super) fn shortfall_of(plan: &Planned, index: BoxIndex) -> Shortfall {
    plan.chosen(index).shortfall
}
