//! Where a new receptacle must be weather-resistant.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
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

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &DAMP_AND_WET];

const ON_REPLACEMENT: ByEdition<()> = ByEdition {
    id: "receptacle.weather-resistant.on-replacement",
    readings: &[
        Reading::read(Nec2014, "406.4(D)(6)", "electricallicenserenewal.com, NEC content 308", ()),
        Reading::read(Nec2017, "406.4(D)(6)", "electricallicenserenewal.com, NEC content 308", ()),
        Reading::remembered(Nec2020, "406.4(D)(6)", ()),
        Reading::remembered(Nec2023, "406.4(D)(6)", ()),
    ],
};

const DAMP_AND_WET: ByEdition<()> = ByEdition {
    id: "receptacle.weather-resistant.damp-and-wet",
    readings: &[
        Reading::unchanged_since_2011(Nec2014, "406.9", ()),
        Reading::unchanged_since_2011(Nec2017, "406.9", ()),
        Reading::unchanged_since_2011(Nec2020, "406.9", ()),
        Reading::unchanged_since_2011(Nec2023, "406.9", ()),
    ],
};

const MADE_FOR: u32 = 20;

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (asks, places) = (ON_REPLACEMENT.in_force(code)?.cite, DAMP_AND_WET.in_force(code)?.cite);
    // A new outlet is reached by the section on damp and wet places itself.
    let asks = opening.is_replacement().then_some(asks);
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
    let wet = opening.wetness == Some(Wetness::Wet);
    let mut said = vec![says.by(&cites)];
    for remedy in Remedy::ALL.iter().copied().filter(|remedy| *remedy != Remedy::Leave) {
        let kind =
            "where the place is damp or wet, the new receptacle is a weather-resistant one in an enclosure for it";
        said.push(Says::Conditions(remedy, kind.to_owned()).by(&cites));
        if wet {
            let cover = "the enclosure is weatherproof with a plug inserted";
            said.push(Says::Conditions(remedy, cover.to_owned()).by(&cites));
        }
    }
    Ok(said)
}
