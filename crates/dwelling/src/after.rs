//! What was read and seen after the work: at an opening, at the panel end of a circuit, at a panel; and which offer it was.

use crate::day::Day;
use crate::device_box::Holding;
use crate::index::BoxIndex;
use crate::names::names;
use crate::reading::Reading;
use electrical::{Milliamperes, Volume};

/// One set of readings and sightings at an opening after the work. Whatever was not looked at is `None`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct AfterReading {
    /// What was read, as before the work.
    pub reading: Reading,
    /// The current of the load that was on, where known.
    pub load_current: Option<Milliamperes>,
    /// Where that load was plugged in; `None` is at this opening.
    pub load_at: Option<BoxIndex>,
    /// What the box holds by then.
    pub fitted: Option<Holding>,
    /// What the device did when its own test button was pressed.
    pub test_button: Option<ButtonTest>,
    /// Whether the opening went dead when the test button of the device that protects it was pressed.
    pub dead_when_tripped: Option<bool>,
    /// The labels that were seen; an empty list where somebody looked and there was none.
    pub labels: Option<Vec<LabelSeen>>,
    /// What was done with the box.
    pub box_work: Option<BoxSeen>,
    /// The volume marked on the new box or on its extension.
    pub box_volume: Option<Volume>,
    /// Whether the receptacle is marked as tamper-resistant.
    pub tamper_resistant: Option<bool>,
    /// Whether the receptacle is marked as weather-resistant.
    pub weather_resistant: Option<bool>,
    /// When and by whom.
    pub taken: Taken,
    /// A remark.
    pub note: Option<String>,
}

/// What was seen after the work at the panel end of a circuit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CircuitAfter {
    /// What is fitted there.
    pub fitted: Option<FittedAtPanel>,
    /// What it did when its own test button was pressed.
    pub test_button: Option<ButtonTest>,
    /// When and by whom.
    pub taken: Taken,
}

/// What was seen after the work at a panel.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PanelAfter {
    /// Whether the circuit directory is written as the circuits are.
    pub directory: Option<bool>,
    /// When and by whom.
    pub taken: Taken,
}

/// When something was read and who read it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// The day.
    pub day: Option<Day>,
    /// The initials.
    pub by: Option<String>,
}

/// What holds for the work as a whole.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CloseOut {
    /// The number of the offer that was carried out, where it was one of several.
    pub offer: Option<u32>,
}

names! {
    /// What a device did when its own test button was pressed.
    ButtonTest {
        /// It opened.
        Trips = "trips",
        /// It did not open.
        DoesNotTrip = "does not trip",
        /// Nobody pressed it.
        NotTested = "not tested",
    }
}

names! {
    /// A label seen on a receptacle or its plate, by what it says.
    LabelSeen {
        /// It says that there is no equipment ground.
        NoEquipmentGround = "No Equipment Ground",
        /// It says that a GFCI protects the opening.
        GfciProtected = "GFCI Protected",
        /// It says something else, or cannot be read.
        Other = "other",
    }
}

names! {
    /// What was done with a box.
    BoxSeen {
        /// It stayed as it was.
        Kept = "kept",
        /// It was cut out for another.
        Replaced = "replaced",
        /// An extension was fitted onto it.
        Extended = "extended",
    }
}

names! {
    /// What is at the panel end of a circuit after the work.
    FittedAtPanel {
        /// What was there before.
        AsItWas = "as it was",
        /// A single-pole GFCI breaker.
        Gfci = "gfci",
        /// A single-pole AFCI breaker of the combination type.
        Afci = "afci",
        /// A single-pole breaker that is GFCI and AFCI in one.
        Dual = "dual",
        /// A two-pole GFCI breaker.
        GfciTwoPole = "gfci-2p",
        /// A two-pole AFCI breaker.
        AfciTwoPole = "afci-2p",
        /// A two-pole breaker that is GFCI and AFCI in one.
        DualTwoPole = "dual-2p",
        /// A GFCI device without slots in a box beside the panel.
        DeadFrontGfci = "dead-front-gfci",
        /// A device without slots beside the panel that is GFCI and AFCI in one.
        DeadFrontDual = "dead-front-dual",
    }
}
