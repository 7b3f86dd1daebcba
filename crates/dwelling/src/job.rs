//! The job: whose dwelling, how old, and which code stands where it stands.

use crate::day::Day;
use crate::names::names;

/// What the survey says about the job as a whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// What the job is called.
    pub name: String,
    /// The year the dwelling was built, where known.
    pub built: Option<u16>,
    /// The kind of dwelling.
    pub dwelling_use: Option<DwellingUse>,
    /// The year of the edition of the NEC in force; any year can be written, the rulebook says whether it knows it.
    pub edition: Option<u16>,
    /// The place whose adoption of the code counts, as the rulebook names it, where the survey says so.
    pub place: Option<String>,
    /// The day of the permit, which picks the adoption and what begins or ends by a date.
    pub permit_day: Option<Day>,
    /// How many outlets the load side of one feed-through device may protect by the instructions of the devices that will be
    /// bought, its own not counted, where known.
    pub outlets_behind_one_device: Option<u32>,
    /// How much of the 4 mA at which a GFCI may begin to trip is planned as standing leakage behind one, in percent, where
    /// somebody decided.
    pub leakage_percent: Option<u32>,
    /// The name of a file of local changes to the code, where the survey names one.
    pub amendments: Option<String>,
}

impl Job {
    /// A job of this name, of which nothing else is known.
    #[must_use]
    pub const fn named(name: String) -> Self {
        Self {
            name,
            built: None,
            dwelling_use: None,
            edition: None,
            place: None,
            permit_day: None,
            outlets_behind_one_device: None,
            leakage_percent: None,
            amendments: None,
        }
    }
}

names! {
    /// The kind of dwelling.
    DwellingUse {
        /// A house for one family.
        OneFamily = "one-family",
        /// A house for two families.
        TwoFamily = "two-family",
        /// A flat in a building with more than two.
        Apartment = "apartment",
    }
}
