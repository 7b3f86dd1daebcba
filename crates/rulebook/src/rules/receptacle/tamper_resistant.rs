//! Where a new receptacle must be tamper-resistant.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::{CodeInForce, Local};
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::in_words::InWords;
use crate::lists::List;
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{
    ANSWERS_2017_TAMPER, COURSE_308, COURSE_312, COURSE_2008, MAGAZINE_2008_TAMPER, MAGAZINE_2011,
    MAGAZINE_2023_PART_11,
};
use dwelling::RoomUse;
use electrical::Length;

/// The rule.
pub const RULE: Rule = Rule {
    id: "receptacle.tamper-resistant",
    title: "A replaced receptacle in a dwelling is a tamper-resistant one",
    page: include_str!("tamper_resistant.md"),
    decides: &[Decides::Duty(Duty::TamperResistant)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &REACH, &HEIGHT];

/// Whether the edition asks it of a replaced receptacle by a rule of its own: 2008 asks it of receptacles only in general.
const ON_REPLACEMENT: ByEdition<bool> = ByEdition {
    id: "receptacle.tamper-resistant.on-replacement",
    readings: &[
        Reading::read(Nec2008, "406.3(D)", COURSE_2008, false),
        Reading::read(Nec2011, "406.4(D)(5)", MAGAZINE_2011, true),
        Reading::read(Nec2014, "406.4(D)(5)", COURSE_308, true),
        Reading::read(Nec2017, "406.4(D)(5)", COURSE_308, true),
        Reading::remembered(Nec2020, "406.4(D)(5)", true),
        Reading::remembered(Nec2023, "406.4(D)(5)", true),
    ],
};

/// How far the duty reaches in a dwelling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Reach {
    /// The areas for which the code asks receptacles: not attics, crawl spaces and boathouses; closets are argued.
    AreasThatNeedReceptacles,
    /// The dwelling unit with its garages and accessory buildings.
    Dwelling,
    /// The same and boathouses.
    DwellingAndBoathouses,
}

const REACH: ByEdition<Reach> = ByEdition {
    id: "receptacle.tamper-resistant.reach",
    readings: &[
        Reading::read(Nec2008, "406.11", MAGAZINE_2008_TAMPER, Reach::AreasThatNeedReceptacles),
        Reading::read(Nec2011, "406.12", MAGAZINE_2011, Reach::AreasThatNeedReceptacles),
        Reading::read(Nec2014, "406.12(A)", COURSE_312, Reach::AreasThatNeedReceptacles),
        Reading::read(Nec2017, "406.12(1)", COURSE_312, Reach::AreasThatNeedReceptacles),
        Reading::remembered(Nec2020, "406.12(1)", Reach::Dwelling),
        Reading::read(Nec2023, "406.12(1)", MAGAZINE_2023_PART_11, Reach::DwellingAndBoathouses),
    ],
};

/// Above this height a receptacle is excepted; with it stand the other exceptions, of which 2008 has none.
const HEIGHT: ByEdition<Option<Length>> = ByEdition {
    id: "receptacle.tamper-resistant.height",
    readings: &[
        Reading::read(Nec2008, "406.11", MAGAZINE_2008_TAMPER, None),
        Reading::read(Nec2011, "406.12, exception (1)", MAGAZINE_2011, Some(Length::feet_and_inches(5, 6))),
        Reading::unchanged_since_2011(Nec2014, "406.12, exception (1)", Some(Length::feet_and_inches(5, 6))),
        Reading::read(Nec2017, "406.12, exception (1)", ANSWERS_2017_TAMPER, Some(Length::feet_and_inches(5, 6))),
        Reading::unchanged_since_2011(Nec2020, "406.12, exception (1)", Some(Length::feet_and_inches(5, 6))),
        Reading::unchanged_since_2011(Nec2023, "406.12, exception (1)", Some(Length::feet_and_inches(5, 6))),
    ],
};

/// The remedies that leave a new receptacle with three slots. A two-slot one is exempt.
const WITH_THREE_SLOTS: [Remedy; 6] = [
    Remedy::GfciReceptacle,
    Remedy::DownstreamOfGfci,
    Remedy::GfciBreaker,
    Remedy::SeparateEgc,
    Remedy::NewCable,
    Remedy::RestoreExistingGround,
];

const MADE_FOR: u32 = 20;

/// The exceptions for height, for what a receptacle is built into, and for an appliance that is not easily moved.
fn excepted(opening: &Opening, limit: Length) -> Option<String> {
    if opening.height.is_some_and(|above_floor| above_floor > limit) {
        return Some(format!("it is more than {limit} above the floor"));
    }
    if opening.built_into.is_some() {
        return Some("it is part of a luminaire or an appliance".to_owned());
    }
    let dedicated = opening.dedicated_space == Some(true);
    dedicated.then(|| "it serves an appliance that is not easily moved, in a space set aside for it".to_owned())
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let asks = ON_REPLACEMENT.in_force(code)?;
    let reach = REACH.in_force(code)?;
    let height = HEIGHT.in_force(code)?;
    // A new outlet is reached by the list itself.
    let (asks, by_a_rule) = (opening.is_replacement().then_some(asks.cite), asks.value || !opening.is_replacement());
    let cites: Vec<Citation> = asks.into_iter().chain([reach.cite]).collect();
    let duty = Duty::TamperResistant;
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    if opening.breaker_is_above(MADE_FOR) {
        let why = "the duty is on receptacles of 15 and 20 A";
        return Ok(vec![Says::Excuses(duty, why.into()).by(&[reach.cite])]);
    }
    if let Some(limit) = height.value
        && let Some(why) = excepted(opening, limit)
    {
        return Ok(vec![Says::Excuses(duty, why.into()).by(&[height.cite])]);
    }
    let by_list = match (opening.room_use, reach.value) {
        (RoomUse::Unknown, Reach::AreasThatNeedReceptacles) => {
            Says::CannotTell(duty, "find out what the room is used for".into())
        }
        (RoomUse::Attic | RoomUse::CrawlSpace, Reach::AreasThatNeedReceptacles) => {
            Says::Excuses(duty, "the place is not one for which the code asks receptacles".into())
        }
        (RoomUse::Boathouse, Reach::AreasThatNeedReceptacles | Reach::Dwelling) => {
            Says::Excuses(duty, "boathouses are named only from 2023".into())
        }
        (RoomUse::Closet | RoomUse::Utility | RoomUse::Stairway, Reach::AreasThatNeedReceptacles) => Says::Disputes(
            duty,
            "to some the duty reaches only the areas for which the code asks receptacles, to others the whole dwelling"
                .into(),
        ),
        _ => Says::Owes(duty, "a receptacle of 15 or 20 A in a dwelling; a two-slot replacement is exempt".into()),
    };
    let (says, by) = match code.local(List::TamperResistantPlaces, opening.room_use.name()) {
        Some(Local::Out(by)) => {
            (Says::Excuses(duty, format!("{by}: the place is not in the list here").into()), Some(by))
        }
        Some(Local::Unsure(missing, by)) => (Says::CannotTell(duty, missing.into()), Some(by)),
        Some(Local::In(by)) => (Says::Owes(duty, format!("{by}: the place is in the list here").into()), Some(by)),
        None => (by_list, None),
    };
    let says = match says {
        Says::Owes(..) if !by_a_rule => Says::Disputes(
            duty,
            "this edition asks it of receptacles in general and has no rule for replaced ones: to some it reaches them, to \
             others not"
                .into(),),
        says => says,
    };
    let due = !matches!(says, Says::Excuses(..));
    let mut said = vec![says.by(&cites).changed(by.as_deref())];
    if due {
        for remedy in WITH_THREE_SLOTS {
            said.push(
                Says::Conditions(remedy, "the new receptacle is a tamper-resistant one".into())
                    .by(&cites)
                    .changed(by.as_deref()),
            );
        }
    }
    Ok(said)
}

impl InWords for Reach {
    fn in_words(&self) -> String {
        match self {
            Self::AreasThatNeedReceptacles => "the areas for which the code asks receptacles",
            Self::Dwelling => "the dwelling with its garages and accessory buildings",
            Self::DwellingAndBoathouses => "the dwelling with its garages, accessory buildings and boathouses",
        }
        .to_owned()
    }
}
