//! Receptacles on aluminium conductors.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Rule, Says, Statement};
use electrical::ConductorMetal;

/// The rule.
pub const RULE: Rule = Rule {
    id: "receptacle.aluminium",
    title: "On aluminium, a receptacle is made for it or joined by listed splices",
    page: include_str!("aluminium.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&MARKED, &SPLICES];

const MARKED: ByEdition<()> = ByEdition {
    id: "receptacle.aluminium.marked",
    readings: &[
        Reading::remembered(Nec2008, "406.2(C)", ()),
        Reading::remembered(Nec2011, "406.3(C)", ()),
        Reading::remembered(Nec2014, "406.3(C)", ()),
        Reading::remembered(Nec2017, "406.3(C)", ()),
        Reading::remembered(Nec2020, "406.3(C)", ()),
        Reading::remembered(Nec2023, "406.3(D)", ()),
    ],
};

const SPLICES: ByEdition<()> = ByEdition {
    id: "receptacle.aluminium.splices",
    readings: &[
        Reading::remembered(Nec2008, "110.14", ()),
        Reading::remembered(Nec2011, "110.14", ()),
        Reading::remembered(Nec2014, "110.14", ()),
        Reading::remembered(Nec2017, "110.14", ()),
        Reading::remembered(Nec2020, "110.14", ()),
        Reading::remembered(Nec2023, "110.14", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if opening.metal == ConductorMetal::Copper || !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let (marked, splices) = (MARKED.in_force(code)?.cite, SPLICES.in_force(code)?.cite);
    let plain = "on aluminium conductors: a receptacle marked CO/ALR, or copper pigtails joined by connectors listed for \
                 copper to aluminium";
    let protective = "GFCI and AFCI receptacles are made for copper only: join copper pigtails by connectors listed for \
                      copper to aluminium, which need room in the box";
    let plain_ones = [
        Remedy::NongroundingReceptacle,
        Remedy::DownstreamOfGfci,
        Remedy::GfciBreaker,
        Remedy::SeparateEgc,
        Remedy::RestoreExistingGround,
    ];
    let mut said: Vec<Statement> =
        plain_ones.iter().map(|remedy| Says::Conditions(*remedy, plain.into()).by(&[marked, splices])).collect();
    said.push(Says::Conditions(Remedy::GfciReceptacle, protective.into()).by(&[splices]));
    let caution = "aluminium conductors: a receptacle that is tamper-resistant and marked CO/ALR is hard to come by, so plan \
                   for listed splices; check every joint on the circuit for signs of heat";
    said.push(Says::Cautions(caution.into()).by(&[marked]));
    Ok(said)
}
