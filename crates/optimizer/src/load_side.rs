//! Which children to put behind a load side: a knapsack of two weights, solved exactly by keeping what nothing beats.

use crate::weight::{IMPOSSIBLE, Weight, plus};

/// A child that can be put behind the load side.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Candidate {
    pub child: usize,
    pub count: u64,
    pub burden: i64,
    /// What its subtree costs in front of the load side.
    pub in_front: Weight,
    /// What its subtree costs behind the load side.
    pub behind: Weight,
}

/// Some of the candidates decided: what they take and cost, and who is behind.
#[derive(Clone, Copy, Debug)]
struct Label {
    count: u64,
    burden: i64,
    weight: Weight,
    /// The last entry of the list of those behind.
    last: Option<usize>,
}

/// Returns the least that the candidates cost within the limits. Notes who is behind, where asked.
pub(crate) fn least(
    candidates: &[Candidate],
    count_limit: u64,
    burden_limit: i64,
    chosen: Option<&mut Vec<usize>>,
) -> Weight {
    let wanted = || candidates.iter().filter(|candidate| candidate.behind < candidate.in_front);
    let count: u64 = wanted().map(|candidate| candidate.count).sum();
    let burden: i64 = wanted().map(|candidate| candidate.burden).sum();
    if count <= count_limit && burden <= burden_limit {
        if let Some(chosen) = chosen {
            chosen.extend(wanted().map(|candidate| candidate.child));
        }
        return candidates.iter().fold(0, |sum, candidate| plus(sum, candidate.in_front.min(candidate.behind)));
    }
    least_of_some(candidates, count_limit, burden_limit, chosen)
}

fn least_of_some(
    candidates: &[Candidate],
    count_limit: u64,
    burden_limit: i64,
    chosen: Option<&mut Vec<usize>>,
) -> Weight {
    let mut behind: Vec<(usize, Option<usize>)> = Vec::new();
    let mut labels = vec![Label { count: 0, burden: 0, weight: 0, last: None }];
    for candidate in candidates {
        let mut next = Vec::with_capacity(2 * labels.len());
        for label in &labels {
            if candidate.in_front < IMPOSSIBLE {
                next.push(Label { weight: label.weight + candidate.in_front, ..*label });
            }
            let (count, burden) = (label.count + candidate.count, label.burden + candidate.burden);
            if candidate.behind < candidate.in_front && count <= count_limit && burden <= burden_limit {
                behind.push((candidate.child, label.last));
                let last = Some(behind.len() - 1);
                next.push(Label { count, burden, weight: label.weight + candidate.behind, last });
            }
        }
        labels = unbeaten(next);
    }
    let Some(best) = labels.iter().min_by_key(|label| label.weight) else { return IMPOSSIBLE };
    if let Some(chosen) = chosen {
        let mut last = best.last;
        while let Some((child, before)) = last.map(|place| behind[place]) {
            chosen.push(child);
            last = before;
        }
        chosen.sort_unstable();
    }
    best.weight
}

/// Returns the labels than which no other is as good in everything.
fn unbeaten(mut labels: Vec<Label>) -> Vec<Label> {
    labels.sort_by_key(|label| (label.count, label.burden, label.weight));
    let mut kept: Vec<Label> = Vec::with_capacity(labels.len());
    for label in labels {
        if !kept.iter().any(|other| other.burden <= label.burden && other.weight <= label.weight) {
            kept.push(label);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    fn candidate(child: usize, count: u64, burden: i64, in_front: Weight, behind: Weight) -> Candidate {
        Candidate { child, count, burden, in_front, behind }
    }

    /// By hand: of gains 6 for 3, 5 for 2 and 4 for 2 within 4, the last two gain most: 20 − 9 = 11.
    #[test]
    fn the_subset_that_gains_most_within_the_count_is_found() {
        let candidates = [candidate(1, 3, 0, 7, 1), candidate(2, 2, 0, 6, 1), candidate(3, 2, 0, 7, 3)];
        let mut chosen = Vec::new();
        assert_eq!(least(&candidates, 4, i64::MAX, Some(&mut chosen)), 11);
        assert_eq!(chosen, [2, 3]);
    }

    #[test]
    fn what_must_be_behind_and_does_not_fit_cannot_be_had() {
        let candidates = [candidate(1, 1, 5, IMPOSSIBLE, 1)];
        assert_eq!(least(&candidates, 1, 4, None), IMPOSSIBLE);
        assert_eq!(least(&candidates, 1, 5, None), 1);
    }

    #[test]
    fn a_child_stays_in_front_where_behind_is_no_cheaper() {
        let mut chosen = Vec::new();
        assert_eq!(least(&[candidate(1, 1, 1, 4, 4)], 9, 9, Some(&mut chosen)), 4);
        assert!(chosen.is_empty());
    }
}
