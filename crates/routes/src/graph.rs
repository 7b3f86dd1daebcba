//! The route graph: places of a dwelling, and the ways of work that join them.

use dwelling::{BoxIndex, PanelIndex, Point, RoomIndex, RouteEnd, SourceIndex, names};
use electrical::Length;

/// Where a conductor could be brought: places, and what joins them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RouteGraph {
    /// The places. Every end of an edge is one of them.
    pub places: Vec<RoutePlace>,
    /// The ways of work, each from a place to another.
    pub edges: Vec<RouteEdge>,
    /// What could not be built, and why.
    pub unbuilt: Vec<Unbuilt>,
}

/// A place of the route graph.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RoutePlace {
    /// What is there.
    pub is: PlaceKind,
    /// The floor on whose plan it is drawn.
    pub floor: i8,
    /// Where it is on that plan.
    pub at: Point,
}

/// What is at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlaceKind {
    /// A box.
    Box(BoxIndex),
    /// A panel.
    Panel(PanelIndex),
    /// A ground source.
    Source(SourceIndex),
    /// A point in a space where conductors are joined or led on.
    Junction(Layer),
}

impl PlaceKind {
    /// The place as an end of a route of the survey; a junction is none.
    #[must_use]
    pub const fn route_end(self) -> Option<RouteEnd> {
        match self {
            Self::Box(at) => Some(RouteEnd::Box(at)),
            Self::Panel(at) => Some(RouteEnd::Panel(at)),
            Self::Source(at) => Some(RouteEnd::Source(at)),
            Self::Junction(_) => None,
        }
    }
}

names! {
    /// Where a stretch of a route lies, for whoever draws it.
    Layer {
        /// Inside a wall.
        Wall = "wall",
        /// On the surface of a wall, along its baseboard.
        Surface = "surface",
        /// In the attic above the rooms of its floor.
        Attic = "attic",
        /// In the crawl space below the rooms of its floor.
        CrawlSpace = "crawl-space",
        /// Below the open ceiling of a basement, under the rooms of its floor.
        Basement = "basement",
    }
}

impl Layer {
    /// What it is, in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Attic => "the attic",
            Self::CrawlSpace => "the crawl space",
            Self::Basement => "the basement",
            Self::Wall => "the wall",
            Self::Surface => "the surface",
        }
    }
}

names! {
    /// How a stretch of a route is worked.
    EdgeKind {
        /// Through one wall, from a box to the box on its other side.
        BackToBack = "back-to-back",
        /// Inside one wall, from box to box.
        AlongWall = "along-wall",
        /// In surface raceway along a baseboard, opening nothing.
        Raceway = "raceway",
        /// Between a place and the attic above it.
        ToAttic = "to-attic",
        /// Between a place and the crawl space or basement below it.
        ToBelow = "to-below",
        /// Along an attic, a crawl space or a basement.
        Along = "along",
        /// Inside a wall from the space below a storey to the attic above it, past no box.
        Riser = "riser",
    }
}

names! {
    /// How hard a stretch of a route is.
    Difficulty {
        /// In the open, or a short way inside an empty wall.
        Easy = "easy",
        /// Inside walls that are in the way.
        Fair = "fair",
        /// What may fail, or takes long.
        Hard = "hard",
    }
}

names! {
    /// A piece of work along a route, so often as its edge says. A price book gives its minutes and its material.
    Work {
        /// End a conductor at a box, a panel or a source.
        EndConductor = "end-conductor",
        /// Join a branch where a drop leaves a space, in an accessible box.
        JoinBranch = "join-branch",
        /// Drill one plate from an attic, a crawl space or a basement.
        DrillPlate = "drill-plate",
        /// Fish the bay of an empty wall between two storeys' ends.
        FishBay = "fish-bay",
        /// Fish one bay that is full of insulation: on top of fishing it.
        PastInsulation = "past-insulation",
        /// Get past one fire block, its opening apart.
        PastFireBlock = "past-fire-block",
        /// Get through the floor between two storeys inside a wall.
        ThroughFloor = "through-floor",
        /// Get through one stud inside a finished wall.
        ThroughStud = "through-stud",
        /// Go through a wall into the back of the box on its other side.
        ThroughWall = "through-wall",
        /// Run one foot in an attic.
        AtticFoot = "attic-foot",
        /// Run one foot in a crawl space.
        CrawlFoot = "crawl-foot",
        /// Run one foot under the open ceiling of a basement, or on its walls.
        BasementFoot = "basement-foot",
        /// Set up one run of surface raceway, its two end boxes included.
        SetUpRaceway = "set-up-raceway",
        /// Fasten one foot of surface raceway.
        RacewayFoot = "raceway-foot",
        /// Patch plaster, tile or panelling rather than board: on top of patching one opening.
        PatchWithCare = "patch-with-care",
    }
}

/// A way of work between two places. It can be walked either way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RouteEdge {
    /// One end, by its position among the places.
    pub from: usize,
    /// The other end.
    pub to: usize,
    /// How it is worked.
    pub kind: EdgeKind,
    /// How much conductor it takes between its ends.
    pub length: Length,
    /// The work, each kind with how often.
    pub work: Vec<(Work, u32)>,
    /// The room in whose walls it is worked, where it is in walls; of several the one where the box stands.
    pub walls: Option<RoomIndex>,
    /// Openings in finished surfaces.
    pub openings: u32,
    /// How hard it is.
    pub difficulty: Difficulty,
    /// The way on the floor plans, from `from` to `to`.
    pub line: Vec<LinePoint>,
    /// The rooms whose finished surfaces are opened.
    pub opens: Vec<RoomIndex>,
    /// The way from `from` to `to` in plain words, and why it costs what it costs.
    pub reason: String,
    /// The same from `to` to `from`.
    pub back: String,
}

/// A corner of the way of an edge on a floor plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LinePoint {
    /// The floor on whose plan it is drawn.
    pub floor: i8,
    /// Where it is on that plan.
    pub at: Point,
    /// Where the stretch that ends here lies.
    pub layer: Layer,
}

/// Something of which no way could be built.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Unbuilt {
    /// What it is of.
    pub of: UnbuiltOf,
    /// Why, in plain words.
    pub why: String,
}

/// What no way could be built of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum UnbuiltOf {
    /// A room.
    Room(RoomIndex),
    /// A box.
    Box(BoxIndex),
    /// A panel.
    Panel(PanelIndex),
    /// A ground source.
    Source(SourceIndex),
}
