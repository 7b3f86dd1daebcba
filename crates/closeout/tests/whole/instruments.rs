//! Instruments for the tests: what a meter shows with its own error, and what a plug-in tester says.

use dwelling::TesterVerdict;
use electrical::network::{BranchCircuit, Load, NetworkError, Opening, Wire};
use electrical::{Impedance, Volts};
use simulation::{Chance, told_by_lamps};

/// A meter that is off by up to 1 % and three digits (common practice, no source), and what is written of it to a tenth.
#[derive(Clone, Copy)]
pub struct Meter {
    off: f64,
}

impl Meter {
    pub fn any(chance: &mut Chance) -> Self {
        Self { off: chance.between(-0.01, 0.01) }
    }

    pub fn shows(self, volts: f64, chance: &mut Chance) -> Volts {
        let digit = match volts {
            ..6.0 => 0.001,
            ..60.0 => 0.01,
            _ => 0.1,
        };
        let shown = (volts * (1.0 + self.off) + chance.between(-3.0, 3.0) * digit).max(0.0);
        Volts::millivolts((shown * 10.0).round() as i64 * 100)
    }
}

/// What a plug-in tester of three lamps of 50 kΩ that light from 75 V says. Common practice, no source.
pub fn tester_says(circuit: &BranchCircuit, at: Opening, leg: Wire) -> Result<TesterVerdict, NetworkError> {
    let lamps = [(leg, Wire::Neutral), (leg, Wire::Ground), (Wire::Neutral, Wire::Ground)];
    let mut circuit = circuit.clone();
    for between in lamps {
        circuit.load(Load { at, between, impedance: Impedance::ohms(50_000.0, 0.0) });
    }
    let solved = circuit.solve()?;
    Ok(told_by_lamps(lamps.map(|(from, to)| solved.between(at, from, to).magnitude() > 75.0)))
}
