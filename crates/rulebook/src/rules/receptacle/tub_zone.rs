//! Receptacles near bathtubs and shower stalls.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{COURSE_1494, TEXT_2011};
use electrical::Length;

/// The rule.
pub const RULE: Rule = Rule {
    id: "receptacle.tub-zone",
    title: "Within a tub or a shower there is no receptacle, and from 2020 none in a zone around it",
    page: include_str!("tub_zone.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&ZONE];

/// How far from the rim the zone reaches; nothing where only the inside and the space above are barred.
const ZONE: ByEdition<Length> = ByEdition {
    id: "receptacle.tub-zone.reach",
    readings: &[
        Reading::remembered(Nec2008, "406.8(C)", Length::ZERO),
        Reading::read(Nec2011, "406.9(C)", TEXT_2011, Length::ZERO),
        Reading::remembered(Nec2014, "406.9(C)", Length::ZERO),
        Reading::read(Nec2017, "406.9(C)", COURSE_1494, Length::ZERO),
        Reading::read(Nec2020, "406.9(C)", COURSE_1494, Length::feet(3)),
        Reading::read(Nec2023, "406.9(C)", COURSE_1494, Length::feet(3)),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let Some(tub) = opening.tub.as_ref().filter(|_| opening.is_receptacle_outlet()) else { return Ok(Vec::new()) };
    // No edition's zone is wider.
    if tub.distance > Length::feet(3) {
        return Ok(Vec::new());
    }
    let zone = ZONE.in_force(code)?;
    if tub.distance > zone.value || zone.value == Length::ZERO && tub.distance > Length::ZERO {
        return Ok(Vec::new());
    }
    let caution = if zone.value == Length::ZERO {
        "no receptacle within a tub or a shower stall or directly over it: ask the authority before one that is there is replaced"
            .to_owned()
    } else {
        format!(
            "within {} of a tub or a shower stall, up to 8 ft high, no receptacle is installed, small bathrooms excepted: ask the \
             authority before one that is there is replaced",
            zone.value
        )
    };
    Ok(vec![Says::Cautions(caution.into()).by(&[zone.cite])])
}
