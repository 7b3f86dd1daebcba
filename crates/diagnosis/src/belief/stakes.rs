//! What it costs to act wrongly, and how long each test takes: what makes one test worth more than another.

use super::state::Ground;
use super::test_outcome::Test;

dwelling::names! {
    /// What one would do about the ground of an opening.
    GroundWork {
        /// Rely on it.
        Rely = "rely",
        /// Find where its conductor is not sound, and mend that.
        Mend = "mend",
        /// Take it that there is none: protect and mark, or bring one.
        DoWithout = "do-without",
        /// Take out what joins it to a circuit conductor.
        Disarm = "disarm",
    }
}

/// The minutes of a look into a box that has to be opened for the work anyway. Common practice, no source.
const LOOK: f64 = 2.0;

/// Costs of acting wrongly, in minutes of work or what is worth as much, and the minutes of each test. Common practice, no
/// source: each may be replaced by what a trade business reckons with.
#[derive(Clone, Debug, PartialEq)]
pub struct Stakes {
    /// By what is true of a ground, in the order of [`Ground`], and by what is done, in the order of [`GroundWork`].
    pub ground: [[f64; 4]; 6],
    /// Polarity that is wrong and stays so, and a device taken out for nothing.
    pub polarity: [f64; 2],
    /// A run's bad or open hot conductor or neutral that stays so, and its two boxes opened for nothing.
    pub wire: [f64; 2],
    /// A break of a run's ground that is not mended though its circuit is worked on; the wrong one of its two boxes opened;
    /// a box opened for nothing.
    pub broken: [f64; 3],
    /// The minutes of each test, in the order of [`Test`], covers and switching off included.
    pub minutes: [f64; 5],
}

impl Default for Stakes {
    fn default() -> Self {
        Self {
            ground: [
                [0.0, 30.0, 90.0, 30.0],
                [600.0, 0.0, 120.0, 30.0],
                [1_500.0, 0.0, 120.0, 30.0],
                [1_500.0, 45.0, 0.0, 30.0],
                [3_000.0, 3_000.0, 3_000.0, 0.0],
                [10_000.0, 10_000.0, 10_000.0, 0.0],
            ],
            polarity: [600.0, 15.0],
            wire: [600.0, 30.0],
            broken: [60.0, 20.0, 20.0],
            minutes: [2.0, 4.0, 4.0, 3.0, 12.0],
        }
    }
}

impl Stakes {
    /// The least that acting on a ground of these odds is expected to cost, and what to do then.
    #[must_use]
    pub fn of_ground(&self, odds: &[f64; 6]) -> (GroundWork, f64) {
        let cost = |work: GroundWork| {
            let of_truth = |truth: &Ground| odds[*truth as usize] * self.ground[*truth as usize][work as usize];
            Ground::ALL.iter().map(of_truth).sum::<f64>()
        };
        let costs = GroundWork::ALL.iter().map(|work| (*work, cost(*work)));
        costs.fold((GroundWork::Rely, f64::INFINITY), |best, one| if one.1 < best.1 { one } else { best })
    }

    /// The least that acting on something that is wrong with these odds is expected to cost.
    pub(crate) fn of_fault([left, needless]: [f64; 2], wrong: f64) -> f64 {
        (left * wrong).min(needless * (1.0 - wrong))
    }

    /// The least that acting on a run's ground is expected to cost that is not connected here, and in the box before, with
    /// these odds.
    pub(crate) fn of_broken(&self, here: f64, before: f64) -> f64 {
        let [left, other_box, needless] = self.broken;
        let sound = 1.0 - here - before;
        let nothing = left * (here + before);
        nothing.min(other_box * before + needless * sound).min(other_box * here + needless * sound)
    }

    /// The minutes of a test.
    #[must_use]
    pub fn minutes(&self, test: Test) -> f64 {
        self.minutes[test as usize]
    }

    /// The minutes of a test that are not spent anyway, where its box has to be opened for the work with these odds.
    #[must_use]
    pub fn minutes_beside_work(&self, test: Test, to_be_opened: f64) -> f64 {
        let minutes = self.minutes(test);
        if test == Test::OpenBox { minutes + to_be_opened * (LOOK.min(minutes) - minutes) } else { minutes }
    }
}
