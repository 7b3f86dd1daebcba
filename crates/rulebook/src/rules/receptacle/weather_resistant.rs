//! Where a new receptacle must be weather-resistant.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_308, COURSE_2008, INSPECTORS_FORUM_2008, MAGAZINE_2011, TEXT_2011};
use dwelling::{RoomUse, Wetness};

/// The rule.
pub const RULE: Rule = Rule {
    id: "receptacle.weather-resistant",
    title: "In damp and wet places a replaced receptacle is a weather-resistant one",
    page: include_str!("weather_resistant.md"),
    decides: &[Decides::Duty(Duty::WeatherResistant)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &DAMP_AND_WET, &EXTRA_DUTY];

/// Whether the edition asks it of a replaced receptacle by a rule of its own: 2008 asks it of damp and wet places only.
const ON_REPLACEMENT: ByEdition<bool> = ByEdition {
    id: "receptacle.weather-resistant.on-replacement",
    readings: &[
        Reading::read(Nec2008, "406.3(D)", COURSE_2008, false),
        Reading::read(Nec2011, "406.4(D)(6)", MAGAZINE_2011, true),
        Reading::read(Nec2014, "406.4(D)(6)", COURSE_308, true),
        Reading::read(Nec2017, "406.4(D)(6)", COURSE_308, true),
        Reading::remembered(Nec2020, "406.4(D)(6)", true),
        Reading::remembered(Nec2023, "406.4(D)(6)", true),
    ],
};

const DAMP_AND_WET: ByEdition<()> = ByEdition {
    id: "receptacle.weather-resistant.damp-and-wet",
    readings: &[
        Reading::read(Nec2008, "406.8", INSPECTORS_FORUM_2008, ()),
        Reading::read(Nec2011, "406.9", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.9", ()),
        Reading::unchanged_since_2011(Nec2017, "406.9", ()),
        Reading::unchanged_since_2011(Nec2020, "406.9", ()),
        Reading::unchanged_since_2011(Nec2023, "406.9", ()),
    ],
};

const BOUNDARY: &str = "2011 has it for enclosures supported from grade and 2014 for more; from when it reaches dwellings is read both ways";

/// Whether the cover in a wet place is of the extra-duty kind.
const EXTRA_DUTY: ByEdition<bool> = ByEdition {
    id: "receptacle.weather-resistant.extra-duty",
    readings: &[
        Reading::remembered(Nec2008, "406.8(B)(1)", false),
        Reading::disputed(Nec2011, "406.9(B)(1)", BOUNDARY, false),
        Reading::disputed(Nec2014, "406.9(B)(1)", BOUNDARY, true),
        Reading::remembered(Nec2017, "406.9(B)(1)", true),
        Reading::remembered(Nec2020, "406.9(B)(1)", true),
        Reading::remembered(Nec2023, "406.9(B)(1)", true),
    ],
};

const MADE_FOR: u32 = 20;

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (asks, places) = (ON_REPLACEMENT.in_force(code)?, DAMP_AND_WET.in_force(code)?.cite);
    // A new outlet is reached by the section on damp and wet places itself.
    let (asks, by_a_rule) = (opening.is_replacement().then_some(asks.cite), asks.value || !opening.is_replacement());
    let cites: Vec<Citation> = asks.into_iter().chain([places]).collect();
    let duty = Duty::WeatherResistant;
    if !opening.is_receptacle_outlet() || opening.breaker_is_above(MADE_FOR) {
        return Ok(Vec::new());
    }
    let says = match (opening.room_use, opening.wetness) {
        (RoomUse::Outdoors, wetness) if wetness != Some(Wetness::Wet) => {
            Says::Owes(duty, "the place is outdoors, and at least damp".into())
        }
        (_, Some(Wetness::Wet)) => Says::Owes(duty, "the place is wet".into()),
        (_, Some(Wetness::Damp)) => Says::Owes(duty, "the place is damp".into()),
        (_, Some(Wetness::Dry)) => return Ok(Vec::new()),
        (RoomUse::Boathouse | RoomUse::CrawlSpace | RoomUse::Unknown, None) => {
            Says::CannotTell(duty, "find out whether the place is dry, damp or wet".into())
        }
        (_, None) => return Ok(Vec::new()),
    };
    let says = match says {
        Says::Owes(duty, why) if !by_a_rule => {
            let both = "this edition asks it of damp and wet places and has no rule for replaced receptacles: to some it \
                        reaches them, to others not";
            Says::Disputes(duty, format!("{why}; {both}").into())
        }
        says => says,
    };
    let wet = opening.wetness == Some(Wetness::Wet);
    let mut said = vec![says.by(&cites)];
    for remedy in Remedy::ALL.iter().copied().filter(|remedy| remedy.may_fit_a_receptacle()) {
        let kind =
            "where the place is damp or wet, the new receptacle is a weather-resistant one in an enclosure for it";
        said.push(Says::Conditions(remedy, kind.into()).by(&cites));
        if wet {
            let cover = "the enclosure is weatherproof with a plug inserted";
            said.push(Says::Conditions(remedy, cover.into()).by(&cites));
            let hood = EXTRA_DUTY.in_force(code)?;
            if hood.value {
                said.push(Says::Conditions(remedy, "its hood is of the extra-duty kind".into()).by(&[hood.cite]));
            }
        }
    }
    Ok(said)
}
