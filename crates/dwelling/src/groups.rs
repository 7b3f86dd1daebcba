//! Bonded groups: boxes tied together by a grounding path, whether or not the path reaches the panel.

use crate::device_box::Feed;
use crate::index::{BoxIndex, PanelIndex};
use crate::reading::GroundSeen;
use crate::run::GroundPath;
use crate::whole::Dwelling;

/// How a bonded group stands to its panel's ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reach {
    /// Its grounding path is whole, by its wiring methods, up to the panel's ground bar.
    Panel,
    /// It reaches the panel over a path that the authority may not accept.
    Disputed,
    /// Whether it reaches the panel takes looking or testing.
    Unknown,
    /// It reaches nothing: one conductor to any member would ground them all.
    Isolated,
}

/// Boxes tied together by a grounding path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BondedGroup {
    /// The boxes, in survey order.
    pub members: Vec<BoxIndex>,
    /// How the group stands to the panel's ground.
    pub reach: Reach,
    /// The panel its circuits originate in, where known.
    pub panel: Option<PanelIndex>,
}

/// Every bonded group of a dwelling; each box is in exactly one, alone if nothing ties it to another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BondedGroups {
    /// The groups, in the order of their first box.
    pub groups: Vec<BondedGroup>,
    of_box: Vec<usize>,
}

impl BondedGroups {
    /// The bonded groups that follow from wiring methods, feeding order and what was seen in the boxes.
    #[must_use]
    pub fn of(dwelling: &Dwelling) -> Self {
        let mut label: Vec<usize> = (0..dwelling.boxes.len()).collect();
        for index in dwelling.box_indices() {
            if let Some(Feed::Box(parent)) = dwelling.device_box(index).known_feed()
                && matches!(dwelling.ground_path_to(index), GroundPath::Yes | GroundPath::Disputed)
            {
                let (from, into) = (label[index.0].max(label[parent.0]), label[index.0].min(label[parent.0]));
                label.iter_mut().filter(|label| **label == from).for_each(|label| *label = into);
            }
        }
        let mut groups: Vec<BondedGroup> = Vec::new();
        let mut of_box = vec![0; label.len()];
        for first in 0..label.len() {
            if label[first] != first {
                continue;
            }
            let members: Vec<BoxIndex> = (0..label.len()).filter(|b| label[*b] == first).map(BoxIndex).collect();
            members.iter().for_each(|member| of_box[member.0] = groups.len());
            let reach = reach_of(dwelling, &members);
            let panel = members.iter().find_map(|member| dwelling.circuit_of(*member)).map(|circuit| circuit.panel);
            groups.push(BondedGroup { members, reach, panel });
        }
        Self { groups, of_box }
    }

    /// The position of a box's group in `groups`.
    #[must_use]
    pub fn index_of(&self, device_box: BoxIndex) -> usize {
        self.of_box[device_box.0]
    }

    /// The group of a box.
    #[must_use]
    pub fn group_of(&self, device_box: BoxIndex) -> &BondedGroup {
        &self.groups[self.index_of(device_box)]
    }
}

impl Dwelling {
    /// Whether the run that feeds a box ties it to what feeds it, by its wiring method and by what was seen in the box.
    #[must_use]
    pub fn ground_path_to(&self, index: BoxIndex) -> GroundPath {
        let mut sightings = self.device_box(index).found.iter().rev().filter_map(|reading| reading.ground);
        let seen = sightings.find(|seen| *seen != GroundSeen::NotOpened);
        match seen {
            Some(GroundSeen::CutOff | GroundSeen::NoneSeen | GroundSeen::MetalLoose) => GroundPath::No,
            _ => self.cable_to(index).ground_path(),
        }
    }
}

/// The best reach of any member that is fed from outside the group, worsened where a tie inside is disputed.
fn reach_of(dwelling: &Dwelling, members: &[BoxIndex]) -> Reach {
    let disputed_inside = members.iter().any(|member| dwelling.ground_path_to(*member) == GroundPath::Disputed);
    let reach = members.iter().map(|member| reach_through(dwelling, *member, members)).min();
    match reach.unwrap_or(Reach::Unknown) {
        Reach::Panel if disputed_inside => Reach::Disputed,
        reach => reach,
    }
}

/// How far the group reaches through the run that feeds one of its members.
fn reach_through(dwelling: &Dwelling, member: BoxIndex, members: &[BoxIndex]) -> Reach {
    let path = dwelling.ground_path_to(member);
    match dwelling.device_box(member).known_feed() {
        Some(Feed::Panel(panel)) => match (path, dwelling.panel(panel).ground_bar) {
            (GroundPath::No, _) | (_, Some(false)) => Reach::Isolated,
            (GroundPath::Unknown, _) | (_, None) => Reach::Unknown,
            (GroundPath::Disputed, Some(true)) => Reach::Disputed,
            (GroundPath::Yes, Some(true)) => Reach::Panel,
        },
        Some(Feed::Box(parent)) if members.contains(&parent) => Reach::Isolated,
        Some(Feed::Box(_)) | None if path == GroundPath::No => Reach::Isolated,
        Some(Feed::Box(_)) | None => Reach::Unknown,
    }
}
