//! Tests and explanations in words.

use super::explanations::{Explained, Explanation};
use super::state::{GroundRun, WireState, Wiring};
use super::test_outcome::Test;
use dwelling::{CableKind, Dwelling, GroundPath};

impl Test {
    /// What to do, in one sentence.
    #[must_use]
    pub const fn what(self) -> &'static str {
        match self {
            Self::Pairs => "unplug everything and read all three pairs with a low-impedance meter",
            Self::UnderLoad => "plug a heavy load in here and read all three pairs again",
            Self::ToEarth => "read hot, neutral and ground each to an independent earth with a low-impedance meter",
            Self::Impedance => "measure the impedance of the ground with an instrument that loads it",
            Self::OpenBox => {
                "switch the circuit off, prove it dead, draw the device out and look for a grounding conductor, at the \
                 sheath too"
            }
        }
    }

    /// What can hurt someone while it is done.
    #[must_use]
    pub const fn caution(self) -> &'static str {
        match self {
            Self::Pairs | Self::ToEarth => "The slots are live: keep hands behind the guards of the probes.",
            Self::UnderLoad => "Where the ground is false, the case of the load may be live: do not touch it.",
            Self::Impedance => {
                "The test current makes all metal bonded here live for a moment where the path is bad, and opens a GFCI \
                 upstream."
            }
            Self::OpenBox => {
                "Prove the tester live before and after; another circuit may pass through the box; old insulation is \
                 brittle: do not flex it more than needed."
            }
        }
    }
}

impl Explanation {
    /// What is wrong by it, or otherwise than the survey has it, one sentence each, in the order of feeding.
    #[must_use]
    pub fn faults(&self, dwelling: &Dwelling) -> Vec<String> {
        let panels = self.boxes.iter().filter_map(|one| dwelling.circuit_of(one.at)).map(|circuit| circuit.panel);
        let without_bar = panels.into_iter().any(|panel| dwelling.panel(panel).ground_bar == Some(false));
        let bar =
            (!self.panel_has_ground && !without_bar).then(|| "the panel brings no ground to this circuit".to_owned());
        bar.into_iter().chain(self.boxes.iter().flat_map(|one| one.faults(dwelling))).collect()
    }
}

impl Explained {
    /// What is wrong at the box and on the run that feeds it.
    fn faults(&self, dwelling: &Dwelling) -> Vec<String> {
        let id = &dwelling.device_box(self.at).id;
        let wire = |name: &str, state: WireState| match state {
            WireState::Sound => None,
            WireState::Weak => Some(format!("the {name} of the run to `{id}` has a bad joint")),
            WireState::Open => Some(format!("the {name} of the run to `{id}` is open")),
        };
        let cable = dwelling.cable_to(self.at);
        let ground = match self.ground {
            GroundRun::Absent if cable.ground_path() == GroundPath::No => None,
            GroundRun::Sound | GroundRun::Weak if cable == CableKind::ArmoredNoStrip => None,
            _ if cable.ground_path() == GroundPath::No && cable != CableKind::ArmoredNoStrip => {
                Some(format!("the run to `{id}` brings a grounding conductor, though it was taken for `{cable}`"))
            }
            GroundRun::Sound => None,
            GroundRun::Weak => Some(format!("the ground of the run to `{id}` has a bad joint")),
            GroundRun::LooseHere => Some(format!("the ground of the run to `{id}` is loose in `{id}`")),
            GroundRun::CutOffHere => Some(format!("the ground of the run to `{id}` was cut off in `{id}`")),
            GroundRun::LooseBefore => Some(format!("the ground of the run to `{id}` is loose in the box before it")),
            GroundRun::Absent => Some(format!("the run to `{id}` carries no ground")),
        };
        let device = match self.state.wiring {
            Wiring::Right => None,
            Wiring::HotNeutralReversed => Some(format!("hot and neutral are reversed at `{id}`")),
            Wiring::HotGroundReversed => Some(format!("hot and ground are reversed at `{id}`")),
            Wiring::GroundNotLanded => Some(format!("the ground is not landed at `{id}`")),
            Wiring::NeutralJumper => Some(format!("a jumper joins neutral and ground at `{id}`")),
            Wiring::ReversedJumper => Some(format!(
                "hot and neutral are reversed at `{id}`, and a jumper puts its ground on the hot conductor"
            )),
        };
        [wire("hot conductor", self.hot), wire("neutral", self.neutral), ground, device].into_iter().flatten().collect()
    }
}
