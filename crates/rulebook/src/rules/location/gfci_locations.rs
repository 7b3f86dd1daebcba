//! Places whose replaced receptacles need GFCI protection.

use crate::cited::{ByEdition, Citation, Cited, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_77, GUIDE_2023, MUNICIPAL_2014, STATE_LIST_2020};
use crate::tables::gfci_places::{
    ALARM_SYSTEMS, ALARMS_ANYWHERE, BASEMENTS, KITCHENS, PLACES, SCOPE_AMPERES, SINKS, TUBS, WET_INDOORS,
};
use crate::tables::six_feet::{Within, within_six_feet};
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

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &BOX_TOO_SMALL, &HEAT_TRACING];

const ON_REPLACEMENT: ByEdition<()> = ByEdition {
    id: "replacement.gfci.on-replacement",
    readings: &[
        Reading::read(Nec2014, "406.4(D)(3)", "trade forum, thread 134287", ()),
        Reading::remembered(Nec2017, "406.4(D)(3)", ()),
        Reading::remembered(Nec2020, "406.4(D)(3)", ()),
        Reading::read(Nec2023, "406.4(D)(3)", GUIDE_2023, ()),
    ],
};

/// That the kind of receptacle that is there may be used again where a GFCI one does not fit the box.
const BOX_TOO_SMALL: ByEdition<()> = ByEdition {
    id: "replacement.gfci.box-too-small",
    readings: &[
        Reading::read(Nec2014, "406.4(D)(3), exception", COURSE_77, ()),
        Reading::remembered(Nec2017, "406.4(D)(3), exception", ()),
        Reading::remembered(Nec2020, "406.4(D)(3), exception", ()),
        Reading::remembered(Nec2023, "406.4(D)(3), exception", ()),
    ],
};

const HEAT_TRACING: ByEdition<()> = ByEdition {
    id: "replacement.gfci.heat-tracing",
    readings: &[
        Reading::read(Nec2014, "210.8(A)(3), exception", MUNICIPAL_2014, ()),
        Reading::unchanged_since_2011(Nec2017, "210.8(A)(3), exception", ()),
        Reading::read(Nec2020, "210.8(A)(3), exception", STATE_LIST_2020, ()),
        Reading::remembered(Nec2023, "210.8(A), exception 1", ()),
    ],
};

/// What one place in the list says about an opening.
enum Finding {
    Yes(String, Citation),
    Unknown(String, Citation),
    Disputed(String, Citation),
    No(String, Citation),
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let on_replacement = ON_REPLACEMENT.in_force(code)?.cite;
    // A new outlet is reached by the list itself.
    let asks = opening.is_replacement().then_some(on_replacement);
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let scope = SCOPE_AMPERES.in_force(code)?;
    if let Some(largest) = scope.value
        && opening.breaker_is_above(largest)
    {
        let why =
            format!("this edition's list reaches receptacles of 15 and 20 A, and this circuit is above {largest} A");
        return Ok(vec![Says::Excuses(Duty::Gfci, why).by(&[scope.cite])]);
    }
    if let Some(excused) = excused(opening, code)? {
        return Ok(vec![excused]);
    }
    let mut found = Vec::new();
    by_room(opening, code, &mut found)?;
    by_wetness(opening, code, &mut found)?;
    by_water(opening, code, &mut found)?;
    let (mut yes, mut unknown, mut disputed, mut no) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for finding in found {
        match finding {
            Finding::Yes(why, cite) => yes.push(Says::Owes(Duty::Gfci, why).by(&with(asks, cite))),
            Finding::Unknown(why, cite) => unknown.push(Says::CannotTell(Duty::Gfci, why).by(&with(asks, cite))),
            Finding::Disputed(why, cite) => disputed.push(Says::Disputes(Duty::Gfci, why).by(&with(asks, cite))),
            Finding::No(why, cite) => no.push(Says::Excuses(Duty::Gfci, why).by(&[cite])),
        }
    }
    let due = !yes.is_empty();
    let mut said = [yes, unknown, disputed, no].into_iter().find(|said| !said.is_empty()).unwrap_or_default();
    if due {
        let too_small = BOX_TOO_SMALL.in_force(code)?.cite;
        said.extend(conditions(asks, too_small));
    }
    Ok(said)
}

/// How the remedies that do not bring GFCI protection of themselves must get it where the place asks for it.
fn conditions(asks: Option<Citation>, too_small: Citation) -> Vec<Statement> {
    let protect =
        "the place asks for GFCI protection: by a GFCI receptacle here, one upstream, or a device at the panel";
    let elsewhere = "the place asks for GFCI protection: where no GFCI receptacle fits the box, a receptacle of the kind that \
                     is there may be used with protection from elsewhere and both markings";
    let mut said =
        vec![Says::Conditions(Remedy::NongroundingReceptacle, elsewhere.to_owned()).by(&with(asks, too_small))];
    for remedy in [Remedy::SeparateEgc, Remedy::NewCable, Remedy::RestoreExistingGround] {
        said.push(Says::Conditions(remedy, protect.to_owned()).by(asks.as_slice()));
    }
    said
}

/// The exceptions for what the receptacle serves alone.
fn excused(opening: &Opening, code: &CodeInForce) -> Result<Option<Statement>, NotChecked> {
    let alone = |equipment| !opening.serves.is_empty() && opening.serves.iter().all(|served| *served == equipment);
    let basement = matches!(opening.room_use, RoomUse::FinishedBasement | RoomUse::UnfinishedBasement);
    if alone(Equipment::AlarmSystem) && (basement || ALARMS_ANYWHERE.in_force(code)?.value) {
        let why = "it serves only a permanently installed alarm system";
        return Ok(Some(Says::Excuses(Duty::Gfci, why.into()).by(&[ALARM_SYSTEMS.in_force(code)?.cite])));
    }
    if alone(Equipment::HeatTracing) && opening.room_use == RoomUse::Outdoors {
        let cite = HEAT_TRACING.in_force(code)?.cite;
        return Ok(match opening.readily_accessible {
            Some(false) => {
                let why = "it is out of ready reach and serves only snow-melting, deicing or pipe-heating equipment on a \
                           circuit of its own";
                Some(Says::Excuses(Duty::Gfci, why.into()).by(&[cite]))
            }
            _ => None,
        });
    }
    Ok(None)
}

fn by_room(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let room = opening.room_use;
    let places = PLACES.in_force(code)?;
    if let Some((_, item)) = places.value.iter().find(|(place, _)| *place == room) {
        found.push(Finding::Yes(format!("the place is in the list: {room}"), at(&places, item)));
    }
    if room == RoomUse::FinishedBasement {
        let basements = BASEMENTS.in_force(code)?;
        found.push(if basements.value {
            Finding::Yes("this edition's list has every basement, finished or not".into(), basements.cite)
        } else {
            Finding::No("this edition's list has only unfinished basements".into(), basements.cite)
        });
    }
    if room == RoomUse::Kitchen {
        let kitchens = KITCHENS.in_force(code)?;
        found.push(match (kitchens.value, opening.countertop) {
            (true, _) => Finding::Yes("this edition's list has every kitchen receptacle".into(), kitchens.cite),
            (false, Some(true)) => Finding::Yes("it serves a kitchen countertop".into(), kitchens.cite),
            (false, Some(false)) => Finding::No("it does not serve the countertop".into(), kitchens.cite),
            (false, None) => Finding::Unknown("find out whether it serves the countertop".into(), kitchens.cite),
        });
    }
    if room == RoomUse::Unknown {
        found.push(Finding::Unknown("find out what the room is used for".into(), places.cite));
    }
    Ok(())
}

fn by_wetness(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let indoors = WET_INDOORS.in_force(code)?;
    if indoors.value && matches!(opening.wetness, Some(Wetness::Damp | Wetness::Wet)) {
        found.push(Finding::Yes("the place is damp or wet".into(), indoors.cite));
    }
    Ok(())
}

fn by_water(opening: &Opening, code: &CodeInForce, found: &mut Vec<Finding>) -> Result<(), NotChecked> {
    let sinks = SINKS.in_force(code)?.cite;
    let tubs = TUBS.in_force(code)?.cite;
    let may_have_a_sink =
        matches!(opening.room_use, RoomUse::Kitchen | RoomUse::Bathroom | RoomUse::Laundry | RoomUse::Utility);
    match &opening.sink {
        Some(sink) => found.push(near(within_six_feet(sink, code)?, "a sink", sinks)),
        None if may_have_a_sink => {
            found.push(Finding::Unknown("measure to the nearest sink".into(), sinks));
        }
        None => {}
    }
    if let Some(tub) = &opening.tub {
        found.push(near(within_six_feet(tub, code)?, "a bathtub or shower stall", tubs));
    }
    Ok(())
}

fn near(within: Within, what: &str, cite: Citation) -> Finding {
    match within {
        Within::Yes => Finding::Yes(format!("it is within 6 ft of {what}"), cite),
        Within::No(why) => Finding::No(format!("it is not within 6 ft of {what}: {why}"), cite),
        Within::Disputed(both) => Finding::Disputed(format!("it is within 6 ft of {what}, but {both}"), cite),
    }
}

fn with(asks: Option<Citation>, cite: Citation) -> Vec<Citation> {
    asks.into_iter().chain([cite]).collect()
}

fn at<T>(places: &Cited<T>, item: &'static str) -> Citation {
    Citation { section: item, ..places.cite }
}
