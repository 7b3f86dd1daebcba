//! The facts about each box of a dwelling that rules and prices need, gathered once.

use crate::feed_through::FeedThroughLimits;
use crate::taking_out::taking_out;
use diagnosis::{Certainty, Condition, Diagnosis};
use dwelling::{
    BondedGroups, BoxIndex, CableKind, CircuitTree, Dwelling, Feed, GroundFact, GroundSeen, Reach, cables_in_box,
    circuit_trees,
};
use electrical::{Amperes, ConductorMetal, Volume};
use rulebook::tables::small_conductors::breaker_too_large;
use rulebook::{CodeInForce, FillContents, Judgement, Lawful, Opening, Remedy, judge};
use std::sync::Arc;

/// A dwelling with everything that follows from it, looked up by every later step.
pub struct Facts<'a> {
    /// The dwelling.
    pub dwelling: &'a Dwelling,
    /// The code in force.
    pub code: CodeInForce,
    /// What may hang behind one protective device.
    pub limits: FeedThroughLimits,
    /// What the readings mean.
    pub diagnosis: Diagnosis,
    /// The circuit trees.
    pub trees: Vec<CircuitTree>,
    /// The bonded groups.
    pub groups: BondedGroups,
    /// By box: what is known of it.
    pub sites: Vec<OpeningFacts>,
}

/// One box with what the code says about it.
pub struct OpeningFacts {
    /// The box.
    pub index: BoxIndex,
    /// The position of its tree, where its circuit is known.
    pub tree: Option<usize>,
    /// What is known of its ground.
    pub ground: GroundFact,
    /// Whether its group has a ground from the start.
    pub supplied: bool,
    /// Whether its protective device does not open on its own test: it is worth nothing, and has to go.
    pub dead: bool,
    /// The opening as it was found, unknown ground and all.
    pub as_found: Opening,
    /// What the code says of it as it was found.
    pub judged_as_found: Arc<Judgement>,
    /// What the code says of it with the ground that the plan counts on while nothing else is shown.
    pub judged_to_plan: Arc<Judgement>,
}

impl<'a> Facts<'a> {
    /// Gathers the facts of a dwelling.
    #[must_use]
    pub fn gather(dwelling: &'a Dwelling, code: CodeInForce) -> Self {
        let diagnosis = diagnosis::diagnose(dwelling);
        let trees = circuit_trees(dwelling);
        let groups = BondedGroups::of(dwelling);
        let grounds: Vec<GroundFact> = diagnosis.ground.iter().map(|state| state.fact).collect();
        let mut gone = Vec::new();
        let sites = dwelling
            .box_indices()
            .map(|index| {
                let tree = tree_of(&trees, index);
                let ground = grounds[index.0];
                let taking_out = taking_out(dwelling, index, &gone);
                let as_found =
                    Opening { taking_out, ..opening_of(dwelling, tree.map(|tree| &trees[tree]), index, ground) };
                let dead = fails_its_own_test(&diagnosis, index);
                let judged_as_found = Arc::new(judged(&as_found, dead, &code));
                let supplied = is_supplied(&groups, &grounds, index);
                let planned = ground_to_plan_on(ground, supplied);
                let judged_to_plan = if planned == ground {
                    Arc::clone(&judged_as_found)
                } else {
                    Arc::new(judged(&Opening { ground: planned, ..as_found.clone() }, dead, &code))
                };
                // Those that may go do not count for the next: all of them together must leave enough.
                if open_to(&judged_to_plan, Remedy::BlankCover) {
                    gone.push(index);
                }
                OpeningFacts { index, tree, ground, supplied, dead, as_found, judged_as_found, judged_to_plan }
            })
            .collect();
        let limits = FeedThroughLimits::of(&dwelling.job);
        Self { dwelling, code, limits, diagnosis, trees, groups, sites }
    }

    /// The facts about one box.
    #[must_use]
    pub fn at(&self, index: BoxIndex) -> &OpeningFacts {
        &self.sites[index.0]
    }

    /// How many aluminium conductors enter a box.
    #[must_use]
    pub fn aluminium_conductors(&self, index: BoxIndex) -> u32 {
        let cables = &self.at(index).as_found.fill.cables.known;
        cables.iter().filter(|cable| cable.metal == ConductorMetal::Aluminium).map(|cable| cable.insulated).sum()
    }

    /// Whether the last look into a box found a grounding conductor joined to its device or box.
    #[must_use]
    pub fn seen_joined(&self, index: BoxIndex) -> bool {
        let seen = self.dwelling.device_box(index).found.iter().rev().find_map(|reading| reading.ground);
        matches!(seen, Some(GroundSeen::Connected | GroundSeen::MetalTight))
    }
}

/// What the code says of an opening.
///
/// Duties are those of the largest breaker that its conductors may stand behind: an unlawful fuse excuses nothing. A
/// protective device that fails its own test may not be left.
#[must_use]
pub fn judged(opening: &Opening, dead: bool, code: &CodeInForce) -> Judgement {
    let mut judgement = judge(opening, code);
    if let Some(lawful) = breaker_to_fit(opening, code) {
        let cautions = judgement.cautions;
        judgement = Judgement { cautions, ..judge(&Opening { breaker: Some(lawful), ..opening.clone() }, code) };
    }
    if dead {
        let leave = judgement.remedies.iter_mut().filter(|verdict| verdict.remedy == Remedy::Leave);
        leave.for_each(|verdict| {
            verdict.lawful = Lawful::No;
            verdict.why_not.push("its protective device does not open on its own test: replace it".to_owned());
        });
    }
    judgement
}

/// Whether the code allows a remedy, or is read in two ways. What was not checked is not open.
#[must_use]
pub fn open_to(judged: &Judgement, remedy: Remedy) -> bool {
    let open = |lawful| matches!(lawful, Lawful::Yes | Lawful::Disputed);
    judged.remedies.iter().any(|verdict| verdict.remedy == remedy && open(verdict.lawful))
}

/// The largest breaker that the conductors of an opening may stand behind, where the one that is there is larger.
#[must_use]
pub fn breaker_to_fit(opening: &Opening, code: &CodeInForce) -> Option<Amperes> {
    let (breaker, gauge) = (opening.breaker?, opening.gauge?);
    breaker_too_large(breaker, gauge, opening.metal, code).ok().flatten().map(|largest| largest.value)
}

/// Whether the protective device in a box was shown not to open on its own test.
fn fails_its_own_test(diagnosis: &Diagnosis, index: BoxIndex) -> bool {
    let fails = |finding: &diagnosis::Finding| {
        finding.condition == Condition::GfciDoesNotTrip && finding.sure == Certainty::Shown
    };
    diagnosis.findings_at(index).any(fails)
}

/// The facts about one box as the rulebook wants them.
#[must_use]
pub fn opening_of(dwelling: &Dwelling, tree: Option<&CircuitTree>, index: BoxIndex, ground: GroundFact) -> Opening {
    let device_box = dwelling.device_box(index);
    let circuit = dwelling.circuit_of(index);
    let panel = circuit.map(|circuit| dwelling.panel(circuit.panel));
    let body = &device_box.body;
    let added = body.added_volume.unwrap_or(Volume::ZERO);
    Opening {
        room_use: dwelling.room(device_box.room).room_use,
        holds: device_box.holds,
        breaker: circuit.and_then(|circuit| circuit.breaker),
        gauge: dwelling.gauge_to(index),
        metal: dwelling.metal_to(index),
        ground,
        existing_outlet: true,
        countertop: device_box.countertop,
        sink: device_box.sink.clone(),
        tub: device_box.tub.clone(),
        wetness: device_box.wetness,
        height: device_box.height,
        dedicated_space: device_box.dedicated_space,
        readily_accessible: device_box.readily_accessible,
        serves: device_box.serves.clone(),
        on_shared_neutral: dwelling.neutral_is_shared_to(index),
        half_of_set: device_box.circuit.is_some_and(|circuit| dwelling.partner_of(circuit).is_some()),
        made_for_panel: panel.and_then(|panel| panel.made_for_it.clone()),
        room_beside_panel: panel.and_then(|panel| panel.room_beside),
        has_upstream: has_upstream_receptacle(dwelling, index),
        supply: None,
        cable: Some(dwelling.cable_to(index)).filter(|cable| *cable != CableKind::Unknown),
        taking_out: None,
        built_into: None,
        fill: FillContents {
            volume: body.volume.map(|volume| volume + added),
            cables: cables_in_box(dwelling, tree, index),
            clamps: body.clamps,
            support_fittings: body.support_fittings,
            other_straps: body.gangs.saturating_sub(1),
            gangs: body.gangs.max(1),
        },
    }
}

/// Whether a receptacle that could become a GFCI lies upstream; nothing where the feeding order is not known that far.
fn has_upstream_receptacle(dwelling: &Dwelling, index: BoxIndex) -> Option<bool> {
    let mut at = index;
    loop {
        let circuit = dwelling.device_box(at).circuit;
        match dwelling.device_box(at).known_feed()? {
            Feed::Panel(_) => return Some(false),
            Feed::Box(parent) => {
                let upstream = dwelling.device_box(parent);
                if upstream.holds.is_receptacle() && upstream.circuit == circuit && !dwelling.neutral_is_shared_to(at) {
                    return Some(true);
                }
                at = parent;
            }
        }
    }
}

fn tree_of(trees: &[CircuitTree], index: BoxIndex) -> Option<usize> {
    trees.iter().position(|tree| tree.members.contains(&index) || tree.unplaced.contains(&index))
}

/// Whether a box's group has a ground from the start: by wiring methods up to the panel, or because evidence shows one.
fn is_supplied(groups: &BondedGroups, grounds: &[GroundFact], index: BoxIndex) -> bool {
    let group = groups.group_of(index);
    let shown = |fact: &GroundFact| matches!(fact, GroundFact::Connected | GroundFact::Poor);
    matches!(group.reach, Reach::Panel | Reach::Disputed)
        || group.members.iter().any(|member| shown(&grounds[member.0]))
}

/// The ground to plan on: a jumper is taken out whatever else is done, and a group that has no ground for sure has none.
const fn ground_to_plan_on(found: GroundFact, supplied: bool) -> GroundFact {
    match (found, supplied) {
        (GroundFact::False, true) => GroundFact::Loose,
        (found, true) => found,
        (GroundFact::CutOff, false) => GroundFact::CutOff,
        (_, false) => GroundFact::None,
    }
}
