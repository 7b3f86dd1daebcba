//! What inference multiplies, written down: so that another program can be asked the same question.

use super::circuit_belief::CircuitBelief;
use super::down::down;
use super::likely::Sum;
use super::stations::{ARRIVALS, PATHS, RUNS, Station, Stations, WIRINGS};
use super::up::up;
use dwelling::BoxIndex;
use serde::Serialize;
use std::sync::Arc;

/// The odds of a circuit, or of the circuits of a multiwire set.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Factors {
    /// How likely the panel has a ground for them.
    pub panel_has_ground: f64,
    /// The boxes, what feeds before what is fed.
    pub boxes: Vec<BoxFactors>,
}

/// The odds of a box and of the run that feeds it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxFactors {
    /// The place in the list of the box that feeds it; none where the panel does, or nobody knows.
    pub fed_by: Option<usize>,
    /// The run's hot conductor: in the order of [`super::WireState`].
    pub hot: [f64; 3],
    /// The run's neutral.
    pub neutral: [f64; 3],
    /// The run's ground: in the order of [`super::GroundRun`].
    pub ground: [f64; RUNS],
    /// The device with its readings: by its wiring, by what arrives in the order of [`super::Arrival`] with a path that is
    /// absent after one that is broken, and by the paths of hot and neutral, hot first: sound,
    /// high resistance, open, and open with all of the bonded group behind the break.
    pub device: [[[f64; PATHS]; ARRIVALS]; WIRINGS],
    /// The sighting, where anybody looked: by whether a run beyond is loose here, by the run's ground, by the wiring.
    pub sight: Option<[[[f64; WIRINGS]; RUNS]; 2]>,
}

/// How likely each state of a box is, given everything that was found on the circuit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Marginals {
    /// The run's hot conductor.
    pub hot: [f64; 3],
    /// The run's neutral.
    pub neutral: [f64; 3],
    /// The run's ground.
    pub ground: [f64; RUNS],
    /// The device with what arrives, as in [`BoxFactors::device`].
    pub device: [[[f64; PATHS]; ARRIVALS]; WIRINGS],
}

impl Factors {
    /// How likely each state of each box is; nothing where no state can be, or where a box stands before what feeds it.
    #[must_use]
    pub fn marginals(&self) -> Option<Vec<Marginals>> {
        let stations = self.stations()?;
        let odds = down(&stations, &up::<Sum>(&stations))?;
        let marginals = odds.into_iter().map(|odds| Marginals {
            hot: odds.hot,
            neutral: odds.neutral,
            ground: odds.ground,
            device: odds.local,
        });
        Some(marginals.collect())
    }

    /// The natural logarithm of how likely all that was found is; nothing where it cannot be.
    #[must_use]
    pub fn log_odds(&self) -> Option<f64> {
        let log = up::<Sum>(&self.stations()?).log_odds::<Sum>();
        log.is_finite().then_some(log)
    }

    fn stations(&self) -> Option<Stations> {
        let mut all: Vec<Station> = Vec::new();
        let mut roots = Vec::new();
        for (number, factors) in self.boxes.iter().enumerate() {
            match factors.fed_by {
                Some(parent) => Arc::make_mut(&mut all.get_mut(parent)?.children).push(number),
                None => roots.push(number),
            }
            all.push(Station {
                at: BoxIndex(number),
                is_receptacle: true,
                parent: factors.fed_by,
                children: Arc::default(),
                hot: factors.hot,
                neutral: factors.neutral,
                ground: factors.ground,
                local: Arc::new(factors.device),
                sight: factors.sight.map(Arc::new),
                only: None,
            });
        }
        Some(Stations { all, roots, panel_has_ground: self.panel_has_ground })
    }
}

impl CircuitBelief {
    /// The odds that were multiplied.
    #[must_use]
    pub fn factors(&self) -> Factors {
        let boxes = self.stations.all.iter().map(|station| BoxFactors {
            fed_by: station.parent,
            hot: station.hot,
            neutral: station.neutral,
            ground: station.ground,
            device: *station.local,
            sight: station.sight.as_deref().copied(),
        });
        Factors { panel_has_ground: self.stations.panel_has_ground, boxes: boxes.collect() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sound(fed_by: Option<usize>) -> BoxFactors {
        let only_first = |count| std::array::from_fn::<f64, 6, _>(|at| if at < count { 1.0 } else { 0.0 });
        BoxFactors {
            fed_by,
            hot: [1.0, 0.0, 0.0],
            neutral: [0.75, 0.0, 0.25],
            ground: only_first(1),
            device: [[[1.0; PATHS]; ARRIVALS]; WIRINGS].map(|mut of| {
                of[3..].iter_mut().for_each(|of| *of = [0.0; PATHS]);
                of
            }),
            sight: None,
        }
    }

    /// By hand: where nothing was read, each run is as likely open as before, and a path of two is whole 9 times in 16.
    #[test]
    fn without_readings_the_odds_are_the_priors() {
        let factors = Factors { panel_has_ground: 1.0, boxes: vec![sound(None), sound(Some(0))] };
        let odds = factors.marginals().unwrap();
        assert!((odds[1].neutral[2] - 0.25).abs() < 1e-12);
        let whole: f64 = odds[1].device.iter().flatten().map(|of_path| of_path[0]).sum();
        assert!((whole - 9.0 / 16.0).abs() < 1e-12);
    }

    #[test]
    fn a_box_before_what_feeds_it_is_no_tree() {
        let factors = Factors { panel_has_ground: 1.0, boxes: vec![sound(Some(1)), sound(None)] };
        assert_eq!(factors.marginals(), None);
    }
}
