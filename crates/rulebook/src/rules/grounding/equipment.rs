//! Equipment that must be grounded, by what is plugged in.

use crate::cited::{NotChecked, Value};
use crate::code::{CodeInForce, Local};
use crate::duty::Duty;
use crate::lists::List;
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::tables::grounded_equipment::{DISPUTED, LISTED};
use dwelling::Equipment;

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.equipment",
    title: "Some equipment with cord and plug must be grounded",
    page: include_str!("equipment.md"),
    decides: &[Decides::Duty(Duty::EquipmentGround)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&LISTED, &DISPUTED];

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if opening.serves.is_empty() {
        return Ok(Vec::new());
    }
    let (listed, disputed) = (LISTED.in_force(code)?, DISPUTED.in_force(code)?);
    let duty = Duty::EquipmentGround;
    let mut said = Vec::new();
    for equipment in &opening.serves {
        let name = equipment.name();
        match code.local(List::EquipmentNeedingGround, name) {
            Some(Local::In(by)) => said.push(Says::Owes(duty, name.into()).by(&[listed.cite]).changed(Some(&by))),
            Some(Local::Out(by)) => {
                let why = format!("{by}: {name} is not in the list here");
                said.push(Says::Excuses(duty, why.into()).by(&[listed.cite]).changed(Some(&by)));
            }
            Some(Local::Unsure(missing, by)) => {
                said.push(Says::CannotTell(duty, missing.into()).by(&[listed.cite]).changed(Some(&by)));
            }
            None if listed.value.contains(equipment) => said.push(Says::Owes(duty, name.into()).by(&[listed.cite])),
            None if disputed.value.contains(equipment) => {
                said.push(Says::Disputes(duty, name.into()).by(&[disputed.cite]));
            }
            None => {}
        }
    }
    if said.iter().any(|statement: &Statement| matches!(statement.says, Says::Owes(..))) {
        let caution = "experts differ on whether equipment that must be grounded may be plugged in where a GFCI stands in \
                       for a ground: it protects people, and grounds nothing; a real ground is the safe way";
        said.push(Says::Cautions(caution.into()).by(&[listed.cite]));
        if opening.is_replacement() {
            let both = "to some equipment that must be grounded may be plugged in where a GFCI stands in for a ground, to others \
                        the list forbids it";
            for remedy in [Remedy::GfciReceptacle, Remedy::DownstreamOfGfci, Remedy::GfciBreaker] {
                said.push(Says::DisputesUse(remedy, both.into()).by(&[listed.cite]));
            }
        }
    }
    if opening.serves.contains(&Equipment::SurgeProtector) {
        let caution = "a surge protector diverts to the ground: without one it does not do its work";
        said.push(Says::Cautions(caution.into()).by(&[]));
    }
    if opening.serves.contains(&Equipment::MedicalEquipment) {
        let caution = "medical equipment with a grounding pin relies on its ground: follow its instructions";
        said.push(Says::Cautions(caution.into()).by(&[]));
    }
    Ok(said)
}
