//! Circuits that share a neutral.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{NEWSLETTER_2008, TEXT_2011};

/// The rule.
pub const RULE: Rule = Rule {
    id: "multiwire.disconnect",
    title: "The hots of a multiwire set open together, and its neutral depends on no device",
    page: include_str!("multiwire.md"),
    decides: &[Decides::Duty(Duty::SimultaneousDisconnect)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&TOGETHER, &NEUTRAL];

const TOGETHER: ByEdition<()> = ByEdition {
    id: "multiwire.disconnect.together",
    readings: &[
        Reading::read(Nec2008, "210.4(B)", NEWSLETTER_2008, ()),
        Reading::read(Nec2011, "210.4(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "210.4(B)", ()),
        Reading::unchanged_since_2011(Nec2017, "210.4(B)", ()),
        Reading::unchanged_since_2011(Nec2020, "210.4(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "210.4(B)", ()),
    ],
};

const NEUTRAL: ByEdition<()> = ByEdition {
    id: "multiwire.disconnect.neutral",
    readings: &[
        Reading::remembered(Nec2008, "300.13(B)", ()),
        Reading::read(Nec2011, "300.13(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "300.13(B)", ()),
        Reading::unchanged_since_2011(Nec2017, "300.13(B)", ()),
        Reading::unchanged_since_2011(Nec2020, "300.13(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "300.13(B)", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if !opening.is_on_multiwire() {
        return Ok(Vec::new());
    }
    // The danger is the same under any edition, whether or not its sections were read.
    let (mut said, cites) = match (TOGETHER.in_force(code), NEUTRAL.in_force(code)) {
        (Ok(together), Ok(neutral)) => {
            let pigtail = opening.on_shared_neutral.then_some(neutral.cite);
            (asked(together.cite, pigtail), vec![together.cite, neutral.cite])
        }
        (Err(missing), _) | (_, Err(missing)) => {
            (vec![Says::CannotTell(Duty::SimultaneousDisconnect, missing.because.into()).by(&[])], Vec::new())
        }
    };
    let caution = "a multiwire circuit: with the shared neutral open, up to 240 V stand on what is plugged in; open both hots \
                   before you touch it";
    said.push(Says::Cautions(caution.into()).by(&cites));
    // Common practice, no source: a device with one pole sees the other circuit's return current.
    let poles = "a GFCI or AFCI breaker for a circuit that shares its neutral has two poles: one with a single pole never works";
    said.push(Says::Cautions(poles.into()).by(&[]));
    Ok(said)
}

/// What is asked; the pigtail only where the neutral is still shared.
fn asked(together: Citation, pigtail: Option<Citation>) -> Vec<Statement> {
    let why = "the circuit shares its neutral: a two-pole breaker, or breakers with a listed handle tie, opens both hots \
               together; the old panel is reached once its breakers are changed";
    let mut said = vec![Says::Owes(Duty::SimultaneousDisconnect, why.into()).by(&[together])];
    let Some(neutral) = pigtail else { return said };
    for remedy in Remedy::ALL.iter().copied().filter(|remedy| *remedy != Remedy::Leave) {
        let words = "join the shared neutral by a splice and a pigtail, so that no device holds it together";
        said.push(Says::Conditions(remedy, words.into()).by(&[neutral]));
    }
    said
}
