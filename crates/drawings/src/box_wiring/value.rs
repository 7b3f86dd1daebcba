//! How one box is wired, as a value: its cables, its device, what is joined to what, and what must not be joined.

use crate::shown::Moment;
use dwelling::{CableKind, names};
use schemars::JsonSchema;
use serde::Serialize;

names! {
    /// The part of a cable in a box.
    CablePart {
        /// It comes from the panel, or from the box that feeds this one.
        Line = "line",
        /// It goes on to boxes that the device here does not protect.
        Onward = "onward",
        /// It goes on to boxes behind the LOAD terminals of the device here.
        Load = "load",
        /// It brings a grounding conductor alone.
        Ground = "ground",
        /// It leads a grounding conductor on to another box.
        GroundOnward = "ground-onward",
        /// It was replaced: it feeds nothing, and nothing is joined to it.
        Abandoned = "abandoned",
        /// Nobody knows where it leads.
        Unknown = "unknown",
    }
}

names! {
    /// What is at the other end of a cable.
    FarEnd {
        /// A panel.
        Panel = "panel",
        /// A box.
        Box = "box",
        /// A ground source other than a panel.
        Source = "source",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

names! {
    /// What a conductor, a terminal or a joint carries.
    Carries {
        /// The hot conductor of the box's own circuit.
        Hot = "hot",
        /// The hot conductor of the other circuit of a multiwire set.
        OtherHot = "other-hot",
        /// The neutral.
        Neutral = "neutral",
        /// The ground.
        Ground = "ground",
    }
}

names! {
    /// The terminals of a device.
    Side {
        /// The terminals of a device that has one pair.
        Only = "only",
        /// The LINE terminals of a protective device.
        Line = "line",
        /// The LOAD terminals of a protective device.
        Load = "load",
    }
}

names! {
    /// What kind of end an end is.
    EndKind {
        /// A conductor of a cable.
        Conductor = "conductor",
        /// A terminal of the device.
        Terminal = "terminal",
        /// The metal of the box.
        BoxMetal = "box-metal",
        /// A pipe or a rod outside of the box.
        PipeOrRod = "pipe-or-rod",
    }
}

names! {
    /// How a joint stands.
    JointState {
        /// As the plan leaves it.
        Planned = "planned",
        /// As it was found, seen or following from what was read.
        Found = "found",
        /// Joined, but nobody has seen how: spliced, or through the terminals of the device.
        NotSeen = "not-seen",
        /// Loose: it must be made good.
        Loose = "loose",
        /// It must be taken out.
        TakeOut = "take-out",
    }
}

names! {
    /// Why a conductor or terminal is joined to nothing.
    OpenBecause {
        /// It is capped: it must be joined to nothing.
        Capped = "capped",
        /// It leads nobody knows where: find out first.
        FindOut = "find-out",
        /// It lies in the box, joined to nothing.
        Loose = "loose",
        /// It was cut off at the sheath.
        CutOff = "cut-off",
        /// Nothing is there to join it to.
        Nothing = "nothing",
    }
}

/// How one box is wired, as it was found or as a plan leaves it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BoxWiring {
    /// The box.
    #[serde(rename = "box")]
    pub box_id: String,
    /// When it holds.
    pub moment: Moment,
    /// The circuit of its device; null where unknown.
    pub circuit: Option<String>,
    /// The other circuit of a multiwire set whose hot conductor is in the box; null where none is.
    pub other_circuit: Option<String>,
    /// The box in words: what it is, and what is done with it.
    pub body: String,
    /// Whether it is metal; null where unknown.
    pub metal: Option<bool>,
    /// The device in words; null where it holds none.
    pub device: Option<String>,
    /// Whether the device has LINE and LOAD terminals.
    pub protective: bool,
    /// The terminals of the device; none of one whose connections stay as they are.
    pub terminals: Vec<TerminalAnswer>,
    /// The cables that enter, that from the panel's side first.
    pub cables: Vec<WiredCable>,
    /// What is joined to what.
    pub joints: Vec<Joint>,
    /// What is joined to nothing, and why.
    pub open_ends: Vec<OpenEnd>,
    /// The words that it must carry.
    pub markings: Vec<String>,
    /// What must be known before it is wired.
    pub cautions: Vec<String>,
    /// What else must be known of it.
    pub notes: Vec<String>,
}

/// A terminal of a device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
pub struct TerminalAnswer {
    /// Of which pair it is.
    pub side: Side,
    /// What it is for.
    pub carries: Carries,
}

/// A cable that enters a box.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WiredCable {
    /// Its part.
    pub part: CablePart,
    /// What is at its other end.
    pub far_end: FarEnd,
    /// The name of what is there; null where unknown.
    pub to: Option<String>,
    /// Its wiring method; null for a grounding conductor alone.
    pub kind: Option<CableKind>,
    /// The size of its conductors; null where unknown.
    pub size: Option<String>,
    /// Whether its conductors are aluminium.
    pub aluminium: bool,
    /// The way that brings it, where the plan buys it.
    pub route: Option<String>,
    /// Whether somebody only assumes where it leads.
    pub assumed: bool,
    /// Its conductors, from left to right as they are drawn; of metal around them, that metal where it is a ground.
    pub conductors: Vec<Carries>,
}

/// An end that can be joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
pub struct End {
    /// What it is.
    pub kind: EndKind,
    /// The position of its cable; null where it is no conductor of one.
    pub cable: Option<usize>,
    /// The terminals that it is one of; null where it is no terminal.
    pub side: Option<Side>,
    /// What it carries.
    pub carries: Carries,
}

impl End {
    pub(crate) const fn conductor(cable: usize, carries: Carries) -> Self {
        Self { kind: EndKind::Conductor, cable: Some(cable), side: None, carries }
    }

    pub(crate) const fn terminal(side: Side, carries: Carries) -> Self {
        Self { kind: EndKind::Terminal, cable: None, side: Some(side), carries }
    }

    pub(crate) const fn other(kind: EndKind) -> Self {
        Self { kind, cable: None, side: None, carries: Carries::Ground }
    }
}

/// Ends that are joined.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Joint {
    /// What it carries.
    pub carries: Carries,
    /// Whether it is on the LOAD side of the device.
    pub behind_load: bool,
    /// How it stands.
    pub state: JointState,
    /// What is joined: a conductor straight to a terminal, or three and more in a splice, with a pigtail to the terminal.
    pub ends: Vec<End>,
}

/// An end that is joined to nothing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OpenEnd {
    /// The end.
    pub end: End,
    /// Why.
    pub because: OpenBecause,
}

impl BoxWiring {
    /// The same wiring without the names of what lies around it: equal where one drawing serves several boxes.
    #[must_use]
    pub fn shape(&self) -> Self {
        let mut shape = Self {
            box_id: String::new(),
            circuit: None,
            other_circuit: self.other_circuit.as_ref().map(|_| String::new()),
            ..self.clone()
        };
        for cable in &mut shape.cables {
            cable.to = None;
            cable.route = None;
            // Where the line comes from, a box or the panel, does not change how it is joined.
            if cable.far_end != FarEnd::Unknown {
                cable.far_end = FarEnd::Box;
            }
        }
        shape
    }
}
