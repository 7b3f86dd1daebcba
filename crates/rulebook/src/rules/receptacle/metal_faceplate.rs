//! Metal faceplates where there is no ground.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use crate::sources::TEXT_2011;
use dwelling::GroundFact;

/// The rule.
pub const RULE: Rule = Rule {
    id: "plates.metal-faceplate",
    title: "A metal faceplate is grounded, or is not metal",
    page: include_str!("metal_faceplate.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&GROUNDED];

const GROUNDED: ByEdition<()> = ByEdition {
    id: "plates.metal-faceplate.grounded",
    readings: &[
        Reading::remembered(Nec2008, "406.5(B)", ()),
        Reading::read(Nec2011, "406.6(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.6(B)", ()),
        Reading::unchanged_since_2011(Nec2017, "406.6(B)", ()),
        Reading::unchanged_since_2011(Nec2020, "406.6(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "406.6(B)", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (ground, by) = opening.ground_under(code);
    let grounded = matches!(ground, GroundFact::Connected | GroundFact::Poor | GroundFact::Loose);
    if grounded || !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let cite = GROUNDED.in_force(code)?.cite;
    let caution = "as long as there is no ground here, use a faceplate that is not metal, with screws that are not";
    Ok(vec![Says::Cautions(caution.into()).by(&[cite]).changed(by)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::edition::Edition;
    use dwelling::{Holding, RoomUse};

    fn said_in_all(ground: GroundFact, holds: Holding) -> Vec<Vec<Statement>> {
        let opening = Opening { ground, holds, ..Opening::unexamined(RoomUse::Hallway) };
        Edition::ALL
            .iter()
            .filter(|edition| **edition != Edition::Nec2026)
            .map(|edition| {
                judge(&opening, &CodeInForce::published(*edition)).expect("every edition up to 2023 is entered")
            })
            .collect()
    }

    /// Published: California Electrical Code 2013, 406.6(B).
    #[test]
    fn without_a_ground_the_faceplate_is_not_metal() {
        for said in said_in_all(GroundFact::None, Holding::TwoSlot) {
            assert!(
                matches!(&said[..], [Statement { says: Says::Cautions(_), cites, .. }] if ["406.5(B)", "406.6(B)"].contains(&cites[0].section))
            );
        }
    }

    #[test]
    fn with_a_ground_and_at_a_switch_the_rule_is_silent() {
        assert!(said_in_all(GroundFact::Connected, Holding::ThreeSlot).iter().all(Vec::is_empty));
        assert!(said_in_all(GroundFact::None, Holding::Switch).iter().all(Vec::is_empty));
    }
}
