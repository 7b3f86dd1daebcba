//! What to mind with the wiring methods of old houses.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use crate::sources::TEXT_2011;
use dwelling::CableKind;

/// The rule.
pub const RULE: Rule = Rule {
    id: "wiring.old-methods",
    title: "Knob-and-tube keeps its air, armor keeps its bushing",
    page: include_str!("old_methods.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&INSULATION, &EXTENSION, &BUSHING];

/// That knob-and-tube runs in no hollow space that insulation fills.
const INSULATION: ByEdition<()> = ByEdition {
    id: "wiring.old-methods.insulation",
    readings: &[
        Reading::remembered(Nec2008, "394.12(5)", ()),
        Reading::read(Nec2011, "394.12(5)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "394.12(5)", ()),
        Reading::unchanged_since_2011(Nec2017, "394.12(5)", ()),
        Reading::unchanged_since_2011(Nec2020, "394.12(5)", ()),
        Reading::unchanged_since_2011(Nec2023, "394.12(5)", ()),
    ],
};

/// That knob-and-tube is new work only as an extension of what is there.
const EXTENSION: ByEdition<()> = ByEdition {
    id: "wiring.old-methods.extension",
    readings: &[
        Reading::remembered(Nec2008, "394.10", ()),
        Reading::read(Nec2011, "394.10", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "394.10", ()),
        Reading::unchanged_since_2011(Nec2017, "394.10", ()),
        Reading::unchanged_since_2011(Nec2020, "394.10", ()),
        Reading::unchanged_since_2011(Nec2023, "394.10", ()),
    ],
};

/// That armored cable ends in an insulating bushing that can be seen.
const BUSHING: ByEdition<()> = ByEdition {
    id: "wiring.old-methods.bushing",
    readings: &[
        Reading::remembered(Nec2008, "320.40", ()),
        Reading::read(Nec2011, "320.40", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "320.40", ()),
        Reading::unchanged_since_2011(Nec2017, "320.40", ()),
        Reading::unchanged_since_2011(Nec2020, "320.40", ()),
        Reading::unchanged_since_2011(Nec2023, "320.40", ()),
    ],
};

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    Ok(match opening.cable {
        Some(CableKind::KnobAndTube) => {
            let cites = [INSULATION.in_force(code)?.cite, EXTENSION.in_force(code)?.cite];
            let caution = "knob-and-tube wiring: it runs in no hollow space filled with insulation, it is extended only with \
                           the authority's leave, and its insulation may crumble when it is moved";
            vec![Says::Cautions(caution.into()).by(&cites)]
        }
        Some(CableKind::ArmoredWithStrip | CableKind::ArmoredNoStrip | CableKind::ArmoredUnknown) => {
            let caution = "armored cable: where it is cut or ended anew, an insulating bushing that can be seen keeps the \
                           armor's edge off the conductors";
            vec![Says::Cautions(caution.into()).by(&[BUSHING.in_force(code)?.cite])]
        }
        _ => Vec::new(),
    })
}
