//! Random dwellings: lawful to write down, in every other way as odd as old houses are.

use crate::random::Random;
use dwelling::*;
use electrical::{Amperes, ConductorMetal, Gauge, Length, Ohms, Volts, Volume};
use rulebook::{CodeInForce, Edition};

/// How large a dwelling is to be; every pair is a closed range.
#[derive(Clone, Copy)]
pub struct Size {
    pub boxes: (usize, usize),
    pub circuits: (usize, usize),
    pub routes: (usize, usize),
}

/// A random dwelling and the code in force there.
pub fn generated(seed: u64, size: Size) -> (Dwelling, CodeInForce) {
    let mut random = Random::new(seed);
    let edition = random.pick(&Edition::ALL);
    let panels: Vec<Panel> = (0..random.weighted(&[(3, 1), (1, 2)])).map(|at| panel(&mut random, at)).collect();
    let circuits = circuits(&mut random, size, panels.len());
    let rooms: Vec<Room> = (0..random.within((1, 5))).map(|at| room(&mut random, at)).collect();
    let sources: Vec<GroundSource> = (0..random.below(3)).map(|at| source(&mut random, at, panels.len())).collect();
    let job = Job {
        name: format!("generated {seed}"),
        built: random.pick(&[None, Some(1928), Some(1956), Some(1985)]),
        dwelling_use: random.pick(&[None, Some(DwellingUse::OneFamily)]),
        edition: Some(edition.year()),
        permit_day: None,
        place: None,
        outlets_behind_one_device: random.weighted(&[(4, None), (1, Some(1)), (1, Some(2))]),
        leakage_percent: random.weighted(&[(4, None), (1, Some(75)), (1, Some(40))]),
        amendments: None,
    };
    let mut dwelling = Dwelling {
        job,
        panels,
        circuits,
        rooms,
        boxes: Vec::new(),
        sources,
        routes: Vec::new(),
        dead_when: Vec::new(),
        close_out: dwelling::CloseOut::default(),
    };
    let count = random.within(size.boxes);
    add_boxes(&mut random, &mut dwelling, count);
    for at in 0..random.within(size.routes) {
        let route = route(&mut random, &dwelling, at);
        dwelling.routes.push(route);
    }
    (dwelling, CodeInForce::published(edition))
}

fn panel(random: &mut Random, at: usize) -> Panel {
    use ProtectiveBreaker::{Afci, Dual, DualTwoPole, Gfci, GfciTwoPole};
    Panel {
        id: format!("panel-{at}"),
        overcurrent: random.weighted(&[(6, Some(Overcurrent::Breakers)), (2, Some(Overcurrent::Fuses)), (1, None)]),
        made_for_it: random.weighted(&[
            (1, None),
            (2, Some(vec![])),
            (2, Some(vec![Gfci])),
            (1, Some(vec![Afci])),
            (3, Some(vec![Gfci, Afci, Dual])),
            (2, Some(vec![Dual, GfciTwoPole])),
            (2, Some(ProtectiveBreaker::ALL.to_vec())),
            (1, Some(vec![Gfci, DualTwoPole])),
        ]),
        ground_bar: random.weighted(&[(6, Some(true)), (2, Some(false)), (1, None)]),
        service: Some(true),
        room_beside: random.pick(&[Some(true), Some(false), None]),
        fault_current: None,
        room: None,
        at: None,
        after: None,
    }
}

fn circuits(random: &mut Random, size: Size, panels: usize) -> Vec<Circuit> {
    let count = random.within(size.circuits);
    let mut circuits: Vec<Circuit> = (0..count).map(|at| circuit(random, at, panels)).collect();
    if count > 1 && random.percent(35) {
        circuits[0].shares_neutral_with = Some(CircuitIndex(1));
        circuits[1].shares_neutral_with = random.pick(&[Some(CircuitIndex(0)), None]);
        circuits[1].panel = circuits[0].panel;
    }
    circuits
}

fn circuit(random: &mut Random, at: usize, panels: usize) -> Circuit {
    let breaker = random.weighted(&[(6, Some(15)), (4, Some(20)), (1, Some(30)), (1, None)]);
    let aluminium = random.percent(12);
    let gauge = match breaker {
        Some(15) if !aluminium => Gauge::AWG_14,
        Some(30) => Gauge::AWG_10,
        _ => Gauge::AWG_12,
    };
    Circuit {
        id: format!("{}", at + 1),
        panel: PanelIndex(random.below(panels)),
        breaker: breaker.map(Amperes::new),
        fitted: if random.percent(12) { Some(random.pick(ProtectiveBreaker::ALL)) } else { None },
        cable: cable(random),
        gauge: if random.percent(92) { Some(gauge) } else { None },
        metal: if aluminium { ConductorMetal::Aluminium } else { ConductorMetal::Copper },
        shares_neutral_with: None,
        after: None,
    }
}

fn cable(random: &mut Random) -> CableKind {
    let any = random.pick(CableKind::ALL);
    random.weighted(&[
        (6, CableKind::NmTwoWire),
        (4, CableKind::KnobAndTube),
        (2, CableKind::NmWithGround),
        (1, CableKind::NmReducedGround),
        (3, any),
    ])
}

const fn place(x: i64, y: i64) -> Point {
    Point { x: Length::feet(x), y: Length::feet(y) }
}

const OUTLINE: [Point; 4] = [place(0, 0), place(7, 0), place(7, 6), place(0, 6)];

fn room(random: &mut Random, at: usize) -> Room {
    let any = random.pick(RoomUse::ALL);
    let room_use = random.weighted(&[
        (3, RoomUse::Bedroom),
        (2, RoomUse::Kitchen),
        (2, RoomUse::Bathroom),
        (1, RoomUse::Outdoors),
        (2, RoomUse::Garage),
        (8, any),
    ]);
    Room {
        outline: random.pick(&[Vec::new(), OUTLINE.to_vec()]),
        wall_breaks: random.weighted(&[
            (1, None),
            (3, Some(Vec::new())),
            (1, Some(vec![WallBreak { kind: WallBreakKind::Opening, from: place(3, 0), to: place(6, 0) }])),
        ]),
        ..Room::named(format!("room-{at}"), room_use)
    }
}

fn source(random: &mut Random, at: usize, panels: usize) -> GroundSource {
    let inside = PanelIndex(random.below(panels));
    GroundSource {
        id: format!("source-{at}"),
        kind: random.pick(SourceKind::ALL),
        panel: random.pick(&[None, Some(inside)]),
        from_entry: random.pick(&[None, Some(Length::feet(3)), Some(Length::feet(9))]),
        verified: random.weighted(&[(4, Some(true)), (1, Some(false)), (1, None)]),
        gauge: random.pick(&[None, Some(Gauge::AWG_6), Some(Gauge::AWG_14)]),
        room: None,
        at: None,
    }
}

/// Boxes are fed from boxes made before them and then put down in another order: a survey does not follow the feed.
fn add_boxes(random: &mut Random, dwelling: &mut Dwelling, count: usize) {
    let mut places: Vec<usize> = (0..count).collect();
    for at in (1..count).rev() {
        places.swap(at, random.below(at + 1));
    }
    let mut made: Vec<(usize, DeviceBox)> = Vec::new();
    for (at, place) in places.into_iter().enumerate() {
        let circuit = if random.percent(96) { Some(CircuitIndex(random.below(dwelling.circuits.len()))) } else { None };
        let set = |other: Option<CircuitIndex>| {
            other == circuit || (circuit.is_some() && other == circuit.and_then(|circuit| dwelling.partner_of(circuit)))
        };
        let upstream: Vec<usize> =
            made.iter().filter(|(_, other)| set(other.circuit)).map(|(place, _)| *place).collect();
        let home = circuit.map(|circuit| Feed::Panel(dwelling.circuit(circuit).panel));
        let fed_by = match random.below(100) {
            0..=66 if !upstream.is_empty() => Some(Feed::Box(BoxIndex(random.pick(&upstream)))),
            0..=91 => home,
            _ => None,
        };
        let mut device_box = device_box(random, at, dwelling.rooms.len());
        (device_box.circuit, device_box.fed_by) = (circuit, fed_by);
        made.push((place, device_box));
    }
    made.sort_by_key(|(place, _)| *place);
    dwelling.boxes = made.into_iter().map(|(_, device_box)| device_box).collect();
}

fn device_box(random: &mut Random, at: usize, rooms: usize) -> DeviceBox {
    let any = random.pick(Holding::ALL);
    let near = |random: &mut Random| {
        let far = random.pick(&[None, None, Some(2), Some(5), Some(12)]);
        let passes = random.pick(&[vec![], vec![PathObstacle::Doorway], vec![PathObstacle::CabinetDoor]]);
        far.map(|feet| NearWater { distance: Length::feet(feet), passes })
    };
    DeviceBox {
        id: format!("B{at}"),
        room: RoomIndex(random.below(rooms)),
        circuit: None,
        fed_by: None,
        feed_assumed: false,
        run: Run {
            length: None,
            cable: if random.percent(30) { Some(cable(random)) } else { None },
            gauge: if random.percent(6) { Some(Gauge::AWG_12) } else { None },
            metal: if random.percent(4) { Some(ConductorMetal::Aluminium) } else { None },
            shared_neutral: random.weighted(&[(8, None), (1, Some(true)), (1, Some(false))]),
        },
        at: random.weighted(&[(1, None), (3, Some(OUTLINE[0])), (3, Some(OUTLINE[2]))]),
        height: random.weighted(&[(1, None), (3, Some(Length::feet(1))), (1, Some(Length::feet(7)))]),
        body: body(random),
        holds: random.weighted(&[(9, Holding::ThreeSlot), (5, Holding::TwoSlot), (8, any)]),
        cables_in_box: random.weighted(&[(5, None), (1, Some(1)), (1, Some(3))]),
        found: (0..random.below(3)).map(|_| reading(random)).collect(),
        after: Vec::new(),
        serves: (0..random.weighted(&[(5, 0), (3, 1), (2, 3), (1, 9)])).map(|_| random.pick(Equipment::ALL)).collect(),
        want: random.weighted(&[(7, Want::Leave), (2, Want::ThreeSlot), (1, Want::Ground), (2, Want::Remove)]),
        countertop: random.pick(&[None, Some(true), Some(false)]),
        sink: near(random),
        tub: near(random),
        wetness: random.weighted(&[
            (6, None),
            (1, Some(Wetness::Damp)),
            (1, Some(Wetness::Wet)),
            (1, Some(Wetness::Dry)),
        ]),
        dedicated_space: random.pick(&[None, Some(true), Some(false)]),
        readily_accessible: random.weighted(&[(2, None), (4, Some(true)), (1, Some(false))]),
        do_not_disturb: random.percent(7),
        note: None,
    }
}

fn body(random: &mut Random) -> Body {
    let hundredths = random.weighted(&[
        (1, None),
        (2, Some(10_00)),
        (3, Some(12_50)),
        (3, Some(18_00)),
        (2, Some(22_50)),
        (1, Some(40_00)),
    ]);
    Body {
        metal: random.pick(&[None, Some(true), Some(false)]),
        size: None,
        volume: hundredths.map(Volume::hundredths),
        added_volume: if random.percent(5) { Some(Volume::hundredths(3_00)) } else { None },
        clamps: random.pick(&[None, Some(Clamps::Inside), Some(Clamps::Outside), Some(Clamps::None)]),
        gangs: random.weighted(&[(9, 1), (1, 2)]),
        support_fittings: random.weighted(&[(9, 0), (1, 1)]),
    }
}

fn reading(random: &mut Random) -> Reading {
    let volts = |hot_neutral, hot_ground, neutral_ground| Reading {
        hot_neutral: Some(Volts::new(hot_neutral)),
        hot_ground: Some(Volts::new(hot_ground)),
        neutral_ground: Some(Volts::new(neutral_ground)),
        ..Reading::default()
    };
    let seen = random.pick(GroundSeen::ALL);
    let mut reading = match random.below(9) {
        0 => Reading { tester: Some(random.pick(TesterVerdict::ALL)), ..Reading::default() },
        1 => volts(120, 43, 31),
        2 => volts(120, 120, 0),
        3 => volts(119, 117, 2),
        4 => volts(116, 116, 0),
        5 => volts(120, 1, 120),
        6 => Reading { ground_impedance: Some(Ohms::milliohms(random.pick(&[300, 4_000]))), ..volts(118, 117, 1) },
        7 => volts(12, 120, 30),
        _ => Reading::default(),
    };
    reading.ground = if random.percent(60) { Some(seen) } else { None };
    reading.load = random.pick(&[None, Some(LoadState::None), Some(LoadState::Heavy)]);
    reading.meter = random.pick(&[None, Some(MeterKind::HighImpedance), Some(MeterKind::LowImpedance)]);
    reading
}

/// A random route of a dwelling that has at least one box.
pub fn route(random: &mut Random, dwelling: &Dwelling, at: usize) -> Route {
    let to = random.below(dwelling.boxes.len());
    let home = dwelling.circuit_of(BoxIndex(to)).map_or(PanelIndex(0), |circuit| circuit.panel);
    let another = random.below(dwelling.boxes.len());
    let from = match random.below(10) {
        0..=3 if another != to => RouteEnd::Box(BoxIndex(another)),
        4..=5 if !dwelling.sources.is_empty() => RouteEnd::Source(SourceIndex(random.below(dwelling.sources.len()))),
        6 => RouteEnd::Panel(PanelIndex(random.below(dwelling.panels.len()))),
        _ => RouteEnd::Panel(home),
    };
    Route {
        id: format!("route-{at}"),
        from,
        to: RouteEnd::Box(BoxIndex(to)),
        kind: random.weighted(&[(3, RouteKind::Egc), (1, RouteKind::NewCable)]),
        length: Length::feet(random.within((4, 50)) as i64),
        minutes: random.pick(&[None, Some(20), Some(90)]),
        openings: random.below(3) as u32,
        note: None,
        closed: false,
    }
}
