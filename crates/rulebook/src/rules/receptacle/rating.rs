//! Which rating a new receptacle may have on its circuit.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};

/// The rule.
pub const RULE: Rule = Rule {
    id: "receptacle.rating",
    title: "A receptacle's rating suits its circuit",
    page: include_str!("rating.md"),
    decides: &[Decides::Remedy(Remedy::NongroundingReceptacle)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&RATINGS];

/// A circuit's rating in amperes, the receptacles it may have in words, and whether two-slot ones are among them.
type Row = (u32, &'static str, bool);

const TABLE: &[Row] = &[
    (15, "a receptacle of 15 A", true),
    (20, "a receptacle of 15 or 20 A, and of 20 A where it is the only one on the circuit", true),
    (30, "a receptacle of 30 A", false),
    (40, "a receptacle of 40 or 50 A", false),
    (50, "a receptacle of 50 A", false),
];

const RATINGS: ByEdition<&[Row]> = ByEdition {
    id: "receptacle.rating.by-circuit",
    readings: &[
        Reading::remembered(Nec2008, "210.21(B)", TABLE),
        Reading::remembered(Nec2011, "210.21(B)", TABLE),
        Reading::remembered(Nec2014, "210.21(B)", TABLE),
        Reading::remembered(Nec2017, "210.21(B)", TABLE),
        Reading::remembered(Nec2020, "210.21(B)", TABLE),
        Reading::remembered(Nec2023, "210.21(B)", TABLE),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let table = RATINGS.in_force(code)?;
    let cites = [table.cite];
    let row = opening.breaker.and_then(|breaker| table.value.iter().find(|(amperes, ..)| *amperes == breaker.get()));
    let condition = match (opening.breaker, row) {
        (Some(breaker), Some((_, fits, _))) => format!("on this {breaker} circuit, {fits}"),
        (Some(breaker), None) => format!("a receptacle whose rating suits a {breaker} circuit"),
        (None, _) => "a receptacle whose rating suits the circuit: find out the breaker's rating".to_owned(),
    };
    let mut said: Vec<Statement> = Remedy::ALL
        .iter()
        .filter(|remedy| remedy.may_fit_a_receptacle())
        .map(|remedy| Says::Conditions(*remedy, condition.clone().into()).by(&cites))
        .collect();
    if let (Some(breaker), Some((.., false))) = (opening.breaker, row) {
        let why = format!("two-slot receptacles are made for 15 A, which is too little on a {breaker} circuit");
        said.push(Says::Bars(Remedy::NongroundingReceptacle, why.into()).by(&cites));
    }
    Ok(said)
}
