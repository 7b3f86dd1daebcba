//! A breaker too large for the conductors behind it.

use crate::cited::{NotChecked, Value};
use crate::code::CodeInForce;
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use crate::tables::small_conductors::{LARGEST_BREAKER, breaker_too_large};

/// The rule.
pub const RULE: Rule = Rule {
    id: "circuit.overcurrent",
    title: "Small conductors stand behind small breakers",
    page: include_str!("overcurrent.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&LARGEST_BREAKER];

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (Some(breaker), Some(gauge)) = (opening.breaker, opening.gauge) else { return Ok(Vec::new()) };
    let Some(largest) = breaker_too_large(breaker, gauge, opening.metal, code)? else { return Ok(Vec::new()) };
    let caution = format!(
        "the breaker or fuse is {breaker} and the conductors are {gauge}: they may stand behind {} at most",
        largest.value
    );
    Ok(vec![Says::Cautions(caution.into()).by(&[largest.cite])])
}
