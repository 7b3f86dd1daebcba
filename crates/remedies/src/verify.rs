//! A plan that somebody holds in hand, rebuilt from its choices alone and held against its survey.

use crate::answer::CertificateAnswer;
use crate::device::AtPanel;
use crate::planned::Planned;
use crate::room_in_box::GRADES;
use crate::steering::Wish;
use dwelling::{BoxIndex, Dwelling, RoomIndex};
use estimate::Cents;
use optimizer::{ChosenLink, Fault, Marks, NodeChoice, Solution, check};
use serde::Deserialize;
use std::collections::BTreeSet;

/// The choices of a plan, as its JSON holds them; all else in it follows from these.
#[derive(Clone, Debug, Deserialize)]
pub struct PlanClaim {
    circuits: Vec<CircuitClaim>,
    openings: Vec<OpeningClaim>,
    links: Vec<LinkClaim>,
    steering: Option<SteeringClaim>,
    offers: Option<OffersClaim>,
    next_best: Option<Vec<serde::de::IgnoredAny>>,
    certificate: Option<CertificateAnswer>,
}

#[derive(Clone, Debug, Deserialize)]
struct CircuitClaim {
    circuits: Vec<String>,
    at_panel: String,
}

#[derive(Clone, Debug, Deserialize)]
struct OpeningClaim {
    #[serde(rename = "box")]
    box_id: String,
    step: String,
    device: String,
    box_work: String,
    load_side_feeds: Vec<String>,
    price: PriceClaim,
}

#[derive(Clone, Debug, Deserialize)]
struct PriceClaim {
    total_cents: i64,
}

#[derive(Clone, Debug, Deserialize)]
struct LinkClaim {
    number: usize,
    forward: bool,
    size: String,
}

#[derive(Clone, Debug, Deserialize)]
struct SteeringClaim {
    wishes: Vec<WishClaim>,
    budget: Option<BudgetClaim>,
}

#[derive(Clone, Debug, Deserialize)]
struct WishClaim {
    asked: String,
    of: String,
}

#[derive(Clone, Debug, Deserialize)]
struct BudgetClaim {
    cents: i64,
}

#[derive(Clone, Debug, Deserialize)]
struct OffersClaim {
    taken: usize,
}

impl PlanClaim {
    /// The wishes it was made with.
    ///
    /// # Errors
    /// What the survey does not have, in sentences.
    pub fn wishes(&self, dwelling: &Dwelling) -> Result<Vec<Wish>, Vec<String>> {
        let mut wishes = Vec::new();
        let mut faults = Vec::new();
        for claim in self.steering.iter().flat_map(|steering| &steering.wishes) {
            let at_box = || dwelling.box_named(&claim.of);
            let wish = match claim.asked.as_str() {
                "ground" => at_box().map(Wish::Ground),
                "keep" => at_box().map(Wish::Keep),
                "no-open" => {
                    dwelling.rooms.iter().position(|room| room.id == claim.of).map(RoomIndex).map(Wish::NoOpen)
                }
                _ => None,
            };
            match wish {
                Some(wish) => wishes.push(wish),
                None => faults.push(format!("the wish `{} {}` cannot be asked of this survey", claim.asked, claim.of)),
            }
        }
        if faults.is_empty() { Ok(wishes) } else { Err(faults) }
    }

    /// The sum of money it was made to stay within.
    #[must_use]
    pub fn budget(&self) -> Option<Cents> {
        Some(Cents(self.steering.as_ref()?.budget.as_ref()?.cents))
    }

    /// The offer it is, counted from 1.
    #[must_use]
    pub fn offer(&self) -> Option<usize> {
        self.offers.as_ref().map(|offers| offers.taken)
    }

    /// Its certificate that nothing costs less, where it has one.
    #[must_use]
    pub const fn certificate(&self) -> Option<&CertificateAnswer> {
        self.certificate.as_ref()
    }

    /// Whether it tells the next best at its openings.
    #[must_use]
    pub const fn tells_next_best(&self) -> bool {
        self.next_best.is_some()
    }
}

impl Planned<'_> {
    /// Takes the choices of a claimed plan in place of its own, once the separate checker accepts them.
    ///
    /// # Errors
    /// Everything that keeps them from being a plan of this survey, in sentences; the plan is then left as it is.
    pub fn take_claimed(&mut self, claim: &PlanClaim) -> Result<(), Vec<String>> {
        let mut faults = Vec::new();
        let mut solution = Solution {
            roots: vec![0; self.assembled.problem.trees.len()],
            nodes: self.assembled.boxes.iter().map(|boxes| vec![NodeChoice::default(); boxes.len()]).collect(),
            supplied: self.assembled.problem.groups.iter().map(|group| group.source).collect(),
            ..Solution::default()
        };
        self.read_panels(claim, &mut solution, &mut faults);
        self.read_openings(claim, &mut solution, &mut faults);
        self.read_links(claim, &mut solution, &mut faults);
        if !faults.is_empty() {
            return Err(faults);
        }
        let problem = &self.assembled.problem;
        // The checker adds the cost up anew and says which it is: nothing is taken from the search or from the claim.
        match check(problem, &solution) {
            Ok(cost) => solution.cost = cost,
            Err(found) => match found[..] {
                [Fault::WrongCost { found, .. }] => solution.cost = found,
                _ => return Err(found.iter().map(|fault| self.in_words(fault)).collect()),
            },
        }
        match check(problem, &solution) {
            Ok(_) => {
                self.solution = solution;
                Ok(())
            }
            Err(found) => Err(found.iter().map(|fault| self.in_words(fault)).collect()),
        }
    }

    fn read_panels(&self, claim: &PlanClaim, solution: &mut Solution, faults: &mut Vec<String>) {
        let dwelling = self.facts.dwelling;
        let mut read = BTreeSet::new();
        for claimed in &claim.circuits {
            let named = claimed.circuits.join("+");
            let tree = self.facts.trees.iter().position(|tree| {
                let ids = tree.circuits.iter().map(|circuit| &dwelling.circuit(*circuit).id);
                ids.eq(&claimed.circuits)
            });
            let Some(tree) = tree else {
                faults.push(format!("circuit {named} is not in the survey"));
                continue;
            };
            if !read.insert(tree) {
                faults.push(format!("circuit {named} is told twice"));
            }
            let choices = self.assembled.at_panel[tree].iter();
            match choices.map(|one| one.choice).position(|choice: AtPanel| choice.name() == claimed.at_panel) {
                Some(root) => solution.roots[tree] = root,
                None => faults.push(format!("circuit {named}: `{}` cannot be put at its panel end", claimed.at_panel)),
            }
        }
        for tree in (0..self.facts.trees.len()).filter(|tree| !read.contains(tree)) {
            let ids: Vec<&str> =
                self.facts.trees[tree].circuits.iter().map(|at| dwelling.circuit(*at).id.as_str()).collect();
            faults.push(format!("circuit {} is forgotten", ids.join("+")));
        }
    }

    fn read_openings(&self, claim: &PlanClaim, solution: &mut Solution, faults: &mut Vec<String>) {
        let dwelling = self.facts.dwelling;
        let mut read = BTreeSet::new();
        for claimed in &claim.openings {
            let Some(at) = dwelling.box_named(&claimed.box_id) else {
                faults.push(format!("box {} is not in the survey", claimed.box_id));
                continue;
            };
            if !read.insert(at) {
                faults.push(format!("box {} is told twice", claimed.box_id));
            }
            let (tree, node) = self.node_of(at);
            match self.candidate_of(at, claimed) {
                Some(option) => solution.nodes[tree][node].option = option,
                None => faults.push(format!(
                    "box {}: `{}` with device `{}` and box `{}` is not among what can be done there lawfully",
                    claimed.box_id, claimed.step, claimed.device, claimed.box_work
                )),
            }
            let fed: Vec<Option<BoxIndex>> = claimed.load_side_feeds.iter().map(|id| dwelling.box_named(id)).collect();
            let mut children: Vec<usize> = fed
                .iter()
                .flatten()
                .map(|child| self.node_of(*child))
                .filter(|(of, _)| *of == tree)
                .map(|(_, child)| child)
                .collect();
            if children.len() < fed.len() {
                faults.push(format!("box {}: its load side cannot feed what it is said to feed", claimed.box_id));
            }
            children.sort_unstable();
            solution.nodes[tree][node].behind_load_children = children;
        }
        for at in dwelling.box_indices().filter(|at| !read.contains(at)) {
            faults.push(format!("box {} is forgotten", dwelling.device_box(at).id));
        }
    }

    /// The candidate that a claim means: the same in all it says, with its load side in use where it feeds something, and
    /// of several such the one of its price.
    fn candidate_of(&self, at: BoxIndex, claimed: &OpeningClaim) -> Option<usize> {
        let candidates = self.assembled.candidates[at.0].iter().enumerate();
        let same = candidates.filter(|(_, one)| {
            (one.step.name(), one.device.name(), one.box_work.name())
                == (claimed.step.as_str(), claimed.device.as_str(), claimed.box_work.as_str())
        });
        let ranked = same.min_by_key(|(index, one)| {
            let feeds = one.gives != Marks::NONE;
            let priced_so = one.price.total().0 == claimed.price.total_cents;
            (feeds == claimed.load_side_feeds.is_empty(), !priced_so, *index)
        });
        ranked.map(|(index, _)| index)
    }

    fn read_links(&self, claim: &PlanClaim, solution: &mut Solution, faults: &mut Vec<String>) {
        let problem = &self.assembled.problem;
        for claimed in &claim.links {
            let grade = GRADES.iter().position(|size| size.to_string() == claimed.size);
            match (problem.links.get(claimed.number), grade) {
                (Some(_), Some(grade)) => {
                    solution.links.push(ChosenLink { link: claimed.number, forward: claimed.forward, grade });
                }
                (None, _) => faults.push(format!("link {} is none of this survey", claimed.number)),
                (_, None) => {
                    faults.push(format!("link {}: `{}` is no size that is planned", claimed.number, claimed.size))
                }
            }
        }
        solution.links.sort_by_key(|link| link.link);
        // What the links supply follows from them; the checker follows it for itself.
        for _ in 0..solution.links.len() {
            for chosen in &solution.links {
                let link = &problem.links[chosen.link];
                let (tail, head) =
                    if chosen.forward { (link.from.group, link.to.group) } else { (link.to.group, link.from.group) };
                solution.supplied[head] |= solution.supplied[tail];
            }
        }
    }

    /// A fault of the checker with the boxes and circuits that it is about.
    fn in_words(&self, fault: &Fault) -> String {
        let box_at = |(tree, node): (usize, usize)| {
            let at = self.assembled.boxes.get(tree).and_then(|boxes| boxes.get(node));
            at.map_or_else(String::new, |at| format!("box {}", self.facts.dwelling.device_box(*at).id))
        };
        match fault {
            Fault::MarkMissing(at) => format!("{}: it lacks the protection that what is done there needs", box_at(*at)),
            Fault::SupplyNeed(at) => {
                format!("{}: what is done there needs a ground that does not come, or none where one does", box_at(*at))
            }
            Fault::TooManyLandings(at) => format!("{}: it has no room for the conductors that end there", box_at(*at)),
            Fault::CountBehind(at) => format!("{}: its load side feeds more outlets than it may", box_at(*at)),
            Fault::BurdenBehind(at) => format!("{}: more would leak behind it than it bears", box_at(*at)),
            Fault::NotBehindLoad(at) => format!("{}: its load side cannot feed what it is said to feed", box_at(*at)),
            Fault::HungTwice(at) | Fault::BelowItself(at) => {
                format!("{}: the new cables feed it in a ring", box_at(*at))
            }
            Fault::RootBurden(tree) => {
                let trees = self.facts.trees.get(*tree).map(|tree| &tree.circuits);
                let ids = trees.into_iter().flatten().map(|at| self.facts.dwelling.circuit(*at).id.as_str());
                format!(
                    "circuit {}: more would leak behind its panel end than it bears",
                    ids.collect::<Vec<_>>().join("+")
                )
            }
            Fault::WrongGrade(link) | Fault::CannotCarry(link) => {
                format!(
                    "link {link}: its conductor is not of the size that what it grounds asks for, or that it can join"
                )
            }
            Fault::WithoutSupply(link) => format!("link {link}: no ground reaches where it starts"),
            other => other.to_string(),
        }
    }
}
