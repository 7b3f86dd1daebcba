//! What a real ground at an opening is worth to its owner, by what is plugged in there.

use crate::facts::open_to;
use crate::planned::Planned;
use crate::steering::is_truly_grounded;
use dwelling::{BoxIndex, Equipment, Want};
use rulebook::tables::grounded_equipment::needs_ground_to_serve;
use rulebook::{Duty, Need, Remedy};

/// Nothing special is plugged in: a plug with a grounding pin may come. Ours, no source: it orders offers and prices nothing.
const OF_ANY: u64 = 1;
/// Electronics or an appliance that works better, or safer, with a ground. Ours, no source.
const OF_ELECTRONICS: u64 = 2;
/// Equipment that should have a ground, or an opening for which the owner asked for one. Ours, no source.
const OF_EQUIPMENT: u64 = 4;

/// What stands on electronics: what the owner calls so.
const ELECTRONICS: &[Equipment] = &[
    Equipment::Computer,
    Equipment::SurgeProtector,
    Equipment::Television,
    Equipment::AlarmSystem,
    Equipment::MedicalEquipment,
];

/// Whether electronics are plugged in at a box.
#[must_use]
pub(crate) fn serves_electronics(plan: &Planned, at: BoxIndex) -> bool {
    plan.facts.dwelling.device_box(at).serves.iter().any(|equipment| ELECTRONICS.contains(equipment))
}

/// Whether the plan could give a box's receptacle a ground that it does not have from the start; one that the owner does not
/// need and that may go wants none.
#[must_use]
pub(crate) fn could_be_given_a_ground(plan: &Planned, at: BoxIndex) -> bool {
    let site = plan.facts.at(at);
    let candidates = &plan.assembled.candidates[at.0];
    site.as_found.holds.is_receptacle()
        && !site.supplied
        && !open_to(&site.judged_to_plan, Remedy::BlankCover)
        && candidates.iter().any(|one| is_truly_grounded(&plan.facts, at, one))
}

/// What a ground that is brought to a box is worth; nothing where none can be, or where there is one already.
#[must_use]
pub(crate) fn worth_of(plan: &Planned, at: BoxIndex) -> u64 {
    if !could_be_given_a_ground(plan, at) {
        return 0;
    }
    let device_box = plan.facts.dwelling.device_box(at);
    let duties = &plan.facts.at(at).judged_to_plan.duties;
    let needed = duties.iter().any(|verdict| verdict.duty == Duty::EquipmentGround && verdict.need == Need::Required);
    let should_have = device_box.serves.iter().any(|equipment| needs_ground_to_serve(*equipment));
    if needed || should_have || device_box.want == Want::Ground {
        OF_EQUIPMENT
    } else if device_box.serves.iter().any(|equipment| *equipment != Equipment::TwoPin) {
        OF_ELECTRONICS
    } else {
        OF_ANY
    }
}
