//! Small dwellings to read: one panel, one room, circuits of boxes fed one from another.

use diagnosis::{Certainty, Condition, Diagnosis, Finding, diagnose};
use dwelling::{
    BoxIndex, CableKind, Circuit, CircuitIndex, DeviceBox, Dwelling, Feed, GroundFact, GroundSeen, Holding, Job,
    LoadState, MeterKind, Overcurrent, Panel, PanelIndex, Reading, Room, RoomIndex, RoomUse, TesterVerdict,
};
use electrical::{Amperes, Volts};

/// A dwelling being sketched.
pub struct Sketch {
    pub dwelling: Dwelling,
}

impl Sketch {
    /// A dwelling with one circuit of this wiring method, in a panel with breakers and a ground bar.
    pub fn wired_in(cable: CableKind) -> Self {
        let mut dwelling = Dwelling::of(Job::named("sketch".into()));
        let named = Panel::named("panel");
        dwelling.panels.push(Panel { overcurrent: Some(Overcurrent::Breakers), ground_bar: Some(true), ..named });
        dwelling.rooms.push(Room::named("room", RoomUse::Bedroom));
        dwelling.circuits.push(circuit("1", cable));
        Self { dwelling }
    }

    /// Adds a second circuit that shares the first one's neutral.
    pub fn multiwire(mut self) -> Self {
        let mut second = circuit("2", self.dwelling.circuits[0].cable);
        second.shares_neutral_with = Some(CircuitIndex(0));
        self.dwelling.circuits.push(second);
        self
    }

    /// Adds a box with these readings, fed from the box added before it, or from the panel if it is the first.
    pub fn then(mut self, id: &str, found: impl IntoIterator<Item = Reading>) -> Self {
        let before = self.dwelling.boxes.len().checked_sub(1);
        let fed_by = before.map_or(Feed::Panel(PanelIndex(0)), |before| Feed::Box(BoxIndex(before)));
        self.dwelling.boxes.push(device_box(id, fed_by, found.into_iter().collect()));
        self
    }

    /// As `then`, fed by a run of another wiring method than its circuit's.
    pub fn then_by(self, cable: CableKind, id: &str, found: impl IntoIterator<Item = Reading>) -> Self {
        let mut sketch = self.then(id, found);
        sketch.last().run.cable = Some(cable);
        sketch
    }

    /// The box added last.
    pub fn last(&mut self) -> &mut DeviceBox {
        self.dwelling.boxes.last_mut().expect("a box was added")
    }

    /// What the diagnosis says.
    pub fn diagnosed(&self) -> Diagnosed {
        Diagnosed { says: diagnose(&self.dwelling), dwelling: self.dwelling.clone() }
    }
}

/// A dwelling with its diagnosis.
pub struct Diagnosed {
    pub dwelling: Dwelling,
    pub says: Diagnosis,
}

impl Diagnosed {
    /// The position of a box.
    pub fn at(&self, id: &str) -> BoxIndex {
        self.dwelling.box_named(id).expect("a box of this name was added")
    }

    /// The ground at a box, and how sure it is.
    pub fn ground(&self, id: &str) -> (GroundFact, Certainty) {
        let state = &self.says.ground[self.at(id).0];
        (state.fact, state.sure)
    }

    /// The finding of this condition at a box.
    pub fn finding(&self, id: &str, condition: Condition) -> Option<&Finding> {
        self.says.findings_at(self.at(id)).find(|finding| finding.condition == condition)
    }

    /// How sure a condition is at a box, where it was found.
    pub fn sure_of(&self, id: &str, condition: Condition) -> Option<Certainty> {
        self.finding(id, condition).map(|finding| finding.sure)
    }

    /// The conditions found at a box.
    pub fn conditions(&self, id: &str) -> Vec<Condition> {
        self.says.findings_at(self.at(id)).map(|finding| finding.condition).collect()
    }

    /// A finding of this condition anywhere.
    pub fn anywhere(&self, condition: Condition) -> Option<&Finding> {
        self.says.findings.iter().find(|finding| finding.condition == condition)
    }

    /// The names of the boxes that a finding's next check names.
    pub fn next_boxes(&self, finding: &Finding) -> Vec<&str> {
        let next = finding.next.as_ref().expect("this finding has a next check");
        next.boxes.iter().map(|index| self.dwelling.device_box(*index).id.as_str()).collect()
    }
}

fn circuit(id: &str, cable: CableKind) -> Circuit {
    Circuit { breaker: Some(Amperes::new(15)), ..Circuit::named(id, PanelIndex(0), cable) }
}

fn device_box(id: &str, fed_by: Feed, found: Vec<Reading>) -> DeviceBox {
    let named = DeviceBox::named(id, RoomIndex(0), Holding::ThreeSlot);
    DeviceBox { circuit: Some(CircuitIndex(0)), fed_by: Some(fed_by), found, ..named }
}

fn volts(volts: f64) -> Option<Volts> {
    Some(Volts::millivolts((volts * 1000.0).round() as i64))
}

/// Hot–neutral, hot–ground and neutral–ground, unloaded, by a high-impedance meter.
pub fn read(hot_neutral: f64, hot_ground: f64, neutral_ground: f64) -> Reading {
    Reading {
        hot_neutral: volts(hot_neutral),
        hot_ground: volts(hot_ground),
        neutral_ground: volts(neutral_ground),
        load: Some(LoadState::None),
        meter: Some(MeterKind::HighImpedance),
        ..Reading::default()
    }
}

/// As `read`, with a heavy load on.
pub fn read_loaded(hot_neutral: f64, hot_ground: f64, neutral_ground: f64) -> Reading {
    Reading { load: Some(LoadState::Heavy), ..read(hot_neutral, hot_ground, neutral_ground) }
}

/// As `read`, by a low-impedance meter.
pub fn read_low(hot_neutral: f64, hot_ground: f64, neutral_ground: f64) -> Reading {
    Reading { meter: Some(MeterKind::LowImpedance), ..read(hot_neutral, hot_ground, neutral_ground) }
}

/// Hot, neutral and ground slots to an independent earth.
pub fn to_earth(hot: f64, neutral: f64, ground: f64) -> Reading {
    Reading {
        hot_earth: volts(hot),
        neutral_earth: volts(neutral),
        ground_earth: volts(ground),
        meter: Some(MeterKind::HighImpedance),
        ..Reading::default()
    }
}

/// What a plug-in tester said.
pub fn tester(verdict: TesterVerdict) -> Reading {
    Reading { tester: Some(verdict), ..Reading::default() }
}

/// What was seen in the box.
pub fn seen(ground: GroundSeen) -> Reading {
    Reading { ground: Some(ground), ..Reading::default() }
}
