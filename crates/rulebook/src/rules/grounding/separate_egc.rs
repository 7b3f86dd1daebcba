//! A grounding conductor brought by itself to an opening whose circuit has none.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::ground_connection::PLACES;
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{FORUM_2011_CONNECTIONS, FORUM_2014_SOURCES, GUIDE_2023, MAGAZINE_EQUIPMENT_GROUNDING};
use crate::tables::egc_size::{ROWS, egc_size};
use dwelling::{GroundFact, Holding};
use electrical::ConductorMetal;

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.separate-egc",
    title: "A grounding conductor may be brought by itself, from the places the code lists",
    page: include_str!("separate_egc.md"),
    decides: &[Decides::Remedy(Remedy::SeparateEgc)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PERMITTED, &PLACES, &SWITCHES, &PROTECTED, &ROWS];

const PERMITTED: ByEdition<()> = ByEdition {
    id: "grounding.separate-egc.permitted",
    readings: &[
        Reading::remembered(Nec2008, "250.130(C)", ()),
        Reading::read(Nec2011, "250.130(C)", FORUM_2011_CONNECTIONS, ()),
        Reading::read(Nec2014, "250.130(C)", FORUM_2014_SOURCES, ()),
        Reading::read(Nec2017, "250.130(C)", MAGAZINE_EQUIPMENT_GROUNDING, ()),
        Reading::read(Nec2020, "250.130(C)", MAGAZINE_EQUIPMENT_GROUNDING, ()),
        Reading::read(Nec2023, "250.130(C)", GUIDE_2023, ()),
    ],
};

/// That a conductor smaller than 6 AWG is protected from damage, or runs in hollow spaces.
const PROTECTED: ByEdition<()> = ByEdition {
    id: "grounding.separate-egc.protected-from-damage",
    readings: &[
        Reading::remembered(Nec2008, "250.120(C)", ()),
        Reading::remembered(Nec2011, "250.120(C)", ()),
        Reading::remembered(Nec2014, "250.120(C)", ()),
        Reading::remembered(Nec2017, "250.120(C)", ()),
        Reading::remembered(Nec2020, "250.120(C)", ()),
        Reading::remembered(Nec2023, "250.120(C)", ()),
    ],
};

/// Whether the permission names switches.
const SWITCHES: ByEdition<bool> = ByEdition {
    id: "grounding.separate-egc.switches",
    readings: &[
        Reading::remembered(Nec2008, "250.130(C)", false),
        Reading::remembered(Nec2011, "250.130(C)", false),
        Reading::remembered(Nec2014, "250.130(C)", false),
        Reading::remembered(Nec2017, "250.130(C)", false),
        Reading::remembered(Nec2020, "250.130(C)", false),
        Reading::read(Nec2023, "250.130(C)", GUIDE_2023, true),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [PERMITTED.in_force(code)?.cite];
    let remedy = Remedy::SeparateEgc;
    let (ground, by) = opening.ground_under(code);
    match ground {
        GroundFact::Connected | GroundFact::Loose => {
            let why =
                "a ground is here: a separate conductor is for circuits that have none, this one is to be connected";
            return Ok(vec![Says::Bars(remedy, why.into()).by(&cites).changed(by)]);
        }
        GroundFact::Unknown => {
            let why = "find out first whether the circuit has a ground here: a separate conductor is for circuits without one";
            return Ok(vec![Says::CannotTellRemedy(remedy, why.into()).by(&cites)]);
        }
        GroundFact::None | GroundFact::False | GroundFact::Poor | GroundFact::CutOff | GroundFact::Disputed => {}
    }
    let mut said = vec![Says::Allows(remedy).by(&cites).changed(by)];
    let mut only = |condition: String| said.push(Says::Conditions(remedy, condition.into()).by(&cites));
    match ground {
        GroundFact::Poor => only("only where the ground that is here cannot be made good".into()),
        GroundFact::CutOff => {
            only("only where the stub of the grounding conductor cannot be brought back into use".into())
        }
        GroundFact::Disputed => {
            only("where the authority accepts the path that is here, that path is the ground and is to be used".into());
        }
        _ => {}
    }
    only(format!("connect it at {}", PLACES.in_force(code)?.value));
    if opening.holds == Holding::Switch && !SWITCHES.in_force(code)?.value {
        only("this edition speaks of receptacles and of extensions: ask the authority whether one may be brought to a switch".into());
    }
    let protected = PROTECTED.in_force(code)?.cite;
    let run = "run it in hollow spaces or protected from damage, as straight as the building lets you";
    said.push(Says::Conditions(remedy, run.into()).by(&[protected]));
    said.push(match opening.breaker {
        Some(breaker) => match egc_size(breaker, ConductorMetal::Copper, None, code) {
            Ok(size) => {
                let least = format!("at least {} copper for the {breaker} circuit", size.value);
                Says::Conditions(remedy, least.into()).by(&[size.cite])
            }
            Err(missing) => Says::CannotTellRemedy(remedy, missing.because.into()).by(&cites),
        },
        None => {
            let size = "sized for the breaker or fuse of this circuit: find out its rating";
            Says::Conditions(remedy, size.into()).by(&cites)
        }
    });
    Ok(said)
}
