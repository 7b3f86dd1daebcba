//! A visit: which openings are read with what, what is switched on meanwhile, what is opened, and what gets written down wrongly.
//!
//! How often is common practice, no source.

use crate::chance::Chance;
use crate::instrument::{Instrument, On, PlugInTester, solved};
use crate::layout::Layout;
use crate::truth::BoxTruth;
use diagnosis::belief::{GroundRun, Hangs, MISSEEN, MISTAKEN, Slot, Test, Wiring, sighting_odds, slots};
use dwelling::{BoxIndex, Dwelling, Feed, GroundSeen, LoadState, MeterKind, Reading, TesterVerdict};
use electrical::network::{NetworkError, Opening, Wire};
use electrical::{Ohms, Volts};

/// Who visits, with which instruments and habits.
#[derive(Clone, Copy, Debug)]
struct Surveyor {
    instrument: Instrument,
    kind: MeterKind,
    tester: PlugInTester,
    writes_kind: bool,
    writes_load: bool,
    /// How often a thing is done at an opening.
    tests: f64,
    reads: f64,
    loads: f64,
    reads_to_earth: f64,
    measures_ground: f64,
    opens: f64,
}

impl Surveyor {
    fn any(chance: &mut Chance) -> Self {
        let (instrument, kind) = match chance.place_of(&[0.7, 0.2, 0.1]) {
            0 => (Instrument::high_impedance(chance), MeterKind::HighImpedance),
            1 => (Instrument::low_impedance(chance), MeterKind::LowImpedance),
            _ => (Instrument::low_impedance(chance), MeterKind::TestLamp),
        };
        Self {
            instrument,
            kind,
            tester: PlugInTester::any(chance),
            writes_kind: chance.happens(0.7),
            writes_load: chance.happens(0.7),
            tests: chance.between(0.2, 1.0),
            reads: chance.between(0.3, 1.0),
            loads: chance.between(0.0, 0.7),
            reads_to_earth: chance.between(0.0, 0.3),
            measures_ground: chance.between(0.0, 0.3),
            opens: chance.between(0.0, 0.5),
        }
    }
}

/// Reads a dwelling; what was found is written into its boxes.
pub(crate) fn visit(
    dwelling: &mut Dwelling,
    layout: &Layout,
    truth: &[BoxTruth],
    chance: &mut Chance,
) -> Result<(), NetworkError> {
    let surveyor = Surveyor::any(chance);
    visit_as(surveyor, dwelling, layout, truth, chance)
}

/// Reads a dwelling before anything is opened: a plug-in tester or three pairs at most openings, and nothing else.
pub(crate) fn first_visit(
    dwelling: &mut Dwelling,
    layout: &Layout,
    truth: &[BoxTruth],
    chance: &mut Chance,
) -> Result<(), NetworkError> {
    let by_tester = chance.happens(0.5);
    let often = chance.between(0.7, 1.0);
    let surveyor = Surveyor {
        tests: if by_tester { often } else { 0.0 },
        reads: if by_tester { 0.0 } else { often },
        loads: 0.0,
        reads_to_earth: 0.0,
        measures_ground: 0.0,
        opens: 0.0,
        ..Surveyor::any(chance)
    };
    visit_as(surveyor, dwelling, layout, truth, chance)
}

/// Makes a test that reads, with an instrument of low impedance, and writes down everything that belongs to it.
pub(crate) fn tested_at(
    layout: &Layout,
    truth: &[BoxTruth],
    number: usize,
    test: Test,
    chance: &mut Chance,
) -> Result<Reading, NetworkError> {
    let surveyor = Surveyor {
        instrument: Instrument::low_impedance(chance),
        kind: MeterKind::LowImpedance,
        writes_kind: true,
        writes_load: true,
        ..Surveyor::any(chance)
    };
    let site = Site { layout, truth, number, takes_tester: true };
    match test {
        Test::UnderLoad => read(&surveyor, site, LoadState::Heavy, true, chance),
        Test::ToEarth => read_to_earth(&surveyor, site, chance),
        Test::Impedance => measured(site, chance),
        Test::Pairs | Test::OpenBox => read(&surveyor, site, LoadState::None, true, chance),
    }
}

fn visit_as(
    surveyor: Surveyor,
    dwelling: &mut Dwelling,
    layout: &Layout,
    truth: &[BoxTruth],
    chance: &mut Chance,
) -> Result<(), NetworkError> {
    for number in 0..truth.len() {
        let device_box = &dwelling.boxes[number];
        let mut found = Vec::new();
        if device_box.holds.is_receptacle() {
            let takes_tester = device_box.holds.takes_grounding_plug();
            let site = Site { layout, truth, number, takes_tester };
            found = read_opening(&surveyor, site, chance)?;
        }
        if chance.happens(surveyor.opens) {
            found.push(Reading { ground: Some(sighted(dwelling, truth, number, chance)), ..Reading::default() });
        }
        dwelling.boxes[number].found = found;
    }
    Ok(())
}

#[derive(Clone, Copy)]
struct Site<'a> {
    layout: &'a Layout,
    truth: &'a [BoxTruth],
    number: usize,
    takes_tester: bool,
}

impl Site<'_> {
    fn at(self) -> Opening {
        self.layout.openings[self.number]
    }
}

fn read_opening(surveyor: &Surveyor, site: Site<'_>, chance: &mut Chance) -> Result<Vec<Reading>, NetworkError> {
    let mut found = Vec::new();
    if site.takes_tester && chance.happens(surveyor.tests) {
        found.push(tested(surveyor, site, whatever(chance), chance)?);
    }
    if chance.happens(surveyor.reads) {
        let load = if surveyor.writes_load { LoadState::None } else { whatever(chance) };
        found.push(read(surveyor, site, load, surveyor.writes_load, chance)?);
        if chance.happens(surveyor.loads) {
            let load = if chance.happens(0.35) { LoadState::Lamp } else { LoadState::Heavy };
            found.push(read(surveyor, site, load, true, chance)?);
        }
        if chance.happens(surveyor.reads_to_earth) {
            found.push(read_to_earth(surveyor, site, chance)?);
        }
        // The instrument starts only where it finds line voltage: where that was written down.
        let looks_right = |reading: &Reading| {
            [reading.hot_neutral, reading.hot_ground]
                .iter()
                .all(|volts| volts.is_some_and(|volts| volts > Volts::new(103)))
        };
        if found.iter().any(looks_right) && chance.happens(surveyor.measures_ground) {
            found.push(measured(site, chance)?);
        }
    }
    Ok(found)
}

/// What is on where nobody looks for it.
fn whatever(chance: &mut Chance) -> LoadState {
    chance.one_of(&[(0.8, LoadState::None), (0.15, LoadState::Lamp), (0.05, LoadState::Heavy)])
}

/// What is on while a set is taken: the load at the opening or beyond it, and often something small elsewhere.
pub(crate) fn switched_on(layout: &Layout, at: Opening, load: LoadState, chance: &mut Chance) -> On {
    let mut on = Vec::new();
    let ohms = match load {
        LoadState::None => None,
        LoadState::Lamp => Some(chance.by_magnitude(100.0, 400.0)),
        LoadState::Heavy => Some(chance.between(9.0, 15.0)),
    };
    on.extend(ohms.map(|ohms| (at, ohms)));
    if chance.happens(0.3) {
        let elsewhere = layout.openings[chance.below(layout.openings.len())];
        if elsewhere != at {
            on.push((elsewhere, chance.by_magnitude(20.0, 1_000.0)));
        }
    }
    on
}

fn tested(surveyor: &Surveyor, site: Site<'_>, load: LoadState, chance: &mut Chance) -> Result<Reading, NetworkError> {
    let on = switched_on(site.layout, site.at(), load, chance);
    let volts = surveyor.tester.volts(site.layout, &on, site.at())?;
    let slots = slots(site.truth[site.number].at);
    let elsewhere = matches!(slots.ground, Hangs::NeutralElsewhere { .. } | Hangs::OpenNeutral);
    let joined = slots.ground_is == Some(Slot::Neutral) || elsewhere && chance.happens(0.5);
    let mut verdict = surveyor.tester.says(volts, joined);
    if chance.happens(MISTAKEN) {
        verdict = TesterVerdict::ALL[chance.below(TesterVerdict::ALL.len())];
    }
    let meter = surveyor.writes_kind.then_some(MeterKind::PlugInTester);
    Ok(Reading { tester: Some(verdict), meter, load: surveyor.writes_load.then_some(load), ..Reading::default() })
}

fn read(
    surveyor: &Surveyor,
    site: Site<'_>,
    load: LoadState,
    writes_load: bool,
    chance: &mut Chance,
) -> Result<Reading, NetworkError> {
    let on = switched_on(site.layout, site.at(), load, chance);
    let solved = solved(site.layout, &on)?;
    let is_wrong = chance.happens(MISTAKEN);
    let mut show = |from, to| {
        let volts = surveyor.instrument.shows(&solved, site.at(), from, to, chance);
        let volts = if is_wrong { anything(chance) } else { volts };
        (!chance.happens(0.06)).then_some(volts)
    };
    Ok(Reading {
        hot_neutral: show(Wire::LegA, Wire::Neutral),
        hot_ground: show(Wire::LegA, Wire::Ground),
        neutral_ground: show(Wire::Neutral, Wire::Ground),
        meter: surveyor.writes_kind.then_some(surveyor.kind),
        load: writes_load.then_some(load),
        ..Reading::default()
    })
}

fn read_to_earth(surveyor: &Surveyor, site: Site<'_>, chance: &mut Chance) -> Result<Reading, NetworkError> {
    let load = if surveyor.writes_load { LoadState::None } else { whatever(chance) };
    let on = switched_on(site.layout, site.at(), load, chance);
    let solved = solved(site.layout, &on)?;
    let is_wrong = chance.happens(MISTAKEN);
    let mut show = |wire| {
        let volts = surveyor.instrument.shows_to_earth(&solved, site.at(), wire, chance);
        Some(if is_wrong { anything(chance) } else { volts })
    };
    Ok(Reading {
        hot_earth: show(Wire::LegA),
        neutral_earth: show(Wire::Neutral),
        ground_earth: show(Wire::Ground),
        meter: surveyor.writes_kind.then_some(surveyor.kind),
        load: surveyor.writes_load.then_some(load),
        ..Reading::default()
    })
}

/// What is written down by mistake.
fn anything(chance: &mut Chance) -> Volts {
    let (from, to) = [(0, 90), (100, 3_000), (3_100, 12_000), (13_000, 100_000), (104_000, 130_000)][chance.below(5)];
    Volts::millivolts(from + (chance.share() * (to - from) as f64) as i64)
}

/// The impedance of the ground at an opening by an instrument that loads it, off by up to a tenth.
fn measured(site: Site<'_>, chance: &mut Chance) -> Result<Reading, NetworkError> {
    let ohms = ground_ohms(site.layout, site.at())? * chance.between(0.9, 1.1);
    let shown = if chance.happens(MISTAKEN) { chance.by_magnitude(0.1, 50.0) } else { ohms.min(2_000.0) };
    let ground_impedance = Some(Ohms::milliohms((shown * 1e3).round() as i64));
    Ok(Reading { ground_impedance, meter: Some(MeterKind::LoadTester), ..Reading::default() })
}

/// The impedance from an opening's ground slot back to the panel's neutral.
pub(crate) fn ground_ohms(layout: &Layout, at: Opening) -> Result<f64, NetworkError> {
    let wired = layout.circuit.wired();
    let (ground, panel) = (wired.terminal(at, Wire::Ground), wired.terminal(Opening::PANEL, Wire::Neutral));
    let solved = wired.solve()?;
    Ok(solved.solution().impedance_between(ground, panel).magnitude())
}

/// What is seen in an opened box, and now and then written down wrongly.
pub(crate) fn sighted(dwelling: &Dwelling, truth: &[BoxTruth], number: usize, chance: &mut Chance) -> GroundSeen {
    let fed_from_here = |other: usize| dwelling.boxes[other].fed_by == Some(Feed::Box(BoxIndex(number)));
    let loose_beyond =
        (0..truth.len()).any(|other| fed_from_here(other) && truth[other].ground == GroundRun::LooseBefore);
    let cable = dwelling.cable_to(BoxIndex(number));
    let Some((last, kinds)) = GroundSeen::ALL.split_last() else { return GroundSeen::NotOpened };
    debug_assert_eq!(*last, GroundSeen::NotOpened);
    if chance.happens(MISSEEN) {
        return kinds[chance.below(kinds.len())];
    }
    let wiring: Wiring = truth[number].at.wiring;
    let odds: Vec<f64> =
        kinds.iter().map(|seen| sighting_odds(*seen, cable, truth[number].ground, wiring, loose_beyond)).collect();
    kinds[chance.place_of(&odds)]
}
