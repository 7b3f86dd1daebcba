//! One order that fits, where there are too many boxes to look at all: each time the likeliest run that may be added.

use super::question::{Node, Question};

/// One order that fits, by no means the likeliest; nothing where adding runs one by one comes to none.
pub(super) fn one_order(question: &Question) -> Option<Vec<Node>> {
    let root = question.root();
    let mut feeds: Vec<Option<Node>> = vec![None; question.boxes()];
    let mut runs = vec![0; root + 1];
    let mut placed: Vec<Node> = Vec::new();
    place(question, &mut feeds, &mut runs, &mut placed, root);
    while placed.len() <= question.boxes() {
        let mut best: Option<(f64, Node, usize)> = None;
        for head in question.unknown().into_iter().filter(|head| feeds[*head].is_none()) {
            for feed in &placed {
                let more = question.onward[*feed].share(runs[*feed] + 1);
                let fewer = question.onward[*feed].share(runs[*feed]);
                // A number of runs that cannot stay may be on the way to one that can.
                let gain = if fewer > 0.0 { more / fewer } else { more.max(f64::MIN_POSITIVE) };
                let weight = question.weight[*feed][head] * gain;
                if weight > 0.0 && best.is_none_or(|(other, ..)| weight > other) && may(question, &feeds, head, *feed) {
                    best = Some((weight, *feed, head));
                }
            }
        }
        let (_, feed, head) = best?;
        feeds[head] = Some(feed);
        runs[feed] += 1;
        place(question, &mut feeds, &mut runs, &mut placed, head);
    }
    let feeds: Vec<Node> = feeds.into_iter().collect::<Option<_>>()?;
    (question.weight_of(&feeds) > 0.0).then_some(feeds)
}

/// Counts a node as placed, and all that hangs on it by known runs.
fn place(question: &Question, feeds: &mut [Option<Node>], runs: &mut [usize], placed: &mut Vec<Node>, node: Node) {
    let mut next = vec![node];
    while let Some(node) = next.pop() {
        placed.push(node);
        for fed in (0..question.boxes()).filter(|at| question.known[*at] == Some(node)) {
            feeds[fed] = Some(node);
            runs[node] += 1;
            next.push(fed);
        }
    }
}

/// Whether a head may be fed from here: all that must lie above its part does, and nothing that must not.
fn may(question: &Question, feeds: &[Option<Node>], head: usize, feed: Node) -> bool {
    let mut above = Vec::new();
    let mut at = Some(feed);
    while let Some(node) = at.filter(|node| *node != question.root()) {
        above.push(node);
        at = feeds[node];
    }
    let in_part = |at: usize| question.head_of(at) == Some(head);
    question.facts.iter().filter(|fact| in_part(fact.below)).all(|fact| {
        let within = in_part(fact.above) && question.known_above(fact.above, fact.below);
        (within || above.contains(&fact.above)) == fact.holds
    })
}
