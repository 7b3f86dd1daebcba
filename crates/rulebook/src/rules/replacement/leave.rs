//! Leaving an opening as it is: lawful unless what is there was never lawful.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_2008, MAGAZINE_2023_RECEPTACLES, TEXT_2011};
use crate::tables::marking_place::PLACE;
use dwelling::{GroundFact, Holding};

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.leave",
    title: "What is there may stay only if it is what it seems",
    page: include_str!("leave.md"),
    decides: &[Decides::Remedy(Remedy::Leave)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] =
    &[&CONTACTS_CONNECTED, &NEUTRAL_IS_NO_GROUND, &PATH_MUST_WORK, &NO_GROUND_PRESENT, &PLACE];

const CONTACTS_CONNECTED: ByEdition<()> = ByEdition {
    id: "replacement.leave.contacts-connected",
    readings: &[
        Reading::remembered(Nec2008, "406.3(B)", ()),
        Reading::read(Nec2011, "406.4(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(B)", ()),
        Reading::unchanged_since_2011(Nec2017, "406.4(B)", ()),
        Reading::unchanged_since_2011(Nec2020, "406.4(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "406.4(B)", ()),
    ],
};

const NEUTRAL_IS_NO_GROUND: ByEdition<()> = ByEdition {
    id: "replacement.leave.neutral-is-no-ground",
    readings: &[
        Reading::remembered(Nec2008, "250.142(B)", ()),
        Reading::read(Nec2011, "250.142(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.142(B)", ()),
        Reading::unchanged_since_2011(Nec2017, "250.142(B)", ()),
        Reading::unchanged_since_2011(Nec2020, "250.142(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "250.142(B)", ()),
    ],
};

const PATH_MUST_WORK: ByEdition<()> = ByEdition {
    id: "replacement.leave.path-must-work",
    readings: &[
        Reading::remembered(Nec2008, "250.4(A)(5)", ()),
        Reading::remembered(Nec2011, "250.4(A)(5)", ()),
        Reading::remembered(Nec2014, "250.4(A)(5)", ()),
        Reading::remembered(Nec2017, "250.4(A)(5)", ()),
        Reading::remembered(Nec2020, "250.4(A)(5)", ()),
        Reading::remembered(Nec2023, "250.4(A)(5)", ()),
    ],
};

const NO_GROUND_PRESENT: ByEdition<()> = ByEdition {
    id: "replacement.leave.no-ground-present",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(3)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(2)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(2)", ()),
        Reading::remembered(Nec2017, "406.4(D)(2)", ()),
        Reading::remembered(Nec2020, "406.4(D)(2)", ()),
        Reading::read(Nec2023, "406.4(D)(2)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

/// A jumper is a danger under any edition, whether or not its sections were read.
fn false_ground(code: &CodeInForce) -> Vec<Statement> {
    let leave = Remedy::Leave;
    let caution = "danger: with the neutral as a false ground, whatever is plugged in can have a live case as soon as the neutral \
                   opens anywhere; remove the jumper first, whatever else is chosen";
    match (NEUTRAL_IS_NO_GROUND.in_force(code), PATH_MUST_WORK.in_force(code)) {
        (Ok(neutral), Ok(path)) => {
            let why = "a jumper joins the neutral to the ground terminal or the box here: it must come out";
            vec![
                Says::Bars(leave, why.into()).by(&[neutral.cite, path.cite]),
                Says::Cautions(caution.into()).by(&[neutral.cite]),
            ]
        }
        (Err(missing), _) | (_, Err(missing)) => {
            vec![Says::CannotTellRemedy(leave, missing.because.into()).by(&[]), Says::Cautions(caution.into()).by(&[])]
        }
    }
}

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let leave = Remedy::Leave;
    let (ground, by) = opening.ground_under(code);
    if ground == GroundFact::False && opening.existing_outlet {
        return Ok(false_ground(code));
    }
    if !opening.existing_outlet || opening.holds == Holding::TwoSlot {
        return Ok(vec![Says::Allows(leave).by(&[])]);
    }
    let without = NO_GROUND_PRESENT.in_force(code)?.cite;
    if opening.holds == Holding::Unknown {
        let why = "find out first what kind of receptacle is here";
        return Ok(vec![Says::CannotTellRemedy(leave, why.into()).by(&[without])]);
    }
    if !opening.holds.takes_grounding_plug() {
        return Ok(vec![Says::Allows(leave).by(&[])]);
    }
    let connected = CONTACTS_CONNECTED.in_force(code)?.cite;
    let said = match ground {
        GroundFact::Connected => vec![Says::Allows(leave).by(&[connected])],
        GroundFact::Loose => {
            vec![
                Says::Bars(leave, "its ground contact is not connected to the ground that is here".into())
                    .by(&[connected]),
            ]
        }
        GroundFact::Poor => {
            let path = PATH_MUST_WORK.in_force(code)?.cite;
            let why = "the path behind its ground contact is too poor to open a breaker";
            vec![Says::Bars(leave, why.into()).by(&[path])]
        }
        GroundFact::Disputed => {
            let both = "its ground contact rests on a path that some authorities accept and others do not";
            vec![Says::DisputesRemedy(leave, both.into()).by(&[connected])]
        }
        GroundFact::Unknown => {
            let why = "find out first whether its ground contact is connected to a ground";
            vec![Says::CannotTellRemedy(leave, why.into()).by(&[connected])]
        }
        GroundFact::None | GroundFact::CutOff | GroundFact::False
            if matches!(opening.holds, Holding::Gfci | Holding::Dual) =>
        {
            let place = PLACE.in_force(code)?;
            let marked = format!("only if it is marked, {}", place.value);
            vec![
                Says::Allows(leave).by(&[without]),
                Says::Marks(leave, Marking::NoEquipmentGround).by(&[place.cite]),
                Says::Conditions(leave, marked.into()).by(&[place.cite]),
            ]
        }
        GroundFact::None | GroundFact::CutOff | GroundFact::False => {
            let why = "a three-slot receptacle without a ground may stay only where a GFCI protects it and it is marked: \
                       choose one of those remedies";
            vec![Says::Bars(leave, why.into()).by(&[connected, without])]
        }
    };
    Ok(said.into_iter().map(|statement| statement.changed(by)).collect())
}
