//! Instruments as an electrician carries them: what each draws, how far off it is, and what gets written down.

use crate::chance::Chance;
use crate::layout::{Layout, plug_in};
use dwelling::TesterVerdict;
use electrical::network::{Load, Meter, NetworkError, Opening, SolvedCircuit, Wire};
use electrical::{Capacitance, Impedance, Resistance, Volts};

/// What a set of readings is taken with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Instrument {
    pub(crate) meter: Meter,
    /// How far all its readings are off, as a part of each.
    error: f64,
}

/// What is switched on while a set is taken: where, and of how many ohms.
pub(crate) type On = Vec<(Opening, f64)>;

impl Instrument {
    /// A meter that draws next to nothing. Common practice, no source: 5 to 11 MΩ, 60 to 150 pF with its leads, 1 %.
    pub(crate) fn high_impedance(chance: &mut Chance) -> Self {
        let meter = Meter {
            resistance: Resistance::ohms(chance.between(5e6, 11e6)),
            capacitance: Capacitance::picofarads(chance.between(60.0, 150.0)),
        };
        Self { meter, error: chance.between(-0.01, 0.01) }
    }

    /// One under which phantoms collapse. Common practice, no source: 1.5 to 10 kΩ, 2 %.
    pub(crate) fn low_impedance(chance: &mut Chance) -> Self {
        let meter = Meter {
            resistance: Resistance::ohms(chance.by_magnitude(1.5e3, 1e4)),
            capacitance: Capacitance::picofarads(0.0),
        };
        Self { meter, error: chance.between(-0.02, 0.02) }
    }

    /// What it shows between two terminals: its own error, three of its last digits, and no finer than these.
    pub(crate) fn shows(
        &self,
        solved: &SolvedCircuit,
        at: Opening,
        from: Wire,
        to: Wire,
        chance: &mut Chance,
    ) -> Volts {
        self.written(solved.reading(at, from, to, self.meter).as_volts(), chance)
    }

    /// What it shows from a terminal to an independent earth.
    pub(crate) fn shows_to_earth(&self, solved: &SolvedCircuit, at: Opening, wire: Wire, chance: &mut Chance) -> Volts {
        self.written(solved.reading_to_earth(at, wire, self.meter).as_volts(), chance)
    }

    pub(crate) fn written(&self, volts: f64, chance: &mut Chance) -> Volts {
        let digit = match volts {
            ..6.0 => 0.001,
            ..60.0 => 0.01,
            _ => 0.1,
        };
        let shown = (volts * (1.0 + self.error) + chance.between(-3.0, 3.0) * digit).max(0.0);
        Volts::millivolts((shown / digit).round() as i64 * (digit * 1e3).round() as i64)
    }
}

/// The circuit with these loads on.
pub(crate) fn solved(layout: &Layout, on: &On) -> Result<SolvedCircuit, NetworkError> {
    let mut circuit = layout.circuit.clone();
    on.iter().for_each(|(at, ohms)| plug_in(&mut circuit, *at, *ohms));
    circuit.solve()
}

/// Between which slots a plug-in tester has its three lamps.
const LAMPS: [(Wire, Wire); 3] =
    [(Wire::LegA, Wire::Neutral), (Wire::LegA, Wire::Ground), (Wire::Neutral, Wire::Ground)];

/// A plug-in tester. Common practice, no source: three lamps of 30 to 100 kΩ that light from 65 to 90 V; one that lit at half
/// the line voltage would not show an open ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PlugInTester {
    ohms: f64,
    lights_from: f64,
    /// Whether it is of the kind that looks for a join of neutral and ground.
    pub(crate) finds_joins: bool,
}

impl PlugInTester {
    pub(crate) fn any(chance: &mut Chance) -> Self {
        Self {
            ohms: chance.by_magnitude(3e4, 1e5),
            lights_from: chance.between(65.0, 90.0),
            finds_joins: chance.happens(0.3),
        }
    }

    /// The volts over its three lamps.
    pub(crate) fn volts(&self, layout: &Layout, on: &On, at: Opening) -> Result<[f64; 3], NetworkError> {
        let solved = self.plugged_in(layout, on, at)?;
        Ok(LAMPS.map(|(from, to)| solved.between(at, from, to).magnitude()))
    }

    fn plugged_in(&self, layout: &Layout, on: &On, at: Opening) -> Result<SolvedCircuit, NetworkError> {
        let mut circuit = layout.circuit.clone();
        on.iter().for_each(|(at, ohms)| plug_in(&mut circuit, *at, *ohms));
        for between in LAMPS {
            circuit.load(Load { at, between, impedance: Impedance::ohms(self.ohms, 0.0) });
        }
        circuit.solve()
    }

    /// Which of its lamps light.
    pub(crate) fn lit(&self, volts: [f64; 3]) -> [bool; 3] {
        volts.map(|volts| volts >= self.lights_from)
    }

    /// What it says, by the meaning of its lamps.
    pub(crate) fn says(&self, volts: [f64; 3], is_joined: bool) -> TesterVerdict {
        match told_by_lamps(self.lit(volts)) {
            TesterVerdict::Correct if is_joined && self.finds_joins => TesterVerdict::FalseGround,
            told => told,
        }
    }
}

/// What the lamps of a plug-in tester mean, in the order of the pairs: hot to neutral, hot to ground, neutral to ground.
#[must_use]
pub const fn told_by_lamps(lit: [bool; 3]) -> TesterVerdict {
    match lit {
        [true, true, false] => TesterVerdict::Correct,
        [true, false, false] => TesterVerdict::OpenGround,
        [false, true, false] => TesterVerdict::OpenNeutral,
        [false, false, false] => TesterVerdict::OpenHot,
        [true, false, true] => TesterVerdict::HotNeutralReversed,
        [false, true, true] => TesterVerdict::HotGroundReversed,
        [true, true, true] | [false, false, true] => TesterVerdict::NotListed,
    }
}
