//! Outlets outdoors that are no receptacles: heating, cooling and other fixed equipment.

use crate::amendment::Dated;
use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::day::Day;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{COURSE_812, COURSE_1852, MAKER_OUTDOORS};
use dwelling::RoomUse;

/// The rule.
pub const RULE: Rule = Rule {
    id: "gfci.outdoor-outlets",
    title: "Outlets outdoors need GFCI protection from 2020 on, whatever hangs on them",
    page: include_str!("outdoor_outlets.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&LARGEST, &ON_NEW_EQUIPMENT, &LISTED_EQUIPMENT_EXEMPT];

/// The largest circuit in amperes that is reached; nothing where the edition reaches none.
const LARGEST: ByEdition<Option<u32>> = ByEdition {
    id: "gfci.outdoor-outlets.largest",
    readings: &[
        Reading::read(Nec2008, "210.8", COURSE_812, None),
        Reading::read(Nec2011, "210.8", COURSE_812, None),
        Reading::read(Nec2014, "210.8", COURSE_812, None),
        Reading::read(Nec2017, "210.8", COURSE_812, None),
        Reading::read(Nec2020, "210.8(F)", COURSE_812, Some(50)),
        Reading::read(Nec2023, "210.8(F)", MAKER_OUTDOORS, Some(50)),
        Reading::read(Nec2026, "210.8(F)", COURSE_1852, Some(60)),
    ],
};

/// Whether new equipment on an old outlet brings it.
const ON_NEW_EQUIPMENT: ByEdition<bool> = ByEdition {
    id: "gfci.outdoor-outlets.on-new-equipment",
    readings: &[
        Reading::read(Nec2008, "210.8", COURSE_812, false),
        Reading::read(Nec2011, "210.8", COURSE_812, false),
        Reading::read(Nec2014, "210.8", COURSE_812, false),
        Reading::read(Nec2017, "210.8", COURSE_812, false),
        Reading::read(Nec2020, "210.8(F)", COURSE_812, false),
        Reading::read(Nec2023, "210.8(F)", MAKER_OUTDOORS, true),
    ],
};

const AMENDED_TWICE: &str = "interim amendments of 2021 and 2022 put it off for heating and cooling equipment: to 2023-01-01 for \
     equipment of variable speed, and then for all that is listed";

/// Until when listed heating and cooling equipment is exempt.
const LISTED_EQUIPMENT_EXEMPT: ByEdition<Option<Day>> = ByEdition {
    id: "gfci.outdoor-outlets.listed-equipment-exempt",
    readings: &[
        Reading::read(Nec2008, "210.8", COURSE_812, None),
        Reading::read(Nec2011, "210.8", COURSE_812, None),
        Reading::read(Nec2014, "210.8", COURSE_812, None),
        Reading::read(Nec2017, "210.8", COURSE_812, None),
        Reading::disputed(Nec2020, "210.8(F)", AMENDED_TWICE, Some(Day::on(2023, 1, 1))),
        Reading::read(
            Nec2023,
            "210.8(F), exception 2",
            "a secondary summary of the 2023 changes",
            Some(Day::on(2026, 9, 1)),
        ),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if opening.room_use != RoomUse::Outdoors || opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let largest = LARGEST.in_force(code)?;
    let Some(amperes) = largest.value.filter(|amperes| !opening.breaker_is_above(*amperes)) else {
        return Ok(Vec::new());
    };
    let begins = code.dated(Dated::OutdoorOutlets);
    if let (Some((first, by)), Some(day)) = (&begins, code.permit_day)
        && day < *first
    {
        let caution = format!("outdoor outlets need GFCI protection here only from {first} on");
        return Ok(vec![Says::Cautions(caution.into()).by(&[largest.cite]).changed(Some(by))]);
    }
    let mut caution =
        format!("an outdoor outlet of up to {amperes} A: installed anew it gets GFCI protection, lighting excepted");
    let on_new_equipment = ON_NEW_EQUIPMENT.in_force(code)?;
    if on_new_equipment.value {
        caution.push_str("; new equipment on an old outlet brings it too");
    }
    let exempt = LISTED_EQUIPMENT_EXEMPT.in_force(code)?;
    let (until, by) = match code.dated(Dated::OutdoorEquipmentExempt) {
        Some((day, by)) => (Some(day), Some(by)),
        None => (exempt.value, None),
    };
    if let Some(until) = until {
        caution.push_str(&match code.permit_day {
            Some(day) if day >= until => format!("; listed heating and cooling equipment was exempt until {until}"),
            Some(_) => format!("; listed heating and cooling equipment is exempt until {until}"),
            None => format!(
                "; listed heating and cooling equipment is exempt on permits before {until}: find out the permit's day"
            ),
        });
    }
    if let Some((first, _)) = &begins {
        caution.push_str(&format!("; here from {first} on"));
    }
    let begun_by = begins.as_ref().map(|(_, by)| by.as_str());
    Ok(vec![Says::Cautions(caution.into()).by(&[largest.cite, exempt.cite]).changed(by.as_deref()).changed(begun_by)])
}
