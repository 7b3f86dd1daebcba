//! The cheapest way to find out enough: which test first, and after each outcome which next, or to stop and act.

/// What may be true, what may be tested, and what acting costs.
#[derive(Clone, Debug, Default)]
pub(crate) struct Question {
    /// How likely each case is; they need not add up to one.
    pub(crate) odds: Vec<f64>,
    /// The tests.
    pub(crate) tests: Vec<Trial>,
    /// What is to be decided in the end, each by itself.
    pub(crate) decisions: Vec<Decision>,
}

/// A test: what it costs and what comes out of it, in each case.
#[derive(Clone, Debug)]
pub(crate) struct Trial {
    pub(crate) minutes: Vec<f64>,
    pub(crate) outcomes: Vec<usize>,
}

/// What each way of acting costs in each case, by way.
#[derive(Clone, Debug)]
pub(crate) struct Decision {
    pub(crate) costs: Vec<Vec<f64>>,
}

/// What to do, from some set of cases on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Policy {
    /// Act: what it is expected to cost, and the cases that are left.
    Act {
        /// The expected cost of acting wrongly.
        cost: f64,
        /// The cases left, by their places.
        cases: Vec<usize>,
    },
    /// Test, and go on by the outcome.
    Test {
        /// Which test.
        test: usize,
        /// What it is expected to cost itself.
        minutes: f64,
        /// What this and all that follows is expected to cost.
        cost: f64,
        /// By outcome: it, its share, and what follows.
        then: Vec<(usize, f64, Policy)>,
    },
}

/// A set of cases, a bit for each.
type Cases = u32;

/// More cases than this are not told apart.
pub(crate) const MOST_CASES: usize = 12;

/// The policy that costs the least in expectation, tests and acting together; of two alike the one that acts at once, then
/// the one with the earlier test.
///
/// Exact over the first [`MOST_CASES`] cases: the best policy from each set of cases is found once, from those of the sets
/// that a test parts it into.
pub(crate) fn best_policy(question: &Question) -> Policy {
    let count = question.odds.len().min(MOST_CASES);
    let all = (1_u32 << count) - 1;
    let mut search = Search::of(question, count);
    search.policy(all)
}

struct Search<'q> {
    question: &'q Question,
    /// How likely each set of cases is.
    odds: Vec<f64>,
    /// The tests that count, by their places: of those that tell the same apart at the same cost the first.
    tests: Vec<usize>,
    /// The least cost from each set of cases on, with the test to begin with, where it was found.
    known: Vec<Option<(f64, Option<usize>)>>,
}

impl<'q> Search<'q> {
    fn of(question: &'q Question, count: usize) -> Self {
        let odds = (0..1_u32 << count).map(|cases| odds_of(question, cases)).collect();
        Self { question, odds, tests: different(&question.tests, count), known: vec![None; 1 << count] }
    }

    fn least(&mut self, cases: Cases) -> f64 {
        if let Some((cost, _)) = self.known[cases as usize] {
            return cost;
        }
        let whole = self.odds[cases as usize];
        let mut best = (act(self.question, cases), None);
        for place in 0..self.tests.len() {
            let number = self.tests[place];
            let test = &self.question.tests[number];
            let mut cost = self.minutes(test, cases);
            if cost >= best.0 {
                continue;
            }
            let (parts, count) = parts(test, cases);
            if count < 2 {
                continue;
            }
            for (_, part) in &parts[..count] {
                cost += self.odds[*part as usize] / whole * self.least(*part);
                if cost >= best.0 {
                    break;
                }
            }
            if cost < best.0 {
                best = (cost, Some(number));
            }
        }
        self.known[cases as usize] = Some(best);
        best.0
    }

    /// What a test is expected to cost where these cases are left.
    fn minutes(&self, test: &Trial, cases: Cases) -> f64 {
        let sum: f64 = members(cases).map(|case| self.question.odds[case] * test.minutes[case]).sum();
        sum / self.odds[cases as usize]
    }

    fn policy(&mut self, cases: Cases) -> Policy {
        self.least(cases);
        let Some((cost, test)) = self.known[cases as usize] else {
            return Policy::Act { cost: 0.0, cases: members(cases).collect() };
        };
        let Some(test) = test else { return Policy::Act { cost, cases: members(cases).collect() } };
        let whole = self.odds[cases as usize];
        let minutes = self.minutes(&self.question.tests[test], cases);
        let mut then = Vec::new();
        let (mut parts, count) = parts(&self.question.tests[test], cases);
        parts[..count].sort_unstable();
        for (outcome, part) in &parts[..count] {
            then.push((*outcome, self.odds[*part as usize] / whole, self.policy(*part)));
        }
        Policy::Test { test, minutes, cost, then }
    }
}

/// The tests that part some cases, without those that part them like one before at no less cost in any case.
fn different(tests: &[Trial], count: usize) -> Vec<usize> {
    let mut found: Vec<(Vec<usize>, usize)> = Vec::new();
    for (number, test) in tests.iter().enumerate() {
        // The first case that comes out alike stands for an outcome, whatever its name.
        let first = |case: usize| test.outcomes.iter().position(|one| *one == test.outcomes[case]).unwrap_or(case);
        let parted: Vec<usize> = (0..count).map(first).collect();
        if parted.iter().all(|first| *first == 0) {
            continue;
        }
        let no_less = |other: usize| test.minutes.iter().zip(&tests[other].minutes).all(|(one, other)| one >= other);
        if !found.iter().any(|(like, other)| *like == parted && no_less(*other)) {
            found.push((parted, number));
        }
    }
    found.into_iter().map(|(_, number)| number).collect()
}

fn members(cases: Cases) -> impl Iterator<Item = usize> {
    (0..MOST_CASES).filter(move |case| cases & (1 << case) != 0)
}

fn odds_of(question: &Question, cases: Cases) -> f64 {
    members(cases).map(|case| question.odds[case]).sum()
}

/// What a test parts a set of cases into, by outcome, and how many parts these are.
fn parts(test: &Trial, cases: Cases) -> ([(usize, Cases); MOST_CASES], usize) {
    let mut parts = [(0, 0); MOST_CASES];
    let mut count = 0;
    for case in members(cases) {
        let outcome = test.outcomes[case];
        let at = parts[..count].iter().position(|(one, _)| *one == outcome).unwrap_or(count);
        parts[at].0 = outcome;
        parts[at].1 |= 1 << case;
        count = count.max(at + 1);
    }
    (parts, count)
}

/// What acting now is expected to cost: the least of each decision.
fn act(question: &Question, cases: Cases) -> f64 {
    let whole = odds_of(question, cases);
    let of_decision = |decision: &Decision| {
        let of_way = |costs: &Vec<f64>| members(cases).map(|case| question.odds[case] * costs[case]).sum::<f64>();
        decision.costs.iter().map(of_way).fold(f64::INFINITY, f64::min)
    };
    question.decisions.iter().map(of_decision).sum::<f64>() / whole
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::BTreeMap;

    /// What a policy costs in each case, tests and acting; acting is by the choice that the policy makes for all its cases.
    type Costs = BTreeMap<usize, f64>;

    /// What every policy there is costs, case by case, from a set of cases on, without testing anything twice.
    fn all_policies(question: &Question, cases: &[usize], left: &[usize]) -> Vec<Costs> {
        let mut found: Vec<Costs> = vec![cases.iter().map(|case| (*case, 0.0)).collect()];
        for decision in &question.decisions {
            let mut longer = Vec::new();
            for costs in &found {
                for way in &decision.costs {
                    longer.push(costs.iter().map(|(case, cost)| (*case, cost + way[*case])).collect());
                }
            }
            found = longer;
        }
        for test in left {
            let rest: Vec<usize> = left.iter().copied().filter(|other| other != test).collect();
            let trial = &question.tests[*test];
            let mut outcomes: Vec<usize> = cases.iter().map(|case| trial.outcomes[*case]).collect();
            outcomes.sort_unstable();
            outcomes.dedup();
            let mut together: Vec<Costs> = vec![Costs::new()];
            for outcome in outcomes {
                let part: Vec<usize> = cases.iter().copied().filter(|case| trial.outcomes[*case] == outcome).collect();
                let of_part = all_policies(question, &part, &rest);
                let mut longer = Vec::new();
                for costs in &together {
                    for more in &of_part {
                        longer.push(costs.iter().chain(more).map(|(case, cost)| (*case, *cost)).collect());
                    }
                }
                together = longer;
            }
            for costs in together {
                found.push(costs.into_iter().map(|(case, cost)| (case, cost + trial.minutes[case])).collect());
            }
        }
        found
    }

    fn cost_of(policy: &Policy) -> f64 {
        match policy {
            Policy::Act { cost, .. } | Policy::Test { cost, .. } => *cost,
        }
    }

    prop_compose! {
        fn question()(cases in 1_usize..=4, tests in 0_usize..=2, decisions in 1_usize..=2)(
            odds in prop::collection::vec(1_u32..100, cases),
            tests in prop::collection::vec(
                (prop::collection::vec(1_u32..30, cases), prop::collection::vec(0_usize..3, cases)), tests),
            decisions in prop::collection::vec(
                prop::collection::vec(prop::collection::vec(0_u32..100, cases), 2), decisions),
        ) -> Question {
            let number = |one: u32| f64::from(one);
            Question {
                odds: odds.into_iter().map(number).collect(),
                tests: tests.into_iter().map(|(minutes, outcomes)| Trial {
                    minutes: minutes.into_iter().map(number).collect(),
                    outcomes,
                }).collect(),
                decisions: decisions.into_iter().map(|ways| Decision {
                    costs: ways.into_iter().map(|costs| costs.into_iter().map(number).collect()).collect(),
                }).collect(),
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

        /// By hand: every policy is written out, what it costs in each case added up, and the cheapest taken.
        #[test]
        fn it_is_the_cheapest_of_all_policies(question in question()) {
            let cases: Vec<usize> = (0..question.odds.len()).collect();
            let tests: Vec<usize> = (0..question.tests.len()).collect();
            let whole: f64 = question.odds.iter().sum();
            let expected = |costs: &Costs| {
                costs.iter().map(|(case, cost)| question.odds[*case] * cost).sum::<f64>() / whole
            };
            let all = all_policies(&question, &cases, &tests);
            let least = all.iter().map(expected).fold(f64::INFINITY, f64::min);
            let said = cost_of(&best_policy(&question));
            prop_assert!((said - least).abs() < 1e-9, "{said} and {least} of {} policies", all.len());
        }
    }

    /// By hand: halves of equal odds, 100 minutes lost if wrong, a test of 10 minutes that tells: 10, against 50.
    #[test]
    fn a_test_that_tells_is_made_where_it_costs_less_than_being_wrong() {
        let decision = Decision { costs: vec![vec![0.0, 100.0], vec![100.0, 0.0]] };
        let trial = Trial { minutes: vec![10.0; 2], outcomes: vec![0, 1] };
        let question = Question { odds: vec![1.0, 1.0], tests: vec![trial], decisions: vec![decision] };
        let policy = best_policy(&question);
        assert!((cost_of(&policy) - 10.0).abs() < 1e-12);
        assert!(matches!(policy, Policy::Test { test: 0, .. }));
    }
}
