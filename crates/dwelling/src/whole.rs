//! The whole dwelling, and looking things up in it.

use crate::after::CloseOut;
use crate::dead_when::DeadWhen;
use crate::device_box::{DeviceBox, Feed};
use crate::ground_source::GroundSource;
use crate::index::{BoxIndex, CircuitIndex, PanelIndex, RoomIndex, SourceIndex};
use crate::job::Job;
use crate::panel::{Circuit, Panel};
use crate::room::Room;
use crate::route::Route;
use crate::run::CableKind;
use electrical::{ConductorMetal, Gauge};
use std::borrow::Cow;

/// An existing dwelling as it was found. Its indices are always inside its own lists, and feeding has no rings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dwelling {
    /// The job.
    pub job: Job,
    /// The panels.
    pub panels: Vec<Panel>,
    /// The circuits.
    pub circuits: Vec<Circuit>,
    /// The rooms, in the order they are walked.
    pub rooms: Vec<Room>,
    /// The boxes, in the order they were surveyed.
    pub boxes: Vec<DeviceBox>,
    /// Places other than boxes and panels at which a ground could be taken.
    pub sources: Vec<GroundSource>,
    /// Ways along which conductors could be fished.
    pub routes: Vec<Route>,
    /// What went dead when power was taken away at one place, in the order seen.
    pub dead_when: Vec<DeadWhen>,
    /// What holds for the work that was carried out, as a whole.
    pub close_out: CloseOut,
}

impl Dwelling {
    /// A dwelling of which nothing is known but its job.
    #[must_use]
    pub const fn of(job: Job) -> Self {
        Self {
            job,
            panels: Vec::new(),
            circuits: Vec::new(),
            rooms: Vec::new(),
            boxes: Vec::new(),
            sources: Vec::new(),
            routes: Vec::new(),
            dead_when: Vec::new(),
            close_out: CloseOut { offer: None },
        }
    }

    /// The box at this index.
    #[must_use]
    pub fn device_box(&self, index: BoxIndex) -> &DeviceBox {
        &self.boxes[index.0]
    }

    /// The circuit at this index.
    #[must_use]
    pub fn circuit(&self, index: CircuitIndex) -> &Circuit {
        &self.circuits[index.0]
    }

    /// The panel at this index.
    #[must_use]
    pub fn panel(&self, index: PanelIndex) -> &Panel {
        &self.panels[index.0]
    }

    /// The room at this index.
    #[must_use]
    pub fn room(&self, index: RoomIndex) -> &Room {
        &self.rooms[index.0]
    }

    /// The ground source at this index.
    #[must_use]
    pub fn source(&self, index: SourceIndex) -> &GroundSource {
        &self.sources[index.0]
    }

    /// The dwelling as it was surveyed: without the feeds that are assumed.
    #[must_use]
    pub fn as_surveyed(&self) -> Cow<'_, Self> {
        if self.boxes.iter().all(|device_box| !device_box.feed_assumed) {
            return Cow::Borrowed(self);
        }
        let mut surveyed = self.clone();
        for device_box in &mut surveyed.boxes {
            device_box.fed_by = device_box.known_feed();
            device_box.feed_assumed = false;
        }
        Cow::Owned(surveyed)
    }

    /// The box with this id.
    #[must_use]
    pub fn box_named(&self, id: &str) -> Option<BoxIndex> {
        self.boxes.iter().position(|device_box| device_box.id == id).map(BoxIndex)
    }

    /// Every box index, in survey order.
    pub fn box_indices(&self) -> impl Iterator<Item = BoxIndex> + use<> {
        (0..self.boxes.len()).map(BoxIndex)
    }

    /// The circuit of a box, where known.
    #[must_use]
    pub fn circuit_of(&self, index: BoxIndex) -> Option<&Circuit> {
        self.device_box(index).circuit.map(|circuit| self.circuit(circuit))
    }

    /// The wiring method of the run that feeds a box: its own, else its circuit's.
    #[must_use]
    pub fn cable_to(&self, index: BoxIndex) -> CableKind {
        let own = self.device_box(index).run.cable;
        own.or_else(|| self.circuit_of(index).map(|circuit| circuit.cable)).unwrap_or(CableKind::Unknown)
    }

    /// Whether the conductors of the run that feeds a box are of copper throughout.
    #[must_use]
    pub fn is_copper_to(&self, index: BoxIndex) -> bool {
        self.metal_to(index) == ConductorMetal::Copper
    }

    /// Whether a run in metal enters a box: that which feeds it, or one that it feeds.
    #[must_use]
    pub fn metal_enters(&self, index: BoxIndex) -> bool {
        let fed = |at: &BoxIndex| *at == index || self.device_box(*at).fed_by == Some(Feed::Box(index));
        self.box_indices().filter(fed).any(|at| self.cable_to(at).is_in_metal())
    }

    /// The conductor size of the run that feeds a box: its own, else its circuit's.
    #[must_use]
    pub fn gauge_to(&self, index: BoxIndex) -> Option<Gauge> {
        self.device_box(index).run.gauge.or_else(|| self.circuit_of(index).and_then(|circuit| circuit.gauge))
    }

    /// The conductor metal of the run that feeds a box: its own, else its circuit's, else copper.
    #[must_use]
    pub fn metal_to(&self, index: BoxIndex) -> ConductorMetal {
        let own = self.device_box(index).run.metal;
        own.or_else(|| self.circuit_of(index).map(|circuit| circuit.metal)).unwrap_or(ConductorMetal::Copper)
    }
}
