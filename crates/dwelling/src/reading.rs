//! Readings and sightings at an opening: by meaning and volts, with what the meter was and whether load was on.

use crate::names::names;
use electrical::{Ohms, Volts};

/// One set of readings at an opening. Whatever was not measured is `None`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reading {
    /// Hot to neutral.
    pub hot_neutral: Option<Volts>,
    /// Hot to ground.
    pub hot_ground: Option<Volts>,
    /// Neutral to ground.
    pub neutral_ground: Option<Volts>,
    /// Hot slot to an independent earth reference.
    pub hot_earth: Option<Volts>,
    /// Neutral slot to an independent earth reference.
    pub neutral_earth: Option<Volts>,
    /// Ground slot or enclosure to an independent earth reference.
    pub ground_earth: Option<Volts>,
    /// Hot to the metal box.
    pub hot_box: Option<Volts>,
    /// Impedance of the grounding path by a loaded test.
    pub ground_impedance: Option<Ohms>,
    /// What a plug-in tester said, by its meaning.
    pub tester: Option<TesterVerdict>,
    /// Whether load was on while it was read, where known.
    pub load: Option<LoadState>,
    /// The kind of meter, where known.
    pub meter: Option<MeterKind>,
    /// What was seen of a ground inside the box.
    pub ground: Option<GroundSeen>,
    /// Whether pressing a plug-in tester's GFCI button opened a protective device, where tried.
    pub tester_trips_gfci: Option<bool>,
    /// Whether the device's own test button opened it, where tried.
    pub own_test_trips: Option<bool>,
}

names! {
    /// Whether load was on while a reading was taken.
    LoadState {
        /// Nothing on the circuit drew current.
        None = "none",
        /// A lamp or another small load was on.
        Lamp = "lamp",
        /// A heavy load, such as a heater, was on at or beyond the opening.
        Heavy = "heavy",
    }
}

names! {
    /// The kind of instrument.
    MeterKind {
        /// A voltmeter of high input impedance, which shows phantom volts.
        HighImpedance = "high-impedance",
        /// A voltmeter of low input impedance, under which phantom volts collapse.
        LowImpedance = "low-impedance",
        /// A test lamp or solenoid tester.
        TestLamp = "test-lamp",
        /// A plug-in receptacle tester.
        PlugInTester = "plug-in-tester",
        /// A plug-in instrument that loads the circuit and measures impedance.
        LoadTester = "load-tester",
    }
}

names! {
    /// What a plug-in tester says, by its meaning.
    TesterVerdict {
        /// Wired as it should be, as far as it can see.
        Correct = "correct",
        /// Open ground.
        OpenGround = "open ground",
        /// Open neutral.
        OpenNeutral = "open neutral",
        /// Open hot, or no power.
        OpenHot = "open hot",
        /// Hot and neutral reversed.
        HotNeutralReversed = "hot and neutral reversed",
        /// Hot and ground reversed.
        HotGroundReversed = "hot and ground reversed",
        /// An indication its legend does not list.
        NotListed = "not listed",
        /// A false ground: neutral and ground joined near the opening.
        FalseGround = "false ground",
    }
}

names! {
    /// What is known of the ground at an opening, all evidence taken together.
    GroundFact {
        /// There is none: the box was looked into, or its wiring method carries none.
        None = "none",
        /// A grounding path is there, whole and connected.
        Connected = "connected",
        /// A grounding path is there and connected, but its impedance is high.
        Poor = "poor",
        /// A grounding conductor is in the box, loose or not connected: it must be restored.
        Loose = "loose",
        /// A grounding conductor was cut off at the sheath: whether it can be reached takes looking.
        CutOff = "cut-off",
        /// There is none, and a jumper to the neutral makes it look as if there were.
        False = "false",
        /// A path is there that the authority may not accept: reduced size, old armor.
        Disputed = "disputed",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

names! {
    /// What was seen of a ground inside the box.
    GroundSeen {
        /// The box was opened and no grounding conductor or grounding metal was there.
        NoneSeen = "none seen",
        /// A grounding conductor is there and connected to the device or box.
        Connected = "connected",
        /// A grounding conductor is there, loose or poorly joined.
        Loose = "loose",
        /// A grounding conductor is there, folded back or not connected to anything.
        Unconnected = "not connected",
        /// A grounding conductor was cut off at the cable sheath.
        CutOff = "cut off",
        /// A jumper joins neutral to the ground terminal or the box.
        Jumper = "jumper to neutral",
        /// A conductor leads to a water pipe or a rod of its own.
        PipeOrRod = "to a pipe or rod",
        /// Armor or conduit enters the box through a tight connector.
        MetalTight = "metal, tight connector",
        /// Armor or conduit enters the box without a sound connector.
        MetalLoose = "metal, no sound connector",
        /// The box was not opened.
        NotOpened = "not opened",
    }
}
