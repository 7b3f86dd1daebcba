//! The places in which receptacles of dwellings need GFCI protection.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use crate::in_words::InWords;
use crate::sources::{
    BUILDERS_2023, COURSE_1851, INSPECTORS_FORUM_2008_LIST, INSPECTORS_MEASURING, MAGAZINE_2017, MAGAZINE_2020_SCOPE,
    MAGAZINE_MEASURING, MAKER_2023, MUNICIPAL_2014, STATE_LIST_2020, TEXT_2011,
};
use dwelling::RoomUse;

/// A place by its use and its item in the list.
pub type Place = (RoomUse, &'static str);

/// The places of an edition's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Places {
    /// The places that are listed whatever else is known of the opening.
    pub listed: &'static [Place],
    /// Whether these are all: where not, the list may have the others, and nobody could confirm it.
    pub complete: bool,
}

const LIST_2008: &[Place] = &[
    (RoomUse::Bathroom, "210.8(A)(1)"),
    (RoomUse::Garage, "210.8(A)(2)"),
    (RoomUse::AccessoryBuilding, "210.8(A)(2)"),
    (RoomUse::Outdoors, "210.8(A)(3)"),
    (RoomUse::CrawlSpace, "210.8(A)(4)"),
    (RoomUse::UnfinishedBasement, "210.8(A)(5)"),
    (RoomUse::Boathouse, "210.8(A)(8)"),
];

const LIST_2014: &[Place] = &[
    (RoomUse::Bathroom, "210.8(A)(1)"),
    (RoomUse::Garage, "210.8(A)(2)"),
    (RoomUse::AccessoryBuilding, "210.8(A)(2)"),
    (RoomUse::Outdoors, "210.8(A)(3)"),
    (RoomUse::CrawlSpace, "210.8(A)(4)"),
    (RoomUse::UnfinishedBasement, "210.8(A)(5)"),
    (RoomUse::Boathouse, "210.8(A)(8)"),
    (RoomUse::Laundry, "210.8(A)(10)"),
];

const LIST_2023: &[Place] = &[
    (RoomUse::Bathroom, "210.8(A)(1)"),
    (RoomUse::Garage, "210.8(A)(2)"),
    (RoomUse::AccessoryBuilding, "210.8(A)(2)"),
    (RoomUse::Outdoors, "210.8(A)(3)"),
    (RoomUse::CrawlSpace, "210.8(A)(4)"),
    (RoomUse::UnfinishedBasement, "210.8(A)(5)"),
    (RoomUse::Boathouse, "210.8(A)(9)"),
    (RoomUse::Laundry, "210.8(A)(11)"),
];

/// Garages and accessory buildings became two items; of the others only the numbers for sinks and tubs were read.
const LIST_2026: &[Place] = &[(RoomUse::Garage, "210.8(A)(2)"), (RoomUse::AccessoryBuilding, "210.8(A)(3)")];

const fn all(listed: &'static [Place]) -> Places {
    Places { listed, complete: true }
}

/// The places that are listed whatever else is known of the opening.
pub const PLACES: ByEdition<Places> = ByEdition {
    id: "places.gfci",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)", all(LIST_2008)),
        Reading::read(Nec2011, "210.8(A)", TEXT_2011, all(LIST_2008)),
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, all(LIST_2014)),
        Reading::remembered(Nec2017, "210.8(A)", all(LIST_2014)),
        Reading::read(Nec2020, "210.8(A)", STATE_LIST_2020, all(LIST_2014)),
        Reading::remembered(Nec2023, "210.8(A)", all(LIST_2023)),
        Reading::read(Nec2026, "210.8(A)", COURSE_1851, Places { listed: LIST_2026, complete: false }),
    ],
};

/// Whether finished basements are listed too.
pub const BASEMENTS: ByEdition<bool> = ByEdition {
    id: "places.gfci.finished-basements",
    readings: &[
        Reading::read(Nec2008, "210.8(A)(5)", INSPECTORS_FORUM_2008_LIST, false),
        Reading::read(Nec2011, "210.8(A)(5)", TEXT_2011, false),
        Reading::read(Nec2014, "210.8(A)(5)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)(5)", false),
        Reading::read(Nec2020, "210.8(A)(5)", "state handout on the 2020 changes", true),
        Reading::remembered(Nec2023, "210.8(A)(5)", true),
    ],
};

/// Whether every kitchen receptacle is listed, rather than those that serve the countertop.
pub const KITCHENS: ByEdition<bool> = ByEdition {
    id: "places.gfci.all-of-the-kitchen",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)(6)", false),
        Reading::read(Nec2011, "210.8(A)(6)", TEXT_2011, false),
        Reading::read(Nec2014, "210.8(A)(6)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)(6)", false),
        Reading::read(Nec2020, "210.8(A)(6)", STATE_LIST_2020, false),
        Reading::read(Nec2023, "210.8(A)(6)", BUILDERS_2023, true),
    ],
};

/// Which sinks are listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sinks {
    /// Those of laundries, utility rooms and wet bars.
    LaundryUtilityWetBar,
    /// All but those of kitchens.
    AllButKitchens,
    /// All.
    All,
}

/// The item for sinks.
pub const SINKS: ByEdition<Sinks> = ByEdition {
    id: "places.gfci.sinks",
    readings: &[
        Reading::read(Nec2008, "210.8(A)(7)", INSPECTORS_MEASURING, Sinks::LaundryUtilityWetBar),
        Reading::read(Nec2011, "210.8(A)(7)", TEXT_2011, Sinks::AllButKitchens),
        Reading::read(Nec2014, "210.8(A)(7)", MUNICIPAL_2014, Sinks::All),
        Reading::read(Nec2017, "210.8(A)(7)", MAGAZINE_2017, Sinks::All),
        Reading::read(Nec2020, "210.8(A)(7)", STATE_LIST_2020, Sinks::All),
        Reading::read(Nec2023, "210.8(A)(8)", MAGAZINE_MEASURING, Sinks::All),
        Reading::read(Nec2026, "210.8(A)(9)", MAGAZINE_MEASURING, Sinks::All),
    ],
};

/// Whether bathtubs and shower stalls are listed.
pub const TUBS: ByEdition<bool> = ByEdition {
    id: "places.gfci.tubs",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)", false),
        Reading::read(Nec2011, "210.8(A)", TEXT_2011, false),
        Reading::read(Nec2014, "210.8(A)(9)", MUNICIPAL_2014, true),
        Reading::remembered(Nec2017, "210.8(A)(9)", true),
        Reading::read(Nec2020, "210.8(A)(9)", STATE_LIST_2020, true),
        Reading::read(Nec2023, "210.8(A)(10)", MAGAZINE_MEASURING, true),
        Reading::read(Nec2026, "210.8(A)(11)", MAGAZINE_MEASURING, true),
    ],
};

/// Whether damp and wet places indoors are listed.
pub const WET_INDOORS: ByEdition<bool> = ByEdition {
    id: "places.gfci.wet-indoors",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)", false),
        Reading::read(Nec2011, "210.8(A)", TEXT_2011, false),
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)", false),
        Reading::remembered(Nec2020, "210.8(A)(11)", true),
        Reading::remembered(Nec2023, "210.8(A)(12)", true),
    ],
};

/// Which receptacles a list reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scope {
    /// The highest voltage.
    pub volts: u32,
    /// The largest circuit in amperes; `None` where the list has no such limit.
    pub amperes: Option<u32>,
}

const SMALL_125: Scope = Scope { volts: 125, amperes: Some(20) };
const UP_TO_250: Scope = Scope { volts: 250, amperes: None };

/// Which receptacles the list reaches.
pub const SCOPE: ByEdition<Scope> = ByEdition {
    id: "places.gfci.scope",
    readings: &[
        Reading::read(Nec2008, "210.8(A)", INSPECTORS_FORUM_2008_LIST, SMALL_125),
        Reading::read(Nec2011, "210.8(A)", TEXT_2011, SMALL_125),
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, SMALL_125),
        Reading::read(Nec2017, "210.8(A)", MAGAZINE_2020_SCOPE, SMALL_125),
        Reading::read(Nec2020, "210.8(A)", MAGAZINE_2020_SCOPE, UP_TO_250),
        Reading::read(Nec2023, "210.8(A)", MAGAZINE_2020_SCOPE, UP_TO_250),
        Reading::read(Nec2026, "210.8(A)", COURSE_1851, UP_TO_250),
    ],
};

/// Whether the exception for receptacles that serve only an alarm system reaches every place, rather than basements.
pub const ALARMS_ANYWHERE: ByEdition<bool> = ByEdition {
    id: "places.gfci.alarm-systems-anywhere",
    readings: &[
        Reading::read(Nec2008, "210.8(A)(5), exception", INSPECTORS_FORUM_2008_LIST, false),
        Reading::read(Nec2011, "210.8(A)(5), exception", TEXT_2011, false),
        Reading::read(Nec2014, "210.8(A)(5), exception", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)(5), exception", false),
        Reading::read(Nec2020, "210.8(A)(5), exception", STATE_LIST_2020, false),
        Reading::read(Nec2023, "210.8(A), exception 2", MAKER_2023, true),
    ],
};

/// Whether a factory-made receptacle of an exhaust fan is excepted, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExhaustFans {
    /// Nowhere.
    NotExcepted,
    /// In bathrooms.
    InBathrooms,
    /// Everywhere, unless the fan's instructions or listing ask for protection.
    Everywhere,
}

/// The exception for exhaust fans.
pub const EXHAUST_FANS: ByEdition<ExhaustFans> = ByEdition {
    id: "places.gfci.exhaust-fans",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)", ExhaustFans::NotExcepted),
        Reading::remembered(Nec2011, "210.8(A)", ExhaustFans::NotExcepted),
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, ExhaustFans::NotExcepted),
        Reading::remembered(Nec2017, "210.8(A)", ExhaustFans::NotExcepted),
        Reading::read(Nec2020, "210.8(A)", STATE_LIST_2020, ExhaustFans::NotExcepted),
        Reading::read(Nec2023, "210.8(A), exception 4", MAKER_2023, ExhaustFans::InBathrooms),
        Reading::read(Nec2026, "210.8(A), exception 4", COURSE_1851, ExhaustFans::Everywhere),
    ],
};

/// Whether the receptacle in a listed locking support of a ceiling luminaire or fan is excepted.
pub const CEILING_SUPPORTS: ByEdition<bool> = ByEdition {
    id: "places.gfci.ceiling-supports",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)", false),
        Reading::remembered(Nec2011, "210.8(A)", false),
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)", false),
        Reading::read(Nec2020, "210.8(A), exception", STATE_LIST_2020, true),
        Reading::read(Nec2023, "210.8(A), exception 3", MAKER_2023, true),
    ],
};

impl InWords for Places {
    fn in_words(&self) -> String {
        let rooms: Vec<&str> = self.listed.iter().map(|(room, _)| room.name()).collect();
        let others = if self.complete { "" } else { "; the others could not be confirmed" };
        format!("{}{others}", rooms.join(", "))
    }
}

impl InWords for Sinks {
    fn in_words(&self) -> String {
        match self {
            Self::LaundryUtilityWetBar => "those of laundries, utility rooms and wet bars",
            Self::AllButKitchens => "all but those of kitchens",
            Self::All => "all",
        }
        .to_owned()
    }
}

impl InWords for Scope {
    fn in_words(&self) -> String {
        match self.amperes {
            Some(amperes) => format!("up to {} V, circuits of up to {amperes} A", self.volts),
            None => format!("up to {} V, circuits of any rating", self.volts),
        }
    }
}

impl InWords for ExhaustFans {
    fn in_words(&self) -> String {
        match self {
            Self::NotExcepted => "not excepted",
            Self::InBathrooms => "excepted in bathrooms",
            Self::Everywhere => "excepted everywhere, unless the fan's instructions or listing ask for protection",
        }
        .to_owned()
    }
}
