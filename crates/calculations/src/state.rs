//! The wiring at a moment: as it was found, or as the plan leaves it.

use dwelling::{
    Body, BoxIndex, CableKind, CircuitIndex, CircuitTree, Clamps, Dwelling, Feed, GroundFact, Holding, PanelIndex,
    RouteEnd, RouteKind, Run, circuit_trees, names,
};
use electrical::{ConductorMetal, Gauge, Length, Volume};
use remedies::{BoxWork, Device, Planned, Step};
use rulebook::CodeInForce;

names! {
    /// When the checks hold.
    Moment {
        /// As it was found.
        Before = "before",
        /// As the plan leaves it.
        After = "after",
    }
}

/// The wiring of a dwelling at a moment.
#[derive(Clone, Debug)]
pub struct State {
    /// When.
    pub moment: Moment,
    /// The dwelling as it is then.
    pub dwelling: Dwelling,
    /// Its circuit trees then.
    pub trees: Vec<CircuitTree>,
    /// The code in force.
    pub code: CodeInForce,
    /// By box: whether the plan touches it; never before it.
    pub touched: Vec<bool>,
    /// Grounding conductors that were brought.
    pub brought: Vec<BroughtGround>,
    /// By box: whether it has a ground; nothing where nobody knows.
    pub grounded: Vec<Option<bool>>,
    /// The GFCIs with what lies behind each.
    pub gfcis: Vec<Gfci>,
}

/// A grounding conductor that the plan brings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BroughtGround {
    /// The route.
    pub route: String,
    /// One end.
    pub from: RouteEnd,
    /// The other end.
    pub to: RouteEnd,
    /// Its size in copper, where it is thinnest.
    pub gauge: Gauge,
    /// Its length.
    pub length: Length,
    /// The size of what leaves its start; nothing where it shares its first stretch with another and branches off from it.
    pub at_start: Option<Gauge>,
}

/// A GFCI and what lies behind it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gfci {
    /// Where it sits.
    pub at: GfciPlace,
    /// The boxes whose leakage it sees.
    pub behind: Vec<BoxIndex>,
    /// Whether these are all that it may see: not where nobody knows what its load side feeds.
    pub complete: bool,
}

/// Where a GFCI sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GfciPlace {
    /// In a box.
    Box(BoxIndex),
    /// At the panel end of the tree of this position.
    Panel(usize),
}

impl State {
    /// The wiring as it was found.
    #[must_use]
    pub fn before(planned: &Planned) -> Self {
        let facts = &planned.facts;
        let (dwelling, trees) = (facts.dwelling.clone(), facts.trees.clone());
        let known = |fact: GroundFact| match fact {
            GroundFact::Connected | GroundFact::Poor | GroundFact::Disputed => Some(true),
            GroundFact::Unknown => None,
            _ => Some(false),
        };
        let grounded = facts.sites.iter().map(|at| known(at.ground)).collect();
        let gfcis = gfcis_as_found(&dwelling, &trees);
        let (code, touched) = (facts.code.clone(), vec![false; dwelling.boxes.len()]);
        Self { moment: Moment::Before, dwelling, trees, code, touched, brought: Vec::new(), grounded, gfcis }
    }

    /// The wiring as a plan leaves it.
    #[must_use]
    pub fn after(planned: &Planned) -> Self {
        let facts = &planned.facts;
        let mut dwelling = facts.dwelling.clone();
        for at in facts.dwelling.box_indices() {
            work_on(&mut dwelling, planned, at);
        }
        for at in 0..dwelling.circuits.len() {
            dwelling.circuits[at].breaker = planned.rating_afterwards(CircuitIndex(at));
        }
        let mut brought = Vec::new();
        for way in planned.ways() {
            let length = planned.length_of(&way.links);
            // One impedance for the whole way: where its stretches differ in size, that of the thinnest.
            let gauge = way.links.iter().map(|link| planned.size_of(link)).min().unwrap_or(way.size());
            match way.kind {
                RouteKind::NewCable => lead_cable(&mut dwelling, (way.from, way.to), gauge, length),
                RouteKind::Egc => brought.push(BroughtGround {
                    route: way.id.clone(),
                    from: way.from,
                    to: RouteEnd::Box(way.to),
                    gauge,
                    length,
                    at_start: way.own().first().filter(|_| way.shared == 0).map(|link| planned.size_of(link)),
                }),
            }
        }
        let grounded = facts.dwelling.box_indices().map(|at| Some(planned.is_grounded(at))).collect();
        let trees = circuit_trees(&dwelling);
        let touched = facts.dwelling.box_indices().map(|at| planned.touches(at)).collect();
        let gfcis = gfcis_as_planned(planned, &trees);
        Self { moment: Moment::After, dwelling, trees, code: facts.code.clone(), touched, brought, grounded, gfcis }
    }

    /// The tree that a box is on, where its circuit is known.
    #[must_use]
    pub fn tree_of(&self, at: BoxIndex) -> Option<usize> {
        self.trees.iter().position(|tree| tree.members.contains(&at) || tree.unplaced.contains(&at))
    }

    /// The panel of a box's circuit.
    #[must_use]
    pub fn panel_of(&self, at: BoxIndex) -> Option<PanelIndex> {
        self.dwelling.circuit_of(at).map(|circuit| circuit.panel)
    }

    /// The names of the circuits of a tree.
    #[must_use]
    pub fn circuit_names(&self, circuits: &[CircuitIndex]) -> Vec<String> {
        circuits.iter().map(|circuit| self.dwelling.circuit(*circuit).id.clone()).collect()
    }

    /// The name of a box's circuit, where known.
    #[must_use]
    pub fn circuits_of_box(&self, at: BoxIndex) -> Vec<String> {
        self.dwelling.circuit_of(at).map(|circuit| circuit.id.clone()).into_iter().collect()
    }

    /// The boxes from the panel down to a box, where the feeding order is known that far.
    #[must_use]
    pub fn way_to(&self, at: BoxIndex) -> Option<Vec<BoxIndex>> {
        let mut way = vec![at];
        while let Some(Feed::Box(parent)) = self.dwelling.device_box(way[way.len() - 1]).fed_by {
            way.push(parent);
        }
        let reaches = matches!(self.dwelling.device_box(way[way.len() - 1]).fed_by, Some(Feed::Panel(_)));
        way.reverse();
        reaches.then_some(way)
    }
}

/// What a plan does to a box and its device.
fn work_on(dwelling: &mut Dwelling, planned: &Planned, at: BoxIndex) {
    let chosen = planned.chosen(at);
    let device_box = &mut dwelling.boxes[at.0];
    device_box.holds = chosen.device.held(device_box.holds);
    // What was seen of a loose ground does not hold once it is restored.
    if matches!(chosen.step, Step::RestoreKept | Step::RestoreFitted) {
        device_box.found.clear();
    }
    if let Some(added) = chosen.box_work.added_volume() {
        let before = device_box.body.added_volume.unwrap_or(Volume::ZERO);
        device_box.body.added_volume = Some(before + added);
    } else if chosen.box_work != BoxWork::Keep {
        let volume = chosen.box_work.new_volume();
        device_box.body = Body { volume, clamps: Some(Clamps::None), gangs: 1, ..Body::default() };
    }
}

/// A new cable from a panel or a box takes the place of the old run.
fn lead_cable(dwelling: &mut Dwelling, (from, at): (RouteEnd, BoxIndex), gauge: Gauge, length: Length) {
    let fed_by = match from {
        RouteEnd::Box(parent) => Some(Feed::Box(parent)),
        RouteEnd::Panel(panel) => Some(Feed::Panel(panel)),
        RouteEnd::Source(_) => dwelling.boxes[at.0].fed_by,
    };
    let device_box = &mut dwelling.boxes[at.0];
    device_box.fed_by = fed_by;
    device_box.run = Run {
        length: Some(length),
        cable: Some(CableKind::NmWithGround),
        gauge: Some(gauge),
        metal: Some(ConductorMetal::Copper),
        shared_neutral: Some(false),
    };
    device_box.found.clear();
}

/// Whether what a box holds is a GFCI.
const fn is_gfci(holds: Holding) -> bool {
    matches!(holds, Holding::Gfci | Holding::Dual)
}

/// Everything on a tree, known to reach the panel or not.
fn all_of(tree: &CircuitTree) -> Vec<BoxIndex> {
    tree.members.iter().chain(&tree.unplaced).copied().collect()
}

/// Whether a box feeds nothing: not for sure where boxes of its circuit have no known place.
fn nothing_lies_beyond(tree: &CircuitTree, at: BoxIndex) -> bool {
    tree.children(at).is_empty() && tree.unplaced.is_empty()
}

fn gfcis_as_found(dwelling: &Dwelling, trees: &[CircuitTree]) -> Vec<Gfci> {
    let mut found = Vec::new();
    for (position, tree) in trees.iter().enumerate() {
        let fitted = |circuit: &CircuitIndex| dwelling.circuit(*circuit).fitted.is_some_and(|fitted| fitted.is_gfci());
        if tree.circuits.iter().any(fitted) {
            found.push(Gfci {
                at: GfciPlace::Panel(position),
                behind: all_of(tree),
                complete: tree.unplaced.is_empty(),
            });
        }
        for at in all_of(tree).into_iter().filter(|at| is_gfci(dwelling.device_box(*at).holds)) {
            // What its load side feeds was not surveyed: nothing, where nothing can lie downstream.
            let complete = nothing_lies_beyond(tree, at);
            found.push(Gfci { at: GfciPlace::Box(at), behind: vec![at], complete });
        }
    }
    found
}

fn gfcis_as_planned(planned: &Planned, trees: &[CircuitTree]) -> Vec<Gfci> {
    let mut found = Vec::new();
    for (position, tree) in trees.iter().enumerate() {
        if planned.gfci_at_panel(position) {
            found.push(Gfci {
                at: GfciPlace::Panel(position),
                behind: all_of(tree),
                complete: tree.unplaced.is_empty(),
            });
        }
        for at in all_of(tree).into_iter().filter(|at| planned.is_gfci(*at)) {
            let feeds = planned.chosen(at).gives_protection();
            let mut behind = vec![at];
            for child in planned.behind_load(at).into_iter().filter(|_| feeds) {
                behind.push(child);
                behind.extend(tree.downstream(child));
            }
            let kept_unsorted = planned.chosen(at).device == Device::Kept && !feeds;
            found.push(Gfci {
                at: GfciPlace::Box(at),
                behind,
                complete: !kept_unsorted || nothing_lies_beyond(tree, at),
            });
        }
    }
    found
}
