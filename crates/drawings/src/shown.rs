//! What a drawing shows of a dwelling: as it was found, or as a plan leaves it.

use crate::places::{FloorNumber, floor_of_end};
use crate::words;
use crate::work_mark::{WorkMark, work_at};
use diagnosis::Diagnosis;
use dwelling::{
    BondedGroups, BoxIndex, CircuitTree, Dwelling, Feed, GroundFact, Holding, PanelIndex, Point, RouteEnd, RouteKind,
    circuit_trees, names,
};
use remedies::{Planned, Way};

names! {
    /// When a drawing holds.
    Moment {
        /// As it was found.
        Before = "before",
        /// As the plan leaves it.
        After = "after",
    }
}

/// How the ground of a box is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Ground {
    /// It was there, whole.
    Whole,
    /// The plan brings or restores it.
    ByPlan,
    /// Something is there that is no sound ground yet.
    Unsound,
    /// There is none.
    None,
    /// Nobody knows.
    Unknown,
}

impl Ground {
    pub(crate) const ALL: [Self; 5] = [Self::Whole, Self::ByPlan, Self::Unsound, Self::None, Self::Unknown];

    pub(crate) const fn of(fact: GroundFact) -> Self {
        match fact {
            GroundFact::Connected => Self::Whole,
            GroundFact::Poor | GroundFact::Loose | GroundFact::CutOff | GroundFact::Disputed => Self::Unsound,
            GroundFact::None | GroundFact::False => Self::None,
            GroundFact::Unknown => Self::Unknown,
        }
    }

    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Whole => "grounded as it was found",
            Self::ByPlan => "grounded by this plan",
            Self::Unsound => "a ground is there: poor, loose, cut off or disputed",
            Self::None => "no ground",
            Self::Unknown => "not known whether there is a ground: find out",
        }
    }
}

/// A box as it is drawn.
pub(crate) struct ShownBox {
    pub(crate) holds: Holding,
    pub(crate) ground: Ground,
    pub(crate) work: Vec<WorkMark>,
    pub(crate) feed: Option<Feed>,
    /// Whether a new cable takes the place of the run that fed it.
    pub(crate) by_new_cable: bool,
    /// The position of what it is tied to, where it is tied to any.
    pub(crate) tie: Option<usize>,
}

/// Boxes that a ground ties together.
pub(crate) struct Tie {
    pub(crate) letter: String,
    pub(crate) members: Vec<BoxIndex>,
}

/// A route that a plan buys.
pub(crate) struct Bought {
    pub(crate) number: String,
    pub(crate) id: String,
    pub(crate) kind: RouteKind,
    pub(crate) size: String,
    pub(crate) length: String,
    pub(crate) openings: u32,
    pub(crate) ends: (RouteEnd, RouteEnd),
    /// Whether its way was built from the floor plan, even where nothing of it has a length there.
    pub(crate) way_is_known: bool,
    /// The number of the route from which it branches off.
    pub(crate) branches_off: Option<String>,
    /// The way on the floor plans, where it is known.
    pub(crate) path: Vec<Stretch>,
}

/// A straight stretch of a way on the plan of a floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Stretch {
    pub(crate) floor: FloorNumber,
    pub(crate) from: Point,
    pub(crate) to: Point,
    pub(crate) layer: Layer,
}

/// A stretch of a way as it is numbered on a map.
#[derive(Clone, Debug)]
pub(crate) struct StretchOfWay {
    pub(crate) way: String,
    pub(crate) name: String,
    pub(crate) length: String,
    pub(crate) floor: FloorNumber,
    pub(crate) from: Point,
    pub(crate) to: Point,
    pub(crate) openings: u32,
    pub(crate) says: String,
}

/// Where a stretch lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Layer {
    Wall,
    Surface,
    Above,
    Below,
}

impl Layer {
    pub(crate) const ALL: [Self; 4] = [Self::Wall, Self::Surface, Self::Above, Self::Below];

    pub(crate) const fn dashes(self) -> &'static str {
        match self {
            Self::Wall => "8 2 2 2",
            Self::Surface => "0",
            Self::Above => "5 3",
            Self::Below => "2 2",
        }
    }

    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Wall => "inside walls",
            Self::Surface => "on the surface, along the baseboard",
            Self::Above => "above the ceiling, in the attic",
            Self::Below => "below the floor, in the crawl space or basement",
        }
    }
}

/// The sizes of conductor along a way, from its start.
fn sizes(plan: &Planned, way: &Way) -> String {
    let sizes: Vec<String> = plan.sizes_along(way).iter().map(ToString::to_string).collect();
    sizes.join(", then ")
}

/// The way on the floor plans of what a plan buys, as far as it was built from them.
fn path_of(plan: &Planned, way: &Way) -> Vec<Stretch> {
    let lines = way.own().iter().flat_map(|link| plan.legs_of(link)).map(|leg| leg.line);
    let layer = |layer: routes::Layer| match layer {
        routes::Layer::Wall => Layer::Wall,
        routes::Layer::Surface => Layer::Surface,
        routes::Layer::Attic => Layer::Above,
        routes::Layer::CrawlSpace | routes::Layer::Basement => Layer::Below,
    };
    let mut path = Vec::new();
    for line in lines {
        let pairs = line.windows(2).filter(|pair| pair[0].floor == pair[1].floor && pair[0].at != pair[1].at);
        path.extend(pairs.map(|pair| Stretch {
            floor: Some(pair[1].floor),
            from: pair[0].at,
            to: pair[1].at,
            layer: layer(pair[1].layer),
        }));
    }
    path
}

/// Everything that a drawing shows.
pub(crate) struct Shown<'a> {
    pub(crate) dwelling: &'a Dwelling,
    pub(crate) moment: Moment,
    pub(crate) edition: Option<u16>,
    pub(crate) boxes: Vec<ShownBox>,
    pub(crate) ties: Vec<Tie>,
    /// The circuit trees as found, each with what protects it at the panel.
    pub(crate) trees: Vec<(CircuitTree, String)>,
    pub(crate) bought: Vec<Bought>,
    /// Whether only the ways are shown, with nothing of what feeds what.
    pub(crate) only_ways: bool,
    /// The stretches that are numbered one by one; none on plans of whole floors.
    pub(crate) stretches: Vec<StretchOfWay>,
}

impl<'a> Shown<'a> {
    /// A dwelling as it was found.
    pub(crate) fn as_found(dwelling: &'a Dwelling, diagnosis: &Diagnosis) -> Self {
        let (ties, tie_of) = ties(dwelling);
        let boxes = dwelling.box_indices().map(|at| {
            let device_box = dwelling.device_box(at);
            let danger = diagnosis.findings_at(at).any(|finding| finding.danger);
            ShownBox {
                holds: device_box.holds,
                ground: Ground::of(diagnosis.ground[at.0].fact),
                work: if danger { vec![WorkMark::Danger] } else { Vec::new() },
                feed: device_box.known_feed(),
                by_new_cable: false,
                tie: tie_of[at.0],
            }
        });
        let trees = circuit_trees(dwelling).into_iter().map(|tree| {
            let fitted = words::fitted(dwelling, &tree);
            (tree, fitted)
        });
        Self {
            dwelling,
            moment: Moment::Before,
            edition: None,
            boxes: boxes.collect(),
            ties,
            trees: trees.collect(),
            bought: Vec::new(),
            only_ways: false,
            stretches: Vec::new(),
        }
    }

    /// A dwelling as a plan leaves it.
    pub(crate) fn as_planned(plan: &Planned<'a>) -> Self {
        let (facts, dwelling) = (&plan.facts, plan.facts.dwelling);
        let (ties, tie_of) = ties(dwelling);
        let mut boxes: Vec<ShownBox> = dwelling
            .box_indices()
            .map(|at| ShownBox {
                holds: held_after(plan, at),
                ground: ground_after(plan, at),
                work: work_at(plan, at),
                feed: dwelling.device_box(at).known_feed(),
                by_new_cable: false,
                tie: tie_of[at.0],
            })
            .collect();
        let mut bought: Vec<Bought> = Vec::new();
        for (position, way) in plan.ways().into_iter().enumerate() {
            if way.kind == RouteKind::NewCable {
                boxes[way.to.0].by_new_cable = true;
            }
            let branch = way.branches_from.as_ref();
            let branches_off = branch.and_then(|from| bought.iter().find(|before| before.id == *from));
            let branches_off = branches_off.map(|before| before.number.clone());
            bought.push(Bought {
                number: format!("R{}", position + 1),
                kind: way.kind,
                size: sizes(plan, &way),
                length: plan.length_of(way.own()).to_string(),
                openings: plan.openings_of(way.own()),
                ends: (way.from, RouteEnd::Box(way.to)),
                way_is_known: way.own().iter().any(|link| !plan.legs_of(link).is_empty()),
                branches_off,
                path: path_of(plan, &way),
                id: way.id,
            });
        }
        let trees = facts.trees.iter().enumerate().map(|(position, tree)| {
            let chosen = words::at_panel(plan.chosen_at_panel(position).choice);
            (
                tree.clone(),
                if chosen.is_empty() {
                    words::fitted(dwelling, tree)
                } else {
                    format!("fit {} {chosen}", if chosen.starts_with('A') { "an" } else { "a" })
                },
            )
        });
        let trees = trees.collect();
        let edition = Some(facts.code.edition.year());
        let (only_ways, stretches) = (false, Vec::new());
        Self { dwelling, moment: Moment::After, edition, boxes, ties, trees, bought, only_ways, stretches }
    }

    /// The name of an end of a route.
    pub(crate) fn end_name(&self, end: RouteEnd) -> &str {
        match end {
            RouteEnd::Box(at) => &self.dwelling.device_box(at).id,
            RouteEnd::Panel(at) => &self.dwelling.panel(at).id,
            RouteEnd::Source(at) => &self.dwelling.source(at).id,
        }
    }

    /// The name of an end, with its floor where that is another one.
    pub(crate) fn name_from(&self, end: RouteEnd, floor: FloorNumber) -> String {
        let name = self.end_name(end);
        match floor_of_end(self.dwelling, end) {
            Some(Some(other)) if floor != Some(other) => format!("{name}, floor {other}"),
            Some(None) if floor.is_some() => format!("{name}, floor not stated"),
            _ => name.to_owned(),
        }
    }

    /// The names of the circuits that a run carries: both of a multiwire set where it shares their neutral.
    pub(crate) fn circuits_on_run_to(&self, at: BoxIndex) -> String {
        let Some(own) = self.dwelling.device_box(at).circuit else { return "?".to_owned() };
        let both = self.dwelling.partner_of(own).filter(|_| self.dwelling.neutral_is_shared_to(at));
        let mut circuits: Vec<_> = both.into_iter().chain([own]).collect();
        circuits.sort();
        let names: Vec<&str> = circuits.iter().map(|circuit| self.dwelling.circuit(*circuit).id.as_str()).collect();
        names.join("+")
    }

    /// What stands at a box in a sentence, for those who point at it and for those who listen.
    pub(crate) fn says(&self, at: BoxIndex) -> String {
        let (device_box, shown) = (self.dwelling.device_box(at), &self.boxes[at.0]);
        let room = self.dwelling.room(device_box.room);
        let circuit = self.dwelling.circuit_of(at);
        let circuit = circuit.map_or("circuit not known".to_owned(), |circuit| format!("circuit {}", circuit.id));
        let mut says = format!(
            "{}, {}: {}, {circuit}, {}; {}",
            device_box.id,
            room.title.as_ref().unwrap_or(&room.id),
            shown.holds.in_words(),
            self.feed_in_words(shown.feed),
            shown.ground.meaning(),
        );
        for mark in &shown.work {
            says.push_str(&format!("; {}", mark.meaning()));
        }
        says
    }

    /// What feeds a box, in words.
    pub(crate) fn feed_in_words(&self, feed: Option<Feed>) -> String {
        match feed {
            Some(Feed::Panel(panel)) => format!("home run to {}", self.panel_name(panel)),
            Some(Feed::Box(parent)) => format!("fed by {}", self.dwelling.device_box(parent).id),
            None => "fed by ?".to_owned(),
        }
    }

    /// A panel by its name.
    pub(crate) fn panel_name(&self, panel: PanelIndex) -> String {
        format!("panel {}", self.dwelling.panel(panel).id)
    }
}

/// How the ground of a box is drawn once a plan is carried out.
pub(crate) fn ground_after(plan: &Planned, at: BoxIndex) -> Ground {
    match (plan.is_grounded(at), Ground::of(plan.facts.at(at).ground)) {
        (true, Ground::Whole) => Ground::Whole,
        (true, _) => Ground::ByPlan,
        (false, Ground::Whole | Ground::Unsound) => Ground::Unsound,
        (false, found) => found,
    }
}

/// What a box holds once a plan is carried out.
pub(crate) fn held_after(plan: &Planned, at: BoxIndex) -> Holding {
    plan.chosen(at).device.held(plan.facts.dwelling.device_box(at).holds)
}

/// The bonded groups of more than one box with a letter each, and by box the group it is in.
fn ties(dwelling: &Dwelling) -> (Vec<Tie>, Vec<Option<usize>>) {
    let (mut ties, mut tie_of) = (Vec::new(), vec![None; dwelling.boxes.len()]);
    for group in BondedGroups::of(dwelling).groups.into_iter().filter(|group| group.members.len() > 1) {
        group.members.iter().for_each(|member| tie_of[member.0] = Some(ties.len()));
        ties.push(Tie { letter: letter(ties.len()), members: group.members });
    }
    (ties, tie_of)
}

/// a to z, then aa, ab and so on.
fn letter(index: usize) -> String {
    let last = char::from(b'a' + u8::try_from(index % 26).unwrap_or(0));
    if index < 26 { last.to_string() } else { format!("{}{last}", letter(index / 26 - 1)) }
}
