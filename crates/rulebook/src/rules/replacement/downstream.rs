//! A three-slot receptacle without a ground, fed from a GFCI receptacle upstream.

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
    id: "replacement.downstream",
    title: "Behind a GFCI receptacle, a marked three-slot receptacle may stand without a ground",
    page: include_str!("downstream.md"),
    decides: &[Decides::Remedy(Remedy::DownstreamOfGfci)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PERMITTED, &PLACE, &VISIBLE];

const PERMITTED: ByEdition<()> = ByEdition {
    id: "replacement.downstream.permitted",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(3)(c)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(2)(c)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(2)(c)", ()),
        Reading::remembered(Nec2017, "406.4(D)(2)(c)", ()),
        Reading::remembered(Nec2020, "406.4(D)(2)(c)", ()),
        Reading::read(Nec2023, "406.4(D)(2)(c)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [PERMITTED.in_force(code)?.cite];
    let place = PLACE.in_force(code)?;
    let remedy = Remedy::DownstreamOfGfci;
    let bars = |why: &'static str| Ok(vec![Says::Bars(remedy, why.into()).by(&cites)]);
    if !opening.is_replacement() {
        return bars(
            "the permission is for replacing a receptacle at an existing outlet: a new one needs a real ground",
        );
    }
    if opening.has_upstream == Some(false) {
        return bars("no opening lies upstream of this one at which a GFCI receptacle could sit");
    }
    let mut said = vec![
        Says::Allows(remedy).by(&cites),
        Says::Marks(remedy, Marking::GfciProtected).by(&[place.cite]),
        Says::Marks(remedy, Marking::NoEquipmentGround).by(&[place.cite]),
        Says::Conditions(remedy, format!("mark it {}", place.value).into()).by(&[place.cite]),
    ];
    let visible = VISIBLE.in_force(code)?;
    if visible.value {
        said.push(Says::Conditions(remedy, "the words can be seen after installation".into()).by(&[visible.cite]));
    }
    let mut only = |condition: &'static str| said.push(Says::Conditions(remedy, condition.into()).by(&cites));
    only("feed it from the load terminals of a GFCI receptacle that is readily accessible");
    only("run no grounding conductor between it and other receptacles without a ground");
    if opening.on_shared_neutral {
        only("the shared neutral ends at or before the GFCI receptacle: beyond one, no neutral may be shared");
    }
    if opening.has_upstream.is_none() {
        only("a GFCI receptacle can sit at an opening that feeds this one: find out what does");
    }
    Ok(said)
}
