//! A ground that is in the box, or comes to it, must be used.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_2008, MAGAZINE_2023_RECEPTACLES, TEXT_2011};
use dwelling::GroundFact;

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.existing-ground",
    title: "A ground that is in the box must be used",
    page: include_str!("existing_ground.md"),
    decides: &[Decides::Duty(Duty::UseExistingGround), Decides::Remedy(Remedy::RestoreExistingGround)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&MUST_BE_USED, &HOW_TO_CONNECT];

const MUST_BE_USED: ByEdition<()> = ByEdition {
    id: "replacement.existing-ground.must-be-used",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(1)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(1)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(1)", ()),
        Reading::remembered(Nec2017, "406.4(D)(1)", ()),
        Reading::remembered(Nec2020, "406.4(D)(1)", ()),
        Reading::read(Nec2023, "406.4(D)(1)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

const HOW_TO_CONNECT: ByEdition<()> = ByEdition {
    id: "replacement.existing-ground.how-to-connect",
    readings: &[
        Reading::remembered(Nec2008, "406.3(C)", ()),
        Reading::read(Nec2011, "406.4(C)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(C)", ()),
        Reading::unchanged_since_2011(Nec2017, "406.4(C)", ()),
        Reading::unchanged_since_2011(Nec2020, "406.4(C)", ()),
        Reading::read(Nec2023, "406.4(C)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

/// The remedies that the code gives only to an outlet without a ground.
const WITHOUT_A_GROUND: [Remedy; 4] =
    [Remedy::NongroundingReceptacle, Remedy::GfciReceptacle, Remedy::DownstreamOfGfci, Remedy::GfciBreaker];

const TAKES_LOOKING: &str = "find out first whether there is a ground: open the box and look, with the power off";

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [MUST_BE_USED.in_force(code)?.cite];
    let connect = HOW_TO_CONNECT.in_force(code)?.cite;
    let (duty, restore) = (Duty::UseExistingGround, Remedy::RestoreExistingGround);
    let mut said = Vec::new();
    let mut say = |says: Says| said.push(says.by(&cites));
    let (ground, by) = opening.ground_under(code);
    match ground {
        GroundFact::Connected | GroundFact::Poor | GroundFact::Loose => {
            if opening.is_receptacle_outlet() {
                say(Says::Owes(duty, format!("a ground is here ({})", state(ground)).into()));
                for remedy in WITHOUT_A_GROUND {
                    say(Says::Bars(remedy, barred(remedy).into()));
                }
            }
            say(Says::Allows(restore));
            say(Says::Conditions(restore, how_to_restore(ground).into()));
        }
        GroundFact::CutOff => {
            say(Says::CannotTell(
                duty,
                "a grounding conductor was cut off at the sheath: see whether it can be reached".into(),
            ));
            for remedy in WITHOUT_A_GROUND {
                let only_if = "only if the stub of the grounding conductor cannot be brought back into use: where it can, \
                               it must be used";
                say(Says::Conditions(remedy, only_if.into()));
            }
            say(Says::Allows(restore));
            let only_if =
                "only if enough of the conductor can be reached to splice it, and it is whole up to the panel";
            say(Says::Conditions(restore, only_if.into()));
        }
        GroundFact::Disputed => {
            let both = "a path is here that some authorities accept as the ground of a replacement, and must then be \
                        used, and that others do not accept: ask the authority";
            say(Says::Disputes(duty, both.into()));
            for remedy in WITHOUT_A_GROUND.into_iter().chain([restore]) {
                say(Says::DisputesRemedy(remedy, both.into()));
            }
        }
        GroundFact::Unknown => {
            say(Says::CannotTell(duty, TAKES_LOOKING.into()));
            for remedy in WITHOUT_A_GROUND.into_iter().chain([restore]) {
                say(Says::CannotTellRemedy(remedy, TAKES_LOOKING.into()));
            }
        }
        GroundFact::None | GroundFact::False => {
            say(Says::Bars(restore, "there is no ground here to restore".into()));
        }
    }
    if !matches!(ground, GroundFact::None | GroundFact::False) && opening.is_receptacle_outlet() {
        said.push(connection(restore, connect));
    }
    Ok(said.into_iter().map(|statement| statement.changed(by)).collect())
}

fn connection(restore: Remedy, cite: Citation) -> Statement {
    let how = "fit a grounding receptacle, of a GFCI kind where the place asks for one, and join its ground terminal to \
               the ground by a bonding jumper, or by a yoke that is listed for it";
    Says::Conditions(restore, how.into()).by(&[cite])
}

const fn state(ground: GroundFact) -> &'static str {
    match ground {
        GroundFact::Poor => "connected, but poor",
        GroundFact::Loose => "loose or not connected",
        _ => "whole and connected",
    }
}

const fn barred(remedy: Remedy) -> &'static str {
    match remedy {
        Remedy::NongroundingReceptacle => "a ground is here and must be used: a two-slot receptacle is no option",
        Remedy::GfciReceptacle => {
            "a ground is here and must be used: a GFCI receptacle may be fitted, but with its ground terminal connected"
        }
        _ => "a ground is here and must be used: protection by a GFCI does not stand in for it",
    }
}

const fn how_to_restore(ground: GroundFact) -> &'static str {
    match ground {
        GroundFact::Poor => "find and make good the poor joints of the path, and measure it again under load",
        GroundFact::Loose => "reconnect the conductor, and prove its path to the panel by a loaded test",
        _ => "nothing is to be restored but the connection to the new receptacle",
    }
}
