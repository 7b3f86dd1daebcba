//! What a room has left once a receptacle is taken out of it: the facts on which a blank cover is judged.

use dwelling::{DwellingUse, Point, WallBreak};
use electrical::Length;

/// The room of a receptacle that the owner does not need, as it will be without it.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct TakingOut {
    /// The corners of the room's outline; empty where not drawn.
    pub outline: Vec<Point>,
    /// What breaks the room's walls along the floor; `None` where nobody looked.
    pub wall_breaks: Option<Vec<WallBreak>>,
    /// The other openings of the room that stay, those of every place outdoors for one outdoors; `None` where nobody
    /// listed them. What goes before this one is left out.
    pub staying: Option<Vec<Staying>>,
    /// The kind of dwelling.
    pub dwelling_use: Option<DwellingUse>,
}

/// An opening that stays in the room, and is a receptacle or may be one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Staying {
    /// Its name in the survey.
    pub id: String,
    /// Whether it is known to be a receptacle.
    pub is_receptacle: bool,
    /// Where it is on the plan.
    pub at: Option<Point>,
    /// How high it is above the floor.
    pub height: Option<Length>,
    /// How far the nearest sink is.
    pub sink: Option<Length>,
    /// Whether it serves a countertop, where that can be.
    pub countertop: Option<bool>,
}

impl TakingOut {
    /// Whether a receptacle stays in the room: nothing where that cannot be told.
    #[must_use]
    pub fn another_stays(&self) -> Option<bool> {
        let staying = self.staying.as_ref()?;
        if staying.iter().any(|other| other.is_receptacle) {
            return Some(true);
        }
        staying.is_empty().then_some(false)
    }
}
