//! Wiring methods whose metal, or whose thin conductor, may or may not count as a ground.

use crate::cited::NotChecked;
use crate::code::CodeInForce;
use crate::judgement::Lawful;
use crate::metal_path::{METHOD_VALUES, PathFacts, metal_path};
use crate::opening::Opening;
use crate::rule::{Rule, Says, Statement};
use dwelling::CableKind;

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.methods",
    title: "Metal around the conductors is a ground only where the code counts it as one",
    page: include_str!("methods.md"),
    decides: &[],
    values: METHOD_VALUES,
    judge,
};

/// Whether the path is whole is a matter of readings; here the question is whether its kind counts.
fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let Some(kind) = opening.cable else { return Ok(Vec::new()) };
    let facts = PathFacts { whole: Some(true), breaker: opening.breaker, ..PathFacts::default() };
    let path = metal_path(kind, facts, code);
    let by = path.changed_by.first().map(String::as_str);
    let open = matches!(path.lawful, Lawful::Disputed | Lawful::NotChecked);
    if !open && by.is_none() {
        return Ok(Vec::new());
    }
    Ok(vec![Says::Cautions(format!("{}: {}", as_a_ground(kind), path.why).into()).by(&path.cites).changed(by)])
}

/// What of a wiring method is to be a ground, as people say it.
const fn as_a_ground(kind: CableKind) -> &'static str {
    match kind {
        CableKind::NmReducedGround => "the thin ground of the old cable",
        CableKind::ArmoredWithStrip => "armor with a bonding strip as a ground",
        CableKind::ArmoredNoStrip => "armor without a bonding strip as a ground",
        CableKind::ArmoredUnknown => "armor that nobody has looked into for a bonding strip, as a ground",
        CableKind::MetalConduit => "metal conduit as a ground",
        CableKind::FlexibleMetalConduit => "flexible metal conduit as a ground",
        CableKind::SurfaceMetalRaceway => "surface metal raceway as a ground",
        CableKind::NmTwoWire
        | CableKind::NmWithGround
        | CableKind::KnobAndTube
        | CableKind::MetalCladWithGround
        | CableKind::NonmetallicConduit
        | CableKind::Unknown => "what this wiring method brings as a ground",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::edition::Edition::{Nec2020, Nec2026};
    use crate::policy::Question;
    use dwelling::RoomUse;

    fn said(cable: CableKind, code: &CodeInForce) -> Vec<Statement> {
        let opening = Opening { cable: Some(cable), ..Opening::unexamined(RoomUse::Hallway) };
        judge(&opening, code).expect("it never lacks a value")
    }

    /// Published (contested): trade forum, threads 125168, 66086, 127741 and 100198.
    #[test]
    fn old_armor_is_said_to_be_argued_until_the_authority_answers() {
        let mut code = CodeInForce::published(Nec2020);
        let argued = said(CableKind::ArmoredNoStrip, &code);
        assert!(
            matches!(&argued[..], [Statement { says: Says::Cautions(words), .. }] if words.contains("others do not"))
        );
        code.policy = code.policy.with(Question::ArmorWithoutStrip, false, "Springfield, notice 7");
        assert_eq!(said(CableKind::ArmoredNoStrip, &code)[0].changed_by, ["Springfield, notice 7"]);
    }

    #[test]
    fn what_plainly_counts_or_plainly_does_not_needs_no_word() {
        let code = CodeInForce::published(Nec2020);
        for kind in [CableKind::MetalConduit, CableKind::NmTwoWire, CableKind::NmWithGround] {
            assert_eq!(said(kind, &code), [], "{kind}");
        }
        assert_eq!(said(CableKind::MetalConduit, &CodeInForce::published(Nec2026)).len(), 1);
    }
}
