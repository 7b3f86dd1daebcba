//! Rooms whose replaced receptacles need AFCI protection.

use crate::cited::{ByEdition, Citation, Cited, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_307, COURSE_1429};
use dwelling::RoomUse;

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.afci",
    title: "In most living rooms a replaced receptacle needs AFCI protection",
    page: include_str!("afci_rooms.md"),
    decides: &[Decides::Duty(Duty::Afci)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &ROOMS, &RATINGS, &FOUR_CONDITIONS];

const ON_REPLACEMENT: ByEdition<()> = ByEdition {
    id: "replacement.afci.on-replacement",
    readings: &[
        Reading::read(Nec2014, "406.4(D)(4)", "trade forum, threads 111542 and 150725", ()),
        Reading::read(Nec2017, "406.4(D)(4)", COURSE_307, ()),
        Reading::read(Nec2020, "406.4(D)(4)", "ecmweb.com, article 21182073", ()),
        Reading::read(Nec2023, "406.4(D)(4)", "trade forum, thread 2584935", ()),
    ],
};

const LISTED: &[RoomUse] = &[
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

const ROOMS: ByEdition<&[RoomUse]> = ByEdition {
    id: "replacement.afci.rooms",
    readings: &[
        Reading::read(Nec2014, "210.12(A)", "trade newsletter and a reproduced comparison of 2011 and 2014", LISTED),
        Reading::read(Nec2017, "210.12(A)", "electricallicenserenewal.com, NEC content 3528", LISTED),
        Reading::read(Nec2020, "210.12(A)", "training page on 210.12 from 2020 to 2023", LISTED),
        Reading::read(Nec2023, "210.12(B)", COURSE_1429, LISTED),
    ],
};

/// The ratings in amperes of the 120 V circuits that are reached.
const RATINGS: ByEdition<&[u32]> = ByEdition {
    id: "replacement.afci.ratings",
    readings: &[
        Reading::read(Nec2014, "210.12(A)", "trade newsletter and a reproduced comparison of 2011 and 2014", &[15, 20]),
        Reading::read(Nec2017, "210.12(A)", "electricallicenserenewal.com, NEC content 3528", &[15, 20]),
        Reading::read(Nec2020, "210.12(A)", "training page on 210.12 from 2020 to 2023", &[15, 20]),
        Reading::read(Nec2023, "210.12(B)", COURSE_1429, &[10, 15, 20]),
    ],
};

const BELIEVED_DELETED: &str = "believed to have been deleted in 2020; one who has the book may find it kept";

/// Whether the edition excepts a GFCI replacement without ground under four conditions that must all hold.
const FOUR_CONDITIONS: ByEdition<bool> = ByEdition {
    id: "replacement.afci.four-conditions",
    readings: &[
        Reading::remembered(Nec2014, "406.4(D)(4)", false),
        Reading::read(Nec2017, "406.4(D)(4), exception 1", COURSE_307, true),
        Reading::disputed(Nec2020, "406.4(D)(4)", BELIEVED_DELETED, false),
        Reading::disputed(Nec2023, "406.4(D)(4)", BELIEVED_DELETED, false),
    ],
};

/// The remedies at which a receptacle is replaced.
const REPLACING: [Remedy; 7] = [
    Remedy::NongroundingReceptacle,
    Remedy::GfciReceptacle,
    Remedy::DownstreamOfGfci,
    Remedy::GfciBreaker,
    Remedy::SeparateEgc,
    Remedy::NewCable,
    Remedy::RestoreExistingGround,
];

/// How a room stands to the list.
enum Standing {
    Listed,
    Similar(&'static str),
    Argued(&'static str),
    NotListed,
    Unknown,
}

fn standing(room_use: RoomUse, rooms: &[RoomUse]) -> Standing {
    match room_use {
        room if rooms.contains(&room) => Standing::Listed,
        RoomUse::Office => Standing::Similar("an office is used like a den or library, a similar room"),
        RoomUse::FinishedBasement => Standing::Argued(
            "a finished basement used as a recreation room is a similar room to some; to others a basement is not in the list",
        ),
        RoomUse::Stairway => Standing::Argued(
            "a stairway or entry is an area similar to a hallway to some; to others it is not in the list",
        ),
        RoomUse::Utility => Standing::Argued(
            "a utility room is an area similar to a laundry area to some; to others it is not in the list",
        ),
        RoomUse::Unknown => Standing::Unknown,
        _ => Standing::NotListed,
    }
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (asks, rooms) = (ON_REPLACEMENT.in_force(code)?, ROOMS.in_force(code)?);
    let ratings = RATINGS.in_force(code)?;
    // A new outlet is reached by the list itself.
    let asks = opening.is_replacement().then_some(asks.cite);
    let cites: Vec<Citation> = asks.into_iter().chain([rooms.cite]).collect();
    let duty = Duty::Afci;
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let standing = standing(opening.room_use, rooms.value);
    if matches!(standing, Standing::NotListed) {
        return Ok(Vec::new());
    }
    let rated = match opening.breaker {
        Some(breaker) if !ratings.value.contains(&breaker.get()) => {
            let why = format!("a {breaker} circuit is not among those that the AFCI rule reaches");
            return Ok(vec![Says::Excuses(duty, why).by(&cites)]);
        }
        breaker => breaker.is_some(),
    };
    let says = match standing {
        Standing::NotListed => return Ok(Vec::new()),
        Standing::Unknown => Says::CannotTell(duty, "find out what the room is used for".into()),
        _ if !rated => Says::CannotTell(duty, "find out the rating of the circuit's breaker".into()),
        Standing::Listed => Says::Owes(duty, format!("the {} is one of the rooms listed", opening.room_use)),
        Standing::Similar(why) => Says::Owes(duty, why.into()),
        Standing::Argued(both) => Says::Disputes(duty, both.into()),
    };
    let how = match says {
        Says::Owes(..) => "give the receptacle AFCI protection",
        Says::Disputes(..) => {
            "where the authority counts this room among those listed, give the receptacle AFCI protection"
        }
        _ => "where it turns out to be due, give the receptacle AFCI protection",
    };
    let by_what = "by an AFCI receptacle here or upstream, or a combination-type breaker made for the panel";
    let mut said = vec![says.by(&cites)];
    for remedy in REPLACING {
        said.push(Says::Conditions(remedy, format!("{how}: {by_what}")).by(&cites));
    }
    said.extend(exception(FOUR_CONDITIONS.in_force(code)?));
    Ok(said)
}

/// The exception for a GFCI receptacle without ground, which is practically empty where dual-function devices are sold.
fn exception(four_conditions: Cited<bool>) -> Option<Statement> {
    let text = "AFCI protection may be left out only where all four hold: the receptacle is a GFCI one without ground, no \
                grounding conductor can practically be brought, no combination-type AFCI breaker can be bought for the \
                panel, and no receptacle that is GFCI and AFCI in one can be bought; such receptacles are sold";
    four_conditions.value.then(|| Says::Conditions(Remedy::GfciReceptacle, text.to_owned()).by(&[four_conditions.cite]))
}
