//! Conditions under which work takes longer or shorter than the book's plain figure.

use crate::task::Task;
use dwelling::{RoomUse, WallFinish, names};

names! {
    /// Where work is done, as far as a survey records it, and as far as that changes how long it takes.
    WorkCondition {
        /// In a wall of bare studs.
        Open = "open",
        /// In a wall of plaster on lath.
        Plaster = "plaster",
        /// In a panelled wall.
        Panelling = "panelling",
        /// In a tiled wall.
        Tile = "tile",
        /// In brick, block or stone.
        Masonry = "masonry",
        /// In an attic.
        Attic = "attic",
        /// In a crawl space.
        CrawlSpace = "crawl-space",
    }
}

impl WorkCondition {
    /// The condition of a wall with this finish; none of gypsum board, for which the plain figures are.
    #[must_use]
    pub const fn of_walls(finish: WallFinish) -> Option<Self> {
        match finish {
            WallFinish::Drywall => None,
            WallFinish::Plaster => Some(Self::Plaster),
            WallFinish::Panelling => Some(Self::Panelling),
            WallFinish::Tile => Some(Self::Tile),
            WallFinish::Masonry => Some(Self::Masonry),
            WallFinish::Open => Some(Self::Open),
        }
    }

    /// The condition of a place that is a space to work in rather than a room.
    #[must_use]
    pub const fn of_place(room_use: RoomUse) -> Option<Self> {
        match room_use {
            RoomUse::Attic => Some(Self::Attic),
            RoomUse::CrawlSpace => Some(Self::CrawlSpace),
            _ => None,
        }
    }
}

impl Task {
    /// Whether it is done inside a wall, so that what the wall is finished with changes how long it takes.
    ///
    /// Patching is not: what a hard wall adds to that is a task of its own.
    #[must_use]
    pub const fn is_in_a_wall(self) -> bool {
        matches!(
            self,
            Self::ReplaceBox
                | Self::ReplaceBoxWide
                | Self::FishBay
                | Self::PastInsulation
                | Self::PastFireBlock
                | Self::ThroughFloor
                | Self::ThroughStud
                | Self::ThroughWall
        )
    }

    /// Whether it is done from an attic, a crawl space or a basement. Running a foot there has a figure of its own for each.
    #[must_use]
    pub const fn is_in_a_space(self) -> bool {
        matches!(self, Self::JoinBranch | Self::DrillPlate)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_finish_but_board_is_a_condition_of_its_own() {
        let found: Vec<Option<WorkCondition>> =
            WallFinish::ALL.iter().map(|finish| WorkCondition::of_walls(*finish)).collect();
        assert_eq!(found.iter().filter(|condition| condition.is_none()).count(), 1);
        for (finish, condition) in WallFinish::ALL.iter().zip(&found) {
            assert!(condition.is_none_or(|condition| condition.name() == finish.name()), "{finish}");
        }
    }
}
