//! How often what is said with some confidence is true.

use crate::house::House;
use diagnosis::belief::{BoxBelief, Ground, Priors, WireState, Wiring, believe};
use std::collections::BTreeMap;

/// Where the bins of confidence begin.
pub const BINS: [f64; 9] = [0.0, 0.5, 0.65, 0.8, 0.88, 0.92, 0.97, 0.99, 0.999];

/// What was said with about the same confidence.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bin {
    /// How often something was said.
    pub said: u32,
    /// How often it was true.
    pub was_true: u32,
    /// The sum of the confidences.
    pub confidence: f64,
}

impl Bin {
    fn add(&mut self, sure: f64, is_true: bool) {
        self.said += 1;
        self.was_true += u32::from(is_true);
        self.confidence += sure;
    }

    /// The share that was true.
    #[must_use]
    pub fn share(&self) -> f64 {
        f64::from(self.was_true) / f64::from(self.said.max(1))
    }

    /// The mean confidence.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.confidence / f64::from(self.said.max(1))
    }
}

/// What was said of many houses, held against what is true in them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Calibration {
    /// The bins, by the kind of statement.
    pub kinds: BTreeMap<&'static str, [Bin; BINS.len()]>,
    /// Houses.
    pub houses: u32,
    /// Openings.
    pub openings: u32,
    /// Openings of which something may be said of the ground.
    pub verdicts: u32,
    /// Those of which the wrong thing was said.
    pub wrong_verdicts: u32,
    /// Openings said to be grounded.
    pub grounded: u32,
    /// Those that are on the neutral or the hot conductor in truth, without a loaded test that shows a way of their own.
    pub false_grounds_without: u32,
    /// Those with such a test.
    pub false_grounds_with: u32,
    /// Those of them at which the device itself is joined to the neutral or the hot conductor.
    pub false_grounds_here: u32,
    /// What was said with 85 to 95 %.
    pub about_ninety: Bin,
    /// Circuits of which no state reads as it was found.
    pub unread: u32,
}

impl Calibration {
    /// Adds a house.
    pub fn add(&mut self, house: &House, priors: &Priors) {
        self.houses += 1;
        let beliefs = believe(&house.dwelling, priors);
        for circuit in &beliefs.circuits {
            self.unread += u32::from(circuit.boxes.is_empty());
            for belief in &circuit.boxes {
                self.add_box(belief, house);
            }
        }
    }

    fn add_box(&mut self, belief: &BoxBelief, house: &House) {
        self.openings += 1;
        let truth = &house.truth[belief.at.0];
        let ground = truth.at.ground();
        let (said, sure) = belief.likeliest();
        self.count("ground at the opening", sure, said == ground);
        if let Some(verdict) = belief.verdict() {
            self.verdicts += 1;
            self.wrong_verdicts += u32::from(verdict != ground);
            let bad = verdict == Ground::Grounded && matches!(ground, Ground::False | Ground::Live);
            self.grounded += u32::from(verdict == Ground::Grounded);
            self.false_grounds_without += u32::from(bad && !belief.is_separate);
            self.false_grounds_with += u32::from(bad && belief.is_separate);
            let here = !matches!(truth.at.wiring, Wiring::Right | Wiring::HotNeutralReversed);
            self.false_grounds_here += u32::from(bad && belief.is_separate && here);
        }
        self.count_likeliest("run: ground", &belief.run.ground, truth.ground as usize);
        self.count_likeliest("run: hot", &belief.run.hot, truth.hot as usize);
        self.count_likeliest("run: neutral", &belief.run.neutral, truth.neutral as usize);
        self.count_either("hot and neutral reversed", belief.reversed(), truth.at.is_reversed());
        let open = WireState::Open;
        let of_neutral = ["neutral open from the panel", "neutral not open from the panel"];
        self.count_one(of_neutral, belief.neutral_path[open as usize], truth.at.neutral == open);
        let of_hot = ["hot open from the panel", "hot not open from the panel"];
        self.count_one(of_hot, belief.hot_path[open as usize], truth.at.hot == open);
    }

    fn count_likeliest(&mut self, kind: &'static str, odds: &[f64], truth: usize) {
        let best =
            odds.iter().enumerate().fold((0, 0.0), |best, (at, odds)| if *odds > best.1 { (at, *odds) } else { best });
        self.count(kind, best.1, best.0 == truth);
    }

    fn count_either(&mut self, kind: &'static str, odds: f64, truth: bool) {
        self.count_one([kind, kind], odds, truth);
    }

    /// Counts what is said of something: that it is so, or that it is not.
    fn count_one(&mut self, [so, not_so]: [&'static str; 2], odds: f64, truth: bool) {
        if odds >= 0.5 { self.count(so, odds, truth) } else { self.count(not_so, 1.0 - odds, !truth) }
    }

    fn count(&mut self, kind: &'static str, sure: f64, is_true: bool) {
        let bin = BINS.iter().rposition(|from| sure >= *from).unwrap_or(0);
        self.kinds.entry(kind).or_default()[bin].add(sure, is_true);
        if (0.85..0.95).contains(&sure) {
            self.about_ninety.add(sure, is_true);
        }
    }

    /// The bins of all kinds together.
    #[must_use]
    pub fn all(&self) -> [Bin; BINS.len()] {
        let mut all = [Bin::default(); BINS.len()];
        for bins in self.kinds.values() {
            for (sum, bin) in all.iter_mut().zip(bins) {
                sum.said += bin.said;
                sum.was_true += bin.was_true;
                sum.confidence += bin.confidence;
            }
        }
        all
    }
}
