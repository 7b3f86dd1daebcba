//! A new cable with a grounding conductor in place of the old run.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use dwelling::RoomUse;

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.new-cable",
    title: "A new cable brings a ground, and the protection asked of changed wiring",
    page: include_str!("new_cable.md"),
    decides: &[Decides::Remedy(Remedy::NewCable)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&LAWFUL, &CHANGED_WIRING];

const LAWFUL: ByEdition<()> = ByEdition {
    id: "grounding.new-cable.carries-a-ground",
    readings: &[
        Reading::remembered(Nec2014, "250.134", ()),
        Reading::remembered(Nec2017, "250.134", ()),
        Reading::remembered(Nec2020, "250.134", ()),
        Reading::remembered(Nec2023, "250.134", ()),
    ],
};

/// That wiring which is changed, replaced or extended in the AFCI rooms gets AFCI protection.
const CHANGED_WIRING: ByEdition<()> = ByEdition {
    id: "grounding.new-cable.changed-wiring",
    readings: &[
        Reading::read(Nec2014, "210.12(B)", "electricallicenserenewal.com, NEC content 22", ()),
        Reading::read(Nec2017, "210.12(D)", "electricallicenserenewal.com, NEC content 236", ()),
        Reading::read(Nec2020, "210.12(D)", "rosendinuniversity.com, code corner 210.12", ()),
        Reading::read(Nec2023, "210.12(E)", "electricallicenserenewal.com, NEC content 1855", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [LAWFUL.in_force(code)?.cite];
    let remedy = Remedy::NewCable;
    let from =
        "from the panel, or from a box whose own ground is whole up to the panel, with its ground joined at both ends";
    let mut said = vec![Says::Allows(remedy).by(&cites), Says::Conditions(remedy, from.to_owned()).by(&cites)];
    let never_reached = matches!(
        opening.room_use,
        RoomUse::Bathroom
            | RoomUse::Garage
            | RoomUse::AccessoryBuilding
            | RoomUse::Outdoors
            | RoomUse::Attic
            | RoomUse::CrawlSpace
            | RoomUse::UnfinishedBasement
            | RoomUse::Boathouse
    );
    if !never_reached {
        let changed = "where the room is one of the AFCI rooms, changed wiring of its 120 V circuits of 15 and 20 A is \
                       AFCI-protected from the panel or at the first receptacle; pieces of 6 ft or less without a new \
                       outlet are excepted";
        said.push(Says::Conditions(remedy, changed.to_owned()).by(&[CHANGED_WIRING.in_force(code)?.cite]));
    }
    Ok(said)
}
