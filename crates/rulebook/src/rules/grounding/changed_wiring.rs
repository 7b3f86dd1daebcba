//! Wiring that is extended, changed or replaced in the rooms of the AFCI list.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use crate::in_words::InWords;
use crate::opening::Opening;
use crate::policy::Question;
use crate::remedy::Remedy;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{CORNER_2020, COURSE_22, COURSE_236, COURSE_1855, TEXT_2011};
use crate::tables::afci_rooms::never_reached;

/// The rule.
pub const RULE: Rule = Rule {
    id: "wiring.changed",
    title: "Changed wiring in the AFCI rooms gets AFCI protection, short pieces excepted",
    page: include_str!("changed_wiring.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&CHANGED_WIRING];

/// What changed wiring is owed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Changed {
    /// Nothing.
    Nothing,
    /// Protection from the panel or at the first receptacle, without exception.
    Always,
    /// The same; pieces of up to 6 ft that add no outlet and no device are excepted, and what else that excuses is argued.
    BeyondSixFeetArgued,
    /// The same; pieces of up to 6 ft that add no outlet and no device are excepted.
    BeyondSixFeet,
    /// The same; splicing devices add nothing, and what lies inside an enclosure is not measured.
    BeyondSixFeetOutside,
    /// From the panel, at the first receptacle or at the first switch.
    FirstReceptacleOrSwitch,
}

const CHANGED_WIRING: ByEdition<Changed> = ByEdition {
    id: "wiring.changed.protection",
    readings: &[
        Reading::read(Nec2008, "210.12", COURSE_236, Changed::Nothing),
        Reading::read(Nec2011, "210.12(B)", TEXT_2011, Changed::Always),
        Reading::read(Nec2014, "210.12(B)", COURSE_22, Changed::BeyondSixFeetArgued),
        Reading::read(Nec2017, "210.12(D)", COURSE_236, Changed::BeyondSixFeet),
        Reading::read(Nec2020, "210.12(D)", CORNER_2020, Changed::BeyondSixFeetOutside),
        Reading::read(Nec2023, "210.12(E)", COURSE_1855, Changed::BeyondSixFeetOutside),
        Reading::read(Nec2026, "210.12(E)(2)", COURSE_1855, Changed::FirstReceptacleOrSwitch),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if never_reached(opening.room_use) {
        return Ok(Vec::new());
    }
    let changed = CHANGED_WIRING.in_force(code)?;
    let Some(due) = in_words(changed.value) else { return Ok(Vec::new()) };
    let mut said = vec![Says::Conditions(Remedy::NewCable, due.into()).by(&[changed.cite])];
    let answer = code.answer(Question::SeparateEgcChangesWiring);
    let separate = match answer {
        Some(answer) if answer.yes => {
            "the authority counts a separate grounding conductor as changed wiring: in the AFCI rooms the circuit gets AFCI \
             protection"
        }
        Some(_) => "the authority does not count a separate grounding conductor as changed wiring",
        None => {
            "a separate grounding conductor leaves the circuit's own conductors as they are, so that most do not count it as \
             changed wiring: ask, since where the authority does, the circuit gets AFCI protection"
        }
    };
    let by = answer.map(|answer| answer.by.as_str());
    said.push(Says::Conditions(Remedy::SeparateEgc, separate.into()).by(&[changed.cite]).changed(by));
    Ok(said)
}

const fn in_words(changed: Changed) -> Option<&'static str> {
    match changed {
        Changed::Nothing => None,
        Changed::Always => Some(
            "where the room is one of the AFCI rooms, changed wiring of its 120 V circuits of 15 and 20 A is AFCI-protected \
             from the panel or at the first receptacle, however short it is",
        ),
        Changed::BeyondSixFeetArgued => Some(
            "where the room is one of the AFCI rooms, changed wiring of its 120 V circuits of 15 and 20 A is AFCI-protected \
             from the panel or at the first receptacle; pieces of 6 ft or less without a new outlet are excepted, and whether \
             that excuses a receptacle that is replaced is argued under this edition: count on its being due",
        ),
        Changed::BeyondSixFeet => Some(
            "where the room is one of the AFCI rooms, changed wiring of its 120 V circuits of 15 and 20 A is AFCI-protected \
             from the panel or at the first receptacle; pieces of 6 ft or less without a new outlet are excepted, which \
             excuses no receptacle that is replaced",
        ),
        Changed::BeyondSixFeetOutside => Some(
            "where the room is one of the AFCI rooms, changed wiring of its 120 V circuits of 15 and 20 A is AFCI-protected \
             from the panel or at the first receptacle; pieces of 6 ft or less without a new outlet are excepted, measured \
             outside of boxes and cabinets, which excuses no receptacle that is replaced",
        ),
        Changed::FirstReceptacleOrSwitch => Some(
            "where the room is one of the AFCI rooms, changed wiring is AFCI-protected from the panel, at the first \
             receptacle or at the first switch; whether short pieces are excepted could not be confirmed for this edition",
        ),
    }
}

impl InWords for Changed {
    fn in_words(&self) -> String {
        in_words(*self).unwrap_or("nothing is asked of changed wiring").to_owned()
    }
}
