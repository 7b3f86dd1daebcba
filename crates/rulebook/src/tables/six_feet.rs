//! Measuring six feet to water: which paths count, by edition.

use crate::cited::{ByEdition, NotChecked, Reading};
use crate::code::CodeInForce;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023, Nec2026};
use crate::in_words::InWords;
use crate::sources::{
    INSPECTORS_MEASURING, MAGAZINE_2017, MAGAZINE_MEASURING, MAGAZINE_REMODEL, MUNICIPAL_2014, STATE_LIST_2020,
    TEXT_2011,
};
use dwelling::{NearWater, PathObstacle};
use electrical::Length;

/// What passing something does to a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passing {
    /// It goes on.
    GoesOn,
    /// It ends there.
    Ends,
    /// It is read both ways.
    Argued,
}

/// What ends a path: walls, floors, ceilings and fixed barriers; doors and doorways; windows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Method {
    /// A floor, wall, ceiling or fixed barrier.
    pub solid: Passing,
    /// A door, that of a cabinet included, or a doorway.
    pub doors: Passing,
    /// A window.
    pub windows: Passing,
}

const UNSTATED: Method = Method { solid: Passing::Argued, doors: Passing::Argued, windows: Passing::Argued };
const CORD_2017: Method = Method { solid: Passing::Ends, doors: Passing::Ends, windows: Passing::Ends };
const CORD_2020: Method = Method { solid: Passing::Ends, doors: Passing::GoesOn, windows: Passing::Argued };
const CORD_2023: Method = Method { solid: Passing::Ends, doors: Passing::GoesOn, windows: Passing::GoesOn };

/// How six feet are measured.
pub const METHOD: ByEdition<Method> = ByEdition {
    id: "places.gfci.measuring",
    readings: &[
        Reading::read(Nec2008, "210.8(A)", INSPECTORS_MEASURING, UNSTATED),
        Reading::read(Nec2011, "210.8(A)", INSPECTORS_MEASURING, UNSTATED),
        Reading::read(Nec2014, "210.8(A)", INSPECTORS_MEASURING, UNSTATED),
        Reading::read(Nec2017, "210.8", "trade forum, thread 131275", CORD_2017),
        Reading::read(Nec2020, "210.8", MAGAZINE_REMODEL, CORD_2020),
        Reading::read(Nec2023, "210.8", MAGAZINE_MEASURING, CORD_2023),
        Reading::read(Nec2026, "210.8", MAGAZINE_MEASURING, CORD_2023),
    ],
};

/// How far from water a receptacle is near it.
pub const LIMIT: ByEdition<Length> = ByEdition {
    id: "places.gfci.six-feet",
    readings: &[
        Reading::read(Nec2008, "210.8(A)(7)", INSPECTORS_MEASURING, Length::feet(6)),
        Reading::read(Nec2011, "210.8(A)(7)", TEXT_2011, Length::feet(6)),
        Reading::read(Nec2014, "210.8(A)(7)", MUNICIPAL_2014, Length::feet(6)),
        Reading::read(Nec2017, "210.8(A)(7)", MAGAZINE_2017, Length::feet(6)),
        Reading::read(Nec2020, "210.8(A)(7)", STATE_LIST_2020, Length::feet(6)),
        Reading::read(Nec2023, "210.8(A)(8)", MAGAZINE_MEASURING, Length::feet(6)),
        Reading::read(Nec2026, "210.8(A)(9)", MAGAZINE_MEASURING, Length::feet(6)),
    ],
};

/// Whether a receptacle is within six feet of water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Within {
    /// It is.
    Yes,
    /// It is not, and why.
    No(&'static str),
    /// It is read both ways.
    Disputed(&'static str),
}

/// Whether a measured place is within six feet of water as this edition measures it.
///
/// # Errors
/// [`NotChecked`] for an edition nobody has entered.
pub fn within_six_feet(place: &NearWater, code: &CodeInForce) -> Result<Within, NotChecked> {
    let (limit, method) = (LIMIT.in_force(code)?.value, METHOD.in_force(code)?.value);
    if place.distance > limit {
        return Ok(Within::No("it is farther away"));
    }
    let passing = |obstacle: &PathObstacle| match obstacle {
        PathObstacle::CabinetDoor | PathObstacle::Door | PathObstacle::Doorway => method.doors,
        PathObstacle::Window => method.windows,
        PathObstacle::Wall | PathObstacle::Floor | PathObstacle::Ceiling | PathObstacle::FixedBarrier => method.solid,
    };
    let worst = |passing_of: Passing| place.passes.iter().any(|obstacle| passing(obstacle) == passing_of);
    Ok(if worst(Passing::Ends) {
        Within::No("the path passes something that ends it under this edition's way of measuring")
    } else if worst(Passing::Argued) {
        Within::Disputed("the path passes something, and this edition's way of measuring is read both ways there")
    } else {
        Within::Yes
    })
}

impl InWords for Method {
    fn in_words(&self) -> String {
        let passing = |passing| match passing {
            Passing::GoesOn => "does not end it",
            Passing::Ends => "ends it",
            Passing::Argued => "is read both ways",
        };
        format!(
            "the path of a cord: a wall or another solid barrier {}, a door or doorway {}, a window {}",
            passing(self.solid),
            passing(self.doors),
            passing(self.windows)
        )
    }
}
