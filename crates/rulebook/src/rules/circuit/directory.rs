//! The panel's directory, where the circuit's protection changes.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{COURSE_121, COURSE_1497, MAGAZINE_2023_PART_11, TEXT_2011};

/// The rule.
pub const RULE: Rule = Rule {
    id: "panel.directory",
    title: "The panel's directory follows what was changed",
    page: include_str!("directory.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&DIRECTORY];

const ON_THE_DOOR: &str = "enter the change in the directory at the panel: what the circuit is for, clearly told apart from the \
     others, and nobody's name";
const BESIDE_IT: &str = "enter the change in the directory at the panel, on its door or beside it: what the circuit is for, \
     clearly told apart from the others, and nobody's name";
const EXPLAINED: &str = "enter the change in the directory at the panel, on its door or beside it: what the circuit is for, \
     clearly told apart from the others, abbreviations explained, and nobody's name";

const DIRECTORY: ByEdition<&str> = ByEdition {
    id: "panel.directory.entry",
    readings: &[
        Reading::remembered(Nec2008, "408.4(A)", ON_THE_DOOR),
        Reading::read(Nec2011, "408.4(A)", TEXT_2011, ON_THE_DOOR),
        Reading::read(Nec2014, "408.4(A)", COURSE_121, ON_THE_DOOR),
        Reading::remembered(Nec2017, "408.4(A)", ON_THE_DOOR),
        Reading::read(Nec2020, "408.4(A)", COURSE_1497, BESIDE_IT),
        Reading::read(Nec2023, "408.4(A)", MAGAZINE_2023_PART_11, EXPLAINED),
    ],
};

fn judge(_: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let directory = DIRECTORY.in_force(code)?;
    let changed = [Remedy::GfciBreaker, Remedy::NewCable];
    Ok(changed.map(|remedy| Says::Conditions(remedy, directory.value.into()).by(&[directory.cite])).to_vec())
}
