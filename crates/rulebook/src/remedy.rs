//! The remedies, and the words that must stand on what they leave behind.

use dwelling::names;

names! {
    /// A way to deal with an opening, from least to most.
    Remedy {
        /// Leave it as it is.
        Leave = "leave",
        /// Fit a two-slot receptacle.
        NongroundingReceptacle = "nongrounding-receptacle",
        /// Fit a GFCI receptacle at the opening.
        GfciReceptacle = "gfci-receptacle",
        /// Fit a three-slot receptacle fed from the load side of a GFCI receptacle upstream.
        DownstreamOfGfci = "downstream-of-gfci",
        /// Fit a three-slot receptacle on a circuit protected at its panel, by a breaker or a dead-front device.
        GfciBreaker = "gfci-breaker",
        /// Bring a separate equipment grounding conductor.
        SeparateEgc = "separate-egc",
        /// Bring a new cable that has an equipment grounding conductor.
        NewCable = "new-cable",
        /// Restore the ground that is there.
        RestoreExistingGround = "restore-existing-ground",
        /// Take the receptacle out, splice the conductors and close the box with a blank cover. Listed where the owner asks
        /// for it.
        BlankCover = "blank-cover",
    }
}

impl Remedy {
    /// Whether a receptacle is there afterwards that may be a new one.
    #[must_use]
    pub const fn may_fit_a_receptacle(self) -> bool {
        !matches!(self, Self::Leave | Self::BlankCover)
    }
}

names! {
    /// Words the code asks for on a receptacle or its cover plate, exactly as the code has them.
    Marking {
        /// There is no equipment ground here.
        NoEquipmentGround = "No Equipment Ground",
        /// The opening is protected by a GFCI elsewhere.
        GfciProtected = "GFCI Protected",
    }
}
