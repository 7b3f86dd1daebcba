//! The states an opening, a circuit or a panel can be found in, and how sure a finding is.

dwelling::names! {
    /// What is the matter, or that nothing is.
    Condition {
        /// Wired as it should be: a loaded test or a look into the box shows a separate ground.
        AsItShouldBe = "as-it-should-be",
        /// No ground arrives at the opening.
        OpenGround = "open-ground",
        /// A ground arrives, but its impedance is high.
        PoorGround = "poor-ground",
        /// A grounding conductor is in the box, loose or connected to nothing: it must be restored.
        LooseGround = "loose-ground",
        /// A grounding conductor was cut off at the cable sheath.
        CutOffGround = "cut-off-ground",
        /// Neutral and ground are joined at or near the opening, so that a tester sees a ground.
        FalseGround = "false-ground",
        /// Hot and neutral are reversed and the ground terminal is joined to what is then the hot conductor.
        ReversedFalseGround = "reversed-false-ground",
        /// The ground terminal or the enclosure is at line voltage to earth.
        LiveEnclosure = "live-enclosure",
        /// The neutral is broken at the opening or between it and the panel.
        OpenNeutral = "open-neutral",
        /// The neutral is whole, but has a bad joint or too long a way.
        PoorNeutral = "poor-neutral",
        /// The hot conductor is broken, or the circuit is off.
        OpenHot = "open-hot",
        /// Hot and neutral have changed places.
        HotNeutralReversed = "hot-neutral-reversed",
        /// Hot and ground have changed places.
        HotGroundReversed = "hot-ground-reversed",
        /// A voltage that a meter of high impedance shows on a conductor connected to nothing.
        PhantomVolts = "phantom-volts",
        /// More than line voltage between hot and neutral.
        OverVoltage = "over-voltage",
        /// Readings that fit no single state of the wiring.
        ReadingsDisagree = "readings-disagree",
        /// The ground terminal leads to a pipe or a rod and not to the panel.
        GroundByPipeOrRod = "ground-by-pipe-or-rod",
        /// The wiring method says that there is a ground and none is seen, or the reverse.
        GroundContradicted = "ground-contradicted",
        /// It reads right, but only unloaded or on a plug-in tester.
        GroundUnverified = "ground-unverified",
        /// Metal around the conductors may be a ground: only looking tells.
        PossibleArmorGround = "possible-armor-ground",
        /// A plug-in tester was all there was, and it cannot see what matters here.
        TesterCannotTell = "tester-cannot-tell",
        /// A plug-in tester's GFCI button has no ground to leak to: its silence says nothing.
        GfciTestNotPossible = "gfci-test-not-possible",
        /// A protective device does not open on its own test button, or on a test that should open it.
        GfciDoesNotTrip = "gfci-does-not-trip",
        /// A single-pole protective breaker is fitted to a circuit that shares its neutral.
        SharedNeutralSinglePole = "shared-neutral-single-pole",
        /// A fuse in the neutral may have blown.
        NeutralFuse = "neutral-fuse",
        /// The ground is whole up to one box and missing from the next.
        UpstreamBreak = "upstream-break",
        /// One box reads otherwise than all its neighbours: the fault is often there.
        OddOneOut = "odd-one-out",
    }
}

dwelling::names! {
    /// How sure a finding is, strongest first.
    Certainty {
        /// Seen in the box, or decided by a test that has no look-alike left.
        Shown = "shown",
        /// The readings speak for it, and one check would decide.
        Likely = "likely",
        /// It fits, and so do other things.
        Possible = "possible",
    }
}
