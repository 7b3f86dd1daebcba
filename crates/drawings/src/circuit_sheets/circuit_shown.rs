//! What drawings of circuits show: the dwelling, what is believed of it, and what to do next on each circuit.

use super::belief_words as words;
use diagnosis::belief::{Advice, Beliefs, BoxBelief, CircuitBelief, Claim, Test};
use dwelling::{BoxIndex, CircuitIndex, Dwelling, Feed};
use std::collections::BTreeMap;

/// Clashes as they are told at one box: their numbers in the dwelling, and the words.
type ToldClash = (String, String);

/// Everything that drawings of circuits show.
pub(crate) struct CircuitsShown<'a> {
    pub(crate) dwelling: &'a Dwelling,
    beliefs: BTreeMap<BoxIndex, &'a BoxBelief>,
    clashes: BTreeMap<BoxIndex, Vec<ToldClash>>,
    /// By box: the test to make next on its circuit, where it is made here and saves more minutes than it takes.
    next: BTreeMap<BoxIndex, &'a Advice>,
    /// By box: the opening of the box that is worth most on its circuit, where something else comes first.
    opened_first: BTreeMap<BoxIndex, &'a Advice>,
    circuits: &'a [CircuitBelief],
}

impl<'a> CircuitsShown<'a> {
    pub(crate) fn of(dwelling: &'a Dwelling, beliefs: &'a Beliefs, advice: &'a [Advice]) -> Self {
        let of_boxes = beliefs.circuits.iter().flat_map(|circuit| &circuit.boxes).map(|belief| (belief.at, belief));
        let (mut next, mut opened_first) = (BTreeMap::new(), BTreeMap::new());
        for circuit in &beliefs.circuits {
            let is_worth_it = |advice: &&Advice| advice.rate() >= 1.0;
            let is_on_it = |advice: &&Advice| circuit.boxes.iter().any(|belief| belief.at == advice.at);
            let is_here = |advice: &&Advice| is_worth_it(advice) && is_on_it(advice);
            let first = advice.iter().find(is_here);
            let opened = advice.iter().filter(is_here).find(|advice| advice.test == Test::OpenBox);
            next.extend(first.map(|advice| (advice.at, advice)));
            let opened = opened.filter(|_| first.is_some_and(|first| first.test != Test::OpenBox));
            opened_first.extend(opened.map(|advice| (advice.at, advice)));
        }
        let (beliefs, circuits) = (of_boxes.collect(), beliefs.circuits.as_slice());
        Self { dwelling, beliefs, clashes: told_clashes(dwelling, circuits), next, opened_first, circuits }
    }

    pub(crate) fn belief(&self, at: BoxIndex) -> Option<&BoxBelief> {
        self.beliefs.get(&at).copied()
    }

    pub(crate) fn next_at(&self, at: BoxIndex) -> Option<&Advice> {
        self.next.get(&at).copied()
    }

    pub(crate) fn opened_first_at(&self, at: BoxIndex) -> Option<&Advice> {
        self.opened_first.get(&at).copied()
    }

    pub(crate) fn clashes_at(&self, at: BoxIndex) -> Vec<ToldClash> {
        self.clashes.get(&at).cloned().unwrap_or_default()
    }

    /// Whether no state of these circuits reads as it was found.
    pub(crate) fn reads_as_nothing(&self, circuits: &[CircuitIndex]) -> bool {
        self.circuits.iter().any(|belief| belief.circuits == circuits && belief.boxes.is_empty())
    }

    /// What feeds a box, in words.
    pub(crate) fn feed_in_words(&self, feed: Option<Feed>) -> String {
        match feed {
            Some(Feed::Panel(panel)) => format!("home run to panel {}", self.dwelling.panel(panel).id),
            Some(Feed::Box(parent)) => format!("fed by {}", self.dwelling.device_box(parent).id),
            None => "fed by ?".to_owned(),
        }
    }
}

/// The clashes by box, each told at both its boxes; what many others do not fit is told once.
fn told_clashes(dwelling: &Dwelling, circuits: &[CircuitBelief]) -> BTreeMap<BoxIndex, Vec<ToldClash>> {
    let mut told: BTreeMap<BoxIndex, Vec<ToldClash>> = BTreeMap::new();
    let mut others: BTreeMap<Claim, Vec<(usize, Claim)>> = BTreeMap::new();
    for (position, clash) in circuits.iter().flat_map(|circuit| &circuit.clashes).enumerate() {
        let number = position + 1;
        let mut says = format!("{} {} wrong", words::claim(dwelling, clash.claim), words::percent(clash.wrong));
        if let Some((other, then)) = clash.otherwise {
            says.push_str(&format!("; if right, {} {} wrong", words::claim(dwelling, other), words::percent(then)));
            if box_of(other) != box_of(clash.claim) {
                others.entry(other).or_default().push((number, clash.claim));
            }
        }
        told.entry(box_of(clash.claim)).or_default().push((number.to_string(), says));
    }
    for (other, against) in others {
        let numbers: Vec<String> = against.iter().map(|(number, _)| number.to_string()).collect();
        let numbers = match numbers.as_slice() {
            [first, _, .., last] => format!("{first}-{last}"),
            few => few.join(" "),
        };
        let against: Vec<String> = against.iter().map(|(_, claim)| words::claim(dwelling, *claim)).collect();
        let says = format!("{} does not fit {}", words::claim(dwelling, other), against.join(", "));
        told.entry(box_of(other)).or_default().push((numbers, says));
    }
    told
}

const fn box_of(claim: Claim) -> BoxIndex {
    match claim {
        Claim::Reading { at, .. } | Claim::Sighting { at } | Claim::Cable { at } => at,
    }
}
