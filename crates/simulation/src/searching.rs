//! Searches for one fault of a ground in simulated houses: by what inference advises, and by walking from the panel.

use crate::chance::Chance;
use crate::layout::{Layout, layout};
use crate::sketch::{Size, sketch};
use crate::truth::{BoxTruth, Forced, truth};
use crate::visit::{first_visit, sighted, tested_at};
use diagnosis::belief::{Arrival, GroundRun, Priors, Stakes, Test, Wiring, believe};
use dwelling::{BoxIndex, Dwelling, Feed, Reading};
use std::collections::BTreeSet;

/// What is searched for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
    /// A run's ground that is not connected at one of its ends, though a conductor lies all the way.
    Interrupted,
    /// A jumper from neutral to ground at a receptacle that has a ground terminal.
    Jumper,
}

/// How a search went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Searched {
    /// What was searched for.
    pub fault: Fault,
    /// The boxes of the circuit.
    pub boxes: usize,
    /// The boxes that walking in feeding order from the panel opens, the one with the fault included.
    pub walked: usize,
    /// The boxes that following the advice opens.
    pub opened: usize,
    /// Its readings.
    pub readings: usize,
}

/// More steps than these are no search.
const MOST_STEPS: usize = 400;

/// A search on a circuit of so many boxes with one fault of this kind; nothing where chance finds no such circuit.
///
/// Whoever opens the box with the fault is taken to see it, walking or not. In other boxes what is seen is as uncertain as
/// everywhere in these houses.
#[must_use]
pub fn searched(seed: u64, fault: Fault, boxes: usize, priors: &Priors, stakes: &Stakes) -> Option<Searched> {
    let mut chance = Chance::new(seed);
    let mut scene = (0..1_000).find_map(|_| Scene::drawn(fault, boxes, priors, &mut chance))?;
    let (mut opened, mut readings) = (0, 0);
    let mut made = BTreeSet::new();
    for _ in 0..MOST_STEPS {
        let beliefs = believe(&scene.dwelling, priors);
        let (at, test) =
            beliefs.circuits.iter().find_map(|circuit| circuit.step_to_fault(&scene.dwelling, stakes, &made))?;
        made.insert((at, test));
        if test != Test::OpenBox {
            readings += 1;
            let reading = tested_at(&scene.layout, &scene.truth, at.0, test, &mut chance).ok()?;
            scene.dwelling.boxes[at.0].found.push(reading);
            continue;
        }
        opened += 1;
        if at == scene.seen_in {
            return Some(Searched { fault, boxes, walked: scene.seen_in.0 + 1, opened, readings });
        }
        let ground = Some(sighted(&scene.dwelling, &scene.truth, at.0, &mut chance));
        scene.dwelling.boxes[at.0].found.push(Reading { ground, ..Reading::default() });
    }
    None
}

/// A circuit with one fault, as it was found before anything was opened.
pub(crate) struct Scene {
    pub(crate) dwelling: Dwelling,
    pub(crate) truth: Vec<BoxTruth>,
    pub(crate) layout: Layout,
    /// The box in which the fault is seen.
    seen_in: BoxIndex,
}

impl Scene {
    pub(crate) fn drawn(fault: Fault, boxes: usize, priors: &Priors, chance: &mut Chance) -> Option<Self> {
        let mut dwelling = sketch(Size { circuits: 1, boxes: (boxes, boxes) }, chance);
        let place = chance.below(dwelling.boxes.len());
        let (forced, seen_in) = match fault {
            Fault::Jumper => {
                (Forced::Wiring([Wiring::NeutralJumper, Wiring::ReversedJumper][chance.place_of(&[0.9, 0.1])]), place)
            }
            Fault::Interrupted => {
                let ends = [GroundRun::LooseHere, GroundRun::CutOffHere, GroundRun::LooseBefore];
                let end = ends[chance.place_of(&[0.4, 0.2, 0.4])];
                let parent = match dwelling.boxes[place].fed_by {
                    Some(Feed::Box(parent)) => Some(parent.0),
                    _ => None,
                };
                (Forced::Ground(end), if end == GroundRun::LooseBefore { parent? } else { place })
            }
        };
        let (has_ground, truth) = truth(&dwelling, priors, &[(place, forced)], chance)?;
        let faults = truth.iter().map(|one| usize::from(is_interrupted(one)) + usize::from(is_jumper(one)));
        let only = faults.sum::<usize>() == 1;
        let shows = match fault {
            Fault::Jumper => dwelling.boxes[place].holds.takes_grounding_plug(),
            Fault::Interrupted => shows(&dwelling, &truth, place),
        };
        if !only || !shows {
            return None;
        }
        let layout = layout(&dwelling, has_ground, &truth, chance);
        first_visit(&mut dwelling, &layout, &truth, chance).ok()?;
        Some(Self { dwelling, truth, layout, seen_in: BoxIndex(seen_in) })
    }
}

fn is_interrupted(truth: &BoxTruth) -> bool {
    matches!(truth.ground, GroundRun::LooseHere | GroundRun::CutOffHere | GroundRun::LooseBefore)
}

fn is_jumper(truth: &BoxTruth) -> bool {
    matches!(truth.at.wiring, Wiring::NeutralJumper | Wiring::ReversedJumper)
}

/// Whether some receptacle lacks its ground for the interrupted run to this box, and for that alone.
fn shows(dwelling: &Dwelling, truth: &[BoxTruth], place: usize) -> bool {
    let broken = |one: &BoxTruth| matches!(one.at.arrival, Arrival::Broken(_));
    let mut boxes = dwelling.boxes.iter().zip(truth);
    broken(&truth[place]) && boxes.any(|(device_box, one)| device_box.holds.is_receptacle() && broken(one))
}
