//! The rooms whose circuits get AFCI protection, and how a room stands to the list.

use crate::cited::{ByEdition, Citation, NotChecked, Reading};
use crate::code::{CodeInForce, Local};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::lists::List;
use crate::sources::{COURSE_1429, COURSE_3528, FORUM_2008_ROOMS, NEWSLETTER_2014, TEXT_2011, TRAINING_2020};
use dwelling::RoomUse;

const TO_2011: &[RoomUse] = &[
    RoomUse::FamilyRoom,
    RoomUse::DiningRoom,
    RoomUse::LivingRoom,
    RoomUse::Parlor,
    RoomUse::Library,
    RoomUse::Den,
    RoomUse::Bedroom,
    RoomUse::Sunroom,
    RoomUse::RecreationRoom,
    RoomUse::Closet,
    RoomUse::Hallway,
];

const FROM_2014: &[RoomUse] = &[
    RoomUse::Kitchen,
    RoomUse::FamilyRoom,
    RoomUse::DiningRoom,
    RoomUse::LivingRoom,
    RoomUse::Parlor,
    RoomUse::Library,
    RoomUse::Den,
    RoomUse::Bedroom,
    RoomUse::Sunroom,
    RoomUse::RecreationRoom,
    RoomUse::Closet,
    RoomUse::Hallway,
    RoomUse::Laundry,
];

/// The rooms listed.
pub const ROOMS: ByEdition<&[RoomUse]> = ByEdition {
    id: "replacement.afci.rooms",
    readings: &[
        Reading::read(Nec2008, "210.12(B)", FORUM_2008_ROOMS, TO_2011),
        Reading::read(Nec2011, "210.12(A)", TEXT_2011, TO_2011),
        Reading::read(Nec2014, "210.12(A)", NEWSLETTER_2014, FROM_2014),
        Reading::read(Nec2017, "210.12(A)", COURSE_3528, FROM_2014),
        Reading::read(Nec2020, "210.12(A)", TRAINING_2020, FROM_2014),
        Reading::read(Nec2023, "210.12(B)", COURSE_1429, FROM_2014),
    ],
};

/// The ratings in amperes of the 120 V circuits that are reached.
pub const RATINGS: ByEdition<&[u32]> = ByEdition {
    id: "replacement.afci.ratings",
    readings: &[
        Reading::read(Nec2008, "210.12(B)", FORUM_2008_ROOMS, &[15, 20]),
        Reading::read(Nec2011, "210.12(A)", TEXT_2011, &[15, 20]),
        Reading::read(Nec2014, "210.12(A)", NEWSLETTER_2014, &[15, 20]),
        Reading::read(Nec2017, "210.12(A)", COURSE_3528, &[15, 20]),
        Reading::read(Nec2020, "210.12(A)", TRAINING_2020, &[15, 20]),
        Reading::read(Nec2023, "210.12(B)", COURSE_1429, &[10, 15, 20]),
    ],
};

/// The places that no edition's list of AFCI rooms has.
#[must_use]
pub const fn never_reached(room: RoomUse) -> bool {
    matches!(
        room,
        RoomUse::Bathroom
            | RoomUse::Garage
            | RoomUse::AccessoryBuilding
            | RoomUse::Outdoors
            | RoomUse::Attic
            | RoomUse::CrawlSpace
            | RoomUse::UnfinishedBasement
            | RoomUse::Boathouse
    )
}

/// How a room stands to the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It is in it.
    Listed,
    /// It is a similar room, and why.
    Similar(&'static str),
    /// Whether it is a similar room is read in two ways.
    Argued(&'static str),
    /// It is not in it.
    NotListed,
    /// The authority put it in; who, in words.
    PutIn(String),
    /// The authority took it out; who, in words.
    TakenOut(String),
    /// It cannot be told; what is missing, and who changed it, where somebody did.
    Unknown(String, Option<String>),
}

/// How a room stands to the list of the code in force, and where it stands.
///
/// # Errors
/// [`NotChecked`] where the list of the edition was not read and the room is one that a list could have.
pub fn standing(room: RoomUse, code: &CodeInForce) -> Result<(Standing, Option<Citation>), NotChecked> {
    match code.local(List::AfciRooms, room.name()) {
        Some(Local::In(by)) => return Ok((Standing::PutIn(by), ROOMS.in_force(code).ok().map(|rooms| rooms.cite))),
        Some(Local::Out(by)) => return Ok((Standing::TakenOut(by), ROOMS.in_force(code).ok().map(|rooms| rooms.cite))),
        Some(Local::Unsure(missing, by)) => return Ok((Standing::Unknown(missing, Some(by)), None)),
        None => {}
    }
    let rooms = ROOMS.in_force(code)?;
    let standing = match room {
        room if rooms.value.contains(&room) => Standing::Listed,
        RoomUse::Office => Standing::Similar("an office is used like a den or library, a similar room"),
        RoomUse::FinishedBasement => Standing::Argued(
            "a finished basement used as a recreation room is a similar room to some; to others a basement is not in the list",
        ),
        RoomUse::Stairway => Standing::Argued(
            "a stairway or entry is an area similar to a hallway to some; to others it is not in the list",
        ),
        // A utility room is argued only where the list has laundry areas to be similar to.
        RoomUse::Utility if rooms.value.contains(&RoomUse::Laundry) => Standing::Argued(
            "a utility room is an area similar to a laundry area to some; to others it is not in the list",
        ),
        RoomUse::Unknown => Standing::Unknown("find out what the room is used for".to_owned(), None),
        _ => Standing::NotListed,
    };
    Ok((standing, Some(rooms.cite)))
}
