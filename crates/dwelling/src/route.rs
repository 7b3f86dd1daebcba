//! Routes: where a grounding conductor or a new cable could be fished, as the survey states them.

use crate::index::{BoxIndex, PanelIndex, SourceIndex};
use crate::names::names;
use electrical::Length;

/// A way between two places along which a conductor or cable could be brought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Route {
    /// Its name in the survey, made from its ends where none is given.
    pub id: String,
    /// One end.
    pub from: RouteEnd,
    /// The other end: the box to be grounded.
    pub to: RouteEnd,
    /// What would be brought along it.
    pub kind: RouteKind,
    /// Its length.
    pub length: Length,
    /// Labour in minutes, where the survey states it; else the price book's figure by length.
    pub minutes: Option<u32>,
    /// Openings in finished surfaces it costs.
    pub openings: u32,
    /// Why it is hard or easy, in the surveyor's words.
    pub note: Option<String>,
    /// Whether this way is closed: nothing can be brought along it.
    pub closed: bool,
}

/// One end of a route.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RouteEnd {
    /// A box.
    Box(BoxIndex),
    /// A panel's ground bar or, for a new cable, a breaker in it.
    Panel(PanelIndex),
    /// A named ground source.
    Source(SourceIndex),
}

names! {
    /// What would be brought along a route.
    RouteKind {
        /// A single equipment grounding conductor.
        Egc = "egc",
        /// A new cable with an equipment grounding conductor, in place of the old run.
        NewCable = "new-cable",
    }
}
