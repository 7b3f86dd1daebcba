//! Ways along which a conductor could be brought, built from where rooms, boxes, panels and ground sources lie.

mod build;
mod cheapest;
mod climb;
mod floor_plan;
mod geometry;
mod graph;
mod in_walls;
mod spaces;
mod standing;
mod survey_word;

pub use cheapest::CheapestWays;
pub use graph::{
    Difficulty, EdgeKind, Layer, LinePoint, PlaceKind, RouteEdge, RouteGraph, RoutePlace, Unbuilt, UnbuiltOf, Work,
};
