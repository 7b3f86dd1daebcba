//! Equipment that must be grounded, by what is plugged in.

use crate::cited::{NotChecked, Value};
use crate::code::CodeInForce;
use crate::duty::Duty;
use crate::opening::Opening;
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

const VALUES: &[&dyn Value] = &[];

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let (listed, disputed) = (LISTED.in_force(code)?, DISPUTED.in_force(code)?);
    let duty = Duty::EquipmentGround;
    let mut said = Vec::new();
    for equipment in &opening.serves {
        if listed.value.contains(equipment) {
            said.push(Says::Owes(duty, equipment.name().to_owned()).by(&[listed.cite]));
        } else if disputed.value.contains(equipment) {
            said.push(Says::Disputes(duty, equipment.name().to_owned()).by(&[disputed.cite]));
        }
    }
    if said.iter().any(|statement: &Statement| matches!(statement.says, Says::Owes(..))) {
        let caution = "experts differ on whether equipment that must be grounded may be plugged in where a GFCI stands in \
                       for a ground: it protects people, and grounds nothing; a real ground is the safe way";
        said.push(Says::Cautions(caution.to_owned()).by(&[listed.cite]));
    }
    if opening.serves.contains(&Equipment::SurgeProtector) {
        let caution = "a surge protector diverts to the ground: without one it does not do its work";
        said.push(Says::Cautions(caution.to_owned()).by(&[]));
    }
    if opening.serves.contains(&Equipment::MedicalEquipment) {
        let caution = "medical equipment with a grounding pin relies on its ground: follow its instructions";
        said.push(Says::Cautions(caution.to_owned()).by(&[]));
    }
    Ok(said)
}
