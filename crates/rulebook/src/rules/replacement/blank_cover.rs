//! A blank cover where a receptacle was that the owner does not need.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement, Words};
use crate::tables::required_outlets::{
    BASINS, COUNTERTOPS, EACH_CAR, FOYERS, HALLWAYS, HIGHEST, LAUNDRIES, NEAR_APPLIANCES, NEAR_EQUIPMENT, OUTDOORS,
    SERVICE_PLACES, WALLS,
};
use crate::taking_out::{Staying, TakingOut};
use crate::wall_line::{Spacing, spacing};
use dwelling::{DwellingUse, Holding, Point, RoomUse};
use electrical::Length;

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.blank-cover",
    title: "A receptacle may be taken out only where nothing keeps it",
    page: include_str!("blank_cover.md"),
    decides: &[Decides::Remedy(Remedy::BlankCover)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&WITHIN_REACH, &COVERED, &SPLICED, &LAMP_OUTLETS];

macro_rules! from_memory {
    ($name:ident, $id:literal, $section:literal, $about:literal) => {
        #[doc = $about]
        const $name: ByEdition<()> = ByEdition {
            id: $id,
            readings: &[
                Reading::remembered(Nec2008, $section, ()),
                Reading::remembered(Nec2011, $section, ()),
                Reading::remembered(Nec2014, $section, ()),
                Reading::remembered(Nec2017, $section, ()),
                Reading::remembered(Nec2020, $section, ()),
                Reading::remembered(Nec2023, $section, ()),
            ],
        };
    };
}
from_memory!(WITHIN_REACH, "replacement.blank-cover.within-reach", "314.29", "A box with splices stays within reach.");
from_memory!(COVERED, "replacement.blank-cover.covered", "314.25", "Every box has a cover.");
from_memory!(SPLICED, "replacement.blank-cover.spliced", "110.14(B)", "How conductors are spliced.");
from_memory!(
    LAMP_OUTLETS,
    "replacement.blank-cover.lamp-outlets",
    "210.70(A)(1)",
    "A switched receptacle may be a room's light."
);

/// Whether the place keeps its receptacle.
enum Kept {
    /// Nothing keeps it.
    Free,
    /// It does: why.
    Needed(Words),
    /// It cannot be told: what is missing.
    FindOut(Words),
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let remedy = Remedy::BlankCover;
    let bars = |why: &'static str| Ok(vec![Says::Bars(remedy, why.into()).by(&[])]);
    let Some(taking) = &opening.taking_out else { return Ok(Vec::new()) };
    if !opening.existing_outlet {
        return bars("there is nothing here yet to take out");
    }
    match opening.holds {
        Holding::Unknown => {
            let why = "find out first what the box holds";
            return Ok(vec![Says::CannotTellRemedy(remedy, why.into()).by(&[])]);
        }
        Holding::SwitchAndReceptacle => return bars("the switch on the same strap stays in use: fit a switch alone"),
        holds if !holds.is_receptacle() => return bars("there is no receptacle here to take out"),
        _ => {}
    }
    if opening.breaker_is_above(20) {
        let why = "what this rule knows of required outlets is about 15 and 20 A receptacles: ask the authority";
        return Ok(vec![Says::CannotTellRemedy(remedy, why.into()).by(&[])]);
    }
    if opening.dedicated_space == Some(true) {
        let appliances = NEAR_APPLIANCES.in_force(code)?;
        let within = appliances.value;
        let why = format!("find out whether its appliance stays: then a receptacle must be within {within} of it");
        return Ok(vec![Says::CannotTellRemedy(remedy, why.into()).by(&[appliances.cite])]);
    }
    let (kept, cites) = kept_by_place(opening, taking, code)?;
    Ok(match kept {
        Kept::Needed(why) => vec![Says::Bars(remedy, why).by(&cites)],
        Kept::FindOut(why) => vec![Says::CannotTellRemedy(remedy, why).by(&cites)],
        Kept::Free => allowed(opening, &cites, code)?,
    })
}

/// That it may go, and what must be seen to.
fn allowed(opening: &Opening, cites: &[Citation], code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let remedy = Remedy::BlankCover;
    let (reach, covered) = (WITHIN_REACH.in_force(code)?.cite, COVERED.in_force(code)?.cite);
    let (spliced, lamps) = (SPLICED.in_force(code)?.cite, LAMP_OUTLETS.in_force(code)?.cite);
    let only_if = |condition: &'static str, cite: &[Citation]| Says::Conditions(remedy, condition.into()).by(cite);
    let mut said = vec![
        Says::Allows(remedy).by(cites),
        only_if("the box stays within reach: nothing is built over its cover", &[reach]),
        only_if("a blank cover closes it; where there is no ground, one that is not metal", &[covered]),
        only_if(
            "its conductors are spliced with listed connectors, each colour to its own, and none is left bare",
            &[spliced],
        ),
    ];
    if is_habitable(opening.room_use) {
        let lamp = "it is not the outlet that the wall switch works for the room's only light";
        said.push(only_if(lamp, &[lamps]));
        let others = "no receptacle that stays and is counted on is worked by a wall switch in place of a light, or sits in \
                      a cabinet";
        said.push(only_if(others, cites));
    }
    if matches!(opening.holds, Holding::Gfci | Holding::Afci | Holding::Dual) {
        let load = "nothing that was fed from its load terminals loses protection that its place asks for";
        said.push(only_if(load, &[]));
    }
    if !opening.serves.is_empty() {
        let cords = "what is plugged in here finds another receptacle without an extension cord";
        said.push(only_if(cords, &[]));
    }
    Ok(said)
}

const fn is_habitable(room_use: RoomUse) -> bool {
    matches!(
        room_use,
        RoomUse::Bedroom
            | RoomUse::LivingRoom
            | RoomUse::FamilyRoom
            | RoomUse::DiningRoom
            | RoomUse::Den
            | RoomUse::Library
            | RoomUse::Parlor
            | RoomUse::Sunroom
            | RoomUse::RecreationRoom
            | RoomUse::Office
            | RoomUse::Kitchen
            | RoomUse::FinishedBasement
    )
}

type Answer = (Kept, Vec<Citation>);

fn kept_by_place(opening: &Opening, taking: &TakingOut, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let find_out = |why: &'static str| Kept::FindOut(why.into());
    Ok(match opening.room_use {
        RoomUse::Kitchen if opening.countertop != Some(false) => {
            let why = match opening.countertop {
                Some(_) => "find out whether every point of the countertop stays within 2 ft of a receptacle",
                None => "find out whether it serves a countertop: those are spaced by a rule of their own",
            };
            (find_out(why), vec![COUNTERTOPS.in_force(code)?.cite])
        }
        room_use if is_habitable(room_use) => along_walls(taking, room_use == RoomUse::Kitchen, code)?,
        RoomUse::Bathroom => at_basin(opening, taking, code)?,
        RoomUse::Laundry => {
            let cite = LAUNDRIES.in_force(code)?.cite;
            (last_one(taking, "a laundry area has at least one receptacle"), vec![cite])
        }
        RoomUse::Outdoors => (outdoors(taking), vec![OUTDOORS.in_force(code)?.cite]),
        RoomUse::Garage | RoomUse::UnfinishedBasement | RoomUse::AccessoryBuilding => {
            service_place(opening.room_use, taking, code)?
        }
        RoomUse::Hallway => hallway(taking, code)?,
        RoomUse::Stairway => foyer(taking, code)?,
        RoomUse::Utility | RoomUse::Attic | RoomUse::CrawlSpace => {
            let near = NEAR_EQUIPMENT.in_force(code)?;
            let why = format!(
                "find out whether heating, cooling or service equipment stands here: a receptacle must be within {} of it",
                near.value
            );
            (Kept::FindOut(why.into()), vec![near.cite])
        }
        RoomUse::Closet => (Kept::Free, Vec::new()),
        RoomUse::Boathouse | RoomUse::Unknown => (find_out("find out what the room is used for"), Vec::new()),
        // Every other use is a habitable room.
        _ => (find_out("find out whether the room is a habitable one"), Vec::new()),
    })
}

/// A place that has at least one: it may go where another stays.
fn last_one(taking: &TakingOut, asked: &'static str) -> Kept {
    match taking.another_stays() {
        Some(true) => Kept::Free,
        Some(false) => Kept::Needed(format!("{asked}, and no other stays").into()),
        None => Kept::FindOut(format!("{asked}: find out whether another one stays").into()),
    }
}

/// A receptacle at a place on the plan that counts for the walls, or may count.
fn counts_for_walls(other: &Staying, in_kitchen: bool, highest: Length) -> Option<bool> {
    if other.height.is_some_and(|height| height > highest) || (in_kitchen && other.countertop == Some(true)) {
        return Some(false);
    }
    let sure = other.is_receptacle
        && other.at.is_some()
        && other.height.is_some()
        && (!in_kitchen || other.countertop == Some(false));
    sure.then_some(true)
}

fn along_walls(taking: &TakingOut, in_kitchen: bool, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let (measure, highest) = (WALLS.in_force(code)?, HIGHEST.in_force(code)?);
    let cites = vec![measure.cite, highest.cite];
    let find_out = |why: String| Ok((Kept::FindOut(why.into()), vec![measure.cite, highest.cite]));
    let asked = format!("no point of a wall may be more than {} from a receptacle", measure.value.reach);
    let Some(staying) = &taking.staying else {
        return find_out(format!("{asked}: find out which other receptacles the room has"));
    };
    if taking.outline.len() < 3 {
        return find_out(format!("{asked}: draw the room's outline"));
    }
    let Some(breaks) = &taking.wall_breaks else {
        return find_out(format!("{asked}: find out where doorways, fireplaces and fixed cabinets break its walls"));
    };
    let counted = |other: &&Staying| counts_for_walls(other, in_kitchen, highest.value);
    let places = |list: Vec<&Staying>| list.iter().filter_map(|other| other.at).collect::<Vec<Point>>();
    let held = |points: &[Point]| spacing(&taking.outline, breaks, points, measure.value);
    let sure: Vec<&Staying> = staying.iter().filter(|other| counted(other) == Some(true)).collect();
    let found = held(&places(sure));
    if found == Spacing::Kept {
        return Ok((Kept::Free, cites));
    }
    if let Spacing::BreakOffTheWall(position) = found {
        return find_out(format!(
            "break {} of the room's walls does not lie on its outline: measure again",
            position + 1
        ));
    }
    let open: Vec<&Staying> = staying.iter().filter(|other| counted(other).is_none()).collect();
    let possible: Vec<&Staying> = staying.iter().filter(|other| counted(other) != Some(false)).collect();
    let nowhere = open.iter().any(|other| other.at.is_none());
    if !open.is_empty() && (nowhere || held(&places(possible)) == Spacing::Kept) {
        let names: Vec<&str> = open.iter().map(|other| other.id.as_str()).collect();
        return find_out(format!(
            "{asked}: find out of {} whether it is a receptacle, where it is, how high, and in a kitchen whether it serves a \
             countertop",
            names.join(", ")
        ));
    }
    let why = match found {
        Spacing::NoneIn(length) => format!("{asked}, and a wall space of {length} would have none"),
        Spacing::TooFar(length) => format!("{asked}, and one would be {length} from the nearest"),
        Spacing::Kept | Spacing::BreakOffTheWall(_) => asked,
    };
    Ok((Kept::Needed(why.into()), cites))
}

fn at_basin(opening: &Opening, taking: &TakingOut, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let basins = BASINS.in_force(code)?;
    let asked = format!("a receptacle must be within {} of every basin", basins.value);
    let kept = match (&opening.sink, taking.another_stays()) {
        (Some(sink), _) if sink.distance > basins.value => Kept::Free,
        (Some(_), Some(false)) => Kept::Needed(format!("{asked}, and no other stays").into()),
        _ => Kept::FindOut(format!("{asked}: find out whether each keeps one").into()),
    };
    Ok((kept, vec![basins.cite]))
}

/// A house for one family has one in front and one behind; elsewhere it hangs on how the dwelling meets the ground.
fn outdoors(taking: &TakingOut) -> Kept {
    let listed = taking.staying.as_ref();
    if taking.dwelling_use == Some(DwellingUse::OneFamily) && listed.is_some_and(|staying| staying.len() < 2) {
        return Kept::Needed("a house has a receptacle in front and one behind, and fewer than two would stay".into());
    }
    let why = "find out whether one stays in front, one behind, and one at every balcony, deck and porch";
    Kept::FindOut(why.into())
}

fn service_place(room_use: RoomUse, taking: &TakingOut, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let whose = SERVICE_PLACES.in_force(code)?;
    let each_car = EACH_CAR.in_force(code)?;
    let kept = match whose.value.includes(taking.dwelling_use) {
        Some(false) => Kept::Free,
        None if taking.another_stays() != Some(true) => {
            Kept::FindOut("find out what kind of dwelling it is: some must have a receptacle here".into())
        }
        _ if room_use == RoomUse::Garage && each_car.value => match taking.another_stays() {
            Some(false) => Kept::Needed("every car's place has a receptacle, and no other stays".into()),
            _ => Kept::FindOut("find out whether every car's place keeps a receptacle".into()),
        },
        _ => last_one(taking, "such a place has at least one receptacle"),
    };
    let car = (room_use == RoomUse::Garage).then_some(each_car.cite).filter(|cite| *cite != whose.cite);
    Ok((kept, std::iter::once(whose.cite).chain(car).collect()))
}

fn hallway(taking: &TakingOut, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let from = HALLWAYS.in_force(code)?;
    let asked = format!("a hallway of {} or more has a receptacle", from.value);
    let kept = match (taking.another_stays(), longest_way(&taking.outline)) {
        (Some(true), _) => Kept::Free,
        // The middle of a hallway is no longer than both sides of the rectangle around it.
        (_, Some((long, short))) if long + short < from.value => Kept::Free,
        (_, Some((long, _))) if taking.outline.len() == 4 && long < from.value => Kept::Free,
        (Some(false), Some((long, _))) if long >= from.value => {
            Kept::Needed(format!("{asked}, and no other stays").into())
        }
        _ => Kept::FindOut(format!("{asked}: find out how long it is, and whether another stays").into()),
    };
    Ok((kept, vec![from.cite]))
}

fn foyer(taking: &TakingOut, code: &CodeInForce) -> Result<Answer, NotChecked> {
    let above = FOYERS.in_force(code)?;
    let Some(square_feet) = above.value else { return Ok((Kept::Free, vec![above.cite])) };
    let small = longest_way(&taking.outline)
        .is_some_and(|(long, short)| long.as_feet() * short.as_feet() <= f64::from(square_feet));
    let kept = if small {
        Kept::Free
    } else {
        let why =
            format!("find out whether this is a foyer of more than {square_feet} sq ft: its walls have receptacles");
        Kept::FindOut(why.into())
    };
    Ok((kept, vec![above.cite]))
}

/// The sides of the rectangle around an outline, the longer first.
fn longest_way(outline: &[Point]) -> Option<(Length, Length)> {
    let span = |of: fn(&Point) -> Length| {
        let (least, most) = (outline.iter().map(of).min()?, outline.iter().map(of).max()?);
        Some(Length::micrometres(most.as_micrometres().saturating_sub(least.as_micrometres())))
    };
    let (wide, deep) = (span(|corner| corner.x)?, span(|corner| corner.y)?);
    Some((wide.max(deep), wide.min(deep)))
}
