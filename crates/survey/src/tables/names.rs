//! The closed lists of names that the fields of a survey take.

use crate::shape::{NameList, name_list};
use dwelling::{
    BoxSeen, ButtonTest, CableKind, Clamps, DwellingUse, Equipment, FittedAtPanel, GroundSeen, Holding, LabelSeen,
    LoadState, MeterKind, Overcurrent, PathObstacle, ProtectiveBreaker, RoomUse, RouteKind, SourceKind, Space,
    TesterVerdict, WallBreakKind, WallFinish, Want, Wetness,
};
use electrical::ConductorMetal;

name_list!(DWELLING_USES, DwellingUse, "dwelling uses");
name_list!(OVERCURRENT, Overcurrent, "overcurrent devices");
name_list!(PROTECTIVE_BREAKERS, ProtectiveBreaker, "protective breakers");
name_list!(CABLES, CableKind, "wiring methods");
name_list!(ROOM_USES, RoomUse, "room uses");
name_list!(SPACES, Space, "spaces above and below");
name_list!(WALL_FINISHES, WallFinish, "finishes of walls");
name_list!(WALL_BREAKS, WallBreakKind, "breaks of a wall");
name_list!(HOLDINGS, Holding, "things a box holds");
name_list!(CLAMPS, Clamps, "ways of clamping");
name_list!(EQUIPMENT, Equipment, "kinds of equipment");
name_list!(WANTS, Want, "wishes");
name_list!(WETNESS, Wetness, "degrees of wetness");
name_list!(OBSTACLES, PathObstacle, "obstacles on a path");
name_list!(TESTER_VERDICTS, TesterVerdict, "tester verdicts");
name_list!(LOADS, LoadState, "load states");
name_list!(METERS, MeterKind, "meters");
name_list!(GROUNDS, GroundSeen, "grounds seen");
name_list!(BUTTON_TESTS, ButtonTest, "outcomes of a test button");
name_list!(LABELS, LabelSeen, "labels seen");
name_list!(BOXES_SEEN, BoxSeen, "works on a box");
name_list!(FITTED_AT_PANEL, FittedAtPanel, "things fitted at the panel end");
name_list!(SOURCES, SourceKind, "ground sources");
name_list!(ROUTES, RouteKind, "route kinds");

/// The units that coordinates on the plan are in.
pub(crate) static PLAN_UNITS: NameList = NameList {
    title: "plan units",
    names: &["feet", "metres"],
    meaning: |name| if name == "feet" { "Coordinates are feet." } else { "Coordinates are metres." },
};

/// The metals of conductors.
pub(crate) static METALS: NameList = NameList {
    title: "conductor metals",
    names: &["copper", "aluminium", "aluminum", "copper-clad-aluminium", "copper-clad-aluminum"],
    meaning: |name| match name {
        "copper" => "Copper.",
        "aluminium" | "aluminum" => "Aluminium.",
        _ => "Copper-clad aluminium.",
    },
};

/// The metal with this name.
pub(crate) fn metal_named(name: &str) -> Option<ConductorMetal> {
    match name {
        "copper" => Some(ConductorMetal::Copper),
        "aluminium" | "aluminum" => Some(ConductorMetal::Aluminium),
        "copper-clad-aluminium" | "copper-clad-aluminum" => Some(ConductorMetal::CopperCladAluminium),
        _ => None,
    }
}

/// Every list, in the order of the page for users.
pub(crate) static LISTS: &[&NameList] = &[
    &DWELLING_USES,
    &PLAN_UNITS,
    &OVERCURRENT,
    &PROTECTIVE_BREAKERS,
    &CABLES,
    &METALS,
    &ROOM_USES,
    &SPACES,
    &WALL_FINISHES,
    &WALL_BREAKS,
    &HOLDINGS,
    &CLAMPS,
    &EQUIPMENT,
    &WANTS,
    &WETNESS,
    &OBSTACLES,
    &TESTER_VERDICTS,
    &LOADS,
    &METERS,
    &GROUNDS,
    &BUTTON_TESTS,
    &LABELS,
    &BOXES_SEEN,
    &FITTED_AT_PANEL,
    &SOURCES,
    &ROUTES,
];
