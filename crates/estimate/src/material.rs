//! What is bought for a correction.

use dwelling::names;

names! {
    /// A thing that is bought, priced by the piece or by the foot.
    Material {
        /// Two-slot receptacle.
        TwoSlot = "two-slot",
        /// Tamper-resistant three-slot receptacle.
        ThreeSlot = "three-slot",
        /// Tamper- and weather-resistant three-slot receptacle with its in-use cover.
        ThreeSlotOutdoors = "three-slot-outdoors",
        /// Tamper-resistant GFCI receptacle.
        Gfci = "gfci",
        /// Tamper- and weather-resistant GFCI receptacle with its in-use cover.
        GfciOutdoors = "gfci-outdoors",
        /// Tamper-resistant AFCI receptacle.
        Afci = "afci",
        /// Tamper-resistant GFCI/AFCI receptacle.
        Dual = "dual",
        /// GFCI device without slots.
        DeadFrontGfci = "dead-front-gfci",
        /// GFCI/AFCI device without slots.
        DeadFrontDual = "dead-front-dual",
        /// Box and fittings for a device beside the panel.
        PanelSideBox = "panel-side-box",
        /// Nonmetallic cover plate.
        Plate = "plate",
        /// Label with the words the code asks for.
        Label = "label",
        /// Single-gang old-work box marked 20 cubic inches.
        OldWorkBox = "old-work-box",
        /// Single-gang surface extension box marked 12 cubic inches.
        SurfaceExtension = "surface-extension",
        /// Two-gang old-work box marked 34 cubic inches, with a cover for one device.
        WideOldWorkBox = "wide-old-work-box",
        /// Single-pole GFCI breaker.
        BreakerGfci = "breaker-gfci",
        /// Single-pole AFCI breaker.
        BreakerAfci = "breaker-afci",
        /// Single-pole GFCI/AFCI (dual-function) breaker.
        BreakerDual = "breaker-dual",
        /// Two-pole GFCI breaker.
        BreakerGfciTwoPole = "breaker-gfci-2p",
        /// Two-pole AFCI breaker.
        BreakerAfciTwoPole = "breaker-afci-2p",
        /// Two-pole GFCI/AFCI (dual-function) breaker.
        BreakerDualTwoPole = "breaker-dual-2p",
        /// A foot of 14 AWG green conductor.
        GroundWire14 = "ground-wire-14-ft",
        /// A foot of 12 AWG green conductor.
        GroundWire12 = "ground-wire-12-ft",
        /// A foot of 10 AWG green conductor.
        GroundWire10 = "ground-wire-10-ft",
        /// A foot of 14 AWG two-wire cable with ground.
        Cable14 = "cable-14-ft",
        /// A foot of 12 AWG two-wire cable with ground.
        Cable12 = "cable-12-ft",
        /// A foot of 10 AWG two-wire cable with ground.
        Cable10 = "cable-10-ft",
        /// Ground screw, pigtail and connectors for one end of a conductor.
        GroundFittings = "ground-fittings",
        /// Listed copper-to-aluminium splice for one conductor.
        AluminiumSplice = "aluminium-splice",
        /// Nonmetallic blank cover, with connectors for the splices behind it.
        BlankCover = "blank-cover",
        /// Patching material for one opening in a finished surface.
        Patch = "patch",
        /// Accessible box with its cover and a connector, in which a branch is joined.
        BranchBox = "branch-box",
        /// A foot of surface raceway.
        RacewayFoot = "raceway-ft",
        /// The two end boxes and fittings of a run of surface raceway.
        RacewayEnds = "raceway-ends",
        /// Single-pole breaker, of the rating that the conductors bear.
        BreakerStandard = "breaker-standard",
        /// Two-pole breaker, of the rating that the conductors bear.
        BreakerStandardTwoPole = "breaker-standard-2p",
        /// Fuse of the rating that the conductors bear, with an adapter that takes no larger one.
        Fuse = "fuse",
        /// Connector and pigtail for one joint of a neutral.
        NeutralFittings = "neutral-fittings",
    }
}

impl Material {
    /// Whether it is bought only to put right what is dangerous: a book of one's own that leaves it out has no price for it.
    #[must_use]
    pub const fn is_for_dangers(self) -> bool {
        matches!(self, Self::BreakerStandard | Self::BreakerStandardTwoPole | Self::Fuse | Self::NeutralFittings)
    }
}
