//! The bands that a reading falls into, fine enough for a loaded neutral and coarse enough for a noisy meter.

use crate::bands::{JOINED_UP_TO, LINE_UP_TO, NEUTRAL_DROP_UP_TO, NOTHING_UP_TO, PHANTOM_UP_TO, size_of};
use electrical::Volts;

/// Where a reading lies; the bounds are those of all findings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum VoltBand {
    /// Nothing at all, as between two points of one conductor.
    Zero,
    /// Up to what a sound neutral drops.
    Small,
    /// Up to what a bad neutral drops.
    Drop,
    /// A phantom, or a share of the line voltage.
    Between,
    /// Line voltage.
    Line,
    /// More.
    Over,
}

impl VoltBand {
    /// Every band, lowest first.
    pub const ALL: [Self; 6] = [Self::Zero, Self::Small, Self::Drop, Self::Between, Self::Line, Self::Over];
}

/// How many bands there are.
pub(crate) const BANDS: usize = VoltBand::ALL.len();

/// The band a reading lies in.
#[must_use]
pub fn volt_band(volts: Volts) -> VoltBand {
    let size = size_of(volts);
    let up_to = |bound: Volts| size <= bound.as_millivolts();
    if up_to(JOINED_UP_TO) {
        VoltBand::Zero
    } else if up_to(NOTHING_UP_TO) {
        VoltBand::Small
    } else if up_to(NEUTRAL_DROP_UP_TO) {
        VoltBand::Drop
    } else if up_to(PHANTOM_UP_TO) {
        VoltBand::Between
    } else if up_to(LINE_UP_TO) {
        VoltBand::Line
    } else {
        VoltBand::Over
    }
}
