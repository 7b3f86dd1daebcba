//! What can be offered to an owner: the frontier of money, wall openings and grounds, and the few offers on it that can be
//! told apart.

use crate::candidate::WISH_WEIGHT;
use crate::device::Device;
use crate::planned::{PlanFault, Planned, Proof};
use crate::search_limits::{OF_AN_OFFER, OF_OFFERS};
use crate::standing::Standing;
use crate::steering::{Steered, is_truly_grounded, options_forced};
use crate::worth::{could_be_given_a_ground, serves_electronics, worth_of};
use dwelling::{BoxIndex, Holding, names};
use estimate::Cents;
use optimizer::{Forced, Outcome, Problem, Solution, SupplyNeed, check, frontier, solve_with};

/// A plan that nothing beats in money, wall openings and worth at once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Point {
    /// What it costs and gives.
    pub standing: Standing,
    /// What the grounds that it brings are worth together, by what is plugged in.
    pub worth: u64,
    /// It.
    pub solution: Solution,
}

names! {
    /// What an offer is for.
    OfferKind {
        /// The cheapest lawful whole.
        LeastMoney = "lawful-least-money",
        /// The cheapest that opens no wall, or as few as can be.
        LeastDisturbance = "least-disturbance",
        /// The cheapest that grounds every opening with electronics that can be grounded.
        Electronics = "grounds-for-electronics",
        /// The cheapest that grounds the most, by what is plugged in.
        MostGrounds = "most-grounds",
        /// The most worth for each dollar above the cheapest.
        BestValue = "best-value",
    }
}

/// An offer: a point of the frontier with a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offer {
    /// What it is for.
    pub kind: OfferKind,
    /// Its point.
    pub point: usize,
}

/// Everything that can be offered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offers {
    /// The frontier, by rising price.
    pub frontier: Vec<Point>,
    /// Whether the frontier is whole; else the search was stopped at its limit.
    pub complete: bool,
    /// At most four offers on it, by rising price.
    pub offers: Vec<Offer>,
    /// What each kind of offer means here; several may mean the same plan, which is offered once.
    pub meant: Vec<Offer>,
}

/// The most offers that are put side by side.
const MOST_OFFERS: usize = 4;

impl Planned<'_> {
    /// Everything that can be offered under the wishes of the plan: no point falls short of more than the plan does.
    ///
    /// A box that is given a ground is also given a receptacle that uses it; the plan itself is on the frontier as it is.
    ///
    /// # Errors
    /// [`PlanFault`] where the search or the checker meets a fault of this program.
    pub fn offers(&self) -> Result<Offers, PlanFault> {
        let weights = self.solution.cost.cents - self.total().total().0;
        let problem = self.with_grounds_used();
        let most_cents = weights + WISH_WEIGHT - 1;
        let found = frontier(&problem, &self.worth_by_group(), most_cents, &self.forced, &OF_OFFERS);
        let mut points = vec![self.point(&self.solution)];
        for point in found.points {
            points.push(self.checked_point(&point.solution)?);
        }
        if !found.complete
            && let Some(solution) = self.with_electronics_grounded(&problem, &points)
            && solution.cost.cents <= most_cents
        {
            points.push(self.checked_point(&solution)?);
        }
        let mut frontier: Vec<Point> = Vec::new();
        for (index, point) in points.iter().enumerate() {
            let others = points.iter().enumerate();
            let beaten = |(at, other): (usize, &Point)| at != index && other.beats(point, at < index);
            if !others.into_iter().any(beaten) {
                frontier.push(point.clone());
            }
        }
        frontier.sort_by_key(|point| (point.cents(), point.standing.wall_openings, point.worth));
        let meant = offers_meant(self, &frontier);
        let offers = chosen_offers(&meant);
        Ok(Offers { frontier, complete: found.complete, offers, meant })
    }

    /// Takes another plan of the same choices, such as an offer. What it grounds and leaves closed is then laid down for
    /// what is asked of the plan later.
    pub fn take(&mut self, point: &Point, complete: bool) {
        if self.solution == point.solution {
            return;
        }
        let bound = match self.proof {
            Proof::Cheapest => self.solution.cost,
            Proof::NothingBelow(bound) => bound,
        };
        self.solution = point.solution.clone();
        self.proof = if complete { Proof::Cheapest } else { Proof::NothingBelow(bound) };
        self.held = held_by(self, &point.standing);
        self.assembled.problem = self.with_grounds_used();
    }

    /// Takes the plan that grounds the most, by what is plugged in, among those of the frontier for which the owner pays no more
    /// than a sum of money, and of those the cheapest. Where even the cheapest lawful whole costs more, the plan stays that.
    ///
    /// The frontier is one of material and labour. What the owner pays rises with these but for the trip of a working day, so
    /// where trips are charged a plan beside the frontier that takes fewer days could ground more for the money.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::offers`].
    pub fn stay_within(&mut self, budget: Cents) -> Result<(), PlanFault> {
        let offers = self.offers()?;
        let unsteered = self.standing();
        let owner = |point: &Point| self.book.owner_price(point.standing.price).total;
        let within = offers.frontier.iter().filter(|point| owner(point) <= budget);
        let best =
            within.max_by_key(|point| (point.worth, std::cmp::Reverse((point.cents(), point.standing.wall_openings))));
        let bound = self.solution.cost;
        if let Some(point) = best {
            self.take(point, offers.complete);
        }
        if !offers.complete && self.proof == Proof::Cheapest {
            // What was not looked at may ground more for the money.
            self.proof = Proof::NothingBelow(bound);
        }
        let steered = self.steered.get_or_insert_with(|| Steered { wishes: Vec::new(), unsteered, budget: None });
        steered.budget = Some(budget);
        Ok(())
    }

    fn point(&self, solution: &Solution) -> Point {
        let standing = self.standing_of(solution);
        let worth = standing.grounded.iter().map(|at| worth_of(self, *at)).sum();
        Point { standing, worth, solution: solution.clone() }
    }

    fn worth_by_group(&self) -> Vec<u64> {
        let mut worth = vec![0; self.assembled.problem.groups.len()];
        for at in self.facts.dwelling.box_indices() {
            worth[self.facts.groups.index_of(at)] += worth_of(self, at);
        }
        worth
    }

    fn checked_point(&self, solution: &Solution) -> Result<Point, PlanFault> {
        match check(&self.assembled.problem, solution) {
            Ok(_) => Ok(self.point(solution)),
            Err(faults) => Err(PlanFault(faults.iter().map(ToString::to_string).collect())),
        }
    }

    /// The best found with a ground wherever electronics stand that any of the points grounds: a search of the frontier that
    /// was stopped may have missed what is asked for most.
    fn with_electronics_grounded(&self, problem: &Problem, points: &[Point]) -> Option<Solution> {
        let electronics =
            electronics_grounded(self, points).into_iter().filter(|at| could_be_given_a_ground(self, *at));
        let grounds = electronics.map(|at| options_forced(self, at, |one| is_truly_grounded(&self.facts, at, one)));
        let forced: Vec<Forced> = self.forced.iter().cloned().chain(grounds).collect();
        match solve_with(problem, &OF_AN_OFFER, &forced) {
            Outcome::Optimal(solution) | Outcome::Best { solution, .. } => Some(solution),
            Outcome::Infeasible | Outcome::Malformed(_) | Outcome::Stopped { .. } => None,
        }
    }

    /// The problem with one condition more: a two-slot receptacle does not stay where a ground is brought to its box.
    fn with_grounds_used(&self) -> Problem {
        let mut problem = self.assembled.problem.clone();
        for at in self.facts.dwelling.box_indices().filter(|at| could_be_given_a_ground(self, *at)) {
            let (tree, node) = self.node_of(at);
            let two_slot = self.facts.at(at).as_found.holds == Holding::TwoSlot;
            let options = problem.trees[tree].nodes[node].options.iter_mut();
            for (option, candidate) in options.zip(&self.assembled.candidates[at.0]) {
                let stays = two_slot && candidate.device == Device::Kept && !candidate.shortfall.unlawful;
                if stays && option.supply == SupplyNeed::Any {
                    option.supply = SupplyNeed::Unsupplied;
                }
            }
        }
        problem
    }
}

impl Point {
    /// What it costs, in cents.
    #[must_use]
    pub fn cents(&self) -> i64 {
        self.standing.price.total().0
    }

    /// Whether it is no worse in anything than another, and better in something unless `even` settles it.
    fn beats(&self, other: &Self, even: bool) -> bool {
        let (this, that) = (&self.standing, &other.standing);
        let no_worse =
            self.cents() <= other.cents() && this.wall_openings <= that.wall_openings && self.worth >= other.worth;
        let same = (self.cents(), this.wall_openings, self.worth) == (other.cents(), that.wall_openings, other.worth);
        no_worse && (even || !same)
    }
}

/// The grounds of a plan, and the walls that it leaves closed, as choices laid down; those at a box beside it.
fn held_by(plan: &Planned, standing: &Standing) -> Vec<(Option<BoxIndex>, Forced)> {
    let brought = standing.grounded.iter().filter(|at| !plan.facts.at(**at).supplied);
    let grounds =
        brought.map(|at| (Some(*at), options_forced(plan, *at, |one| is_truly_grounded(&plan.facts, *at, one))));
    let closed = plan.assembled.problem.links.iter().enumerate().filter(|(index, link)| {
        let opens = link.cost_by_grade.iter().any(|cost| cost.openings > 0);
        opens && !plan.solution.links.iter().any(|chosen| chosen.link == *index)
    });
    grounds.chain(closed.map(|(link, _)| (None, Forced::Link { link, chosen: false }))).collect()
}

impl Offers {
    /// The number of the offer that a kind means, counted from 1; none where it is not among the offers.
    #[must_use]
    pub fn number_of(&self, kind: OfferKind) -> Option<usize> {
        let meant = self.meant.iter().find(|offer| offer.kind == kind)?;
        self.offers.iter().position(|offer| offer.point == meant.point).map(|index| index + 1)
    }
}

/// What each kind means: the cheapest; the one with the fewest wall openings; that with the most worth; that with a ground
/// wherever electronics stand; and the best value between them. In the order in which they are offered while there is room.
fn offers_meant(plan: &Planned, frontier: &[Point]) -> Vec<Offer> {
    let indices = || 0..frontier.len();
    let cheapest = |suits: &dyn Fn(&Point) -> bool| indices().find(|at| suits(&frontier[*at]));
    let Some(least) = cheapest(&|_| true) else { return Vec::new() };
    let fewest = frontier.iter().map(|point| point.standing.wall_openings).min().unwrap_or(0);
    let most = frontier.iter().map(|point| point.worth).max().unwrap_or(0);
    let electronics = electronics_grounded(plan, frontier);
    let grounds_electronics = |point: &Point| electronics.iter().all(|at| point.standing.grounded.contains(at));
    let meant = [
        (OfferKind::LeastMoney, Some(least)),
        (OfferKind::LeastDisturbance, cheapest(&|point| point.standing.wall_openings == fewest)),
        (OfferKind::MostGrounds, cheapest(&|point| point.worth == most)),
        (OfferKind::Electronics, cheapest(&grounds_electronics)),
        (OfferKind::BestValue, best_value(frontier, least)),
    ];
    meant.into_iter().filter_map(|(kind, point)| Some(Offer { kind, point: point? })).collect()
}

/// The offers, each plan once under the first kind that means it, by rising price.
fn chosen_offers(meant: &[Offer]) -> Vec<Offer> {
    let mut offers: Vec<Offer> = Vec::new();
    for one in meant {
        if offers.len() < MOST_OFFERS && !offers.iter().any(|offer| offer.point == one.point) {
            offers.push(*one);
        }
    }
    offers.sort_by_key(|offer| offer.point);
    offers
}

/// The boxes that serve electronics and that any of the points grounds.
fn electronics_grounded(plan: &Planned, points: &[Point]) -> Vec<BoxIndex> {
    let boxes = plan.facts.dwelling.box_indices().filter(|at| serves_electronics(plan, *at));
    boxes.filter(|at| points.iter().any(|point| point.standing.grounded.contains(at))).collect()
}

/// The point with the most worth gained for the money above the cheapest, the cheaper of two alike.
fn best_value(frontier: &[Point], least: usize) -> Option<usize> {
    let from = &frontier[least];
    let gain = |at: usize| {
        let point = &frontier[at];
        (i128::from(point.worth) - i128::from(from.worth), i128::from(point.cents()) - i128::from(from.cents()))
    };
    let gaining = (0..frontier.len()).filter(|at| gain(*at).0 > 0 && gain(*at).1 > 0);
    gaining.reduce(|best, at| {
        let ((best_worth, best_cents), (worth, cents)) = (gain(best), gain(at));
        if worth * best_cents > best_worth * cents { at } else { best }
    })
}
