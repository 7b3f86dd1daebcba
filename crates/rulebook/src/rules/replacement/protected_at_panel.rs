//! A three-slot receptacle without a ground on a circuit that is protected at its panel.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_2008, MAGAZINE_2023_RECEPTACLES, TEXT_2011};
use crate::tables::marking_place::{PLACE, VISIBLE};

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.protected-at-panel",
    title: "On a circuit protected at its panel, a marked three-slot receptacle may stand without a ground",
    page: include_str!("protected_at_panel.md"),
    decides: &[Decides::Remedy(Remedy::GfciBreaker)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PERMITTED, &MADE_FOR_THE_PANEL, &PLACE, &VISIBLE];

const PERMITTED: ByEdition<()> = ByEdition {
    id: "replacement.protected-at-panel.permitted",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(3)(c)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(2)(c)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(2)(c)", ()),
        Reading::remembered(Nec2017, "406.4(D)(2)(c)", ()),
        Reading::remembered(Nec2020, "406.4(D)(2)(c)", ()),
        Reading::read(Nec2023, "406.4(D)(2)(c)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

const MADE_FOR_THE_PANEL: ByEdition<()> = ByEdition {
    id: "replacement.protected-at-panel.made-for-the-panel",
    readings: &[
        Reading::remembered(Nec2008, "110.3(B)", ()),
        Reading::remembered(Nec2011, "110.3(B)", ()),
        Reading::remembered(Nec2014, "110.3(B)", ()),
        Reading::remembered(Nec2017, "110.3(B)", ()),
        Reading::remembered(Nec2020, "110.3(B)", ()),
        Reading::remembered(Nec2023, "110.3(B)", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [PERMITTED.in_force(code)?.cite];
    let place = PLACE.in_force(code)?;
    let made = [MADE_FOR_THE_PANEL.in_force(code)?.cite];
    let remedy = Remedy::GfciBreaker;
    if !opening.is_replacement() {
        let why = "the permission is for replacing a receptacle at an existing outlet: a new one needs a real ground";
        return Ok(vec![Says::Bars(remedy, why.into()).by(&cites)]);
    }
    let onward = "run no grounding conductor between it and other receptacles without a ground";
    let mut said = vec![
        Says::Allows(remedy).by(&cites),
        Says::Marks(remedy, Marking::GfciProtected).by(&[place.cite]),
        Says::Marks(remedy, Marking::NoEquipmentGround).by(&[place.cite]),
        Says::Conditions(remedy, format!("mark it {}", place.value).into()).by(&[place.cite]),
        Says::Conditions(remedy, onward.into()).by(&cites),
    ];
    let visible = VISIBLE.in_force(code)?;
    if visible.value {
        said.push(Says::Conditions(remedy, "the words can be seen after installation".into()).by(&[visible.cite]));
    }
    said.push(device_at_panel(opening).by(&made));
    Ok(said)
}

/// Whether a device for it exists: a breaker made for the panel, or a dead-front device beside it. On a shared neutral
/// only two poles work: a device with one pole sees the other circuit's return current as a fault.
fn device_at_panel(opening: &Opening) -> Says {
    let remedy = Remedy::GfciBreaker;
    let shared = opening.is_on_multiwire();
    let fits = opening
        .made_for_panel
        .as_ref()
        .map(|made| made.iter().any(|breaker| breaker.is_gfci() && breaker.is_two_pole() == shared));
    match (fits, shared, opening.room_beside_panel) {
        (Some(true), true, _) => {
            Says::Conditions(remedy, "the breaker has two poles and serves both circuits of the multiwire set".into())
        }
        (Some(true), false, _) => Says::Conditions(remedy, "the breaker is one made and listed for this panel".into()),
        (Some(false), true, _) => Says::Bars(
            remedy,
            "the neutral is shared and no two-pole GFCI breaker is made for this panel: one with a single pole never works here"
                .into(),),
        (None, true, _) => Says::Conditions(
            remedy,
            "a two-pole GFCI breaker is made and listed for this panel and serves both circuits: find out".into(),),
        (_, false, Some(true)) => Says::Conditions(
            remedy,
            "by a dead-front GFCI device in a box beside the panel, unless a GFCI breaker made for the panel is found".into(),),
        (Some(false), false, Some(false)) => Says::Bars(
            remedy,
            "no GFCI breaker is made for this panel, and there is no room beside it for a dead-front device".into(),),
        (Some(false), false, None) => Says::Conditions(
            remedy,
            "by a dead-front GFCI device beside the panel, no breaker being made for it: find out whether there is room".into(),),
        (None, false, _) => Says::Conditions(
            remedy,
            "a GFCI breaker is made and listed for this panel, or a dead-front device can sit beside it: find out".into(),),
    }
}
