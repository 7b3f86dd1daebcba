//! What is likely before anybody has read or looked: the shares of faults in old wiring, by kind and by age.

use super::state::{Arrival, GroundRun, Wiring};
use dwelling::{CableKind, Holding};

/// The odds that inference begins with. Common practice, no source: each may be replaced by what a trade business has found.
#[derive(Clone, Debug, PartialEq)]
pub struct Priors {
    /// A run's hot conductor: sound, high resistance, open.
    pub hot: [f64; 3],
    /// A run's neutral: sound, high resistance, open.
    pub neutral: [f64; 3],
    /// The ground of a run whose cable brings one: in the order of [`GroundRun`].
    pub ground_of_grounded: [f64; 6],
    /// The ground of a run whose cable has a thin one.
    pub ground_of_reduced: [f64; 6],
    /// The ground of a run in continuous metal.
    pub ground_of_metal: [f64; 6],
    /// The ground of a run in armor without a bonding strip.
    pub ground_of_plain_armor: [f64; 6],
    /// How often armor or flexible metal that nobody has looked into is as good as a ground.
    pub unknown_metal_is_sound: f64,
    /// How often a run that nobody has seen brings a ground, by the year of building: until 1945, 1961, 1969, and later; and
    /// where the year is not known.
    pub unseen_brings_ground: [f64; 5],
    /// How often a wiring method is recorded wrongly.
    pub cable_misrecorded: f64,
    /// How often a panel that nobody has looked into has a ground for its circuits.
    pub unseen_panel_has_ground: f64,
    /// How often a panel without a ground bar has one all the same: grounds may end at the neutral bar of service equipment.
    pub panel_without_bar_has_ground: f64,
    /// The device where a ground arrives: in the order of [`Wiring`].
    pub wiring_where_grounded: [f64; 6],
    /// The device where none arrives.
    pub wiring_where_not: [f64; 6],
}

impl Default for Priors {
    fn default() -> Self {
        Self {
            hot: [0.990, 0.006, 0.004],
            neutral: [0.982, 0.012, 0.006],
            ground_of_grounded: [0.925, 0.015, 0.025, 0.010, 0.025, 0.0],
            ground_of_reduced: [0.78, 0.05, 0.06, 0.06, 0.05, 0.0],
            ground_of_metal: [0.90, 0.05, 0.025, 0.0, 0.025, 0.0],
            ground_of_plain_armor: [0.05, 0.55, 0.12, 0.0, 0.08, 0.20],
            unknown_metal_is_sound: 0.4,
            unseen_brings_ground: [0.05, 0.15, 0.65, 0.95, 0.40],
            cable_misrecorded: 0.01,
            unseen_panel_has_ground: 0.9,
            panel_without_bar_has_ground: 0.3,
            wiring_where_grounded: [0.936, 0.040, 0.002, 0.018, 0.004, 0.0],
            wiring_where_not: [0.898, 0.050, 0.001, 0.001, 0.045, 0.005],
        }
    }
}

const NO_GROUND: [f64; 6] = [0.0, 0.0, 0.0, 0.0, 0.0, 1.0];

impl Priors {
    /// The odds of a run's grounding path by its wiring method and the year of building, with what is recorded wrongly.
    #[must_use]
    pub fn ground(&self, cable: CableKind, built: Option<u16>) -> [f64; 6] {
        let unseen = self.unseen(built);
        mix(self.cable_misrecorded, &unseen, &self.by_record(cable, built))
    }

    /// The same if the wiring method is what the record says.
    #[must_use]
    pub fn by_record(&self, cable: CableKind, built: Option<u16>) -> [f64; 6] {
        match cable {
            CableKind::NmWithGround | CableKind::MetalCladWithGround => self.ground_of_grounded,
            CableKind::NmReducedGround => self.ground_of_reduced,
            CableKind::ArmoredWithStrip | CableKind::MetalConduit => self.ground_of_metal,
            CableKind::ArmoredNoStrip => self.ground_of_plain_armor,
            CableKind::ArmoredUnknown | CableKind::FlexibleMetalConduit | CableKind::SurfaceMetalRaceway => {
                mix(self.unknown_metal_is_sound, &self.ground_of_metal, &self.ground_of_plain_armor)
            }
            CableKind::NmTwoWire | CableKind::KnobAndTube | CableKind::NonmetallicConduit => NO_GROUND,
            CableKind::Unknown => self.unseen(built),
        }
    }

    /// The odds of a run that nobody has seen.
    #[must_use]
    pub fn unseen(&self, built: Option<u16>) -> [f64; 6] {
        let [until_1945, until_1961, until_1969, later, unknown] = self.unseen_brings_ground;
        let brings = match built {
            Some(..=1945) => until_1945,
            Some(..=1961) => until_1961,
            Some(..=1969) => until_1969,
            Some(_) => later,
            None => unknown,
        };
        mix(brings, &self.ground_of_grounded, &NO_GROUND)
    }

    /// The odds of a device's wiring by what it is and by what arrives.
    #[must_use]
    pub fn wiring(&self, holds: Holding, arrival: Arrival) -> [f64; 6] {
        let odds = if arrival.reaches() { self.wiring_where_grounded } else { self.wiring_where_not };
        let can_be = |wiring: Wiring| match wiring {
            Wiring::Right => true,
            Wiring::HotNeutralReversed => holds.is_receptacle() || holds == Holding::Unknown,
            _ => holds.takes_grounding_plug() || holds == Holding::Unknown,
        };
        let mut left = [0.0; 6];
        for (place, wiring) in Wiring::ALL.iter().enumerate() {
            left[place] = if can_be(*wiring) { odds[place] } else { 0.0 };
        }
        let total: f64 = left.iter().sum();
        left.map(|odds| odds / total)
    }

    /// How likely a panel has a ground for its circuits, by what is known of its ground bar.
    #[must_use]
    pub const fn panel_has_ground(&self, bar: Option<bool>) -> f64 {
        match bar {
            Some(true) => 1.0 - self.cable_misrecorded,
            Some(false) => self.panel_without_bar_has_ground,
            None => self.unseen_panel_has_ground,
        }
    }

    /// How likely it is that a wiring method was recorded wrongly, where the run is in this state.
    #[must_use]
    pub fn misrecorded(&self, cable: CableKind, built: Option<u16>, run: GroundRun) -> f64 {
        if cable == CableKind::Unknown {
            return 0.0;
        }
        let wrong = self.cable_misrecorded * self.unseen(built)[run as usize];
        let right = (1.0 - self.cable_misrecorded) * self.by_record(cable, built)[run as usize];
        if wrong > 0.0 { wrong / (wrong + right) } else { 0.0 }
    }
}

/// One set of odds with a share, another with the rest.
fn mix(share: f64, of: &[f64; 6], rest: &[f64; 6]) -> [f64; 6] {
    let mut mixed = [0.0; 6];
    for (place, odds) in mixed.iter_mut().enumerate() {
        *odds = share * of[place] + (1.0 - share) * rest[place];
    }
    mixed
}
