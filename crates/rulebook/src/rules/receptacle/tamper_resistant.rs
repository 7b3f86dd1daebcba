//! Where a new receptacle must be tamper-resistant.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_308, COURSE_312};
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

const ON_REPLACEMENT: ByEdition<()> = ByEdition {
    id: "receptacle.tamper-resistant.on-replacement",
    readings: &[
        Reading::read(Nec2014, "406.4(D)(5)", COURSE_308, ()),
        Reading::read(Nec2017, "406.4(D)(5)", COURSE_308, ()),
        Reading::remembered(Nec2020, "406.4(D)(5)", ()),
        Reading::remembered(Nec2023, "406.4(D)(5)", ()),
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
        Reading::read(Nec2014, "406.12(A)", COURSE_312, Reach::AreasThatNeedReceptacles),
        Reading::read(Nec2017, "406.12(1)", COURSE_312, Reach::AreasThatNeedReceptacles),
        Reading::remembered(Nec2020, "406.12(1)", Reach::Dwelling),
        Reading::read(Nec2023, "406.12(1)", "ecmag.com, 2023 changes, part 11", Reach::DwellingAndBoathouses),
    ],
};

/// Above this height a receptacle is excepted.
const HEIGHT: ByEdition<Length> = ByEdition {
    id: "receptacle.tamper-resistant.height",
    readings: &[
        Reading::unchanged_since_2011(Nec2014, "406.12, exception (1)", Length::feet_and_inches(5, 6)),
        Reading::unchanged_since_2011(Nec2017, "406.12, exception (1)", Length::feet_and_inches(5, 6)),
        Reading::unchanged_since_2011(Nec2020, "406.12, exception (1)", Length::feet_and_inches(5, 6)),
        Reading::unchanged_since_2011(Nec2023, "406.12, exception (1)", Length::feet_and_inches(5, 6)),
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

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let asks = ON_REPLACEMENT.in_force(code)?.cite;
    let reach = REACH.in_force(code)?;
    let height = HEIGHT.in_force(code)?;
    // A new outlet is reached by the list itself.
    let asks = opening.is_replacement().then_some(asks);
    let cites: Vec<Citation> = asks.into_iter().chain([reach.cite]).collect();
    let duty = Duty::TamperResistant;
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    if opening.breaker_is_above(MADE_FOR) {
        let why = "the duty is on receptacles of 15 and 20 A";
        return Ok(vec![Says::Excuses(duty, why.to_owned()).by(&[reach.cite])]);
    }
    if opening.height.is_some_and(|above_floor| above_floor > height.value) {
        let why = format!("it is more than {} above the floor", height.value);
        return Ok(vec![Says::Excuses(duty, why).by(&[height.cite])]);
    }
    if opening.dedicated_space == Some(true) {
        let why = "it serves an appliance that is not easily moved, in a space set aside for it";
        return Ok(vec![Says::Excuses(duty, why.to_owned()).by(&[height.cite])]);
    }
    let says = match (opening.room_use, reach.value) {
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
    let due = !matches!(says, Says::Excuses(..));
    let mut said = vec![says.by(&cites)];
    if due {
        for remedy in WITH_THREE_SLOTS {
            said.push(Says::Conditions(remedy, "the new receptacle is a tamper-resistant one".to_owned()).by(&cites));
        }
    }
    Ok(said)
}
