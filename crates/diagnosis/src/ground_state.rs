//! The ground at a box: wiring method, sightings and readings weighed together.

use crate::condition::Certainty::{self, Likely, Possible, Shown};
use crate::evidence::Case;
use crate::false_ground::jumper_in_group;
use crate::finding::GroundState;
use crate::ground_reading::GroundReading;
use crate::grounding_path::{broken_upstream, is_tied, lacks_only_the_bar, seen_against_wiring};
use dwelling::{BoxIndex, GroundFact, GroundPath, GroundSeen, Reach};

/// The ground at every box, in box order.
pub(crate) fn ground_states(case: &Case) -> Vec<GroundState> {
    case.dwelling.box_indices().map(|index| ground_at(case, index)).collect()
}

fn state(fact: GroundFact, sure: Certainty, because: impl Into<String>) -> GroundState {
    GroundState { fact, sure, because: vec![because.into()] }
}

/// The ground at a box: what decides whatever else speaks, else what its bonded group lets it be.
fn ground_at(case: &Case, index: BoxIndex) -> GroundState {
    let mut found = joined(case, index).or_else(|| damaged(case, index)).unwrap_or_else(|| match case.reach(index) {
        Reach::Panel => with_a_path(case, index),
        Reach::Disputed => with_a_disputed_path(case, index),
        Reach::Unknown => with_an_unknown_path(case, index),
        Reach::Isolated => without_a_path(case, index),
    });
    found.because.push(format!("wiring method: {}", case.dwelling.cable_to(index)));
    if let Some(seen) = case.evidence(index).seen {
        found.because.push(format!("seen in the box: {seen}"));
    }
    found.because.extend(case.evidence(index).all_words());
    found
}

/// Neutral and ground joined here, or in a box this one is tied to.
fn joined(case: &Case, index: BoxIndex) -> Option<GroundState> {
    let evidence = case.evidence(index);
    if evidence.seen == Some(GroundSeen::Jumper) {
        return Some(state(GroundFact::False, Shown, "a jumper to the neutral was seen"));
    }
    match evidence.ground {
        GroundReading::ReversedJoined(sure) => {
            Some(state(GroundFact::False, sure, "to an independent earth the ground terminal is hot"))
        }
        GroundReading::Joined(sure) => {
            Some(state(GroundFact::False, sure, "neutral–ground does not rise under load: the two are joined nearby"))
        }
        _ => {
            let source = jumper_in_group(case, index)?;
            let because = format!("its grounding path leads to `{}`, where a jumper was seen", case.id(source));
            Some(state(GroundFact::False, Likely, because))
        }
    }
}

/// A grounding conductor or metal seen in the box that is not sound.
fn damaged(case: &Case, index: BoxIndex) -> Option<GroundState> {
    let evidence = case.evidence(index);
    let cable = case.dwelling.cable_to(index).ground_path();
    match evidence.seen? {
        GroundSeen::CutOff => Some(state(GroundFact::CutOff, Shown, "a conductor was cut off at the sheath")),
        GroundSeen::Loose | GroundSeen::Unconnected => Some(match case.reach(index) {
            Reach::Isolated if is_tied(case, index) => {
                state(GroundFact::None, Likely, "the loose conductor leads only to boxes that reach no ground")
            }
            Reach::Isolated => state(
                GroundFact::Unknown,
                Possible,
                "a loose conductor was seen where the wiring method carries none: where it leads takes following it",
            ),
            Reach::Unknown => {
                state(GroundFact::Loose, Possible, "a loose conductor was seen; where it leads is not known")
            }
            Reach::Panel | Reach::Disputed => state(GroundFact::Loose, Shown, "a loose conductor was seen"),
        }),
        GroundSeen::MetalLoose if cable == GroundPath::Yes => {
            Some(state(GroundFact::Loose, Likely, "the metal that should ground the box has no sound connector"))
        }
        GroundSeen::MetalLoose if cable != GroundPath::No => Some(state(
            GroundFact::Unknown,
            Possible,
            "metal enters without a sound connector, and its make is not known",
        )),
        GroundSeen::PipeOrRod if cable == GroundPath::No => {
            Some(state(GroundFact::None, Likely, "a pipe or a rod is no path back to the panel"))
        }
        GroundSeen::PipeOrRod => Some(state(
            GroundFact::Unknown,
            Possible,
            "the terminal leads to a pipe or a rod; whether the cable brings a ground too takes looking",
        )),
        GroundSeen::NoneSeen if evidence.speaks_for_ground() => Some(state(
            GroundFact::Unknown,
            Possible,
            "no ground was seen in the box, and yet it reads as if there were one",
        )),
        GroundSeen::NoneSeen if matches!(cable, GroundPath::Yes | GroundPath::Disputed) => Some(state(
            GroundFact::None,
            Likely,
            "the box was opened and no ground was there, though the wiring method should bring one",
        )),
        GroundSeen::NoneSeen => Some(state(GroundFact::None, Shown, "the box was opened and no ground was there")),
        _ => None,
    }
}

/// The wiring method is whole up to the panel's ground bar: something at the box must agree.
fn with_a_path(case: &Case, index: BoxIndex) -> GroundState {
    let evidence = case.evidence(index);
    let seen = matches!(evidence.seen, Some(GroundSeen::Connected | GroundSeen::MetalTight));
    match evidence.ground {
        GroundReading::Open(sure) => state(
            GroundFact::Loose,
            sure.max(Likely),
            "the wiring method brings a ground and none arrives: a joint is open",
        ),
        GroundReading::Poor(sure) => state(GroundFact::Poor, sure, "the ground's impedance is high"),
        GroundReading::Mixed => state(GroundFact::Unknown, Possible, "readings speak for a ground and against it"),
        _ if broken_upstream(case, index).is_some() && evidence.ground != GroundReading::Separate => {
            let at = broken_upstream(case, index).map_or_else(String::new, |at| case.id(at).to_owned());
            if evidence.speaks_for_ground() {
                return state(
                    GroundFact::Unknown,
                    Possible,
                    format!("it reads right, but the ground is not sound at `{at}`"),
                );
            }
            state(GroundFact::Loose, Likely, format!("the ground is not sound upstream, at `{at}`"))
        }
        GroundReading::Separate if seen => {
            state(GroundFact::Connected, Shown, "wiring method, sighting and a loaded test agree")
        }
        GroundReading::Separate => state(GroundFact::Connected, Likely, "wiring method and a loaded test agree"),
        GroundReading::Right => {
            let with = if seen { "sighting and unloaded reading" } else { "unloaded reading" };
            state(GroundFact::Connected, Likely, format!("wiring method, {with} agree; a loaded test would show it"))
        }
        _ if seen => state(GroundFact::Connected, Likely, "wiring method and sighting agree"),
        _ => state(
            GroundFact::Unknown,
            Possible,
            "the wiring method brings a ground, but nobody has read or looked here",
        ),
    }
}

/// A path is there that the authority may not accept.
fn with_a_disputed_path(case: &Case, index: BoxIndex) -> GroundState {
    let evidence = case.evidence(index);
    match evidence.ground {
        GroundReading::Open(sure) => {
            state(GroundFact::Loose, sure.max(Likely), "a thin ground belongs to the cable and none arrives")
        }
        GroundReading::Poor(sure) => state(GroundFact::Poor, sure, "the ground's impedance is high"),
        _ => {
            let supported = evidence.seen.is_some() || evidence.speaks_for_ground();
            let sure = if supported { Likely } else { Possible };
            state(
                GroundFact::Disputed,
                sure,
                "the cable's ground is thinner than today's table asks: ask the authority",
            )
        }
    }
}

/// Whether the group reaches the panel is not known.
fn with_an_unknown_path(case: &Case, index: BoxIndex) -> GroundState {
    let evidence = case.evidence(index);
    let own = case.dwelling.ground_path_to(index) == GroundPath::Yes;
    match evidence.ground {
        GroundReading::Poor(sure) if own => {
            state(GroundFact::Poor, sure.max(Likely), "what ground there is has a high impedance")
        }
        // A high impedance is what metal without a bonding strip reads: it makes no ground of a doubtful method.
        GroundReading::Poor(_) => state(
            GroundFact::Unknown,
            Possible,
            "what leads to ground has a high impedance, and its wiring method may be no ground at all",
        ),
        GroundReading::Separate if own && evidence.seen == Some(GroundSeen::Connected) => state(
            GroundFact::Connected,
            Likely,
            "a grounding conductor was seen connected, and a loaded test shows that it goes back by a way of its own",
        ),
        GroundReading::Open(_) => {
            state(GroundFact::Unknown, Possible, "no ground arrives, but the box may hold one that is loose or cut off")
        }
        _ if evidence.speaks_for_ground() => state(
            GroundFact::Unknown,
            Possible,
            "it reads right, but nobody knows that a path to the panel is there: a reading alone proves no ground",
        ),
        _ => state(GroundFact::Unknown, Possible, "whether a path to the panel is there takes looking or testing"),
    }
}

/// Its grounding path reaches nothing.
fn without_a_path(case: &Case, index: BoxIndex) -> GroundState {
    let evidence = case.evidence(index);
    if evidence.speaks_for_ground() || matches!(evidence.ground, GroundReading::Poor(_)) {
        let because =
            "it reads as if it had a ground, but no wiring method brings one: a jumper, a pipe or a later wire";
        return state(GroundFact::Unknown, Possible, because);
    }
    if evidence.taken.iter().any(|(reading, _)| reading.tester_trips_gfci == Some(true)) {
        let because = "a tester's GFCI button found something to leak to, and no wiring method brings a ground";
        return state(GroundFact::Unknown, Possible, because);
    }
    if seen_against_wiring(case, index) {
        let because =
            "a ground was seen connected where the wiring method carries none: where it leads takes following it";
        return state(GroundFact::Unknown, Possible, because);
    }
    if lacks_only_the_bar(case, index) {
        let because =
            "the cable brings a grounding conductor, but its panel has no ground bar: see where it ends there";
        return state(GroundFact::Unknown, Possible, because);
    }
    match evidence.ground {
        GroundReading::Open(Shown) => state(GroundFact::None, Shown, "none arrives, and no wiring method brings one"),
        _ if is_tied(case, index) => state(
            GroundFact::None,
            Likely,
            "its grounding path leads only to boxes that reach no ground: one bonded group",
        ),
        _ => state(GroundFact::None, Likely, "no wiring method brings a ground here"),
    }
}
