//! Switches where there is no ground.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use dwelling::{GroundFact, Holding};

/// The rule.
pub const RULE: Rule = Rule {
    id: "plates.switch",
    title: "A switch replaced where there is no ground has a plate that is not metal, or a GFCI before it",
    page: include_str!("switch_plate.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PLATE];

const PLATE: ByEdition<()> = ByEdition {
    id: "plates.switch.without-ground",
    readings: &[
        Reading::remembered(Nec2008, "404.9(B), exception", ()),
        Reading::remembered(Nec2011, "404.9(B), exception", ()),
        Reading::remembered(Nec2014, "404.9(B), exception 1", ()),
        Reading::remembered(Nec2017, "404.9(B), exception 1", ()),
        Reading::remembered(Nec2020, "404.9(B), exception 1", ()),
        Reading::remembered(Nec2023, "404.9(B), exception 1", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (ground, by) = opening.ground_under(code);
    let grounded = matches!(ground, GroundFact::Connected | GroundFact::Poor | GroundFact::Loose);
    if grounded || opening.holds != Holding::Switch {
        return Ok(Vec::new());
    }
    let caution = "a switch replaced where there is no ground: a plate that is not metal and does not burn, with screws that are \
                   not metal, or a GFCI that protects the circuit";
    Ok(vec![Says::Cautions(caution.into()).by(&[PLATE.in_force(code)?.cite]).changed(by)])
}
