//! Places whose replaced receptacles need GFCI protection.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::{CodeInForce, Local};
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::lists::{COUNTERTOP, DAMP_INDOORS, List, NEAR_SINK, NEAR_TUB};
use crate::opening::{BuiltInto, Opening, Supply};
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_77, COURSE_2008, GUIDE_2023, MUNICIPAL_2014, STATE_LIST_2020, TEXT_2011};
use crate::tables::gfci_places::{
    ALARMS_ANYWHERE, BASEMENTS, CEILING_SUPPORTS, EXHAUST_FANS, ExhaustFans, KITCHENS, PLACES, SCOPE, SINKS, Sinks,
    TUBS, WET_INDOORS,
};
use crate::tables::six_feet::{LIMIT, METHOD, Within, within_six_feet};
use dwelling::{Equipment, RoomUse, Wetness};

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.gfci-locations",
    title: "Near water and on the ground, a replaced receptacle needs GFCI protection",
    page: include_str!("gfci_locations.md"),
    decides: &[Decides::Duty(Duty::Gfci)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[
    &ON_REPLACEMENT,
    &BOX_TOO_SMALL,
    &PLACES,
    &BASEMENTS,
    &KITCHENS,
    &SINKS,
    &TUBS,
    &WET_INDOORS,
    &SCOPE,
    &METHOD,
    &LIMIT,
    &HEAT_TRACING,
    &ALARMS_ANYWHERE,
    &EXHAUST_FANS,
    &CEILING_SUPPORTS,
];

const ON_REPLACEMENT: ByEdition<()> = ByEdition {
    id: "replacement.gfci.on-replacement",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(2)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(3)", TEXT_2011, ()),
        Reading::read(Nec2014, "406.4(D)(3)", "trade forum, thread 134287", ()),
        Reading::remembered(Nec2017, "406.4(D)(3)", ()),
        Reading::remembered(Nec2020, "406.4(D)(3)", ()),
        Reading::read(Nec2023, "406.4(D)(3)", GUIDE_2023, ()),
    ],
};

/// Whether the kind of receptacle that is there may be used again where a GFCI one does not fit the box.
const BOX_TOO_SMALL: ByEdition<bool> = ByEdition {
    id: "replacement.gfci.box-too-small",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(2)", COURSE_2008, false),
        Reading::read(Nec2011, "406.4(D)(3)", TEXT_2011, false),
        Reading::read(Nec2014, "406.4(D)(3), exception", COURSE_77, true),
        Reading::remembered(Nec2017, "406.4(D)(3), exception", true),
        Reading::disputed(Nec2020, "406.4(D)(3), exception", SECOND_EXCEPTION, true),
        Reading::remembered(Nec2023, "406.4(D)(3), exception", true),
    ],
};

const SECOND_EXCEPTION: &str = "the exception is remembered as kept; whether 2020 added a second one is unsure";

const HEAT_TRACING: ByEdition<()> = ByEdition {
    id: "replacement.gfci.heat-tracing",
    readings: &[
        Reading::remembered(Nec2008, "210.8(A)(3), exception", ()),
        Reading::read(Nec2011, "210.8(A)(3), exception", TEXT_2011, ()),
        Reading::read(Nec2014, "210.8(A)(3), exception", MUNICIPAL_2014, ()),
        Reading::unchanged_since_2011(Nec2017, "210.8(A)(3), exception", ()),
        Reading::read(Nec2020, "210.8(A)(3), exception", STATE_LIST_2020, ()),
        Reading::remembered(Nec2023, "210.8(A), exception 1", ()),
    ],
};

/// What one place in the list says about an opening.
struct Finding {
    weight: Weight,
    why: String,
    cite: Citation,
    by: Option<String>,
}

/// How much a finding weighs: the heaviest kind is said.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Weight {
    No,
    Disputed,
    Unknown,
    Yes,
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    // A new outlet is reached by the list itself.
    let asks = if opening.is_replacement() { Some(ON_REPLACEMENT.in_force(code)?.cite) } else { None };
    if let Some(beyond) = beyond_scope(opening, code)? {
        return Ok(vec![beyond]);
    }
    if let Some(excused) = excused(opening, code)? {
        return Ok(vec![excused]);
    }
    let mut found = Vec::new();
    by_room(opening, code, &mut found)?;
    by_wetness(opening, code, &mut found)?;
    by_water(opening, code, &mut found)?;
    let Some(heaviest) = found.iter().map(|finding| finding.weight).max() else { return Ok(Vec::new()) };
    let mut said: Vec<Statement> = found
        .into_iter()
        .filter(|finding| finding.weight == heaviest)
        .map(|Finding { weight, why, cite, by }| {
            let says = match weight {
                Weight::Yes => Says::Owes(Duty::Gfci, why.into()),
                Weight::Unknown => Says::CannotTell(Duty::Gfci, why.into()),
                Weight::Disputed => Says::Disputes(Duty::Gfci, why.into()),
                Weight::No => return Says::Excuses(Duty::Gfci, why.into()).by(&[cite]).changed(by.as_deref()),
            };
            says.by(&with(asks, cite)).changed(by.as_deref())
        })
        .collect();
    if heaviest == Weight::Yes {
        conditions(asks, code, &mut said)?;
    }
    Ok(said)
}

/// Where the list does not reach receptacles of this voltage or rating.
fn beyond_scope(opening: &Opening, code: &CodeInForce) -> Result<Option<Statement>, NotChecked> {
    let scope = SCOPE.in_force(code)?;
    let cites = [scope.cite];
    if let Some(largest) = scope.value.amperes
        && opening.breaker_is_above(largest)
    {
        let why =
            format!("this edition's list reaches receptacles of 15 and 20 A, and this circuit is above {largest} A");
        return Ok(Some(Says::Excuses(Duty::Gfci, why.into()).by(&cites)));
    }
    let local = code.volts(List::GfciPlaces);
    let (volts, by) = local.as_ref().map_or((scope.value.volts, None), |(volts, by)| (*volts, Some(by.as_str())));
    if volts >= 250 {
        return Ok(None);
    }
    Ok(match opening.supply() {
        Some(Supply::V120) => None,
        Some(Supply::V240) => {
            let why = format!("the list reaches receptacles of {volts} V, and this circuit has 240 V");
            Some(Says::Excuses(Duty::Gfci, why.into()).by(&cites).changed(by))
        }
        None => {
            let missing = format!("find out the circuit's voltage: the list reaches receptacles of {volts} V");
            Some(Says::CannotTell(Duty::Gfci, missing.into()).by(&cites).changed(by))
        }
    })
}

/// How the remedies that do not bring GFCI protection of themselves must get it where the place asks for it.
fn conditions(asks: Option<Citation>, code: &CodeInForce, said: &mut Vec<Statement>) -> Result<(), NotChecked> {
    let protect =
        "the place asks for GFCI protection: by a GFCI receptacle here, one upstream, or a device at the panel";
    let elsewhere = "the place asks for GFCI protection: where no GFCI receptacle fits the box, a receptacle of the kind that \
                     is there may be used with protection from elsewhere and both markings";
    let mut remedies = vec![Remedy::SeparateEgc, Remedy::NewCable, Remedy::RestoreExistingGround];
    match asks {
        None => {}
        Some(_) => {
            let too_small = BOX_TOO_SMALL.in_force(code)?;
            if too_small.value {
                let cites = with(asks, too_small.cite);
                said.push(Says::Conditions(Remedy::NongroundingReceptacle, elsewhere.into()).by(&cites));
            } else {
                remedies.insert(0, Remedy::NongroundingReceptacle);
            }
        }
    }
    for remedy in remedies {
        said.push(Says::Conditions(remedy, protect.into()).by(asks.as_slice()));
    }
    Ok(())
}

/// The exceptions for what the receptacle serves alone, and for what it is built into.
fn excused(opening: &Opening, code: &CodeInForce) -> Result<Option<Statement>, NotChecked> {
    let alone = |equipment| !opening.serves.is_empty() && opening.serves.iter().all(|served| *served == equipment);
    let excuse = |why: &'static str, cite| Ok(Some(Says::Excuses(Duty::Gfci, why.into()).by(&[cite])));
    let basement = matches!(opening.room_use, RoomUse::FinishedBasement | RoomUse::UnfinishedBasement);
    if alone(Equipment::AlarmSystem) {
        let anywhere = ALARMS_ANYWHERE.in_force(code)?;
        if basement || anywhere.value {
            return excuse("it serves only a permanently installed alarm system", anywhere.cite);
        }
    }
    if alone(Equipment::HeatTracing)
        && opening.room_use == RoomUse::Outdoors
        && opening.readily_accessible == Some(false)
    {
        let why = "it is out of ready reach and serves only snow-melting, deicing or pipe-heating equipment on a \
                   circuit of its own";
        return excuse(why, HEAT_TRACING.in_force(code)?.cite);
    }
    if opening.built_into == Some(BuiltInto::ExhaustFan) {
        let fans = EXHAUST_FANS.in_force(code)?;
        let bathroom = opening.room_use == RoomUse::Bathroom;
        match fans.value {
            ExhaustFans::InBathrooms if bathroom => {
                return excuse("it belongs to the factory assembly of a bathroom's exhaust fan", fans.cite);
            }
            ExhaustFans::Everywhere => {
                let why = "it belongs to the factory assembly of an exhaust fan; see whether the fan's instructions or \
                           its listing ask for protection";
                return excuse(why, fans.cite);
            }
            ExhaustFans::InBathrooms | ExhaustFans::NotExcepted => {}
        }
    }
    if opening.built_into == Some(BuiltInto::CeilingSupport) {
        let supports = CEILING_SUPPORTS.in_force(code)?;
        if supports.value {
            return excuse("it is the listed locking support of a ceiling luminaire or fan", supports.cite);
        }
    }
    Ok(None)
}

/// Adds a finding as amendments leave it: what they put in is reached, what they take out is not.
fn add(
    found: &mut Vec<Finding>,
    code: &CodeInForce,
    item: &str,
    as_published: Option<Weight>,
    why: String,
    cite: Citation,
) {
    let (weight, why, by) = match code.local(List::GfciPlaces, item) {
        None => match as_published {
            Some(weight) => (weight, why, None),
            None => return,
        },
        Some(Local::In(by)) => (Weight::Yes, format!("the authority's list has it: {item}"), Some(by)),
        Some(Local::Out(by)) => (Weight::No, format!("the authority's list does not have it: {item}"), Some(by)),
        Some(Local::Unsure(missing, by)) => (Weight::Unknown, missing, Some(by)),
    };
    found.push(Finding { weight, why, cite, by });
}

fn by_room(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let room = opening.room_use;
    let places = PLACES.in_force(code)?;
    if room == RoomUse::Kitchen && code.local(List::GfciPlaces, room.name()).is_none() {
        return kitchen(opening, code, found);
    }
    if let Some((_, section)) = places.value.listed.iter().find(|(place, _)| *place == room) {
        let cite = Citation { section, ..places.cite };
        add(found, code, room.name(), Some(Weight::Yes), format!("the place is in the list: {room}"), cite);
    } else if room == RoomUse::FinishedBasement {
        let basements = BASEMENTS.in_force(code)?;
        let (weight, why) = if basements.value {
            (Weight::Yes, "this edition's list has every basement, finished or not")
        } else {
            (Weight::No, "this edition's list has only unfinished basements")
        };
        add(found, code, room.name(), Some(weight), why.to_owned(), basements.cite);
    } else if room == RoomUse::Unknown {
        add(found, code, room.name(), Some(Weight::Unknown), "find out what the room is used for".into(), places.cite);
    } else if !places.value.complete {
        let why = format!("whether {} lists this place could not be confirmed: {room}", code.edition);
        add(found, code, room.name(), Some(Weight::Unknown), why, places.cite);
    } else {
        add(found, code, room.name(), None, String::new(), places.cite);
    }
    Ok(())
}

fn kitchen(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let kitchens = KITCHENS.in_force(code)?;
    let (weight, why) = match (kitchens.value, opening.countertop) {
        (true, _) => (Weight::Yes, "this edition's list has every kitchen receptacle"),
        (false, Some(true)) => (Weight::Yes, "it serves a kitchen countertop"),
        (false, Some(false)) => (Weight::No, "it does not serve the countertop"),
        (false, None) => (Weight::Unknown, "find out whether it serves the countertop"),
    };
    let item = if opening.countertop == Some(true) { COUNTERTOP } else { RoomUse::Kitchen.name() };
    add(found, code, item, Some(weight), why.to_owned(), kitchens.cite);
    Ok(())
}

fn by_wetness(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    if matches!(opening.wetness, Some(Wetness::Damp | Wetness::Wet)) && opening.room_use != RoomUse::Outdoors {
        let indoors = WET_INDOORS.in_force(code)?;
        let published = indoors.value.then_some(Weight::Yes);
        add(found, code, DAMP_INDOORS, published, "the place is damp or wet".into(), indoors.cite);
    }
    Ok(())
}

fn by_water(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let sinks = SINKS.in_force(code)?;
    let may_have_a_sink =
        matches!(opening.room_use, RoomUse::Kitchen | RoomUse::Bathroom | RoomUse::Laundry | RoomUse::Utility);
    match &opening.sink {
        Some(sink) => {
            let (weight, why) = near(within_six_feet(sink, code)?, "a sink");
            let (weight, why) =
                if weight == Weight::No { (weight, why) } else { listed_sink(opening, sinks.value, weight, why) };
            add(found, code, NEAR_SINK, Some(weight), why, sinks.cite);
        }
        None if may_have_a_sink && listed_sink(opening, sinks.value, Weight::Yes, String::new()).0 != Weight::No => {
            add(found, code, NEAR_SINK, Some(Weight::Unknown), "measure to the nearest sink".into(), sinks.cite);
        }
        None => {}
    }
    if let Some(tub) = &opening.tub {
        let tubs = TUBS.in_force(code)?;
        let (weight, why) = near(within_six_feet(tub, code)?, "a bathtub or shower stall");
        let (weight, why) = if tubs.value {
            (weight, why)
        } else {
            (Weight::No, "this edition's list has no item for bathtubs and shower stalls".to_owned())
        };
        add(found, code, NEAR_TUB, Some(weight), why, tubs.cite);
    }
    Ok(())
}

/// What being near a sink weighs where the list has only some sinks.
fn listed_sink(opening: &Opening, sinks: Sinks, weight: Weight, why: String) -> (Weight, String) {
    let room = opening.room_use;
    match sinks {
        Sinks::All => (weight, why),
        Sinks::AllButKitchens if room == RoomUse::Kitchen => {
            (Weight::No, "this edition's list leaves out the sinks of kitchens".to_owned())
        }
        Sinks::AllButKitchens if matches!(room, RoomUse::Bathroom | RoomUse::Laundry | RoomUse::Utility) => {
            (weight, why)
        }
        Sinks::AllButKitchens => {
            (Weight::Unknown, "find out whether the sink is the kitchen's, which is left out".to_owned())
        }
        Sinks::LaundryUtilityWetBar if matches!(room, RoomUse::Laundry | RoomUse::Utility) => (weight, why),
        Sinks::LaundryUtilityWetBar if matches!(room, RoomUse::Kitchen | RoomUse::Bathroom) => {
            (Weight::No, "this edition's list has only the sinks of laundries, utility rooms and wet bars".to_owned())
        }
        Sinks::LaundryUtilityWetBar => {
            (Weight::Unknown, "find out whether the sink is one of a laundry, a utility room or a wet bar".to_owned())
        }
    }
}

fn near(within: Within, what: &str) -> (Weight, String) {
    match within {
        Within::Yes => (Weight::Yes, format!("it is within 6 ft of {what}")),
        Within::No(why) => (Weight::No, format!("it is not within 6 ft of {what}: {why}")),
        Within::Disputed(both) => (Weight::Disputed, format!("it is within 6 ft of {what}, but {both}")),
    }
}

fn with(asks: Option<Citation>, cite: Citation) -> Vec<Citation> {
    asks.into_iter().chain([cite]).collect()
}
