//! A new cable with a grounding conductor in place of the old run.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::TEXT_2011;

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.new-cable",
    title: "A new cable with a grounding conductor brings a ground",
    page: include_str!("new_cable.md"),
    decides: &[Decides::Remedy(Remedy::NewCable)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&LAWFUL];

const LAWFUL: ByEdition<()> = ByEdition {
    id: "grounding.new-cable.carries-a-ground",
    readings: &[
        Reading::remembered(Nec2008, "250.134", ()),
        Reading::read(Nec2011, "250.134", TEXT_2011, ()),
        Reading::remembered(Nec2014, "250.134", ()),
        Reading::remembered(Nec2017, "250.134", ()),
        Reading::remembered(Nec2020, "250.134", ()),
        Reading::remembered(Nec2023, "250.134", ()),
    ],
};

fn judge(_: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [LAWFUL.in_force(code)?.cite];
    let remedy = Remedy::NewCable;
    let from =
        "from the panel, or from a box whose own ground is whole up to the panel, with its ground joined at both ends";
    Ok(vec![Says::Allows(remedy).by(&cites), Says::Conditions(remedy, from.into()).by(&cites)])
}
