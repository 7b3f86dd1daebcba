//! A two-slot receptacle in place of a receptacle without a ground.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::MAGAZINE_2023_RECEPTACLES;

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.nongrounding",
    title: "Where there is no ground, a two-slot receptacle may follow",
    page: include_str!("nongrounding.md"),
    decides: &[Decides::Remedy(Remedy::NongroundingReceptacle)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PERMITTED];

const PERMITTED: ByEdition<()> = ByEdition {
    id: "replacement.nongrounding.permitted",
    readings: &[
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(2)(a)", ()),
        Reading::remembered(Nec2017, "406.4(D)(2)(a)", ()),
        Reading::remembered(Nec2020, "406.4(D)(2)(a)", ()),
        Reading::read(Nec2023, "406.4(D)(2)(a)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [PERMITTED.in_force(code)?.cite];
    let remedy = Remedy::NongroundingReceptacle;
    if !opening.is_replacement() {
        let why = "the permission is for replacing a receptacle at an existing outlet: a new one needs a real ground";
        return Ok(vec![Says::Bars(remedy, why.to_owned()).by(&cites)]);
    }
    let mut said = vec![Says::Allows(remedy).by(&cites)];
    if opening.holds.takes_grounding_plug() {
        let note = "some authorities read the permission as one for replacing two-slot receptacles only: ask before a \
                    three-slot one gives way to a two-slot one";
        said.push(Says::Conditions(remedy, note.to_owned()).by(&cites));
    }
    Ok(said)
}
