//! An existing dwelling as it was found: panels, circuits, rooms, boxes, readings – and what follows from them alone.
//!
//! Unknown is a value: what a first visit leaves open is `None` or an `Unknown` variant, never a guess.

mod names;

mod after;
mod contents;
mod day;
mod dead_when;
mod device_box;
mod equipment;
mod ground_source;
mod groups;
mod index;
mod job;
mod panel;
mod place;
mod reading;
mod room;
mod route;
mod run;
mod trade_size;
mod tree;
mod whole;

pub use after::{
    AfterReading, BoxSeen, ButtonTest, CircuitAfter, CloseOut, FittedAtPanel, LabelSeen, PanelAfter, Taken,
};
pub use contents::{CableInBox, Cables, cables_in_box};
pub use day::{Day, NotADay};
pub use dead_when::{DeadWhen, PowerCut};
pub use device_box::{Body, Clamps, DeviceBox, Feed, Holding, Want};
pub use equipment::Equipment;
pub use ground_source::{GroundSource, SourceKind};
pub use groups::{BondedGroup, BondedGroups, Reach};
pub use index::{BoxIndex, CircuitIndex, PanelIndex, RoomIndex, SourceIndex};
pub use job::{DwellingUse, Job};
pub use names::nearest;
pub use panel::{Circuit, Overcurrent, Panel, ProtectiveBreaker};
pub use place::{NearWater, PathObstacle, Wetness};
pub use reading::{GroundFact, GroundSeen, LoadState, MeterKind, Reading, TesterVerdict};
pub use room::{Point, Room, RoomUse, Space, WallBreak, WallBreakKind, WallFinish};
pub use route::{Route, RouteEnd, RouteKind};
pub use run::{CableKind, GroundPath, Run};
pub use trade_size::{TRADE_SIZES, TradeSize, trade_size, volume_printed_as};
pub use tree::{CircuitTree, circuit_trees};
pub use whole::Dwelling;
