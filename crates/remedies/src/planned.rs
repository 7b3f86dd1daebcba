//! The plan of a dwelling: what was chosen, and what follows from it.

use crate::assemble::{Assembled, assemble};
use crate::at_panel::PanelCandidate;
use crate::candidate::{AFCI, Candidate, GFCI};
use crate::device::{BoxWork, Device};
use crate::facts::Facts;
use crate::network::{BuyableRoute, Origin, WayEnd};
use crate::room_in_box::GRADES;
use crate::route_prices::{lines_as_built, lines_as_stated};
use crate::search_limits::OF_A_PLAN;
use crate::standing::{Standing, standing_of};
use crate::steering::Steered;
use dwelling::{BoxIndex, Dwelling, Feed, RouteEnd, RouteKind};
use electrical::Gauge;
use estimate::{Line, Price, PriceBook};
use optimizer::{ChosenLink, Cost, Forced, Limits, Marks, Outcome, Problem, Solution, check, solve_with};
use routes::RouteEdge;
use rulebook::CodeInForce;

/// A dwelling, the choices open in it, and the cheapest lawful whole of them.
pub struct Planned<'a> {
    /// The facts.
    pub facts: Facts<'a>,
    /// The choices.
    pub assembled: Assembled,
    /// The price book that it was planned with.
    pub book: PriceBook,
    /// What was chosen.
    pub solution: Solution,
    /// Whether it is proved that nothing lawful among the choices costs less.
    pub proof: Proof,
    /// What the owner laid down, where something was.
    pub steered: Option<Steered>,
    /// What that means for the search.
    pub(crate) forced: Vec<Forced>,
    /// What an offer that was taken holds besides: the boxes that it grounds, and the walls that it leaves closed.
    pub(crate) held: Vec<(Option<BoxIndex>, Forced)>,
    /// How far it is searched.
    limits: Limits,
    /// By box: its tree and node.
    places: Vec<(usize, usize)>,
}

/// How much is known of the cost of what was not chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proof {
    /// The search went to its end: nothing costs less.
    Cheapest,
    /// The search was stopped at its limit: nothing costs less than this bound, in the optimizer's cost.
    NothingBelow(Cost),
}

/// What protects an opening from upstream.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Protector {
    /// What sits at the panel end of the tree of this position.
    AtPanel(usize),
    /// The device in this box.
    Device(BoxIndex),
}

/// A plan could not be made. Leaving every opening unresolved is always a choice, so this is a fault of the program.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanFault(pub Vec<String>);

impl<'a> Planned<'a> {
    /// Plans a dwelling: the cheapest lawful whole, its cost recomputed by the separate checker.
    ///
    /// # Errors
    /// [`PlanFault`] where the optimizer or its checker refuses the problem: a fault of this program, not of the survey.
    pub fn of(dwelling: &'a Dwelling, code: CodeInForce, book: &PriceBook) -> Result<Self, PlanFault> {
        Self::within(dwelling, code, book, &OF_A_PLAN)
    }

    /// Plans a dwelling, searching no further than the limits allow.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::of`]; also where the limits stop the search before it found any plan.
    pub fn within(
        dwelling: &'a Dwelling,
        code: CodeInForce,
        book: &PriceBook,
        limits: &Limits,
    ) -> Result<Self, PlanFault> {
        let facts = Facts::gather(dwelling, code);
        let assembled = assemble(&facts, book);
        let (solution, proof) = match solved(&assembled.problem, limits, &[])? {
            Some(found) => found,
            None => return Err(PlanFault(vec!["there is no plan at all".into()])),
        };
        let places = places(&assembled);
        Ok(Self {
            facts,
            assembled,
            book: book.clone(),
            solution,
            proof,
            steered: None,
            forced: Vec::new(),
            held: Vec::new(),
            limits: *limits,
            places,
        })
    }

    /// The best plan with these choices laid down beforehand, within the limits of the plan; none where there is none.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::of`].
    pub(crate) fn best_with(&self, forced: &[Forced]) -> Result<Option<(Solution, Proof)>, PlanFault> {
        solved(&self.assembled.problem, &self.limits, forced)
    }

    /// Whether it is the best under the wishes alone: no sum of money was laid down, and no offer was taken.
    pub(crate) fn is_as_wished_for(&self) -> bool {
        self.held.is_empty() && self.steered.as_ref().is_none_or(|steered| steered.budget.is_none())
    }

    /// What a choice of everything costs and gives.
    #[must_use]
    pub fn standing_of(&self, solution: &Solution) -> Standing {
        standing_of(&self.facts, &self.assembled, &self.places, solution)
    }

    /// What the plan costs and gives.
    #[must_use]
    pub fn standing(&self) -> Standing {
        self.standing_of(&self.solution)
    }

    /// The tree and node that stand for a box.
    #[must_use]
    pub fn node_of(&self, at: BoxIndex) -> (usize, usize) {
        self.places[at.0]
    }

    /// What is done at an opening.
    #[must_use]
    pub fn chosen(&self, at: BoxIndex) -> &Candidate {
        self.chosen_in(&self.solution, at)
    }

    /// What another choice of everything does at an opening.
    #[must_use]
    pub fn chosen_in(&self, solution: &Solution, at: BoxIndex) -> &Candidate {
        let (tree, node) = self.node_of(at);
        &self.assembled.candidates[at.0][solution.nodes[tree][node].option]
    }

    /// What is put at the panel end of a circuit tree.
    #[must_use]
    pub fn chosen_at_panel(&self, tree: usize) -> &PanelCandidate {
        &self.assembled.at_panel[tree][self.solution.roots[tree]]
    }

    /// What feeds a box once the plan is carried out: a new cable may have changed that.
    fn fed_from(&self, at: BoxIndex) -> Option<BoxIndex> {
        for chosen in &self.solution.links {
            let link = &self.assembled.problem.links[chosen.link];
            if link.reparents && link.to.lands_at == Some(self.node_of(at)) {
                return match self.bought(chosen).ends.0 {
                    WayEnd::At(RouteEnd::Box(from)) => Some(from),
                    _ => None,
                };
            }
        }
        match self.facts.dwelling.device_box(at).fed_by {
            Some(Feed::Box(parent)) if self.node_of(parent).0 == self.node_of(at).0 => Some(parent),
            _ => None,
        }
    }

    /// What upstream protects an opening from ground faults, the nearest first.
    #[must_use]
    pub fn protector(&self, at: BoxIndex) -> Option<Protector> {
        self.upstream(at, GFCI)
    }

    /// What upstream protects the wiring of an opening from arc faults, the nearest first.
    #[must_use]
    pub fn arc_protector(&self, at: BoxIndex) -> Option<Protector> {
        self.upstream(at, AFCI)
    }

    /// What upstream gives an opening a mark, the nearest first.
    fn upstream(&self, at: BoxIndex, mark: Marks) -> Option<Protector> {
        let mut below = at;
        while let Some(parent) = self.fed_from(below) {
            let (tree, node) = self.node_of(parent);
            let (_, child) = self.node_of(below);
            let behind = self.solution.nodes[tree][node].behind_load_children.contains(&child);
            if behind && self.chosen(parent).gives.covers(mark) {
                return Some(Protector::Device(parent));
            }
            below = parent;
        }
        let tree = self.facts.at(at).tree?;
        self.chosen_at_panel(tree).gives.covers(mark).then_some(Protector::AtPanel(tree))
    }

    /// The boxes that the load side of a box's device feeds directly.
    #[must_use]
    pub fn behind_load(&self, at: BoxIndex) -> Vec<BoxIndex> {
        let (tree, node) = self.node_of(at);
        let children = &self.solution.nodes[tree][node].behind_load_children;
        children.iter().map(|child| self.assembled.boxes[tree][*child]).collect()
    }

    /// What a chosen link buys.
    #[must_use]
    pub fn bought(&self, chosen: &ChosenLink) -> &BuyableRoute {
        &self.assembled.network.bought_as[chosen.link]
    }

    /// The size of the grounding conductor that a chosen link brings.
    #[must_use]
    pub fn size_of(&self, chosen: &ChosenLink) -> Gauge {
        GRADES[chosen.grade]
    }

    /// Whether what sits at the panel end of a circuit tree is a GFCI, once the plan is carried out.
    #[must_use]
    pub fn gfci_at_panel(&self, tree: usize) -> bool {
        self.chosen_at_panel(tree).gives.covers(GFCI)
    }

    /// Whether the device of an opening is a GFCI, once the plan is carried out.
    #[must_use]
    pub fn is_gfci(&self, at: BoxIndex) -> bool {
        self.chosen(at).own.covers(GFCI)
    }

    /// The leakage that everything plugged in on a circuit tree may have by its standards, in microamperes.
    #[must_use]
    pub fn leakage_of_circuit(&self, tree: usize) -> i64 {
        self.assembled.problem.trees[tree].nodes.iter().map(|node| node.burden).sum()
    }

    /// Whether the plan changes what is in a box: its device, the box itself, or the grounding conductors that end in it.
    #[must_use]
    pub fn touches(&self, at: BoxIndex) -> bool {
        let chosen = self.chosen(at);
        let lands = |link: &ChosenLink| self.bought(link).ends_at(RouteEnd::Box(at));
        chosen.device != Device::Kept || chosen.box_work != BoxWork::Keep || self.solution.links.iter().any(lands)
    }

    /// What a chosen link costs.
    #[must_use]
    pub fn price_of(&self, chosen: &ChosenLink) -> Price {
        self.assembled.network.bought_as[chosen.link].prices[chosen.grade]
    }

    /// What is bought and worked for a chosen link: its price is theirs.
    #[must_use]
    pub fn lines_of(&self, chosen: &ChosenLink) -> Vec<Line> {
        let bought = self.bought(chosen);
        match &bought.origin {
            Origin::Stated(route) => lines_as_stated(&self.facts.dwelling.routes[*route], chosen.grade),
            Origin::Built(walked) => {
                let edges = &self.assembled.network.graph.edges;
                let edges: Vec<&RouteEdge> = walked.iter().map(|(edge, _)| &edges[*edge]).collect();
                lines_as_built(self.facts.dwelling, &edges, bought.kind, chosen.grade)
            }
        }
    }

    /// The chosen link that brings the ground into a box's group, where one does.
    #[must_use]
    pub fn ground_brought_by(&self, at: BoxIndex) -> Option<&ChosenLink> {
        self.brought_in(&self.solution, at)
    }

    /// The link of a choice of everything that brings the ground into a box's group, where one does.
    pub(crate) fn brought_in<'s>(&self, solution: &'s Solution, at: BoxIndex) -> Option<&'s ChosenLink> {
        let group = self.facts.groups.index_of(at);
        solution.links.iter().find(|chosen| {
            let link = &self.assembled.problem.links[chosen.link];
            let end = if chosen.forward { link.to } else { link.from };
            end.group == group
        })
    }

    /// The way that ends with a chosen link, where it ends at a box.
    #[must_use]
    pub fn name_of(&self, chosen: &ChosenLink) -> String {
        match (self.bought(chosen).stated(), self.flow_of(chosen).1) {
            (Some(route), _) => self.facts.dwelling.routes[route].id.clone(),
            (None, WayEnd::At(RouteEnd::Box(at))) => format!("to {}", self.facts.dwelling.device_box(at).id),
            (None, _) => {
                let ways = self.ways();
                ways.into_iter().find(|way| way.own().contains(chosen)).map_or_else(String::new, |way| way.id)
            }
        }
    }

    /// Whether the ground of a box arrives by a new cable rather than by a single conductor.
    #[must_use]
    pub fn is_by_cable(&self, chosen: &ChosenLink) -> bool {
        self.bought(chosen).kind == RouteKind::NewCable
    }

    /// Whether an opening has a real ground once the plan is carried out.
    #[must_use]
    pub fn is_grounded(&self, at: BoxIndex) -> bool {
        self.solution.supplied[self.facts.groups.index_of(at)]
    }

    /// What the whole plan costs.
    #[must_use]
    pub fn total(&self) -> Price {
        let boxes: Price = self.facts.dwelling.box_indices().map(|at| self.chosen(at).price).sum();
        let panels: Price = (0..self.facts.trees.len()).map(|tree| self.chosen_at_panel(tree).whole_price()).sum();
        let routes: Price = self.solution.links.iter().map(|chosen| self.price_of(chosen)).sum();
        boxes + panels + routes + self.assembled.dangers.iter().map(|repair| repair.price).sum()
    }
}

/// The best choice of everything, its cost recomputed by the separate checker; none where what was laid down allows none.
fn solved(problem: &Problem, limits: &Limits, forced: &[Forced]) -> Result<Option<(Solution, Proof)>, PlanFault> {
    let (solution, proof) = match solve_with(problem, limits, forced) {
        Outcome::Optimal(solution) => (solution, Proof::Cheapest),
        Outcome::Best { solution, bound } => (solution, Proof::NothingBelow(bound)),
        Outcome::Infeasible => return Ok(None),
        Outcome::Malformed(reasons) => return Err(PlanFault(reasons)),
        Outcome::Stopped { .. } => return Err(PlanFault(vec!["the search was stopped before it found a plan".into()])),
    };
    match check(problem, &solution) {
        Ok(cost) if cost == solution.cost => Ok(Some((solution, proof))),
        Ok(_) => Err(PlanFault(vec!["the checker found another cost than the search".into()])),
        Err(faults) => Err(PlanFault(faults.iter().map(ToString::to_string).collect())),
    }
}

/// By box: the tree and the node that stand for it.
fn places(assembled: &Assembled) -> Vec<(usize, usize)> {
    let mut places = vec![(0, 0); assembled.candidates.len()];
    for (tree, members) in assembled.boxes.iter().enumerate() {
        for (node, at) in members.iter().enumerate() {
            places[at.0] = (tree, node);
        }
    }
    places
}
