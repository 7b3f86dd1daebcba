//! Appliances whose outlets need GFCI protection wherever they are.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::{CodeInForce, Local};
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::lists::List;
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{BUILDERS_2023, COURSE_810, FORUM_DISHWASHERS};
use dwelling::Equipment;

/// The rule.
pub const RULE: Rule = Rule {
    id: "gfci.appliances",
    title: "Some appliances get GFCI protection wherever they stand",
    page: include_str!("appliances.md"),
    decides: &[Decides::Duty(Duty::Gfci)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&APPLIANCES, &ANYWHERE_ON_THE_WAY];

const DISHWASHERS: &[Equipment] = &[Equipment::Dishwasher];
const WITH_PUMPS: &[Equipment] = &[Equipment::Dishwasher, Equipment::SumpPump];
const FROM_2023: &[Equipment] =
    &[Equipment::Dishwasher, Equipment::SumpPump, Equipment::Range, Equipment::ClothesDryer, Equipment::Microwave];

/// The appliances of dwellings that are listed.
const APPLIANCES: ByEdition<&[Equipment]> = ByEdition {
    id: "gfci.appliances.listed",
    readings: &[
        Reading::remembered(Nec2008, "210.8", &[]),
        Reading::remembered(Nec2011, "210.8", &[]),
        Reading::read(Nec2014, "210.8(D)", FORUM_DISHWASHERS, DISHWASHERS),
        Reading::read(Nec2017, "210.8(D)", FORUM_DISHWASHERS, DISHWASHERS),
        Reading::read(Nec2020, "422.5(A), by 210.8(D)", COURSE_810, WITH_PUMPS),
        Reading::read(Nec2023, "210.8(D)", BUILDERS_2023, FROM_2023),
    ],
};

/// Whether protection in the appliance's cord, plug or body does too.
const ANYWHERE_ON_THE_WAY: ByEdition<bool> = ByEdition {
    id: "gfci.appliances.in-the-cord",
    readings: &[
        Reading::remembered(Nec2008, "210.8", false),
        Reading::remembered(Nec2011, "210.8", false),
        Reading::read(Nec2014, "210.8(D)", FORUM_DISHWASHERS, false),
        Reading::read(Nec2017, "210.8(D)", FORUM_DISHWASHERS, false),
        Reading::read(Nec2020, "422.5(B), by 210.8(D)", COURSE_810, true),
        Reading::read(Nec2023, "210.8(D)", BUILDERS_2023, false),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let mut said = Vec::new();
    for equipment in &opening.serves {
        let name = equipment.name();
        let local = code.local(List::GfciAppliances, name);
        // Nothing but these was ever listed, so that the list of the edition is not needed for anything else.
        if local.is_none() && !FROM_2023.contains(equipment) {
            continue;
        }
        let listed = APPLIANCES.in_force(code)?;
        let (says, by) = match local {
            Some(Local::In(by)) => {
                (Says::Owes(Duty::Gfci, format!("the authority's list has it: {name}").into()), Some(by))
            }
            Some(Local::Out(by)) => {
                (Says::Excuses(Duty::Gfci, format!("the authority's list does not have it: {name}").into()), Some(by))
            }
            Some(Local::Unsure(missing, by)) => (Says::CannotTell(Duty::Gfci, missing.into()), Some(by)),
            None if listed.value.contains(equipment) => {
                (Says::Owes(Duty::Gfci, format!("it serves an appliance that is listed: {name}").into()), None)
            }
            None => continue,
        };
        let due = matches!(says, Says::Owes(..));
        said.push(says.by(&[listed.cite]).changed(by.as_deref()));
        if due {
            let cord = ANYWHERE_ON_THE_WAY.in_force(code)?;
            let how = if cord.value {
                "the appliance asks for GFCI protection: at the panel, here or upstream, or in its own plug, cord or body"
            } else {
                "the appliance asks for GFCI protection: at the panel, here or upstream"
            };
            for remedy in
                [Remedy::NongroundingReceptacle, Remedy::SeparateEgc, Remedy::NewCable, Remedy::RestoreExistingGround]
            {
                said.push(Says::Conditions(remedy, how.into()).by(&[cord.cite]).changed(by.as_deref()));
            }
        }
    }
    Ok(said)
}
