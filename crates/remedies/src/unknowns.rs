//! What a survey leaves open, each with the values it may turn out to have: a stated list, not every value there is.

use crate::planned::Planned;
use diagnosis::Site;
use dwelling::{
    BoxIndex, CableKind, CircuitIndex, Clamps, Dwelling, Feed, GroundFact, GroundSeen, Holding, NearWater, Overcurrent,
    PanelIndex, ProtectiveBreaker, Reading, RoomUse, SourceIndex, SourceKind,
};
use electrical::{Amperes, Gauge, Length, Volume};

/// Something that the survey leaves open.
pub struct Unknown {
    /// Where.
    pub at: UnknownAt,
    /// What is not known, in words.
    pub what: String,
    /// What it may turn out to be.
    pub values: Vec<Possible>,
}

/// Where something is left open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnknownAt {
    /// At a box, a circuit or a panel.
    Site(Site),
    /// At a ground source.
    Source(SourceIndex),
}

/// A value that something unknown may turn out to have.
pub struct Possible {
    /// It in words.
    pub value: String,
    /// Writes it into the dwelling.
    pub set: Box<dyn Fn(&mut Dwelling)>,
}

/// How many boxes of a circuit are tried as what feeds a box.
const MOST_FEEDING: usize = 12;
/// The volumes tried for a box of unknown volume: small device boxes of the fifties to large ones of today.
/// Common practice, no source.
const VOLUMES: [i64; 5] = [10_00, 12_50, 16_00, 20_00, 30_30];

fn possible(value: impl Into<String>, set: impl Fn(&mut Dwelling) + 'static) -> Possible {
    Possible { value: value.into(), set: Box::new(set) }
}

/// Everything that the survey leaves open and the plan looks at: panels, then ground sources, circuits and boxes.
#[must_use]
pub fn unknowns(plan: &Planned) -> Vec<Unknown> {
    let dwelling = plan.facts.dwelling;
    let mut list = Vec::new();
    for at in (0..dwelling.panels.len()).map(PanelIndex) {
        of_panel(dwelling, at, &mut list);
    }
    for at in (0..dwelling.sources.len()).map(SourceIndex) {
        of_source(dwelling, at, &mut list);
    }
    for at in (0..dwelling.circuits.len()).map(CircuitIndex) {
        of_circuit(dwelling, at, &mut list);
    }
    for at in dwelling.box_indices() {
        of_box(plan, at, &mut list);
    }
    list
}

fn of_panel(dwelling: &Dwelling, at: PanelIndex, list: &mut Vec<Unknown>) {
    let panel = dwelling.panel(at);
    let mut add = |what: &str, values: Vec<Possible>| {
        list.push(Unknown { at: UnknownAt::Site(Site::Panel(at)), what: what.to_owned(), values });
    };
    if panel.overcurrent.is_none() {
        let kinds = [("breakers", Overcurrent::Breakers), ("fuses", Overcurrent::Fuses)];
        let set = |(value, kind)| possible(value, move |of: &mut Dwelling| of.panels[at.0].overcurrent = Some(kind));
        add("whether it has breakers or fuses", kinds.into_iter().map(set).collect());
    }
    if panel.made_for_it.is_none() {
        let made = [("none", Vec::new()), ("every kind", ProtectiveBreaker::ALL.to_vec())];
        let set = |(value, kinds): (&str, Vec<ProtectiveBreaker>)| {
            possible(value, move |of: &mut Dwelling| of.panels[at.0].made_for_it = Some(kinds.clone()))
        };
        add("which protective breakers are made for it", made.into_iter().map(set).collect());
    }
    if panel.ground_bar.is_none() {
        add("whether it has a ground bar", yes_or_no(move |of, yes| of.panels[at.0].ground_bar = Some(yes)));
    }
    if panel.service.is_none() {
        add("whether it is the service equipment", yes_or_no(move |of, yes| of.panels[at.0].service = Some(yes)));
    }
    if panel.room_beside.is_none() {
        let set = move |of: &mut Dwelling, yes| of.panels[at.0].room_beside = Some(yes);
        add("whether there is room for a device beside it", yes_or_no(set));
    }
}

fn yes_or_no(set: impl Fn(&mut Dwelling, bool) + Clone + 'static) -> Vec<Possible> {
    let of = |value: &str, yes: bool| {
        let set = set.clone();
        possible(value, move |dwelling: &mut Dwelling| set(dwelling, yes))
    };
    vec![of("yes", true), of("no", false)]
}

fn of_source(dwelling: &Dwelling, at: SourceIndex, list: &mut Vec<Unknown>) {
    let source = dwelling.source(at);
    let mut add = |what: &str, values: Vec<Possible>| {
        list.push(Unknown { at: UnknownAt::Source(at), what: what.to_owned(), values });
    };
    if source.verified.is_none() {
        add("whether its path is whole", yes_or_no(move |of, yes| of.sources[at.0].verified = Some(yes)));
    }
    if source.kind == SourceKind::WaterPipe && source.from_entry.is_none() {
        let set = |feet: i64| {
            possible(format!("{feet} ft"), move |of: &mut Dwelling| {
                of.sources[at.0].from_entry = Some(Length::feet(feet));
            })
        };
        add("how far it is from where the water enters", [3, 9].into_iter().map(set).collect());
    }
}

fn of_circuit(dwelling: &Dwelling, at: CircuitIndex, list: &mut Vec<Unknown>) {
    let circuit = dwelling.circuit(at);
    let mut add = |what: &str, values: Vec<Possible>| {
        list.push(Unknown { at: UnknownAt::Site(Site::Circuit(at)), what: what.to_owned(), values });
    };
    if circuit.breaker.is_none() {
        let set = |rating: u32| {
            possible(format!("{rating} A"), move |of: &mut Dwelling| {
                of.circuits[at.0].breaker = Some(Amperes::new(rating));
            })
        };
        add("the rating of its breaker", [15, 20].into_iter().map(set).collect());
    }
    if circuit.gauge.is_none() {
        let set =
            |gauge: Gauge| possible(gauge.to_string(), move |of: &mut Dwelling| of.circuits[at.0].gauge = Some(gauge));
        add("the size of its conductors", [Gauge::AWG_14, Gauge::AWG_12].into_iter().map(set).collect());
    }
    if circuit.cable == CableKind::Unknown {
        add("its cable", cables(move |of, kind| of.circuits[at.0].cable = kind));
    }
}

fn cables(set: impl Fn(&mut Dwelling, CableKind) + Clone + 'static) -> Vec<Possible> {
    let known = CableKind::ALL.iter().filter(|kind| !matches!(kind, CableKind::Unknown | CableKind::ArmoredUnknown));
    known
        .map(|kind| {
            let (set, kind) = (set.clone(), *kind);
            possible(kind.name(), move |of: &mut Dwelling| set(of, kind))
        })
        .collect()
}

fn of_box(plan: &Planned, at: BoxIndex, list: &mut Vec<Unknown>) {
    let dwelling = plan.facts.dwelling;
    let device_box = dwelling.device_box(at);
    let mut add = |what: &str, values: Vec<Possible>| {
        if values.len() > 1 {
            list.push(Unknown { at: UnknownAt::Site(Site::Box(at)), what: what.to_owned(), values });
        }
    };
    if device_box.circuit.is_none() {
        let set = |circuit: usize| {
            possible(format!("circuit {}", dwelling.circuits[circuit].id), move |of: &mut Dwelling| {
                of.boxes[at.0].circuit = Some(CircuitIndex(circuit));
            })
        };
        add("its circuit", (0..dwelling.circuits.len()).map(set).collect());
    }
    if device_box.fed_by.is_none() {
        add("what feeds it", feeds(plan, at));
    }
    if device_box.run.cable == Some(CableKind::Unknown) || dwelling.cable_to(at) == CableKind::ArmoredUnknown {
        add("the cable that feeds it", cables(move |of, kind| of.boxes[at.0].run.cable = Some(kind)));
    }
    if device_box.holds == Holding::Unknown {
        let kinds =
            [Holding::TwoSlot, Holding::ThreeSlot, Holding::Gfci, Holding::Switch, Holding::Luminaire, Holding::Splice];
        let set = |kind: Holding| possible(kind.name(), move |of: &mut Dwelling| of.boxes[at.0].holds = kind);
        add("what it holds", kinds.into_iter().map(set).collect());
    }
    add("its ground", grounds(plan, at));
    let body = &device_box.body;
    if body.volume.is_none() {
        let set = |hundredths: i64| {
            let volume = Volume::hundredths(hundredths);
            possible(volume.to_string(), move |of: &mut Dwelling| of.boxes[at.0].body.volume = Some(volume))
        };
        add("its volume", VOLUMES.into_iter().map(set).collect());
    }
    if body.clamps.is_none() {
        let set = |clamps: Clamps| {
            possible(clamps.name(), move |of: &mut Dwelling| of.boxes[at.0].body.clamps = Some(clamps))
        };
        add("where it clamps its cables", [Clamps::Inside, Clamps::Outside].into_iter().map(set).collect());
    }
    if !device_box.holds.is_receptacle() {
        return;
    }
    if device_box.countertop.is_none() && dwelling.room(device_box.room).room_use == RoomUse::Kitchen {
        add("whether it serves a countertop", yes_or_no(move |of, yes| of.boxes[at.0].countertop = Some(yes)));
    }
    let near = |feet: i64| Some(NearWater { distance: Length::feet(feet), passes: Vec::new() });
    if device_box.sink.is_none() {
        let set = move |of: &mut Dwelling, yes: bool| of.boxes[at.0].sink = near(if yes { 3 } else { 30 });
        add("whether a sink is within reach (3 ft or 30 ft)", yes_or_no(set));
    }
    if device_box.tub.is_none() {
        let set = move |of: &mut Dwelling, yes: bool| of.boxes[at.0].tub = near(if yes { 3 } else { 30 });
        add("whether a tub or shower is within reach (3 ft or 30 ft)", yes_or_no(set));
    }
    if device_box.readily_accessible.is_none() {
        let set = move |of: &mut Dwelling, yes: bool| of.boxes[at.0].readily_accessible = Some(yes);
        add("whether it can be reached quickly", yes_or_no(set));
    }
}

/// What may feed a box: its panel, or a box of its circuit that does not lie behind it.
fn feeds(plan: &Planned, at: BoxIndex) -> Vec<Possible> {
    let dwelling = plan.facts.dwelling;
    let Some(circuit) = dwelling.device_box(at).circuit else { return Vec::new() };
    let panel = dwelling.circuit(circuit).panel;
    let behind = plan.facts.at(at).tree.map(|tree| plan.facts.trees[tree].downstream(at)).unwrap_or_default();
    let others = dwelling
        .box_indices()
        .filter(|other| *other != at && dwelling.device_box(*other).circuit == Some(circuit) && !behind.contains(other))
        .filter(|other| !hangs_on(dwelling, *other, at));
    let by = |feed: Feed, value: String| possible(value, move |of: &mut Dwelling| of.boxes[at.0].fed_by = Some(feed));
    let from_panel = by(Feed::Panel(panel), format!("panel {}", dwelling.panel(panel).id));
    let from_boxes =
        others.take(MOST_FEEDING).map(|other| by(Feed::Box(other), format!("box {}", dwelling.device_box(other).id)));
    std::iter::once(from_panel).chain(from_boxes).collect()
}

/// Whether a box is fed, directly or further up, from another.
fn hangs_on(dwelling: &Dwelling, at: BoxIndex, from: BoxIndex) -> bool {
    let mut above = at;
    for _ in 0..dwelling.boxes.len() {
        match dwelling.device_box(above).fed_by {
            Some(Feed::Box(parent)) if parent == from => return true,
            Some(Feed::Box(parent)) => above = parent,
            _ => return false,
        }
    }
    true
}

/// What may be seen of a ground where it is unknown, or cut off and perhaps within reach.
fn grounds(plan: &Planned, at: BoxIndex) -> Vec<Possible> {
    let seen: &[(&str, GroundSeen)] = match plan.facts.at(at).ground {
        GroundFact::Unknown => &[
            ("none in the box", GroundSeen::NoneSeen),
            ("connected", GroundSeen::Connected),
            ("in the box, not connected", GroundSeen::Unconnected),
            ("a jumper to the neutral", GroundSeen::Jumper),
        ],
        GroundFact::CutOff => {
            &[("cut off beyond reach", GroundSeen::CutOff), ("within reach, not connected", GroundSeen::Unconnected)]
        }
        _ => &[],
    };
    let set = |(value, seen): &(&str, GroundSeen)| {
        let seen = *seen;
        possible(*value, move |of: &mut Dwelling| {
            of.boxes[at.0].found.push(Reading { ground: Some(seen), ..Reading::default() });
        })
    };
    seen.iter().map(set).collect()
}
