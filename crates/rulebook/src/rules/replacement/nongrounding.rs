//! A two-slot receptacle in place of a receptacle without a ground.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::policy::Question;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_2008, MAGAZINE_2023_RECEPTACLES, TEXT_2011};

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
        Reading::read(Nec2008, "406.3(D)(3)(a)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(2)(a)", TEXT_2011, ()),
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
        return Ok(vec![Says::Bars(remedy, why.into()).by(&cites)]);
    }
    let mut said = vec![Says::Allows(remedy).by(&cites)];
    let answer = code.answer(Question::ThreeSlotBackToTwoSlot);
    let by = answer.map(|answer| answer.by.as_str());
    if !opening.holds.takes_grounding_plug() {
        return Ok(said);
    }
    if answer.is_some_and(|answer| !answer.yes) {
        let why = "the authority lets a two-slot receptacle follow a two-slot one only";
        return Ok(vec![Says::Bars(remedy, why.into()).by(&cites).changed(by)]);
    }
    if answer.is_none() {
        let both = "some read the permission as one for replacing two-slot receptacles only, others let a three-slot one without a \
                    ground go back to two slots: ask the authority";
        said.push(Says::DisputesRemedy(remedy, both.into()).by(&cites));
    } else {
        let accepted = "the authority accepts that a three-slot receptacle gives way to a two-slot one";
        said.push(Says::Conditions(remedy, accepted.into()).by(&cites).changed(by));
    }
    Ok(said)
}
