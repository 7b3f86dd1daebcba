//! Makes certificates: goes through the splits of a search whose best solution is known, and keeps the cuts that it raises.
//!
//! What is proved is judged by the checker's own reckoning; the search only proposes cuts and splits.

use super::area::{Area, Price, Question, cost_of};
use super::check::sides;
use super::known::{Known, Supply};
use super::prices::{Reckoning, reckon};
use super::{Certificate, Cut, Decision, PartProof, Step, Toward};
use crate::ascent::Preference;
use crate::bound::Bound;
use crate::branching::Proposed;
use crate::link_search::Proposer;
use crate::link_state::LinkState;
use crate::part::Part;
use crate::problem::Problem;
use crate::raised::Raised;
use crate::solution::{Forced, Limits, Outcome, Solution};
use crate::solve::{parts_of, solve_with};
use crate::stages::without_ties;
use crate::weight::{IMPOSSIBLE, Weight};

/// Solves the problem, and proves the bound of the outcome or, where the limits stop that, a lower one. Takes about twice
/// as long as [`solve_with`]. There is no certificate where the question is malformed.
#[must_use]
pub fn solve_with_certificate(problem: &Problem, limits: &Limits, forced: &[Forced]) -> (Outcome, Option<Certificate>) {
    let outcome = solve_with(problem, limits, forced);
    let certificate = match &outcome {
        Outcome::Malformed(_) => None,
        _ => certify(problem, limits, forced, outcome.solution()),
    };
    (outcome, certificate)
}

/// Makes a certificate that nothing costs less than a solution, of which it uses the links alone; without one, that there
/// is none. Each part is split no more often than the limits allow nodes; the bound is then what is proved so far.
/// `None` where the question is malformed or the solution is none of the problem.
#[must_use]
pub fn certify(
    problem: &Problem,
    limits: &Limits,
    forced: &[Forced],
    solution: Option<&Solution>,
) -> Option<Certificate> {
    if !problem.faults().is_empty() {
        return None;
    }
    let question = Question::new(problem, forced)?;
    let Some(areas) = question.areas() else { return Some(Certificate::default()) };
    let parts = parts_of(problem, forced).unwrap_or_default();
    let parts: Vec<Part<'_>> = parts.iter().map(|part| without_ties(problem, part)).collect();
    let mut certificate = Certificate::default();
    for area in &areas {
        let part = parts.iter().find(|part| is_same(area, part));
        certificate.parts.push(proof_of(&question, area, part, limits, solution)?);
    }
    Some(certificate)
}

/// What a weight without ties is as a price.
fn price(weight: Weight) -> Price {
    weight >> 32
}

fn is_same(area: &Area, part: &Part<'_>) -> bool {
    match area.trees.first() {
        Some(tree) => part.trees.iter().any(|one| one.tree == *tree),
        None => part.groups.iter().any(|one| area.groups.first() == Some(&one.group)),
    }
}

fn proof_of(
    question: &Question<'_>,
    area: &Area,
    part: Option<&Part<'_>>,
    limits: &Limits,
    solution: Option<&Solution>,
) -> Option<PartProof> {
    // Where the problem has no solution, the search has no parts: the splits are then the checker's own.
    let (proposer, target) = match (part, solution) {
        (Some(part), Some(solution)) => {
            let fed_by = |group: usize| {
                let links = solution.links.iter();
                let mut arcs =
                    links.filter_map(|chosen| {
                        part.groups[group].arcs.iter().copied().find(|arc| {
                            (part.arcs[*arc].link, part.arcs[*arc].forward) == (chosen.link, chosen.forward)
                        })
                    });
                arcs.next()
            };
            let feeding = (0..part.groups.len()).map(fed_by).collect();
            let (proposer, weight) = Proposer::around(part, &feeding)?;
            (Some(proposer), Some(price(weight)))
        }
        (Some(part), None) => (Some(Proposer::of(part)), None),
        (None, _) => (None, None),
    };
    let arcs = area.flows.iter().map(|flow| {
        let arcs = &part?.arcs;
        arcs.iter().position(|arc| (arc.link, arc.forward) == (flow.link, flow.forward))
    });
    let mut maker = Maker {
        question,
        area,
        arcs: arcs.collect(),
        proposer,
        target,
        left: part.map_or(limits.nodes, |part| limits.nodes_of(part)),
        steps: Vec::new(),
        bound: target,
    };
    maker.prove();
    let steps = if maker.bound == target { maker.steps } else { trimmed(question, area, maker.bound, maker.steps) };
    Some(PartProof { bound: maker.bound.map(cost_of), steps })
}

/// The steps without those that a bound lower than they were made for can do without.
fn trimmed(question: &Question<'_>, area: &Area, bound: Option<Price>, steps: Vec<Step>) -> Vec<Step> {
    let mut kept = Vec::new();
    let mut open = vec![Known::at_first(question, area)];
    let mut steps = steps.into_iter();
    while let Some((known, step)) = open.pop().and_then(|known| Some((known, steps.next()?))) {
        let Some(known) = known else {
            skip_below(&step, &mut steps);
            kept.push(Step::Leaf(Vec::new()));
            continue;
        };
        match step {
            Step::Leaf(_) => kept.push(step),
            Step::Split(decision) => {
                let [with, without] = sides(question, area, Some(&known), decision).unwrap_or([None, None]);
                open.extend([without, with]);
                kept.push(step);
            }
            Step::GiveUp(cuts) => {
                let shown = reckon(question, area, &known, &cuts).unwrap_or_else(|_| Reckoning::of_nothing());
                if shown.least.is_none_or(|least| bound.is_some_and(|bound| least >= bound)) {
                    skip_below(&Step::GiveUp(Vec::new()), &mut steps);
                    kept.push(Step::Leaf(cuts));
                } else {
                    let given_up = shown.too_dear(question, area, &known, bound);
                    open.push(known.without(question, area, &given_up));
                    kept.push(Step::GiveUp(cuts));
                }
            }
        }
    }
    kept
}

/// Leaves out all steps that belong to one.
fn skip_below(step: &Step, steps: &mut impl Iterator<Item = Step>) {
    let below = |step: &Step| match step {
        Step::Leaf(_) => 0,
        Step::GiveUp(_) => 1,
        Step::Split(_) => 2,
    };
    let mut left = below(step);
    while left > 0
        && let Some(step) = steps.next()
    {
        left = left - 1 + below(&step);
    }
}

struct Maker<'m> {
    question: &'m Question<'m>,
    area: &'m Area,
    /// By flow: the same in the search.
    arcs: Vec<Option<usize>>,
    proposer: Option<Proposer<'m>>,
    target: Option<Price>,
    /// How many more splits are allowed.
    left: Option<u64>,
    steps: Vec<Step>,
    /// What is proved.
    bound: Option<Price>,
}

/// What some cuts show, and how the search sees them.
struct Shown {
    cuts: Vec<Cut>,
    reckoning: Reckoning,
    bound: Option<Bound>,
}

impl Maker<'_> {
    fn prove(&mut self) {
        let state = self.proposer.as_ref().map(|proposer| LinkState::undecided(proposer.part()));
        let mut open = vec![(state, Known::at_first(self.question, self.area))];
        let mut is_root = true;
        while let Some((state, known)) = open.pop() {
            let Some(known) = known else {
                self.steps.push(Step::Leaf(Vec::new()));
                continue;
            };
            let state = state.and_then(|state| self.settled(state, &known));
            let shown = self.highest(state.as_ref(), &known, std::mem::take(&mut is_root));
            if self.is_enough(&shown) {
                self.steps.push(Step::Leaf(shown.cuts));
                continue;
            }
            let given_up = shown.reckoning.too_dear(self.question, self.area, &known, self.target);
            if !given_up.is_empty() {
                self.steps.push(Step::GiveUp(shown.cuts));
                open.push((state, known.without(self.question, self.area, &given_up)));
                continue;
            }
            let may_split = self.left.is_none_or(|left| left > 0);
            let Some(decision) = self.decision(state.as_ref(), &known, &shown).filter(|_| may_split) else {
                self.bound = self.bound.into_iter().chain(shown.reckoning.least).min();
                self.steps.push(Step::Leaf(shown.cuts));
                continue;
            };
            self.left = self.left.map(|left| left - 1);
            self.steps.push(Step::Split(decision));
            let Some([with, without]) = sides(self.question, self.area, Some(&known), decision) else { continue };
            let states = [true, false].map(|holds| Some(self.decided(state.clone()?, decision, holds)));
            let [state_with, state_without] = states;
            open.extend([(state_without, without), (state_with, with)]);
        }
    }

    /// The search's state with what the checker gave up; none where nothing can hold for the search.
    fn settled(&self, mut state: LinkState, known: &Known) -> Option<LinkState> {
        for (arc, may) in self.arcs.iter().zip(&known.may) {
            if let (Some(arc), false) = (arc, may) {
                state.weight[*arc] = IMPOSSIBLE;
            }
        }
        state.settle(self.proposer.as_ref()?.part()).then_some(state)
    }

    fn decided(&self, mut state: LinkState, decision: Decision, holds: bool) -> LinkState {
        if let Some(proposer) = &self.proposer {
            match decision {
                Decision::Supplied(group) => {
                    let place = proposer.part().groups.iter().position(|one| one.group == group);
                    place
                        .into_iter()
                        .for_each(|place| Proposed::Supply(place, holds).take(proposer.part(), &mut state));
                }
                Decision::Chosen { link, forward } => {
                    let arcs = &proposer.part().arcs;
                    let arc = arcs.iter().position(|arc| (arc.link, arc.forward) == (link, forward));
                    let proposed = if holds { Proposed::Choose } else { Proposed::GiveUp };
                    arc.into_iter().for_each(|arc| proposed(arc).take(proposer.part(), &mut state));
                }
            }
        }
        state
    }

    fn is_enough(&self, shown: &Shown) -> bool {
        shown.reckoning.least.is_none_or(|least| self.target.is_some_and(|target| least >= target))
    }

    /// The cuts that show most, of those that the search raises in its several ways, or of none at all.
    fn highest(&mut self, state: Option<&LinkState>, known: &Known, is_root: bool) -> Shown {
        let mut best = self.without_cuts(known);
        let (Some(state), Some(proposer)) = (state, &mut self.proposer) else { return best };
        let mut preferences = vec![proposer.preference];
        let others: &[Preference] = if is_root { &Preference::ALL } else { &[Preference::Mixed, Preference::Last] };
        preferences.extend(others.iter().copied().filter(|other| *other != proposer.preference));
        let is_enough = |least: Option<Price>| least.is_none_or(|l| self.target.is_some_and(|target| l >= target));
        for preference in preferences {
            if is_enough(best.reckoning.least) {
                break;
            }
            let (bound, raised) = proposer.bound(state, preference);
            let cuts = cuts(proposer, known, raised);
            let cuts = credited(self.question, self.area, known, cuts);
            let Ok(reckoning) = reckon(self.question, self.area, known, &cuts) else { continue };
            let is_higher = match (reckoning.least, best.reckoning.least) {
                (Some(one), Some(other)) => one > other,
                (one, _) => one.is_none(),
            };
            if is_higher || best.bound.is_none() {
                if is_root {
                    proposer.preference = preference;
                }
                best = Shown { cuts, reckoning, bound: Some(bound) };
            }
        }
        best
    }

    fn without_cuts(&self, known: &Known) -> Shown {
        let cuts = credited(self.question, self.area, known, Vec::new());
        let reckoning = reckon(self.question, self.area, known, &cuts).unwrap_or_else(|_| Reckoning::of_nothing());
        Shown { cuts, reckoning, bound: None }
    }

    /// The search's decision, or any that is still open.
    fn decision(&mut self, state: Option<&LinkState>, known: &Known, shown: &Shown) -> Option<Decision> {
        self.proposed(state, shown).filter(|decision| self.is_open(known, *decision)).or_else(|| self.any_open(known))
    }

    fn proposed(&mut self, state: Option<&LinkState>, shown: &Shown) -> Option<Decision> {
        let proposer = self.proposer.as_mut()?;
        Some(match proposer.decision(state?, shown.bound.as_ref()?)? {
            Proposed::Choose(arc) | Proposed::GiveUp(arc) => {
                let arc = &proposer.part().arcs[arc];
                Decision::Chosen { link: arc.link, forward: arc.forward }
            }
            Proposed::Supply(group, _) => Decision::Supplied(proposer.part().groups[group].group),
        })
    }

    fn is_open(&self, known: &Known, decision: Decision) -> bool {
        match decision {
            Decision::Supplied(group) => known.supply[group] == Supply::Open,
            Decision::Chosen { link, forward } => (0..self.area.flows.len()).any(|index| {
                let flow = &self.area.flows[index];
                (flow.link, flow.forward) == (link, forward) && known.may[index] && !known.must[index]
            }),
        }
    }

    fn any_open(&self, known: &Known) -> Option<Decision> {
        let group = self.area.groups.iter().find(|group| known.supply[**group] == Supply::Open);
        let flow = || (0..self.area.flows.len()).find(|index| known.may[*index] && !known.must[*index]);
        let chosen = |index: usize| {
            let flow = &self.area.flows[index];
            Decision::Chosen { link: flow.link, forward: flow.forward }
        };
        group.map(|group| Decision::Supplied(*group)).or_else(|| flow().map(chosen))
    }
}

/// What the search raised, as cuts of the problem.
fn cuts(proposer: &Proposer<'_>, known: &Known, raised: Vec<Raised>) -> Vec<Cut> {
    let part = proposer.part();
    let mut cuts: Vec<Cut> = Vec::with_capacity(raised.len());
    for one in raised {
        let toward = match one.at {
            Some(at) => Toward::Node { tree: part.trees[at.tree].tree, node: at.node },
            None => Toward::Group(part.groups[one.group].group),
        };
        let in_problem = |at: &crate::net::TreeNode| (part.trees[at.tree].tree, at.node);
        let mut cut = Cut {
            value: cost_of(price(one.owed)),
            toward,
            groups: one.groups.iter().map(|group| part.groups[*group].group).collect(),
            lands: one.lands.iter().map(in_problem).collect(),
            suits: one.suits.iter().map(in_problem).collect(),
        };
        cut.groups.sort_unstable();
        cut.groups.dedup();
        cut.lands.sort_unstable();
        cut.suits.sort_unstable();
        // A group that is not supplied is not led into.
        cut.groups.retain(|group| known.supply[*group] != Supply::No);
        if !cut.groups.contains(&part.groups[one.group].group) {
            continue;
        }
        if let Some(same) = cuts.iter_mut().find(|other| {
            (other.toward, &other.groups) == (cut.toward, &cut.groups)
                && (&other.lands, &other.suits) == (&cut.lands, &cut.suits)
        }) {
            same.value = same.value + cut.value;
        } else {
            cuts.push(cut);
        }
    }
    cuts
}

/// The cuts, with the groups credited whose links pay for being chosen.
fn credited(question: &Question<'_>, area: &Area, known: &Known, mut cuts: Vec<Cut>) -> Vec<Cut> {
    for &group in area.groups.iter().filter(|group| known.supply[**group] != Supply::No) {
        let open = area.into[group].iter().filter(|flow| known.may[**flow] && !known.must[**flow]);
        let least = open.filter_map(|flow| area.flows[*flow].prices.iter().skip(known.grade[group]).min()).min();
        if let Some(least) = least.filter(|least| **least < 0) {
            let of_group = |(tree, node): (usize, usize)| question.problem.trees[tree].nodes[node].group == group;
            let nodes = |tree: &usize| {
                (0..question.problem.trees[*tree].nodes.len()).map(|node| (*tree, node)).collect::<Vec<_>>()
            };
            let node = area.trees.iter().flat_map(nodes).find(|at| of_group(*at));
            let toward = node.map_or(Toward::Group(group), |(tree, node)| Toward::Node { tree, node });
            let groups = vec![group];
            cuts.push(Cut { value: cost_of(*least), toward, groups, lands: Vec::new(), suits: Vec::new() });
        }
    }
    cuts
}
