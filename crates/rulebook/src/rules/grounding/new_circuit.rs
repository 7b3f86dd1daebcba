//! By what a new circuit of the AFCI rooms may be protected, and how long its home run may be.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{COURSE_21, COURSE_1429, MAGAZINE_2011};
use crate::tables::afci_rooms::never_reached;

/// The rule.
pub const RULE: Rule = Rule {
    id: "afci.new-circuit",
    title: "A new circuit of the AFCI rooms is protected by one of the accepted means",
    page: include_str!("new_circuit.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&MEANS, &HOME_RUN];

const TO_2008: &str = "a combination-type AFCI breaker; or, with a home run in metal conduit or steel armor, a \
     combination-type AFCI at the first outlet";
const IN_2011: &str = "a combination-type AFCI breaker; or an AFCI receptacle at the first outlet, with a home run in metal \
     conduit, steel armor or metal-clad cable and metal boxes, or in a raceway under 2 in of concrete";
const FROM_2014: &str = "a combination-type AFCI breaker; a branch/feeder AFCI breaker with an AFCI receptacle at the marked \
     first outlet; a breaker with supplemental arc protection, or an ordinary one listed with it as a system, with an AFCI \
     receptacle at the marked first outlet behind an unbroken home run that is not too long; or an AFCI receptacle at the \
     first outlet, with a home run in metal conduit, steel armor or metal-clad cable and metal boxes, or under 2 in of concrete";

const MEANS: ByEdition<&str> = ByEdition {
    id: "afci.new-circuit.means",
    readings: &[
        Reading::remembered(Nec2008, "210.12(B)", TO_2008),
        Reading::read(Nec2011, "210.12(A)", MAGAZINE_2011, IN_2011),
        Reading::read(Nec2014, "210.12(A)(1)–(6)", COURSE_21, FROM_2014),
        Reading::remembered(Nec2017, "210.12(A)(1)–(6)", FROM_2014),
        Reading::remembered(Nec2020, "210.12(A)(1)–(6)", FROM_2014),
        Reading::read(Nec2023, "210.12(A)(1)–(6)", COURSE_1429, FROM_2014),
    ],
};

/// The longest home run in feet behind such a breaker, with conductors of 14 and of 12 AWG; `None` where no such means is accepted.
const HOME_RUN: ByEdition<Option<(u32, u32)>> = ByEdition {
    id: "afci.new-circuit.home-run",
    readings: &[
        Reading::remembered(Nec2008, "210.12(B)", None),
        Reading::read(Nec2011, "210.12(A)", MAGAZINE_2011, None),
        Reading::read(Nec2014, "210.12(A)(3), (4)", COURSE_21, Some((50, 70))),
        Reading::remembered(Nec2017, "210.12(A)(3), (4)", Some((50, 70))),
        Reading::remembered(Nec2020, "210.12(A)(3), (4)", Some((50, 70))),
        Reading::read(Nec2023, "210.12(A)(3), (4)", COURSE_1429, Some((50, 70))),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if never_reached(opening.room_use) {
        return Ok(Vec::new());
    }
    let (means, home_run) = (MEANS.in_force(code)?, HOME_RUN.in_force(code)?);
    let remedy = Remedy::NewCable;
    let accepted = format!("where it is a new circuit of the AFCI rooms, from the panel: {}", means.value);
    let mut said = vec![Says::Conditions(remedy, accepted.into()).by(&[means.cite])];
    if let Some((thin, thick)) = home_run.value {
        let limit = format!(
            "not too long is {thin} ft of 14 AWG or {thick} ft of 12 AWG; this binds new circuits only, neither replaced \
             receptacles nor extensions"
        );
        said.push(Says::Conditions(remedy, limit.into()).by(&[home_run.cite]));
    }
    Ok(said)
}
