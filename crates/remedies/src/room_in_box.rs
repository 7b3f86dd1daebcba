//! How much room a box has for what a remedy puts in it.

use crate::device::BoxWork;
use crate::facts::{Facts, OpeningFacts};
use dwelling::Clamps;
use electrical::{Gauge, Volume};
use rulebook::{DeviceSpace, FillContents, FillVerdict, Fit, fill_with};

/// The sizes of conductor that a planned ground can have, by grade: each grade carries all below it.
pub const GRADES: [Gauge; 3] = [Gauge::AWG_14, Gauge::AWG_12, Gauge::AWG_10];

/// How many planned grounds may land in a box with a device in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Room {
    /// Whether the device fits at all.
    pub fits: bool,
    /// By grade of the largest ground that lands: how many may land.
    pub landings: Vec<u32>,
    /// Whether the count could not be made, so that nothing is known to fit.
    pub unchecked: bool,
}

impl Room {
    /// Room without a limit, for a box that is not touched.
    #[must_use]
    pub fn untouched() -> Self {
        Self { fits: true, landings: vec![0; GRADES.len()], unchecked: false }
    }

    /// Whether any number of grounds up to this one may land.
    #[must_use]
    pub fn is_ample_for(&self, landings: u32) -> bool {
        self.fits && self.landings.iter().all(|most| *most >= landings)
    }
}

/// What a box holds after its work, before the device.
#[must_use]
pub fn contents_after(facts: &OpeningFacts, work: BoxWork) -> FillContents {
    let found = &facts.as_found.fill;
    match work.new_volume() {
        None => {
            let added = work.added_volume().unwrap_or(Volume::ZERO);
            FillContents { volume: found.volume.map(|volume| volume + added), ..found.clone() }
        }
        Some(volume) => FillContents {
            volume: Some(volume),
            clamps: Some(Clamps::None),
            support_fittings: 0,
            other_straps: 0,
            gangs: 1,
            ..found.clone()
        },
    }
}

/// The count of a box after its work with a device and so many grounds of one size landing in it.
#[must_use]
pub fn fit_after(
    facts: &Facts,
    at: &OpeningFacts,
    work: BoxWork,
    device: DeviceSpace,
    landings: u32,
    gauge: Gauge,
) -> Fit {
    fill_with(&contents_after(at, work), device, landings, Some(gauge), &facts.code)
}

/// The room in a box for up to so many grounds. What cannot be counted is taken to fit and marked unchecked; what is too
/// full however the survey's gaps are filled does not fit.
#[must_use]
pub fn room_after(facts: &Facts, at: &OpeningFacts, work: BoxWork, device: DeviceSpace, most_landings: u32) -> Room {
    let contents = contents_after(at, work);
    let verdict = |landings, gauge| fill_with(&contents, device, landings, Some(gauge), &facts.code).verdict;
    let unchecked = matches!(verdict(0, GRADES[0]), FillVerdict::NotChecked(_));
    let passes = |verdict| match verdict {
        FillVerdict::Fits => true,
        FillVerdict::TooFull => false,
        FillVerdict::NotChecked(_) => unchecked,
    };
    let fits = passes(verdict(0, GRADES[0]));
    let landings = GRADES.map(|gauge| {
        if fits {
            (1..=most_landings).take_while(|count| passes(verdict(*count, gauge))).last().unwrap_or(0)
        } else {
            0
        }
    });
    Room { fits, landings: landings.to_vec(), unchecked }
}
