//! Ways along which a conductor could be brought, built from where rooms, boxes, panels and ground sources lie.

mod graph;

pub use graph::{
    Difficulty, EdgeKind, Layer, LinePoint, PlaceKind, RouteEdge, RouteGraph, RoutePlace, Unbuilt, UnbuiltOf, Work,
};
