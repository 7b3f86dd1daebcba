//! What does not fit together: readings, sightings and recorded wiring of which one must be wrong.

use super::circuit_belief::{BoxBelief, beliefs_of};
use super::priors::Priors;
use super::stations::{Remembered, Station, Stations, local_trusting, seen_at, sight_trusted};
use dwelling::{BoxIndex, Dwelling};
use std::sync::Arc;

/// Something that was found or recorded, and may be wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Claim {
    /// A set of readings at a box: which of its different sets, in the order taken.
    Reading {
        /// The box.
        at: BoxIndex,
        /// Which set, counted from 0, sets that are alike once.
        set: usize,
    },
    /// What was seen in a box.
    Sighting {
        /// The box.
        at: BoxIndex,
    },
    /// The wiring method recorded for the run to a box.
    Cable {
        /// The box.
        at: BoxIndex,
    },
}

/// Claims that cannot well both be right.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The claim that is likeliest to be wrong.
    pub claim: Claim,
    /// How likely that is.
    pub wrong: f64,
    /// The claim that is likely wrong if that one is right, with how likely it is then; none where nothing else would be.
    pub otherwise: Option<(Claim, f64)>,
}

/// A claim is doubted from here on, where this much speaks against it.
const DOUBTED: f64 = 0.2;

/// What does not fit together on a circuit, each two once, in the order of the boxes.
pub(crate) fn clashes(
    dwelling: &Dwelling,
    stations: &Stations,
    boxes: &[BoxBelief],
    priors: &Priors,
    known: &mut Remembered,
) -> Vec<Clash> {
    let doubted: Vec<(Claim, f64)> = claims(boxes).into_iter().filter(|(_, wrong)| *wrong >= DOUBTED).collect();
    let mut found: Vec<Clash> = Vec::new();
    for (claim, wrong) in doubted {
        let told = found.iter().any(|clash| clash.otherwise.is_some_and(|(other, _)| other == claim));
        if told {
            continue;
        }
        let mut trusting = stations.clone();
        let Some(station) = trusting.all.iter_mut().find(|station| station.at == box_of(claim)) else { continue };
        trust(dwelling, station, claim, priors, known);
        let then = beliefs_of(dwelling, &trusting, priors, known);
        let others = claims(&then).into_iter().filter(|(other, wrong)| *other != claim && *wrong >= DOUBTED);
        let otherwise = others.max_by(|left, right| left.1.total_cmp(&right.1).then(right.0.cmp(&left.0)));
        found.push(Clash { claim, wrong, otherwise });
    }
    found
}

const fn box_of(claim: Claim) -> BoxIndex {
    match claim {
        Claim::Reading { at, .. } | Claim::Sighting { at } | Claim::Cable { at } => at,
    }
}

/// Every claim with how likely it is wrong.
fn claims(boxes: &[BoxBelief]) -> Vec<(Claim, f64)> {
    let of_box = |belief: &BoxBelief| {
        let at = belief.at;
        let readings = belief.mistaken.iter().enumerate().map(move |(set, wrong)| (Claim::Reading { at, set }, *wrong));
        let sighting = belief.misseen.map(|wrong| (Claim::Sighting { at }, wrong));
        readings.chain(sighting).chain([(Claim::Cable { at }, belief.misrecorded)]).collect::<Vec<_>>()
    };
    boxes.iter().flat_map(of_box).collect()
}

/// Takes a claim for right.
fn trust(dwelling: &Dwelling, station: &mut Station, claim: Claim, priors: &Priors, known: &mut Remembered) {
    let at = station.at;
    match claim {
        Claim::Reading { set, .. } => station.local = Arc::new(local_trusting(dwelling, at, priors, known, Some(set))),
        Claim::Sighting { .. } => {
            let cable = dwelling.cable_to(at);
            station.sight = seen_at(dwelling, at).map(|seen| Arc::new(sight_trusted(seen, cable)));
        }
        Claim::Cable { .. } => station.ground = priors.by_record(dwelling.cable_to(at), dwelling.job.built),
    }
}
