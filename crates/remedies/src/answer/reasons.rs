//! Why the plan does what it does at an opening, and what keeps it from being the last word, in sentences.

use super::opening::{fill_afterwards, fill_of, links_ending_at, remedy_of, shortfall_of};
use crate::assumed_feeds;
use crate::candidate::{AFCI, Step};
use crate::device::{AtPanel, BoxWork, Device};
use crate::leakage::milliamperes;
use crate::planned::{Planned, Protector};
use dwelling::{BoxIndex, GroundFact, GroundPath, Holding, Want};
use electrical::Volume;
use rulebook::{Duty, Judgement, Lawful, Need, Remedy};

/// Why this is done at an opening.
pub(super) fn why(plan: &Planned, index: BoxIndex) -> String {
    let chosen = plan.chosen(index);
    let holds = plan.facts.at(index).as_found.holds;
    let mut sentence = match chosen.step {
        Step::Leave if links_ending_at(plan, index).next().is_some() => {
            format!("{} ends here and is joined to the grounding conductors in the box", route(plan, index))
        }
        Step::Leave if !holds.is_receptacle() => "nothing is asked of it here".to_owned(),
        Step::Leave if holds == Holding::TwoSlot => {
            "a two-slot receptacle on a circuit without a ground is lawful as it is, and nobody asked for more"
                .to_owned()
        }
        Step::Leave => "it is lawful as it is".to_owned(),
        Step::MarkProtected => {
            format!(
                "the receptacle stays: {} protects it, and with its markings that is lawful",
                protector(plan, index)
            )
        }
        Step::MarkGfci => {
            "the GFCI receptacle that is there protects people without a ground; it needs its marking".to_owned()
        }
        Step::UseLoadSide => "it stays, and its load side protects what it feeds".to_owned(),
        Step::FitTwoSlot => "a two-slot receptacle is the least that is lawful where there is no ground".to_owned(),
        Step::FitGfci => here(plan, index),
        Step::FitProtected => {
            format!("{} protects it, so that a three-slot receptacle may be fitted", protector(plan, index))
        }
        Step::RestoreKept | Step::RestoreFitted => {
            "a ground is in the box: it must be used, and restoring it is what the code asks".to_owned()
        }
        Step::GroundArrives => {
            format!("its conductors are joined already, and {} grounds them all", route(plan, index))
        }
        Step::ConnectKept | Step::ConnectFitted => format!("{} brings it a real ground", route(plan, index)),
        Step::TakeOut => {
            "the owner does not need it, nothing keeps it, and a box of splices needs no protection and no ground for a plug"
                .to_owned()
        }
        Step::Unresolved => "nothing that was offered is both lawful here and possible".to_owned(),
    };
    if chosen.box_work != BoxWork::Keep {
        sentence.push_str("; the old box is too small for it");
    }
    if let Some(splices) = splices(plan, index) {
        sentence.push_str(&splices);
    }
    sentence
}

/// How many splices of aluminium a new device takes, and the room that the count leaves for them: they have no allowance of
/// their own, but their instructions may ask for room.
fn splices(plan: &Planned, index: BoxIndex) -> Option<String> {
    let splices = plan.facts.aluminium_conductors(index);
    if splices == 0 || plan.chosen(index).device == Device::Kept {
        return None;
    }
    let left = fill_of(plan, index).and_then(|fit| Some((fit.volume?, fit.fill?.taken)));
    let left = left.filter(|(volume, taken)| taken <= volume).map(|(volume, taken)| {
        let parts = volume.as_ten_thousandths() - taken.as_ten_thousandths();
        format!("the count leaves {} for them", Volume::ten_thousandths(parts))
    });
    let left = left.unwrap_or_else(|| "find out what room the box has for them".to_owned());
    Some(format!("; aluminium takes {splices} listed splices, and {left}"))
}

fn here(plan: &Planned, index: BoxIndex) -> String {
    let chosen = plan.chosen(index);
    let behind = plan.behind_load(index).len();
    let kind = if chosen.own.covers(AFCI) { "a receptacle that is GFCI and AFCI in one" } else { "a GFCI receptacle" };
    match behind {
        0 => format!("{kind} here is the cheapest protection for this opening{}", leakage_of_all(plan, index)),
        _ => format!(
            "{kind} here protects this opening and, from its load side, what it feeds{}",
            leakage_of_all(plan, index)
        ),
    }
}

/// That the whole circuit leaks too much for one GFCI, where it does.
fn leakage_of_all(plan: &Planned, index: BoxIndex) -> String {
    let Some(tree) = plan.facts.at(index).tree else { return String::new() };
    let all = plan.leakage_of_circuit(tree);
    if all <= plan.facts.limits.most_leakage {
        return String::new();
    }
    format!("; what is plugged in on the whole circuit may leak {}, too much for one GFCI", milliamperes(all))
}

fn protector(plan: &Planned, index: BoxIndex) -> String {
    match plan.protector(index) {
        Some(Protector::Device(at)) => format!("the device in box {}", plan.facts.dwelling.device_box(at).id),
        Some(Protector::AtPanel(tree)) => match plan.chosen_at_panel(tree).choice {
            AtPanel::DeadFrontGfci | AtPanel::DeadFrontDual => "the device beside the panel".to_owned(),
            AtPanel::AsItIs => "the breaker that is there".to_owned(),
            AtPanel::Breaker(_) => "the new breaker".to_owned(),
        },
        None => "nothing".to_owned(),
    }
}

fn route(plan: &Planned, index: BoxIndex) -> String {
    match plan.ground_brought_by(index) {
        Some(link) => format!("route {}", plan.name_of(link)),
        None => "the ground of its group".to_owned(),
    }
}

fn at_judged<'a>(plan: &'a Planned, index: BoxIndex) -> &'a Judgement {
    &plan.facts.at(index).judged_to_plan
}

/// What the plan does not give that was needed or asked for.
pub(super) fn shortfalls(plan: &Planned, index: BoxIndex) -> Vec<String> {
    let short = shortfall_of(plan, index);
    let mut list = Vec::new();
    let at = plan.facts.at(index);
    if short.unlawful {
        let open = at_judged(plan, index).remedies.iter().find(|verdict| verdict.lawful == Lawful::NotChecked);
        list.push(match open.and_then(|verdict| verdict.why_not.first()) {
            Some(missing) => format!("not checked, and so not planned: {missing}"),
            None if at.as_found.breaker.is_some_and(|breaker| breaker.get() > 20) => {
                "receptacles of circuits above 20 A are not planned: plan this one by hand, with its own ground"
                    .to_owned()
            }
            None => "it stays unlawful: no remedy that was offered can be carried out here".to_owned(),
        });
    }
    if short.equipment_without_ground {
        let served = &plan.facts.at(index).as_found.serves;
        let names: Vec<&str> = served.iter().map(|equipment| equipment.name()).collect();
        list.push(format!(
            "no route to a ground was stated, and what is plugged in ({}) needs one: do not use it here",
            names.join(", ")
        ));
    }
    let want = plan.facts.dwelling.device_box(index).want;
    if short.wish_unmet && want == Want::Remove {
        list.push(not_taken_out(plan, index));
    } else if short.wish_unmet && !short.unlawful {
        list.push(format!("the owner asked for {} here, and nothing that was offered gives it", wish(want)));
    }
    list
}

/// What an owner asks of an opening, as people say it.
const fn wish(want: Want) -> &'static str {
    match want {
        Want::Leave => "nothing",
        Want::ThreeSlot => "a three-slot receptacle",
        Want::Ground => "a ground",
        Want::Remove => "the receptacle to be taken out",
    }
}

/// Why a receptacle that the owner does not need stays.
fn not_taken_out(plan: &Planned, index: BoxIndex) -> String {
    let verdict = at_judged(plan, index).remedies.iter().find(|verdict| verdict.remedy == Remedy::BlankCover);
    let why = verdict.map(|verdict| verdict.why_not.join("; ")).unwrap_or_default();
    match verdict.map(|verdict| verdict.lawful) {
        Some(Lawful::NotChecked) => {
            format!("the owner asked to have it taken out: not checked, and so not planned: {why}")
        }
        Some(Lawful::No) => format!("the owner asked to have it taken out, and it must stay: {why}"),
        _ => "the owner asked to have it taken out, and this box cannot be worked on, or what it feeds needs it"
            .to_owned(),
    }
}

/// What must be found out or asked before the plan at an opening can be relied on.
pub(super) fn open_questions(plan: &Planned, index: BoxIndex) -> Vec<String> {
    let (at, chosen) = (plan.facts.at(index), plan.chosen(index));
    let holds = at.as_found.holds;
    let mut list = Vec::new();
    if holds == Holding::Unknown {
        list.push("find out what the box holds".to_owned());
    }
    if let Some(missing) = fill_afterwards(plan, index).and_then(|fill| fill.not_checked) {
        list.push(format!("the box could not be counted: {missing}"));
    }
    list.extend(assumed_feeds::questions(plan, index));
    if !holds.is_receptacle() {
        return list;
    }
    match at.ground {
        GroundFact::Unknown if at.supplied => {
            list.push("find out whether its ground is whole: the plan counts on it".to_owned());
        }
        GroundFact::Unknown => {
            list.push(
                "find out whether there is a ground: the plan counts on none, and one that is there must be used"
                    .to_owned(),
            );
        }
        GroundFact::Disputed => {
            list.push("ask the authority whether the ground that is there may serve a grounding receptacle".to_owned());
        }
        GroundFact::CutOff if chosen.step != Step::Leave => {
            list.push("see whether the cut-off ground can be reached: if it can, it must be used".to_owned());
        }
        _ if reaches_over_dispute(plan, index) && chosen.step != Step::Leave => {
            list.push("ask the authority whether the old, thinner ground may serve a grounding receptacle".to_owned());
        }
        _ => {}
    }
    if let Some(remedy) = remedy_of(plan, index) {
        let verdict = at_judged(plan, index).remedies.iter().find(|verdict| verdict.remedy == remedy);
        let disputed =
            verdict.filter(|verdict| verdict.lawful == Lawful::Disputed && at.ground != GroundFact::Disputed);
        list.extend(
            disputed.iter().flat_map(|verdict| &verdict.why_not).map(|both| format!("ask the authority: {both}")),
        );
    }
    if at.tree.is_none() {
        list.push("find out which circuit it is on".to_owned());
    }
    if matches!(
        chosen.step,
        Step::FitTwoSlot | Step::FitGfci | Step::FitProtected | Step::RestoreFitted | Step::ConnectFitted
    ) {
        list.extend(open_duties(plan, index));
    }
    list
}

/// Whether the ground of a box hangs on a run that the authority may not accept.
fn reaches_over_dispute(plan: &Planned, index: BoxIndex) -> bool {
    let disputed = |member: &BoxIndex| plan.facts.dwelling.ground_path_to(*member) == GroundPath::Disputed;
    plan.is_grounded(index) && plan.facts.groups.group_of(index).members.iter().any(disputed)
}

/// Duties of a new receptacle that are disputed or not known; the plan meets them as if they were required.
fn open_duties(plan: &Planned, index: BoxIndex) -> Vec<String> {
    let duties = &plan.facts.at(index).judged_as_found.duties;
    let open = duties.iter().filter(|verdict| {
        matches!(verdict.need, Need::Disputed | Need::NotChecked) && matches!(verdict.duty, Duty::Gfci | Duty::Afci)
    });
    open.map(|verdict| {
        let asked = if verdict.need == Need::Disputed { "ask the authority" } else { "find out" };
        let because = verdict.because.join("; ");
        let duty = verdict.duty.name().to_uppercase();
        format!("{asked} whether {duty} protection is required; planned as if it is ({because})")
    })
    .collect()
}
