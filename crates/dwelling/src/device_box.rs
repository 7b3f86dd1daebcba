//! Boxes: the openings of the dwelling, what they are made of, hold and serve.

use crate::after::AfterReading;
use crate::equipment::Equipment;
use crate::index::{BoxIndex, CircuitIndex, PanelIndex, RoomIndex};
use crate::names::names;
use crate::place::{NearWater, Wetness};
use crate::reading::Reading;
use crate::room::Point;
use crate::run::Run;
use electrical::{Length, Volume};

/// A box and the opening in front of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DeviceBox {
    /// Its name in the survey.
    pub id: String,
    /// The room it is in.
    pub room: RoomIndex,
    /// The circuit its device is on, where known.
    pub circuit: Option<CircuitIndex>,
    /// What feeds it, where known or assumed.
    pub fed_by: Option<Feed>,
    /// Whether nobody knows what feeds it and `fed_by` is assumed, to plan on: see [`DeviceBox::known_feed`].
    pub feed_assumed: bool,
    /// The run that feeds it.
    pub run: Run,
    /// Where it is on the floor plan.
    pub at: Option<Point>,
    /// How high its centre is above the floor.
    pub height: Option<Length>,
    /// The enclosure.
    pub body: Body,
    /// What it holds.
    pub holds: Holding,
    /// How many cables enter, where counted; else it follows from what feeds what.
    pub cables_in_box: Option<u32>,
    /// Every set of readings and sightings, in the order taken.
    pub found: Vec<Reading>,
    /// Every set of readings and sightings after the work, in the order taken.
    pub after: Vec<AfterReading>,
    /// What is plugged in.
    pub serves: Vec<Equipment>,
    /// What the owner wants here.
    pub want: Want,
    /// In a kitchen: whether it serves a countertop, where known.
    pub countertop: Option<bool>,
    /// How far it is from the nearest sink; `None` is not measured, see `no_sink`.
    pub sink: Option<NearWater>,
    /// How far it is from the nearest bathtub or shower stall.
    pub tub: Option<NearWater>,
    /// How wet its place is, where that is not plain from the room.
    pub wetness: Option<Wetness>,
    /// Whether it serves one appliance in a space set aside for it, not easily moved.
    pub dedicated_space: Option<bool>,
    /// Whether it can be reached quickly without moving or climbing over anything, where known.
    pub readily_accessible: Option<bool>,
    /// Whether its conductors' insulation is so brittle that it must be left alone.
    pub do_not_disturb: bool,
    /// A remark of the surveyor's.
    pub note: Option<String>,
}

impl DeviceBox {
    /// A box of this name that holds this, of which nothing else is known.
    #[must_use]
    pub fn named(id: impl Into<String>, room: RoomIndex, holds: Holding) -> Self {
        Self {
            id: id.into(),
            room,
            circuit: None,
            fed_by: None,
            feed_assumed: false,
            run: Run::default(),
            at: None,
            height: None,
            body: Body::default(),
            holds,
            cables_in_box: None,
            found: Vec::new(),
            after: Vec::new(),
            serves: Vec::new(),
            want: Want::Leave,
            countertop: None,
            sink: None,
            tub: None,
            wetness: None,
            dedicated_space: None,
            readily_accessible: None,
            do_not_disturb: false,
            note: None,
        }
    }

    /// What feeds it, where somebody knows; an assumed feed is none.
    #[must_use]
    pub fn known_feed(&self) -> Option<Feed> {
        self.fed_by.filter(|_| !self.feed_assumed)
    }
}

/// What feeds a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Feed {
    /// The panel: this is the home run.
    Panel(PanelIndex),
    /// Another box.
    Box(BoxIndex),
}

/// The enclosure of an opening.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Body {
    /// Whether it is metal, where known.
    pub metal: Option<bool>,
    /// Its trade size as the volume table names it, where given.
    pub size: Option<String>,
    /// Its volume: marked on it, or that of its trade size. Nothing where unknown.
    pub volume: Option<Volume>,
    /// The volume marked on extension rings, raised covers and plaster rings.
    pub added_volume: Option<Volume>,
    /// Where cables are clamped.
    pub clamps: Option<Clamps>,
    /// How many gangs wide it is; 1 unless said.
    pub gangs: u32,
    /// How many kinds of support fittings (stud, hickey) are inside.
    pub support_fittings: u32,
}

names! {
    /// Where a box clamps its cables.
    Clamps {
        /// Clamps inside the box take room.
        Inside = "inside",
        /// Connectors with the clamp outside take none.
        Outside = "outside",
        /// There are none.
        None = "none",
    }
}

names! {
    /// What a box holds.
    Holding {
        /// A two-slot (nongrounding) receptacle.
        TwoSlot = "two-slot",
        /// A three-slot (grounding) receptacle.
        ThreeSlot = "three-slot",
        /// A GFCI receptacle.
        Gfci = "gfci",
        /// An AFCI receptacle.
        Afci = "afci",
        /// A receptacle that is GFCI and AFCI in one.
        Dual = "dual",
        /// A protective device without slots.
        DeadFront = "dead-front",
        /// A switch.
        Switch = "switch",
        /// A switch and a three-slot receptacle on one strap.
        SwitchAndReceptacle = "switch-and-receptacle",
        /// A luminaire.
        Luminaire = "luminaire",
        /// Splices only, behind a blank cover.
        Splice = "splice",
        /// Nothing: an open box.
        Nothing = "nothing",
        /// Not known.
        Unknown = "unknown",
    }
}

impl Holding {
    /// It in words, as pages and drawings say it.
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::TwoSlot => "two-slot receptacle",
            Self::ThreeSlot => "three-slot receptacle",
            Self::Gfci => "GFCI receptacle",
            Self::Afci => "AFCI receptacle",
            Self::Dual => "GFCI/AFCI receptacle",
            Self::DeadFront => "protective device without slots",
            Self::Switch => "switch",
            Self::SwitchAndReceptacle => "switch and receptacle",
            Self::Luminaire => "luminaire",
            Self::Splice => "splices behind a blank cover",
            Self::Nothing => "empty box",
            Self::Unknown => "not seen",
        }
    }

    /// Whether something can be plugged in here.
    #[must_use]
    pub const fn is_receptacle(self) -> bool {
        matches!(
            self,
            Self::TwoSlot | Self::ThreeSlot | Self::Gfci | Self::Afci | Self::Dual | Self::SwitchAndReceptacle
        )
    }

    /// Whether its receptacle takes a plug with a grounding pin.
    #[must_use]
    pub const fn takes_grounding_plug(self) -> bool {
        matches!(self, Self::ThreeSlot | Self::Gfci | Self::Afci | Self::Dual | Self::SwitchAndReceptacle)
    }

    /// Whether it takes the room of a device strap.
    #[must_use]
    pub const fn has_strap(self) -> bool {
        self.is_receptacle() || matches!(self, Self::DeadFront | Self::Switch)
    }
}

names! {
    /// What the owner wants of an opening.
    Want {
        /// Whatever is lawful.
        Leave = "leave",
        /// A receptacle that takes a plug with a grounding pin.
        ThreeSlot = "three-slot",
        /// A real equipment ground.
        Ground = "ground",
        /// No receptacle: it is taken out and a blank cover closes the box, where no rule keeps it.
        Remove = "remove",
    }
}
