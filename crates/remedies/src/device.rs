//! What a plan puts at an opening and at a panel.

use dwelling::{Holding, ProtectiveBreaker, names};
use electrical::Volume;
use estimate::{Material, Task};
use rulebook::DeviceSpace;

names! {
    /// The device that a plan leaves at an opening.
    Device {
        /// The one that is there.
        Kept = "kept",
        /// A new two-slot receptacle.
        TwoSlot = "two-slot",
        /// A new three-slot receptacle.
        ThreeSlot = "three-slot",
        /// A new GFCI receptacle.
        Gfci = "gfci",
        /// A new AFCI receptacle.
        Afci = "afci",
        /// A new receptacle that is GFCI and AFCI in one.
        Dual = "dual",
        /// No device: a blank cover over splices.
        Blank = "blank-cover",
    }
}

impl Device {
    /// The room that it takes in a box.
    #[must_use]
    pub const fn space(self) -> DeviceSpace {
        if matches!(self, Self::Blank) { DeviceSpace::None } else { DeviceSpace::Strap }
    }

    /// What the box then holds, where it held so much before.
    #[must_use]
    pub const fn held(self, before: Holding) -> Holding {
        match self {
            Self::Kept => before,
            Self::TwoSlot => Holding::TwoSlot,
            Self::ThreeSlot => Holding::ThreeSlot,
            Self::Gfci => Holding::Gfci,
            Self::Afci => Holding::Afci,
            Self::Dual => Holding::Dual,
            Self::Blank => Holding::Splice,
        }
    }

    /// Whether it is a GFCI of itself.
    #[must_use]
    pub const fn is_gfci(self) -> bool {
        matches!(self, Self::Gfci | Self::Dual)
    }

    /// Whether it is an AFCI of itself.
    #[must_use]
    pub const fn is_afci(self) -> bool {
        matches!(self, Self::Afci | Self::Dual)
    }

    /// What is bought for it; nothing for a device that stays, or that is not made for the weather.
    #[must_use]
    pub const fn material(self, outdoors: bool) -> Option<Material> {
        match (self, outdoors) {
            (Self::Blank, _) => Some(Material::BlankCover),
            (Self::Kept, _) | (Self::TwoSlot | Self::Afci | Self::Dual, true) => None,
            (Self::TwoSlot, false) => Some(Material::TwoSlot),
            (Self::ThreeSlot, false) => Some(Material::ThreeSlot),
            (Self::ThreeSlot, true) => Some(Material::ThreeSlotOutdoors),
            (Self::Gfci, false) => Some(Material::Gfci),
            (Self::Gfci, true) => Some(Material::GfciOutdoors),
            (Self::Afci, false) => Some(Material::Afci),
            (Self::Dual, false) => Some(Material::Dual),
        }
    }

    /// The device that stays where this one is held: whether it protects of itself.
    #[must_use]
    pub const fn held_is_gfci(held: Holding) -> bool {
        matches!(held, Holding::Gfci | Holding::Dual)
    }

    /// The device that stays where this one is held: whether it is an AFCI of itself.
    #[must_use]
    pub const fn held_is_afci(held: Holding) -> bool {
        matches!(held, Holding::Afci | Holding::Dual)
    }
}

names! {
    /// What a plan does with a box.
    BoxWork {
        /// It stays.
        Keep = "keep",
        /// It is cut out for a single-gang old-work box.
        Replace = "replace",
        /// A surface extension box is fitted onto it, single-gang.
        Extend = "extend",
        /// It is cut out for a two-gang old-work box with a cover for one device.
        ReplaceWide = "replace-wide",
    }
}

/// The volume marked on a deep single-gang old-work box: common practice, no source; the mark on the box counts.
const OLD_WORK_VOLUME: Volume = Volume::hundredths(20_00);
/// The volume marked on a two-gang old-work box: common practice, no source; the mark on the box counts.
const WIDE_OLD_WORK_VOLUME: Volume = Volume::hundredths(34_00);

/// The volume marked on a single-gang surface extension box: common practice, no source; the mark on it counts, 314.16(A).
const EXTENSION_VOLUME: Volume = Volume::hundredths(12_00);

impl BoxWork {
    /// The volume that is added to the old box, which stays.
    #[must_use]
    pub const fn added_volume(self) -> Option<Volume> {
        if matches!(self, Self::Extend) { Some(EXTENSION_VOLUME) } else { None }
    }

    /// The volume of the new box; nothing where the old one stays.
    #[must_use]
    pub const fn new_volume(self) -> Option<Volume> {
        match self {
            Self::Keep | Self::Extend => None,
            Self::Replace => Some(OLD_WORK_VOLUME),
            Self::ReplaceWide => Some(WIDE_OLD_WORK_VOLUME),
        }
    }

    /// What is bought and done for it.
    #[must_use]
    pub const fn work(self) -> Option<(Material, Task)> {
        match self {
            Self::Keep => None,
            Self::Replace => Some((Material::OldWorkBox, Task::ReplaceBox)),
            Self::Extend => Some((Material::SurfaceExtension, Task::ExtendBox)),
            Self::ReplaceWide => Some((Material::WideOldWorkBox, Task::ReplaceBoxWide)),
        }
    }
}

/// What a plan puts at the panel end of a circuit or multiwire set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum AtPanel {
    /// What is there stays.
    AsItIs,
    /// A protective breaker.
    Breaker(ProtectiveBreaker),
    /// A GFCI device without slots in a box beside the panel.
    DeadFrontGfci,
    /// A device without slots that is GFCI and AFCI in one, in a box beside the panel.
    DeadFrontDual,
}

impl AtPanel {
    /// Its name in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::AsItIs => "as-it-is",
            Self::Breaker(ProtectiveBreaker::Gfci) => "breaker-gfci",
            Self::Breaker(ProtectiveBreaker::Afci) => "breaker-afci",
            Self::Breaker(ProtectiveBreaker::Dual) => "breaker-dual",
            Self::Breaker(ProtectiveBreaker::GfciTwoPole) => "breaker-gfci-2p",
            Self::Breaker(ProtectiveBreaker::AfciTwoPole) => "breaker-afci-2p",
            Self::Breaker(ProtectiveBreaker::DualTwoPole) => "breaker-dual-2p",
            Self::DeadFrontGfci => "dead-front-gfci",
            Self::DeadFrontDual => "dead-front-dual",
        }
    }

    /// Whether it protects people from ground faults.
    #[must_use]
    pub const fn is_gfci(self) -> bool {
        match self {
            Self::AsItIs => false,
            Self::Breaker(breaker) => breaker.is_gfci(),
            Self::DeadFrontGfci | Self::DeadFrontDual => true,
        }
    }

    /// Whether it protects wiring from arc faults.
    #[must_use]
    pub const fn is_afci(self) -> bool {
        match self {
            Self::AsItIs | Self::DeadFrontGfci => false,
            Self::Breaker(breaker) => breaker.is_afci(),
            Self::DeadFrontDual => true,
        }
    }
}
