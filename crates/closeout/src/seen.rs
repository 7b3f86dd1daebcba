//! What was read and seen at an opening after the work: of each thing the last that was written down, since what was mended is
//! read again.

use crate::meter_error::size;
use dwelling::{AfterReading, ButtonTest, LoadState, MeterKind, Reading};

/// What was read and seen at an opening, in the order taken.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Seen<'a>(pub(crate) &'a [AfterReading]);

impl<'a> Seen<'a> {
    /// The last of something that was written down.
    pub(crate) fn last<T>(self, of: impl Fn(&'a AfterReading) -> Option<T>) -> Option<T> {
        self.0.iter().rev().find_map(of)
    }

    /// What the device did when its own button was pressed.
    pub(crate) fn button(self) -> Option<bool> {
        self.last(|after| match after.test_button? {
            ButtonTest::Trips => Some(true),
            ButtonTest::DoesNotTrip => Some(false),
            ButtonTest::NotTested => None,
        })
    }

    /// The last set with hot to neutral that was surely taken without load.
    pub(crate) fn quiet(self) -> Option<&'a Reading> {
        self.last(|after| {
            let quiet = after.reading.load == Some(LoadState::None) && after.reading.hot_neutral.is_some();
            quiet.then_some(&after.reading)
        })
    }

    /// The last set under load that has what is asked for.
    pub(crate) fn loaded(self, has: impl Fn(&Reading) -> bool) -> Option<&'a AfterReading> {
        self.last(|after| (is_loaded(after) && has(&after.reading)).then_some(after))
    }
}

/// Whether load was on while a set was taken.
pub(crate) fn is_loaded(after: &AfterReading) -> bool {
    matches!(after.reading.load, Some(LoadState::Lamp | LoadState::Heavy))
        || (after.reading.load.is_none() && after.load_current.is_some())
}

/// Whether an instrument draws so much that a phantom collapses under it.
pub(crate) const fn sinks_phantoms(reading: &Reading) -> bool {
    matches!(reading.meter, Some(MeterKind::LowImpedance | MeterKind::LoadTester | MeterKind::TestLamp))
}

/// The three pairs of a set in volts, where all were read.
pub(crate) fn pairs(reading: &Reading) -> Option<[f64; 3]> {
    Some([size(reading.hot_neutral?), size(reading.hot_ground?), size(reading.neutral_ground?)])
}

/// The pairs of a set in words.
pub(crate) fn in_words(reading: &Reading) -> String {
    let pairs = [
        ("hot to neutral", reading.hot_neutral),
        ("hot to ground", reading.hot_ground),
        ("neutral to ground", reading.neutral_ground),
    ];
    let said: Vec<String> = pairs.iter().filter_map(|(name, volts)| Some(format!("{name} {}", (*volts)?))).collect();
    said.join(", ")
}
