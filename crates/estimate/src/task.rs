//! What is done for a correction, timed in minutes.

use dwelling::names;

names! {
    /// A piece of work.
    Task {
        /// Take out a device and fit another in the same box.
        FitDevice = "fit-device",
        /// Join the load side of a protective device to what is fed from it, having found which pair that is.
        SortLoadSide = "sort-load-side",
        /// Put a label on a plate and check the reading.
        LabelAndTest = "label-and-test",
        /// Restore a grounding conductor that is in the box but loose or not connected.
        RestoreGround = "restore-ground",
        /// Find and mend the bad joint of a poor ground.
        TracePoorGround = "trace-poor-ground",
        /// Take out a jumper or a false ground.
        RemoveFalseGround = "remove-false-ground",
        /// Put the conductors of a reversed receptacle right.
        CorrectPolarity = "correct-polarity",
        /// Part a grounding conductor that joins openings without a ground.
        PartGround = "part-ground",
        /// Cut out a box and fit a larger old-work box.
        ReplaceBox = "replace-box",
        /// Fit a surface extension box onto a box.
        ExtendBox = "extend-box",
        /// Cut out a box and fit a two-gang old-work box.
        ReplaceBoxWide = "replace-box-wide",
        /// Connect a device that stays to a ground that has come into its box.
        ConnectGround = "connect-ground",
        /// Change a breaker.
        ChangeBreaker = "change-breaker",
        /// Fit a box and a device without slots beside the panel.
        FitPanelSideDevice = "fit-panel-side-device",
        /// Set up for one fished conductor and end it at both ends.
        FishSetup = "fish-setup",
        /// Fish one foot of conductor or cable.
        FishFoot = "fish-foot",
        /// Patch one opening in a finished surface.
        PatchOpening = "patch-opening",
        /// Take out a receptacle, splice its conductors and close the box with a blank cover.
        TakeOut = "take-out",
        /// Make one copper-to-aluminium splice.
        SpliceAluminium = "splice-aluminium",
        /// End a conductor at a box, a panel or a source.
        EndConductor = "end-conductor",
        /// Join a branch in an accessible box where it leaves an attic, a crawl space or a basement.
        JoinBranch = "join-branch",
        /// Drill one plate from an attic, a crawl space or a basement.
        DrillPlate = "drill-plate",
        /// Fish one bay of a wall.
        FishBay = "fish-bay",
        /// Get through one bay that is full of insulation.
        PastInsulation = "past-insulation",
        /// Get past one fire block in a wall.
        PastFireBlock = "past-fire-block",
        /// Get through the floor between two storeys inside a wall.
        ThroughFloor = "through-floor",
        /// Get through one stud inside a wall.
        ThroughStud = "through-stud",
        /// Go through a wall into the back of the box on its other side.
        ThroughWall = "through-wall",
        /// Run one foot of conductor or cable in an attic.
        AtticFoot = "attic-foot",
        /// Run one foot of conductor or cable in a crawl space.
        CrawlFoot = "crawl-foot",
        /// Run one foot of conductor or cable under the open ceiling of a basement.
        BasementFoot = "basement-foot",
        /// Set up one run of surface raceway with its end boxes.
        SetUpRaceway = "set-up-raceway",
        /// Fasten one foot of surface raceway.
        RacewayFoot = "raceway-foot",
        /// Patch plaster, tile or panelling rather than board, on top of patching one opening.
        PatchWithCare = "patch-with-care",
        /// Find where the neutral of one circuit is interrupted.
        FindOpenNeutral = "find-open-neutral",
        /// Make the joints of the neutral in one box anew.
        MendNeutral = "mend-neutral",
        /// Find why metal at one place is live, and part it from what makes it so.
        ClearLiveMetal = "clear-live-metal",
        /// Change a fuse, and fit the adapter that takes no larger one.
        ChangeFuse = "change-fuse",
        /// Take a fuse out of a neutral and join the neutral through.
        TakeOutNeutralFuse = "take-out-neutral-fuse",
    }
}

impl Task {
    /// Whether it is done only to put right what is dangerous: a book of one's own that leaves it out has no price for it.
    #[must_use]
    pub const fn is_for_dangers(self) -> bool {
        matches!(
            self,
            Self::FindOpenNeutral
                | Self::MendNeutral
                | Self::ClearLiveMetal
                | Self::ChangeFuse
                | Self::TakeOutNeutralFuse
        )
    }
}
