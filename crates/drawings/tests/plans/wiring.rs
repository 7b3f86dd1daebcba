//! Wiring drawings held against the wiring that a plan leaves: what hangs together, what must not, and what is drawn.

use crate::generated::survey;
use crate::legible::hold_words_free;
use crate::reading::{EXAMPLES, dwelling, number};
use drawings::{
    BoxWiring, CablePart, Carries, End, EndKind, FarEnd, JointState, OpenBecause, Side, drawn_wiring, wiring_as_found,
    wiring_as_planned,
};
use dwelling::{BoxIndex, Dwelling, Feed, Reach};
use estimate::{PriceBook, Task};
use remedies::{Device, Planned, work_first};
use roxmltree::Document;
use rulebook::{CodeInForce, Edition};
use std::collections::{BTreeMap, BTreeSet};

/// A place in the wiring of the whole dwelling.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Place {
    In(usize, End),
    PanelHot(String),
    PanelNeutral,
    PanelGround,
}

/// What hangs together, as read from the values of all drawings of a dwelling.
#[derive(Default)]
struct Network {
    joined: BTreeMap<Place, BTreeSet<Place>>,
}

impl Network {
    /// The wiring of a plan; what passes through a device from LINE to LOAD counts where that is asked for.
    fn of(dwelling: &Dwelling, wirings: &[BoxWiring], through_devices: bool) -> Self {
        let mut network = Self::default();
        for (at, wiring) in wirings.iter().enumerate() {
            for joint in wiring.joints.iter().filter(|joint| joint.state != JointState::TakeOut) {
                for end in &joint.ends[1..] {
                    network.join(Place::In(at, joint.ends[0]), Place::In(at, *end));
                }
            }
            for carries in [Carries::Hot, Carries::Neutral] {
                let terminal =
                    |side| Place::In(at, End { kind: EndKind::Terminal, cable: None, side: Some(side), carries });
                if through_devices && wiring.protective {
                    network.join(terminal(Side::Line), terminal(Side::Load));
                }
            }
            for (position, cable) in wiring.cables.iter().enumerate() {
                let comes_in = matches!(cable.part, CablePart::Line | CablePart::Ground);
                for carries in cable.conductors.iter().filter(|_| comes_in) {
                    let here = Place::In(at, conductor(position, *carries));
                    if let Some(there) = other_end(dwelling, wirings, (wiring, position), *carries) {
                        network.join(here, there);
                    }
                }
            }
        }
        network
    }

    fn join(&mut self, one: Place, other: Place) {
        self.joined.entry(one.clone()).or_default().insert(other.clone());
        self.joined.entry(other).or_default().insert(one);
    }

    fn reached(&self, from: &Place) -> BTreeSet<Place> {
        let mut reached = BTreeSet::from([from.clone()]);
        let mut next = vec![from.clone()];
        while let Some(place) = next.pop() {
            for other in self.joined.get(&place).into_iter().flatten() {
                if reached.insert(other.clone()) {
                    next.push(other.clone());
                }
            }
        }
        reached
    }
}

fn conductor(cable: usize, carries: Carries) -> End {
    End { kind: EndKind::Conductor, cable: Some(cable), side: None, carries }
}

/// Where a conductor that comes in begins.
fn other_end(
    dwelling: &Dwelling,
    wirings: &[BoxWiring],
    (wiring, position): (&BoxWiring, usize),
    carries: Carries,
) -> Option<Place> {
    let cable = &wiring.cables[position];
    let circuit = if carries == Carries::OtherHot { &wiring.other_circuit } else { &wiring.circuit };
    match cable.far_end {
        FarEnd::Panel | FarEnd::Source => Some(match carries {
            Carries::Hot | Carries::OtherHot => Place::PanelHot(circuit.clone()?),
            Carries::Neutral => Place::PanelNeutral,
            Carries::Ground => Place::PanelGround,
        }),
        FarEnd::Box => {
            let from = dwelling.box_named(cable.to.as_ref()?)?;
            let there = &wirings[from.0];
            let leads_here = |(_, other): &(usize, &drawings::WiredCable)| match cable.part {
                CablePart::Ground => other.part == CablePart::GroundOnward,
                _ => {
                    matches!(other.part, CablePart::Onward | CablePart::Load)
                        && other.to.as_ref() == Some(&wiring.box_id)
                }
            };
            let candidates: Vec<_> = there.cables.iter().enumerate().filter(leads_here).collect();
            let same_way = candidates.iter().find(|(_, other)| other.route == cable.route);
            let (number, _) = same_way.or(candidates.first()).unwrap_or_else(|| {
                panic!("{} has no cable to {}: {there:?}", there.box_id, wiring.box_id);
            });
            let carries_there = match carries {
                Carries::Hot | Carries::OtherHot if there.circuit == *circuit => Carries::Hot,
                Carries::Hot | Carries::OtherHot => Carries::OtherHot,
                same => same,
            };
            Some(Place::In(from.0, conductor(*number, carries_there)))
        }
        FarEnd::Unknown => None,
    }
}

fn planned(dwelling: &Dwelling) -> Planned<'_> {
    let edition = dwelling.job.edition.and_then(Edition::of_year).unwrap_or(Edition::Nec2020);
    Planned::of(dwelling, CodeInForce::published(edition), &PriceBook::demo())
        .unwrap_or_else(|fault| panic!("{fault:?}"))
}

/// The feeding order above a box as it is known, itself last; none where it does not reach the panel on one set of circuits.
fn way_to(wirings: &[BoxWiring], dwelling: &Dwelling, at: BoxIndex) -> Option<Vec<BoxIndex>> {
    let mut way = vec![at];
    loop {
        let wiring = &wirings[way[0].0];
        let line = wiring.cables.iter().find(|cable| cable.part == CablePart::Line)?;
        match line.far_end {
            FarEnd::Panel => return Some(way),
            FarEnd::Box => way.insert(0, dwelling.box_named(line.to.as_ref()?)?),
            FarEnd::Source | FarEnd::Unknown => return None,
        }
    }
}

/// Every end of a wiring stands in one joint or is open, and nothing else does; jumpers come besides.
fn hold_whole(wiring: &BoxWiring) {
    let mut ends: BTreeMap<End, usize> = BTreeMap::new();
    let jumper = |ends: &[End]| ends.iter().all(|end| end.kind != EndKind::Conductor && end.kind != EndKind::BoxMetal);
    let of_joints = wiring.joints.iter().filter(|joint| !jumper(&joint.ends) || joint.ends.len() > 2);
    for end in of_joints.flat_map(|joint| &joint.ends).chain(wiring.open_ends.iter().map(|open| &open.end)) {
        *ends.entry(*end).or_default() += 1;
    }
    assert!(ends.values().all(|count| *count == 1), "{wiring:#?}");
    for (position, cable) in wiring.cables.iter().enumerate() {
        for carries in &cable.conductors {
            assert!(ends.contains_key(&conductor(position, *carries)), "{carries:?} of {cable:?} in {wiring:#?}");
        }
    }
    for terminal in wiring.terminals.iter().filter(|terminal| terminal.carries != Carries::Ground) {
        let end = End { kind: EndKind::Terminal, cable: None, side: Some(terminal.side), carries: terminal.carries };
        assert!(ends.contains_key(&end), "{terminal:?} in {wiring:#?}");
    }
    for joint in wiring.joints.iter().filter(|joint| joint.state == JointState::Planned) {
        // What the plan joins is of one kind: hot to hot, neutral to neutral, ground to ground.
        assert!(joint.ends.iter().all(|end| end.carries == joint.carries), "{wiring:#?}");
        assert!(joint.ends.len() > 1);
    }
}

fn hold_planned(dwelling: &Dwelling) {
    let plan = planned(dwelling);
    let wirings: Vec<BoxWiring> = dwelling.box_indices().map(|at| wiring_as_planned(&plan, at)).collect();
    wirings.iter().for_each(hold_whole);
    let (whole, bare) = (Network::of(dwelling, &wirings, true), Network::of(dwelling, &wirings, false));
    let hots: Vec<String> = dwelling.circuits.iter().map(|circuit| circuit.id.clone()).collect();
    let mut kinds: Vec<(Place, BTreeSet<Place>)> =
        hots.iter().map(|id| Place::PanelHot(id.clone())).map(|place| (place.clone(), whole.reached(&place))).collect();
    kinds.push((Place::PanelNeutral, whole.reached(&Place::PanelNeutral)));
    kinds.push((Place::PanelGround, whole.reached(&Place::PanelGround)));
    for (position, (one, reached)) in kinds.iter().enumerate() {
        for (other, there) in &kinds[..position] {
            let both: Vec<&Place> = reached.intersection(there).collect();
            assert!(both.is_empty(), "{one:?} and {other:?} are joined: {both:?}");
        }
    }
    let bare_hot: BTreeSet<Place> = hots.iter().flat_map(|id| bare.reached(&Place::PanelHot(id.clone()))).collect();
    let grounds = whole.reached(&Place::PanelGround);
    for at in dwelling.box_indices() {
        let wiring = &wirings[at.0];
        let side = if wiring.protective { Side::Line } else { Side::Only };
        let terminal =
            |carries| Place::In(at.0, End { kind: EndKind::Terminal, cable: None, side: Some(side), carries });
        hold_ground(&plan, wiring, at, &grounds);
        let has_pair = wiring.terminals.iter().any(|terminal| terminal.carries == Carries::Hot);
        let Some(way) = way_to(&wirings, dwelling, at).filter(|_| has_pair) else { continue };
        let circuit = wiring.circuit.clone().unwrap_or_default();
        assert!(whole.reached(&Place::PanelHot(circuit)).contains(&terminal(Carries::Hot)), "{}", wiring.box_id);
        assert!(whole.reached(&Place::PanelNeutral).contains(&terminal(Carries::Neutral)), "{}", wiring.box_id);
        // What the plan hangs on a load side is fed through that device alone, and nothing else is.
        let behind = way
            .windows(2)
            .any(|pair| plan.chosen(pair[0]).gives_protection() && plan.behind_load(pair[0]).contains(&pair[1]));
        assert_eq!(!bare_hot.contains(&terminal(Carries::Hot)), behind, "{}", wiring.box_id);
    }
}

/// Whether the ground of a box hangs together with that of its panel, as the plan says.
fn hold_ground(plan: &Planned, wiring: &BoxWiring, at: BoxIndex, grounds: &BTreeSet<Place>) {
    let here = grounds
        .iter()
        .any(|place| matches!(place, Place::In(of, end) if *of == at.0 && end.kind != EndKind::Conductor));
    if !plan.is_grounded(at) {
        assert!(!here, "{} is joined to a ground: {wiring:#?}", wiring.box_id);
        let joint = |state| wiring.joints.iter().any(|joint| joint.carries == Carries::Ground && joint.state == state);
        assert!(!joint(JointState::Planned) && !joint(JointState::Found), "{wiring:#?}");
        let parted = work_first(plan, at).contains(&Task::PartGround);
        assert!(!(parted && joint(JointState::NotSeen)), "grounds that must be parted are joined: {wiring:#?}");
        return;
    }
    let group = plan.facts.groups.group_of(at);
    let traced = plan.ground_brought_by(at).is_some() || matches!(group.reach, Reach::Panel | Reach::Disputed);
    let takes_ground = wiring.terminals.iter().any(|terminal| terminal.carries == Carries::Ground);
    let known = wiring.cables.iter().all(|cable| cable.part != CablePart::Unknown);
    if traced && known && takes_ground && plan.chosen(at).device != Device::Blank {
        assert!(here, "{} is joined to no ground: {wiring:#?}", wiring.box_id);
    }
}

/// Rooms full of chances: jumpers, reversed wires, cut-off grounds, single wires, counted cables, wishes.
fn varied(seed: u64) -> String {
    let mut number = seed;
    let mut chance = |of: u64| {
        number = number.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (number >> 33).is_multiple_of(of)
    };
    let mut text = String::new();
    for line in survey(seed, 24, 1).lines() {
        let mut line = line.to_owned();
        if line.starts_with("found = ") && chance(2) {
            let seen = ["jumper to neutral", "cut off", "connected", "not connected", "to a pipe or rod", "loose"];
            let seen = seen[usize::from(chance(2)) + 2 * usize::from(chance(2)) + usize::from(chance(2))];
            line = format!("found = {{ hn = 120, ground = \"{seen}\" }}");
        } else if line.starts_with("found = ") && chance(3) {
            line = "found = { hn = 120, hot_earth = 0.6, neutral_earth = 120, ground = \"none seen\" }".to_owned();
        }
        if line.starts_with("holds = ") {
            if chance(6) {
                line.push_str("\ncables_in_box = 3");
            }
            if chance(4) {
                line.push_str("\nrun = { cable = \"knob-and-tube\" }");
            } else if chance(6) {
                line.push_str("\nrun = { cable = \"armored-with-strip\" }");
            }
            if line.starts_with("holds = \"t") && chance(3) {
                line.push_str("\nwant = \"ground\"");
            }
        }
        text.push_str(&(line + "\n"));
    }
    text.replace("body = { volume = \"20 in3\"", "body = { metal = true, volume = \"20 in3\"")
}

#[test]
fn what_is_drawn_hangs_together_as_the_plan_leaves_it() {
    EXAMPLES.into_iter().for_each(|text| hold_planned(&dwelling(text)));
    for seed in 0..12 {
        hold_planned(&dwelling(&survey(seed, 14 + seed as usize * 3, 1)));
        hold_planned(&dwelling(&varied(seed)));
    }
}

#[test]
fn every_end_of_what_was_found_is_told_once() {
    for text in EXAMPLES.into_iter().map(str::to_owned).chain((0..12).map(varied)) {
        let dwelling = dwelling(&text);
        let diagnosis = diagnosis::diagnose(&dwelling);
        dwelling.box_indices().for_each(|at| hold_whole(&wiring_as_found(&dwelling, &diagnosis, at)));
    }
}

fn hold_legible(wiring: &BoxWiring) {
    let figure = drawn_wiring(wiring, &format!("{}, a title", wiring.box_id));
    let document = Document::parse(&figure.svg).unwrap_or_else(|error| panic!("{}: {error}", figure.title));
    let root = document.root_element();
    hold_words_free(&figure.title, root, "");
    for text in root.descendants().filter(|node| node.tag_name().name() == "text") {
        assert!(number(text, "font-size") >= 6.5, "{:?}", text.text());
    }
}

#[test]
fn wiring_drawings_are_legible() {
    for text in EXAMPLES.into_iter().map(str::to_owned).chain((0..12).map(varied)) {
        let dwelling = dwelling(&text);
        let plan = planned(&dwelling);
        for at in dwelling.box_indices() {
            hold_legible(&wiring_as_planned(&plan, at));
            hold_legible(&wiring_as_planned(&plan, at).shape());
            hold_legible(&wiring_as_found(&dwelling, &plan.facts.diagnosis, at));
        }
    }
}

/// By hand, from the survey: circuits 1 and 2 come to K-1 with one neutral; K-2 is on circuit 1, K-3 on circuit 2.
#[test]
fn a_shared_neutral_is_joined_once_and_the_other_hot_passes_by() {
    let bungalow = dwelling(EXAMPLES[0]);
    let wiring = wiring_as_planned(&planned(&bungalow), bungalow.box_named("K-1").unwrap());
    let conductors: Vec<usize> = wiring.cables.iter().map(|cable| cable.conductors.len()).collect();
    assert_eq!(conductors, [3, 2, 2]);
    let ends = |carries| {
        let joint = wiring.joints.iter().find(|joint| joint.carries == carries).unwrap();
        (joint.ends.len(), joint.ends.iter().any(|end| end.kind == EndKind::Terminal))
    };
    assert_eq!(
        (ends(Carries::Hot), ends(Carries::OtherHot), ends(Carries::Neutral)),
        ((3, true), (2, false), (4, true))
    );
    assert_eq!((wiring.circuit.as_deref(), wiring.other_circuit.as_deref()), (Some("1"), Some("2")));
}

#[test]
fn a_jumper_is_drawn_where_it_is_found_and_crossed_out_afterwards() {
    let bungalow = dwelling(EXAMPLES[0]);
    let plan = planned(&bungalow);
    let at = bungalow.box_named("L-3").unwrap();
    let state = |wiring: &BoxWiring| {
        let both = |joint: &&drawings::Joint| joint.ends.iter().all(|end| end.kind == EndKind::Terminal);
        wiring.joints.iter().find(both).map(|joint| joint.state)
    };
    assert_eq!(state(&wiring_as_found(&bungalow, &plan.facts.diagnosis, at)), Some(JointState::Found));
    let after = wiring_as_planned(&plan, at);
    assert_eq!(state(&after), Some(JointState::TakeOut));
    assert!(drawn_wiring(&after, "L-3").says.contains("take out the jumper between"));
    assert_eq!(after.markings, ["GFCI Protected", "No Equipment Ground"]);
}

#[test]
fn nothing_is_drawn_as_joined_where_nobody_knows_the_line() {
    let text = EXAMPLES[0].replacen("fed_by  = \"L-1\"\n", "", 1);
    let bungalow = dwelling(&text);
    let at = bungalow.box_named("L-2").unwrap();
    assert_eq!(bungalow.device_box(at).fed_by, None::<Feed>);
    let wiring = wiring_as_found(&bungalow, &diagnosis::diagnose(&bungalow), at);
    assert!(wiring.joints.is_empty(), "{wiring:#?}");
    assert!(wiring.open_ends.iter().all(|open| open.because != OpenBecause::Capped));
    assert!(wiring.cautions[0].contains("Find which pair is the line first"));
}
