//! Old circuits of ranges and dryers whose frames are grounded by the neutral.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::{Opening, Supply};
use crate::rule::{Rule, Says, Statement};
use crate::sources::TEXT_2011;
use dwelling::Equipment;

/// The rule.
pub const RULE: Rule = Rule {
    id: "circuit.range-and-dryer",
    title: "An old range or dryer circuit of three wires is a case of its own",
    page: include_str!("range_and_dryer.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&EXISTING];

/// That an existing circuit may keep the frame on its neutral, under conditions.
const EXISTING: ByEdition<()> = ByEdition {
    id: "circuit.range-and-dryer.existing",
    readings: &[
        Reading::remembered(Nec2008, "250.140", ()),
        Reading::read(Nec2011, "250.140", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.140", ()),
        Reading::unchanged_since_2011(Nec2017, "250.140", ()),
        Reading::unchanged_since_2011(Nec2020, "250.140", ()),
        Reading::unchanged_since_2011(Nec2023, "250.140", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let served = opening.serves.iter().any(|served| matches!(served, Equipment::Range | Equipment::ClothesDryer));
    if !served || opening.supply() == Some(Supply::V120) {
        return Ok(Vec::new());
    }
    let caution = "a range or dryer circuit of three wires is not judged here: an existing one may keep the frame on its neutral \
                   only under conditions of its own, a new one may not, and a GFCI trips on it; plan a circuit of four wires";
    Ok(vec![Says::Cautions(caution.into()).by(&[EXISTING.in_force(code)?.cite])])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::edition::Edition::Nec2020;
    use dwelling::RoomUse;
    use electrical::Amperes;

    /// Published: California Electrical Code 2013, 250.140.
    #[test]
    fn a_240_volt_dryer_is_a_case_of_its_own_and_a_gas_dryer_is_not() {
        let dryer = |amperes| Opening {
            serves: vec![Equipment::ClothesDryer],
            breaker: Some(Amperes::new(amperes)),
            ..Opening::unexamined(RoomUse::Laundry)
        };
        let said = |amperes| judge(&dryer(amperes), &CodeInForce::published(Nec2020)).expect("the edition is entered");
        assert!(said(30)[0].cites.iter().any(|cite| cite.section == "250.140"));
        assert_eq!(said(20), []);
    }
}
