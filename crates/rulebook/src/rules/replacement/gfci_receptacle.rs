//! A GFCI receptacle at an outlet without a ground.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::in_words::InWords;
use crate::opening::Opening;
use crate::remedy::{Marking, Remedy};
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_77, COURSE_2008, MAGAZINE_2011, MAGAZINE_2023_RECEPTACLES, TEXT_2011};
use crate::tables::marking_place::PLACE;
use electrical::Volume;

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.gfci-receptacle",
    title: "Where there is no ground, a marked GFCI receptacle may follow",
    page: include_str!("gfci_receptacle.md"),
    decides: &[Decides::Remedy(Remedy::GfciReceptacle)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&PERMITTED, &READILY_ACCESSIBLE, &PLACE];

const PERMITTED: ByEdition<()> = ByEdition {
    id: "replacement.gfci-receptacle.permitted",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(3)(b)", COURSE_2008, ()),
        Reading::read(Nec2011, "406.4(D)(2)(b)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "406.4(D)(2)(b)", ()),
        Reading::remembered(Nec2017, "406.4(D)(2)(b)", ()),
        Reading::remembered(Nec2020, "406.4(D)(2)(b)", ()),
        Reading::read(Nec2023, "406.4(D)(2)(b)", MAGAZINE_2023_RECEPTACLES, ()),
    ],
};

/// Where a GFCI receptacle used as a replacement must be readily accessible.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Reachable {
    /// Nowhere by the text.
    Unsaid,
    /// Where the place asks for GFCI protection.
    WherePlaceAsks,
    /// Everywhere.
    Always,
}

const READILY_ACCESSIBLE: ByEdition<Reachable> = ByEdition {
    id: "replacement.gfci-receptacle.readily-accessible",
    readings: &[
        Reading::read(Nec2008, "210.8(A)", MAGAZINE_2011, Reachable::Unsaid),
        Reading::read(Nec2011, "210.8", MAGAZINE_2011, Reachable::WherePlaceAsks),
        Reading::read(Nec2014, "406.4(D)", COURSE_77, Reachable::Always),
        Reading::remembered(Nec2017, "406.4(D)", Reachable::Always),
        Reading::remembered(Nec2020, "406.4(D)", Reachable::Always),
        Reading::read(Nec2023, "406.4(D)", MAGAZINE_2023_RECEPTACLES, Reachable::Always),
    ],
};

/// Common practice, no source: into a box below this volume a GFCI body is hard to fit, whatever the count allows.
const SMALL_BOX: Volume = Volume::hundredths(1400);

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let cites = [PERMITTED.in_force(code)?.cite];
    let place = PLACE.in_force(code)?;
    let reachable = READILY_ACCESSIBLE.in_force(code)?;
    let reach = [reachable.cite];
    let remedy = Remedy::GfciReceptacle;
    if !opening.is_replacement() {
        let why = "the permission is for replacing a receptacle at an existing outlet: a new one needs a real ground";
        return Ok(vec![Says::Bars(remedy, why.into()).by(&cites)]);
    }
    let onward = "run no grounding conductor from it to anything it feeds";
    let mut said = vec![
        Says::Allows(remedy).by(&cites),
        Says::Marks(remedy, Marking::NoEquipmentGround).by(&[place.cite]),
        Says::Conditions(remedy, format!("mark it {}", place.value).into()).by(&[place.cite]),
        Says::Conditions(remedy, onward.into()).by(&cites),
    ];
    match (opening.readily_accessible, reachable.value) {
        (Some(true), _) | (_, Reachable::Unsaid) => {}
        (_, Reachable::WherePlaceAsks) => {
            let only_if = "where the place asks for GFCI protection, it can be reached quickly";
            said.push(Says::Conditions(remedy, only_if.into()).by(&reach));
        }
        (Some(false), Reachable::Always) => {
            let why = "a GFCI receptacle used as a replacement must be readily accessible, and this place is not";
            said.push(Says::Bars(remedy, why.into()).by(&reach));
        }
        (None, Reachable::Always) => {
            let only_if = "it can be reached quickly: not behind a bed, a refrigerator or a locked door";
            said.push(Says::Conditions(remedy, only_if.into()).by(&reach));
        }
    }
    if opening.fill.volume.is_some_and(|volume| volume < SMALL_BOX) {
        let deep = "see that its deep body goes into this small box: the count of conductors does not tell";
        said.push(Says::Conditions(remedy, deep.into()).by(&[]));
    }
    if opening.on_shared_neutral {
        let load = "feed nothing from its load terminals that shares a neutral with the other circuit of the set";
        said.push(Says::Conditions(remedy, load.into()).by(&cites));
    }
    Ok(said)
}

impl InWords for Reachable {
    fn in_words(&self) -> String {
        match self {
            Self::Unsaid => "not asked",
            Self::WherePlaceAsks => "asked where the place asks for GFCI protection",
            Self::Always => "asked",
        }
        .to_owned()
    }
}
