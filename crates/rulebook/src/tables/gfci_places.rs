//! The places in which receptacles of dwellings need GFCI protection.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::{
    BUILDERS_2023, MAGAZINE_2017, MAGAZINE_2020_SCOPE, MAGAZINE_MEASURING, MUNICIPAL_2014, STATE_LIST_2020,
};
use dwelling::RoomUse;

/// A place by its use and its item in the list.
type Place = (RoomUse, &'static str);

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

/// The places that are listed whatever else is known of the opening.
pub const PLACES: ByEdition<&[Place]> = ByEdition {
    id: "places.gfci",
    readings: &[
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, LIST_2014),
        Reading::remembered(Nec2017, "210.8(A)", LIST_2014),
        Reading::read(Nec2020, "210.8(A)", STATE_LIST_2020, LIST_2014),
        Reading::remembered(Nec2023, "210.8(A)", LIST_2023),
    ],
};

/// Whether finished basements are listed too.
pub const BASEMENTS: ByEdition<bool> = ByEdition {
    id: "places.gfci.finished-basements",
    readings: &[
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
        Reading::read(Nec2014, "210.8(A)(6)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)(6)", false),
        Reading::read(Nec2020, "210.8(A)(6)", STATE_LIST_2020, false),
        Reading::read(Nec2023, "210.8(A)(6)", BUILDERS_2023, true),
    ],
};

/// The item for sinks.
pub const SINKS: ByEdition<()> = ByEdition {
    id: "places.gfci.sinks",
    readings: &[
        Reading::read(Nec2014, "210.8(A)(7)", MUNICIPAL_2014, ()),
        Reading::read(Nec2017, "210.8(A)(7)", MAGAZINE_2017, ()),
        Reading::read(Nec2020, "210.8(A)(7)", STATE_LIST_2020, ()),
        Reading::read(Nec2023, "210.8(A)(8)", MAGAZINE_MEASURING, ()),
    ],
};

/// The item for bathtubs and shower stalls.
pub const TUBS: ByEdition<()> = ByEdition {
    id: "places.gfci.tubs",
    readings: &[
        Reading::read(Nec2014, "210.8(A)(9)", MUNICIPAL_2014, ()),
        Reading::remembered(Nec2017, "210.8(A)(9)", ()),
        Reading::read(Nec2020, "210.8(A)(9)", STATE_LIST_2020, ()),
        Reading::read(Nec2023, "210.8(A)(10)", MAGAZINE_MEASURING, ()),
    ],
};

/// Whether damp and wet places indoors are listed.
pub const WET_INDOORS: ByEdition<bool> = ByEdition {
    id: "places.gfci.wet-indoors",
    readings: &[
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)", false),
        Reading::remembered(Nec2020, "210.8(A)(11)", true),
        Reading::remembered(Nec2023, "210.8(A)(12)", true),
    ],
};

/// The largest circuit in amperes whose receptacles are reached; `None` where the list has no such limit.
pub const SCOPE_AMPERES: ByEdition<Option<u32>> = ByEdition {
    id: "places.gfci.scope",
    readings: &[
        Reading::read(Nec2014, "210.8(A)", MUNICIPAL_2014, Some(20)),
        Reading::read(Nec2017, "210.8(A)", MAGAZINE_2020_SCOPE, Some(20)),
        Reading::read(Nec2020, "210.8(A)", MAGAZINE_2020_SCOPE, None),
        Reading::remembered(Nec2023, "210.8(A)", None),
    ],
};

/// The exception for receptacles that serve only an alarm system.
pub const ALARM_SYSTEMS: ByEdition<()> = ByEdition {
    id: "places.gfci.alarm-systems",
    readings: &[
        Reading::read(Nec2014, "210.8(A)(5), exception", MUNICIPAL_2014, ()),
        Reading::remembered(Nec2017, "210.8(A)(5), exception", ()),
        Reading::read(Nec2020, "210.8(A)(5), exception", STATE_LIST_2020, ()),
        Reading::read(Nec2023, "210.8(A), exception 2", "a device maker's page on the 2023 changes", ()),
    ],
};

/// Whether that exception reaches every place, rather than basements.
pub const ALARMS_ANYWHERE: ByEdition<bool> = ByEdition {
    id: "places.gfci.alarm-systems-anywhere",
    readings: &[
        Reading::read(Nec2014, "210.8(A)(5), exception", MUNICIPAL_2014, false),
        Reading::remembered(Nec2017, "210.8(A)(5), exception", false),
        Reading::read(Nec2020, "210.8(A)(5), exception", STATE_LIST_2020, false),
        Reading::read(Nec2023, "210.8(A), exception 2", "a device maker's page on the 2023 changes", true),
    ],
};
