//! How grounding conductors are joined in a box, to the box and to the device.

use crate::cited::{ByEdition, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::opening::Opening;
use crate::remedy::Remedy;
use crate::rule::{Rule, Says, Statement};
use crate::sources::{COURSE_271, MAGAZINE_GROUNDING_4, TEXT_2011};

/// The rule.
pub const RULE: Rule = Rule {
    id: "grounding.joints",
    title: "In a box, grounding conductors are joined to each other, to metal, and to the device by a pigtail",
    page: include_str!("joints.md"),
    decides: &[],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&TOGETHER, &UNINTERRUPTED, &METAL_BOX, &DEVICE];

const WITH_THEIR_CIRCUIT: &str =
    "join the grounding conductors in the box that belong to circuit conductors spliced or ended there";
const ALL_OF_THEM: &str = "join all grounding conductors in the box that belong to any circuit spliced or ended there";

const TOGETHER: ByEdition<&str> = ByEdition {
    id: "grounding.joints.together",
    readings: &[
        Reading::remembered(Nec2008, "250.148", WITH_THEIR_CIRCUIT),
        Reading::read(Nec2011, "250.148", TEXT_2011, WITH_THEIR_CIRCUIT),
        Reading::read(Nec2014, "250.148", COURSE_271, WITH_THEIR_CIRCUIT),
        Reading::read(Nec2017, "250.148", COURSE_271, ALL_OF_THEM),
        Reading::remembered(Nec2020, "250.148", ALL_OF_THEM),
        Reading::remembered(Nec2023, "250.148", ALL_OF_THEM),
    ],
};

/// That taking out a device interrupts no ground.
const UNINTERRUPTED: ByEdition<()> = ByEdition {
    id: "grounding.joints.uninterrupted",
    readings: &[
        Reading::remembered(Nec2008, "250.148(B)", ()),
        Reading::read(Nec2011, "250.148(B)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.148(B)", ()),
        Reading::read(Nec2017, "250.148(B)", MAGAZINE_GROUNDING_4, ()),
        Reading::unchanged_since_2011(Nec2020, "250.148(B)", ()),
        Reading::unchanged_since_2011(Nec2023, "250.148(B)", ()),
    ],
};

/// That a metal box has a screw or a listed device for the ground alone.
const METAL_BOX: ByEdition<()> = ByEdition {
    id: "grounding.joints.metal-box",
    readings: &[
        Reading::remembered(Nec2008, "250.148(C)", ()),
        Reading::read(Nec2011, "250.148(C)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.148(C)", ()),
        Reading::read(Nec2017, "250.148(C)", MAGAZINE_GROUNDING_4, ()),
        Reading::unchanged_since_2011(Nec2020, "250.148(C)", ()),
        Reading::unchanged_since_2011(Nec2023, "250.148(C)", ()),
    ],
};

/// How a receptacle is bonded to a grounded metal box.
const DEVICE: ByEdition<()> = ByEdition {
    id: "grounding.joints.device",
    readings: &[
        Reading::remembered(Nec2008, "250.146", ()),
        Reading::read(Nec2011, "250.146", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.146", ()),
        Reading::unchanged_since_2011(Nec2017, "250.146", ()),
        Reading::unchanged_since_2011(Nec2020, "250.146", ()),
        Reading::unchanged_since_2011(Nec2023, "250.146", ()),
    ],
};

fn judge(_: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    let together = TOGETHER.in_force(code)?;
    let joints = [together.cite, UNINTERRUPTED.in_force(code)?.cite];
    let metal = [METAL_BOX.in_force(code)?.cite, DEVICE.in_force(code)?.cite];
    let join = format!("{}, with a pigtail to the device, so that taking it out interrupts no ground", together.value);
    let bond = "a metal box is joined to the ground by a screw or a listed clip that holds nothing else, and the receptacle to \
                the box by a jumper, unless its yoke is listed for grounding or sits on a surface box metal to metal with a \
                screw's insulating washer taken off";
    let mut said = Vec::new();
    for remedy in [Remedy::SeparateEgc, Remedy::NewCable, Remedy::RestoreExistingGround] {
        said.push(Says::Conditions(remedy, join.clone().into()).by(&joints));
        said.push(Says::Conditions(remedy, bond.into()).by(&metal));
    }
    Ok(said)
}
