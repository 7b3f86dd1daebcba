//! Equipment with cord and plug that must be grounded in dwellings.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::TEXT_2011;
use dwelling::Equipment;

const LIST: &[Equipment] = &[
    Equipment::Refrigerator,
    Equipment::Freezer,
    Equipment::AirConditioner,
    Equipment::ClothesWasher,
    Equipment::ClothesDryer,
    Equipment::Dishwasher,
    Equipment::WasteDisposer,
    Equipment::Computer,
    Equipment::SumpPump,
    Equipment::Aquarium,
    Equipment::MotorTools,
    Equipment::GardenTools,
    Equipment::HandLamp,
];

/// The equipment listed.
pub const LISTED: ByEdition<&[Equipment]> = ByEdition {
    id: "equipment.needs-ground",
    readings: &[
        Reading::remembered(Nec2008, "250.114(3)", LIST),
        Reading::read(Nec2011, "250.114(3)", TEXT_2011, LIST),
        Reading::unchanged_since_2011(Nec2014, "250.114(3)", LIST),
        Reading::unchanged_since_2011(Nec2017, "250.114(3)", LIST),
        Reading::unchanged_since_2011(Nec2020, "250.114(3)", LIST),
        Reading::unchanged_since_2011(Nec2023, "250.114(3)", LIST),
    ],
};

const RANGES: &[Equipment] = &[Equipment::Range];
const RANGES_UNSURE: &str = "some remember ranges in the list, the 2011 text does not show them";

/// Equipment of which it is unsure whether the edition lists it.
pub const DISPUTED: ByEdition<&[Equipment]> = ByEdition {
    id: "equipment.needs-ground-disputed",
    readings: &[
        Reading::remembered(Nec2008, "250.114(3)", &[]),
        Reading::read(Nec2011, "250.114(3)", TEXT_2011, &[]),
        Reading::disputed(Nec2014, "250.114(3)", RANGES_UNSURE, RANGES),
        Reading::disputed(Nec2017, "250.114(3)", RANGES_UNSURE, RANGES),
        Reading::disputed(Nec2020, "250.114(3)", RANGES_UNSURE, RANGES),
        Reading::disputed(Nec2023, "250.114(3)", RANGES_UNSURE, RANGES),
    ],
};

/// Whether equipment needs a ground to be safe or to do its work, whatever the code's list says of it.
///
/// Common practice, no source, for what the list does not have: surge protectors divert to the ground that is there,
/// and medical equipment with a grounding pin relies on it.
#[must_use]
pub fn needs_ground_to_serve(equipment: Equipment) -> bool {
    LIST.contains(&equipment)
        || RANGES.contains(&equipment)
        || matches!(equipment, Equipment::SurgeProtector | Equipment::MedicalEquipment)
}
