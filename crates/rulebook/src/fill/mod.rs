//! Box fill: the volume that what is in a box takes, counted line by line.

mod after;
mod count;
mod counted;
mod verdict;

pub use after::fit_after;
pub(crate) use after::fits_after_all;
pub use count::{BoxContents, Conductors, StrapInBox, count};
pub use counted::Counted;
pub use verdict::{DeviceSpace, fill_with};

use crate::cited::{Citation, NotChecked};
use dwelling::{Cables, Clamps};
use electrical::{Gauge, Volume};
use std::sync::Arc;

/// What is in a box and around it, before any remedy.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct FillContents {
    /// The volume of the box with its marked extensions, where known.
    pub volume: Option<Volume>,
    /// The cables that enter.
    pub cables: Cables,
    /// Where cables are clamped, where known.
    pub clamps: Option<Clamps>,
    /// Kinds of support fittings inside.
    pub support_fittings: u32,
    /// Straps with devices that stay whatever the remedy at this opening is.
    pub other_straps: u32,
    /// How many gangs the box has.
    pub gangs: u32,
}

/// One line of a count.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FillLine {
    /// What is counted.
    pub counted: Counted,
    /// How many allowances it takes, in quarters.
    pub quarters: u32,
    /// The size whose allowance is taken.
    pub gauge: Gauge,
    /// The volume it takes.
    pub volume: Volume,
    /// Where the code says so.
    pub cite: Citation,
}

impl FillLine {
    /// What is counted in words, such as `4 insulated conductors, 14 AWG`.
    #[must_use]
    pub fn what(&self) -> String {
        format!("{}, {}", self.counted, self.gauge)
    }
}

/// A count of a box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoxFill {
    /// The lines.
    pub lines: Vec<FillLine>,
    /// Their sum.
    pub taken: Volume,
}

/// Whether what is in a box fits it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FillVerdict {
    /// It does, exactly or with room to spare.
    Fits,
    /// It does not.
    TooFull,
    /// A fact or a value is missing.
    NotChecked(NotChecked),
}

/// A count held against the box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fit {
    /// Whether it fits.
    pub verdict: FillVerdict,
    /// The volume of the box, where known.
    pub volume: Option<Volume>,
    /// The count, where it could be made; remedies that load a box alike share it.
    pub fill: Option<Arc<BoxFill>>,
}
