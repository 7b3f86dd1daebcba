//! Where material is bought: the counters of a supply house, and what goes by the foot.

use crate::material::Material;
use dwelling::names;

names! {
    /// A counter at which material is bought.
    Counter {
        /// Receptacles, protective devices and cover plates.
        Devices = "devices",
        /// Boxes and covers.
        Boxes = "boxes",
        /// Conductors, cable and raceway, by the foot.
        Conductors = "conductors",
        /// Breakers and fuses for the panel.
        Breakers = "breakers",
        /// Fittings, connectors and splices.
        Fittings = "fittings",
        /// Labels.
        Labels = "labels",
        /// What closes holes in walls.
        Patching = "patching",
    }
}

impl Counter {
    /// What it is called on a list.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Devices => "Devices and plates",
            Self::Boxes => "Boxes and covers",
            Self::Conductors => "Conductors, cable and raceway",
            Self::Breakers => "Breakers and fuses",
            Self::Fittings => "Fittings and splices",
            Self::Labels => "Labels",
            Self::Patching => "Patching",
        }
    }
}

impl Material {
    /// The counter at which it is bought.
    #[must_use]
    pub const fn counter(self) -> Counter {
        match self {
            Self::TwoSlot
            | Self::ThreeSlot
            | Self::ThreeSlotOutdoors
            | Self::Gfci
            | Self::GfciOutdoors
            | Self::Afci
            | Self::Dual
            | Self::DeadFrontGfci
            | Self::DeadFrontDual
            | Self::Plate => Counter::Devices,
            Self::PanelSideBox
            | Self::OldWorkBox
            | Self::SurfaceExtension
            | Self::WideOldWorkBox
            | Self::BlankCover
            | Self::BranchBox => Counter::Boxes,
            Self::GroundWire14
            | Self::GroundWire12
            | Self::GroundWire10
            | Self::Cable14
            | Self::Cable12
            | Self::Cable10
            | Self::RacewayFoot => Counter::Conductors,
            Self::BreakerGfci
            | Self::BreakerAfci
            | Self::BreakerDual
            | Self::BreakerGfciTwoPole
            | Self::BreakerAfciTwoPole
            | Self::BreakerDualTwoPole
            | Self::BreakerStandard
            | Self::BreakerStandardTwoPole
            | Self::Fuse => Counter::Breakers,
            Self::GroundFittings | Self::AluminiumSplice | Self::RacewayEnds | Self::NeutralFittings => {
                Counter::Fittings
            }
            Self::Label => Counter::Labels,
            Self::Patch => Counter::Patching,
        }
    }

    /// Whether it is measured by the foot rather than counted: then some of it is waste.
    #[must_use]
    pub const fn is_by_the_foot(self) -> bool {
        matches!(self.counter(), Counter::Conductors)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_goes_by_the_foot_says_so_in_its_name_and_nothing_else_does() {
        for thing in Material::ALL {
            assert_eq!(thing.is_by_the_foot(), thing.name().ends_with("-ft"), "{thing}");
        }
    }
}
