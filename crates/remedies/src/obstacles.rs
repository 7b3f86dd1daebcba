//! What stands in the way of something the owner asks for, in sentences.

use crate::device::{BoxWork, Device};
use crate::planned::Planned;
use crate::standing::Standing;
use crate::steering::is_truly_grounded;
use dwelling::{BoxIndex, RouteEnd};
use rulebook::{Lawful, Remedy};

/// The openings that would fall short of what the plan without the wish gives them, in sentences; what the survey asks for
/// may be given up for a wish.
#[must_use]
pub(crate) fn worsened(plan: &Planned, before: &Standing, after: &Standing) -> Vec<String> {
    let barring = |at: &BoxIndex| after.unlawful.contains(at) || after.equipment_without_ground.contains(at);
    let added = shortfalls_added(plan, before, after);
    let barring = added.into_iter().filter(|(at, _)| barring(at));
    barring.map(|(at, told)| format!("{told}{}", otherwise(plan, at))).collect()
}

/// The openings that fall short of more than before, each with what it falls short of in a sentence.
#[must_use]
pub(crate) fn shortfalls_added(plan: &Planned, before: &Standing, after: &Standing) -> Vec<(BoxIndex, String)> {
    let id = |at: &BoxIndex| plan.facts.dwelling.device_box(*at).id.clone();
    let mut list = Vec::new();
    for at in after.unlawful.iter().filter(|at| !before.unlawful.contains(at)) {
        let leave = plan.facts.at(*at).judged_to_plan.remedies.iter().find(|verdict| verdict.remedy == Remedy::Leave);
        let why = leave.filter(|verdict| verdict.lawful == Lawful::No).and_then(|verdict| verdict.why_not.first());
        let why = why.map_or(String::new(), |why| format!(" ({why})"));
        list.push((*at, format!("box {} would stay unlawful: it cannot be left as it is{why}", id(at))));
    }
    let without_ground = |at: &&BoxIndex| !before.equipment_without_ground.contains(at) && !after.unlawful.contains(at);
    for at in after.equipment_without_ground.iter().filter(without_ground) {
        let served = &plan.facts.at(*at).as_found.serves;
        let names: Vec<&str> = served.iter().map(|equipment| equipment.name()).collect();
        let told =
            format!("box {} would have no ground, and what is plugged in ({}) needs one", id(at), names.join(", "));
        list.push((*at, told));
    }
    let unmet = |at: &&BoxIndex| !before.wishes_unmet.contains(at) && !after.unlawful.contains(at);
    for at in after.wishes_unmet.iter().filter(unmet) {
        let want = plan.facts.dwelling.device_box(*at).want;
        list.push((*at, format!("box {} would not get what the survey asks for, `{}`", id(at), want.name())));
    }
    list
}

/// What the plan without the wish does at an opening, as the end of a sentence.
fn otherwise(plan: &Planned, at: BoxIndex) -> String {
    let chosen = plan.chosen(at);
    let device = if chosen.device == Device::Kept { "the receptacle that is there" } else { "a new receptacle" };
    let larger =
        if chosen.box_work == BoxWork::Keep { "" } else { " in a larger box, for which the old one is cut out" };
    let ground = plan.ground_brought_by(at).map(|link| {
        let opens = if plan.bought(link).openings > 0 { ", which opens a wall," } else { "" };
        format!(", with the ground that route {}{opens} brings", plan.name_of(link))
    });
    format!("; the plan without the wish has {device} there{larger}{}", ground.unwrap_or_default())
}

/// What keeps a box from being given a ground.
#[must_use]
pub(crate) fn obstacles_to_a_ground(plan: &Planned, at: BoxIndex) -> Vec<String> {
    let (facts, site) = (&plan.facts, plan.facts.at(at));
    let device_box = facts.dwelling.device_box(at);
    let candidates = &plan.assembled.candidates[at.0];
    if !candidates.iter().any(|one| is_truly_grounded(facts, at, one)) {
        if device_box.do_not_disturb {
            return vec!["its conductors must not be disturbed, so that nothing can be joined in its box".to_owned()];
        }
        let ways = [Remedy::SeparateEgc, Remedy::NewCable, Remedy::RestoreExistingGround];
        let barred = site.judged_to_plan.remedies.iter().filter(|verdict| ways.contains(&verdict.remedy));
        let mut list: Vec<String> = barred
            .filter(|verdict| verdict.lawful != Lawful::Yes)
            .flat_map(|verdict| verdict.why_not.iter().map(|why| format!("{}: {why}", verdict.remedy)))
            .collect();
        if list.is_empty() {
            list.push(
                "no receptacle that could be joined to a ground can be fitted in its box, as far as is planned here"
                    .to_owned(),
            );
        }
        return list;
    }
    let group = facts.groups.index_of(at);
    let leads_here = plan.assembled.problem.links.iter().any(|link| link.to.group == group || link.from.group == group);
    if leads_here {
        return vec![
            "the routes that lead there reach no ground, or cannot land: what they end in has no room for them, or cannot \
             carry the size that its circuit needs"
                .to_owned(),
        ];
    }
    let members = &facts.groups.groups[group].members;
    let ends_here = |end: RouteEnd| matches!(end, RouteEnd::Box(of) if members.contains(&of));
    let refused = plan.assembled.network.refused.iter().filter_map(|refused| {
        let route = &facts.dwelling.routes[refused.route];
        (ends_here(route.from) || ends_here(route.to))
            .then(|| format!("route {} is not used: {}", route.id, refused.why))
    });
    let mut list = vec!["no route that can be bought leads there or to a box that is joined with it".to_owned()];
    list.extend(refused);
    list
}
