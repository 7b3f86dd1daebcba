//! What the owner lays down for a plan – grounds to bring, boxes to keep, rooms not to open – and what becomes of it.

use crate::assemble::Assembled;
use crate::candidate::{Candidate, Step};
use crate::device::{BoxWork, Device};
use crate::facts::Facts;
use crate::network::{BuyableRoute, WayEnd};
use crate::obstacles::{obstacles_to_a_ground, worsened};
use crate::planned::{PlanFault, Planned, Proof};
use crate::search_limits::OF_A_PLAN;
use crate::standing::Standing;
use dwelling::{BoxIndex, Dwelling, RoomIndex, RouteEnd, RouteKind};
use estimate::{Cents, PriceBook};
use optimizer::{Forced, Limits, Solution, SupplyNeed};
use rulebook::CodeInForce;

/// Something that the owner lays down for the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Wish {
    /// The box has a real ground afterwards.
    Ground(BoxIndex),
    /// The box stays, with its device and what feeds it. Markings, protection from elsewhere and a ground that is joined
    /// to its device are not ruled out.
    Keep(BoxIndex),
    /// No finished surface of the room is opened: no box in it is cut out, and no route that opens walls ends in it.
    NoOpen(RoomIndex),
}

/// What became of the wishes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Steered {
    /// The wishes in the order they were laid down, each with what stands in its way, where something does.
    pub wishes: Vec<(Wish, Vec<String>)>,
    /// What the plan without any wish costs and gives.
    pub unsteered: Standing,
    /// The sum of money that the plan is to stay within, where one was laid down.
    pub budget: Option<Cents>,
}

impl<'a> Planned<'a> {
    /// Plans a dwelling as the owner lays it down. A wish that cannot be had is left out and says why: none is bought with
    /// an opening that stays unlawful, nor with equipment that loses the ground it needs.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::of`].
    pub fn steered(
        dwelling: &'a Dwelling,
        code: CodeInForce,
        book: &PriceBook,
        wishes: &[Wish],
    ) -> Result<Self, PlanFault> {
        Self::steered_within(dwelling, code, book, wishes, &OF_A_PLAN)
    }

    /// The same, searching no further than the limits allow.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::within`].
    pub(crate) fn steered_within(
        dwelling: &'a Dwelling,
        code: CodeInForce,
        book: &PriceBook,
        wishes: &[Wish],
        limits: &Limits,
    ) -> Result<Self, PlanFault> {
        let mut plan = Self::within(dwelling, code, book, limits)?;
        if wishes.is_empty() {
            return Ok(plan);
        }
        let unsteered = plan.standing();
        for wish in wishes {
            if let Wish::Ground(at) = wish {
                offer_grounded(&mut plan, *at);
            }
        }
        let mut told: Vec<(Wish, Vec<String>)> = wishes.iter().map(|wish| (*wish, Vec::new())).collect();
        let (had, best) = match best_of(&plan, &unsteered, wishes)? {
            Some(best) => (wishes.to_vec(), best),
            None => as_many_as_can_be_had(&plan, &unsteered, &mut told)?,
        };
        (plan.solution, plan.proof) = best;
        plan.forced = forced_by_all(&plan, &had);
        plan.steered = Some(Steered { wishes: told, unsteered, budget: None });
        Ok(plan)
    }
}

/// The best plan with these wishes; none where they cannot be had together, lawfully and with equipment served.
fn best_of(plan: &Planned, unsteered: &Standing, wishes: &[Wish]) -> Result<Option<(Solution, Proof)>, PlanFault> {
    let best = plan.best_with(&forced_by_all(plan, wishes))?;
    Ok(best.filter(|(solution, _)| plan.standing_of(solution).is_as_lawful_as(unsteered)))
}

type Had = (Vec<Wish>, (Solution, Proof));

/// Takes the wishes in the order they were laid down, and leaves out those that cannot be had with the ones before.
fn as_many_as_can_be_had(
    plan: &Planned,
    unsteered: &Standing,
    told: &mut [(Wish, Vec<String>)],
) -> Result<Had, PlanFault> {
    let mut had: Had = (Vec::new(), (plan.solution.clone(), plan.proof));
    for (wish, why_not) in told {
        let with_it: Vec<Wish> = had.0.iter().chain([&*wish]).copied().collect();
        match best_of(plan, unsteered, &with_it)? {
            Some(best) => had = (with_it, best),
            None if best_of(plan, unsteered, &[*wish])?.is_none() => *why_not = in_the_way_of(plan, unsteered, *wish)?,
            None => {
                *why_not = vec![format!("it cannot be had together with {}", rival_of(plan, unsteered, *wish, &had.0)?)]
            }
        }
    }
    Ok(had)
}

/// The wish before it with which a wish cannot be had, in words; all of them where no single one rules it out.
fn rival_of(plan: &Planned, unsteered: &Standing, wish: Wish, before: &[Wish]) -> Result<String, PlanFault> {
    for other in before {
        if best_of(plan, unsteered, &[*other, wish])?.is_none() {
            return Ok(format!("`{}`", other.flag(plan.facts.dwelling)));
        }
    }
    Ok("the wishes before it".to_owned())
}

/// What stands in the way of a wish that cannot be had even alone.
fn in_the_way_of(plan: &Planned, unsteered: &Standing, wish: Wish) -> Result<Vec<String>, PlanFault> {
    Ok(match (plan.best_with(&forced_by_all(plan, &[wish]))?, wish) {
        (Some((solution, _)), _) => worsened(plan, unsteered, &plan.standing_of(&solution)),
        (None, Wish::Ground(at)) => obstacles_to_a_ground(plan, at),
        (None, Wish::Keep(_) | Wish::NoOpen(_)) => vec!["nothing that could be done there leaves it so".to_owned()],
    })
}

impl Wish {
    /// The wish as it is written on a command line.
    #[must_use]
    pub fn flag(self, dwelling: &Dwelling) -> String {
        format!("--{} {}", self.kind(), self.of(dwelling))
    }

    /// Its name: `ground`, `keep` or `no-open`.
    #[must_use]
    pub const fn kind(self) -> &'static str {
        match self {
            Self::Ground(_) => "ground",
            Self::Keep(_) => "keep",
            Self::NoOpen(_) => "no-open",
        }
    }

    /// The box or room it is about.
    #[must_use]
    pub fn of(self, dwelling: &Dwelling) -> &str {
        match self {
            Self::Ground(at) | Self::Keep(at) => &dwelling.device_box(at).id,
            Self::NoOpen(room) => &dwelling.room(room).id,
        }
    }
}

fn forced_by_all(plan: &Planned, wishes: &[Wish]) -> Vec<Forced> {
    wishes.iter().flat_map(|wish| forced_by(plan, *wish)).collect()
}

/// What a wish means for the search.
fn forced_by(plan: &Planned, wish: Wish) -> Vec<Forced> {
    match wish {
        Wish::Ground(at) => vec![options_forced(plan, at, |one| is_truly_grounded(&plan.facts, at, one))],
        Wish::Keep(at) => {
            let stays = |one: &Candidate| one.device == Device::Kept && one.box_work == BoxWork::Keep;
            let to = WayEnd::At(RouteEnd::Box(at));
            let feeds = |route: &BuyableRoute| route.kind == RouteKind::NewCable && route.ends.1 == to;
            links_ruled_out(plan, feeds).chain([options_forced(plan, at, stays)]).collect()
        }
        Wish::NoOpen(room) => {
            let inside = |at: BoxIndex| plan.facts.dwelling.device_box(at).room == room;
            let opens = |route: &BuyableRoute| route.opens.contains(&room);
            let boxes = plan.facts.dwelling.box_indices().filter(|at| inside(*at));
            let unopened = boxes.map(|at| options_forced(plan, at, |one| !opens_the_wall(one.box_work)));
            links_ruled_out(plan, opens).chain(unopened).collect()
        }
    }
}

/// The options of a box's node that suit, as a choice laid down.
pub(crate) fn options_forced(plan: &Planned, at: BoxIndex, allowed: impl Fn(&Candidate) -> bool) -> Forced {
    let (tree, node) = plan.node_of(at);
    let candidates = plan.assembled.candidates[at.0].iter().enumerate();
    Forced::Option { tree, node, allowed: candidates.filter(|(_, one)| allowed(one)).map(|(index, _)| index).collect() }
}

fn links_ruled_out(plan: &Planned, barred: impl Fn(&BuyableRoute) -> bool) -> impl Iterator<Item = Forced> {
    let links = plan.assembled.network.bought_as.iter().enumerate();
    let barred = links.filter(move |(_, bought)| barred(bought));
    barred.map(|(link, _)| Forced::Link { link, chosen: false })
}

/// Whether a box change opens the wall: every box that is cut out leaves a hole to mend round it.
const fn opens_the_wall(work: BoxWork) -> bool {
    match work {
        BoxWork::Keep | BoxWork::Extend => false,
        BoxWork::Replace | BoxWork::ReplaceWide => true,
    }
}

/// Whether a candidate leaves its opening with a ground that reaches what is plugged in.
pub(crate) fn is_truly_grounded(facts: &Facts, at: BoxIndex, candidate: &Candidate) -> bool {
    let site = facts.at(at);
    let there_already =
        site.supplied && candidate.supply == SupplyNeed::Any && site.as_found.holds.takes_grounding_plug();
    !matches!(candidate.step, Step::Unresolved | Step::TakeOut)
        && (candidate.supply == SupplyNeed::Supplied || there_already)
}

/// Adds, at a box without a receptacle, what could be done there once more with a ground as its condition. It costs the
/// same, so that no plan takes it unless it is asked for.
fn offer_grounded(plan: &mut Planned, at: BoxIndex) {
    if plan.facts.at(at).as_found.holds.is_receptacle() {
        return;
    }
    let (tree, node) = plan.node_of(at);
    let (boxes, limits) = (plan.facts.sites.len(), plan.facts.limits);
    let Assembled { problem, candidates, .. } = &mut plan.assembled;
    let grounded: Vec<Candidate> = candidates[at.0]
        .iter()
        .filter(|one| one.step != Step::Unresolved && one.supply == SupplyNeed::Any)
        .map(|one| Candidate { supply: SupplyNeed::Supplied, ..one.clone() })
        .collect();
    let options = grounded.iter().map(|one| one.option(limits, boxes));
    problem.trees[tree].nodes[node].options.extend(options);
    candidates[at.0].extend(grounded);
}
