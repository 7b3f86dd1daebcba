//! Every plan worth offering: the exact Pareto frontier of money, wall openings and worth, by branching over the links.

use optimizer::{Cost, Fault, Forced, Limits, Outcome, Problem, Solution, SupplyNeed, check, solve_with};

/// The frontier.
pub(crate) struct Frontier {
    /// Its points: no two alike, none as dear and with as many openings and as little worth as another.
    pub points: Vec<FrontierPoint>,
    /// Whether all are there; else the limit stopped the search.
    pub complete: bool,
}

/// A point of the frontier.
pub(crate) struct FrontierPoint {
    /// What its supplied groups are worth together.
    pub worth: u64,
    /// It.
    pub solution: Solution,
}

/// Returns the frontier of (cents, openings, worth) of all solutions that cost no more than so many cents. `worth` is by
/// group, what it is worth when supplied. The limit counts solved problems.
pub(crate) fn frontier(
    problem: &Problem,
    worth: &[u64],
    most_cents: i64,
    forced: &[Forced],
    limits: &Limits,
) -> Frontier {
    let decided = problem.links.iter().enumerate().map(|(link, _)| stated(forced, link)).collect();
    let mut search =
        Search { problem, worth, most_cents, forced, left: limits.nodes, found: Vec::new(), complete: true };
    search.sow();
    search.branch(&Branch { decided, known: None });
    search.found.sort_by_key(|point| (point.solution.cost, point.worth));
    Frontier { points: search.found, complete: search.complete }
}

fn stated(forced: &[Forced], link: usize) -> Option<bool> {
    forced.iter().find_map(|one| match one {
        Forced::Link { link: of, chosen } if *of == link => Some(*chosen),
        _ => None,
    })
}

struct Search<'p> {
    problem: &'p Problem,
    worth: &'p [u64],
    most_cents: i64,
    forced: &'p [Forced],
    left: Option<u64>,
    found: Vec<FrontierPoint>,
    complete: bool,
}

/// Some links decided; the best solution with them, where it is known already.
struct Branch {
    decided: Vec<Option<bool>>,
    known: Option<Solution>,
}

/// The cents for which a unit of worth is taken in the problems that are solved first.
const PRICES_OF_WORTH: [i64; 8] = [0, 1_000, 3_000, 6_000, 10_000, 16_000, 25_000, 50_000];
/// How far each of these problems is searched: a good point is enough.
const MOST_SEARCHED_FIRST: u64 = 100;
/// The cents at which an opening is taken in them: nothing, and more than any plan pays for one.
const PRICES_OF_OPENINGS: [i64; 2] = [0, 500_000];

impl Search<'_> {
    /// Finds points first by putting a price on worth and on openings: what they beat is not looked at again, and where the
    /// limit stops the search they are there.
    fn sow(&mut self) {
        for (worth, opening) in
            PRICES_OF_OPENINGS.iter().flat_map(|opening| PRICES_OF_WORTH.map(|worth| (worth, *opening)))
        {
            if self.left == Some(0) {
                return;
            }
            self.left = self.left.map(|left| left - 1);
            let priced = self.priced(worth, opening);
            let limits = Limits { nodes: Some(MOST_SEARCHED_FIRST) };
            let Some(mut solution) = solve_with(&priced, &limits, self.forced).solution().cloned() else { continue };
            // What it costs without those prices, added up anew.
            let cost = match check(self.problem, &solution) {
                Ok(cost) => cost,
                Err(faults) => match faults[..] {
                    [Fault::WrongCost { found, .. }] => found,
                    _ => continue,
                },
            };
            solution.cost = cost;
            if cost.cents <= self.most_cents {
                self.add(&solution);
            }
        }
    }

    /// The problem with a price on worth, at one node of each group, and on openings.
    fn priced(&self, worth: i64, opening: i64) -> Problem {
        let mut priced = self.problem.clone();
        let mut left: Vec<i64> = self.worth.iter().map(|of| i64::try_from(*of).unwrap_or(0) * worth).collect();
        for node in priced.trees.iter_mut().flat_map(|tree| &mut tree.nodes) {
            let grounded = node.options.iter_mut().filter(|option| option.supply == SupplyNeed::Supplied);
            let mut is_there = false;
            for option in grounded {
                option.cost.cents -= left[node.group];
                is_there = true;
            }
            if is_there {
                left[node.group] = 0;
            }
        }
        for cost in priced.links.iter_mut().flat_map(|link| &mut link.cost_by_grade) {
            cost.cents += cost.openings * opening;
        }
        priced
    }

    fn branch(&mut self, branch: &Branch) {
        let solution = match &branch.known {
            Some(solution) => solution.clone(),
            None => match self.solved(&branch.decided) {
                Some(solution) => solution,
                None => return,
            },
        };
        if solution.cost.cents > self.most_cents || self.is_beaten(&solution, &branch.decided) {
            return;
        }
        self.add(&solution);
        // A link that the best solution here takes splits best; then one that could add worth.
        let open = |link: &usize| branch.decided[*link].is_none();
        let taken = solution.links.iter().map(|chosen| chosen.link).find(|link| open(link));
        let Some(link) = (0..branch.decided.len()).find(open).map(|first| taken.unwrap_or(first)) else { return };
        for chosen in [true, false] {
            let mut decided = branch.decided.clone();
            decided[link] = Some(chosen);
            let known = (taken.is_some() == chosen).then(|| solution.clone());
            self.branch(&Branch { decided, known });
        }
    }

    fn solved(&mut self, decided: &[Option<bool>]) -> Option<Solution> {
        if self.left == Some(0) {
            self.complete = false;
            return None;
        }
        self.left = self.left.map(|left| left - 1);
        let links = decided.iter().enumerate();
        let links = links.filter_map(|(link, chosen)| chosen.map(|chosen| Forced::Link { link, chosen }));
        let forced: Vec<Forced> = self.forced.iter().cloned().chain(links).collect();
        match solve_with(self.problem, &Limits::default(), &forced) {
            Outcome::Optimal(solution) => Some(solution),
            _ => None,
        }
    }

    /// Whether something found is no worse than all that can come of a branch.
    fn is_beaten(&self, least: &Solution, decided: &[Option<bool>]) -> bool {
        let links = self.problem.links.iter().zip(decided).filter(|(_, chosen)| **chosen == Some(true));
        let openings = links.map(|(link, _)| {
            let costs = link.cost_by_grade.iter().map(|cost: &Cost| cost.openings);
            costs.min().unwrap_or(0)
        });
        let openings: i64 = openings.sum();
        let most = self.worth_within_reach(decided);
        self.found.iter().any(|point| {
            let cost = point.solution.cost;
            cost.cents <= least.cost.cents && cost.openings <= openings && point.worth >= most
        })
    }

    /// The worth of all groups that any undecided or chosen link could supply.
    fn worth_within_reach(&self, decided: &[Option<bool>]) -> u64 {
        let mut reached: Vec<bool> = self.problem.groups.iter().map(|group| group.source).collect();
        loop {
            let before = reached.iter().filter(|reached| **reached).count();
            for (link, _) in self.problem.links.iter().zip(decided).filter(|(_, chosen)| **chosen != Some(false)) {
                let (from, to) = (link.from.group, link.to.group);
                reached[to] |= reached[from];
                reached[from] |= link.both_ways && reached[to];
            }
            if reached.iter().filter(|reached| **reached).count() == before {
                break;
            }
        }
        reached.iter().zip(self.worth).filter(|(reached, _)| **reached).map(|(_, worth)| worth).sum()
    }

    fn add(&mut self, solution: &Solution) {
        let worth = solution.supplied.iter().zip(self.worth).filter(|(supplied, _)| **supplied).map(|(_, worth)| worth);
        let worth: u64 = worth.sum();
        let rank = |cost: Cost, worth: u64| (cost.cents, cost.openings, std::cmp::Reverse(worth));
        let no_worse = |left: (i64, i64, std::cmp::Reverse<u64>), right: (i64, i64, std::cmp::Reverse<u64>)| {
            left.0 <= right.0 && left.1 <= right.1 && left.2 <= right.2
        };
        let this = rank(solution.cost, worth);
        if self.found.iter().any(|point| no_worse(rank(point.solution.cost, point.worth), this)) {
            return;
        }
        self.found.retain(|point| !no_worse(this, rank(point.solution.cost, point.worth)));
        self.found.push(FrontierPoint { worth, solution: solution.clone() });
    }
}
