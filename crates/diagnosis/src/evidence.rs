//! The evidence of a whole dwelling, gathered box by box, and what lies upstream of what.

use crate::ground_reading::{GroundReading, ground_reading};
use crate::pattern::{Pattern, pattern};
use dwelling::{
    BondedGroups, BoxIndex, CircuitTree, Dwelling, Feed, GroundSeen, LoadState, MeterKind, Reach, Reading,
    TesterVerdict, circuit_trees,
};

/// The evidence at one box.
#[derive(Debug)]
pub(crate) struct Evidence<'a> {
    /// Every set of readings with what it looks like, in the order taken.
    pub(crate) taken: Vec<(&'a Reading, Pattern)>,
    /// What was last seen of a ground inside; nothing where the box was not opened.
    pub(crate) seen: Option<GroundSeen>,
    /// What the readings say of the ground, all taken together.
    pub(crate) ground: GroundReading,
}

impl Evidence<'_> {
    /// Whether any set of readings looks like this.
    pub(crate) fn looks(&self, like: Pattern) -> bool {
        self.taken.iter().any(|(_, pattern)| *pattern == like)
    }

    /// Whether a plug-in tester said this.
    pub(crate) fn tester_said(&self, verdict: TesterVerdict) -> bool {
        self.taken.iter().any(|(reading, _)| reading.tester == Some(verdict))
    }

    /// Whether the readings speak for a ground, however weakly.
    pub(crate) fn speaks_for_ground(&self) -> bool {
        matches!(self.ground, GroundReading::Separate | GroundReading::Right | GroundReading::Mixed)
            || self.looks(Pattern::HotGroundPresent)
    }

    /// Every set of readings that says anything, in words; sightings alone are left out.
    pub(crate) fn all_words(&self) -> Vec<String> {
        self.words(|reading, pattern| {
            pattern != Pattern::Silent
                || reading.tester.is_some()
                || reading.ground_impedance.is_some()
                || [reading.hot_earth, reading.neutral_earth, reading.ground_earth, reading.hot_box]
                    .iter()
                    .any(Option::is_some)
        })
    }

    /// The sets of readings that look like this, in words.
    pub(crate) fn words(&self, wanted: impl Fn(&Reading, Pattern) -> bool) -> Vec<String> {
        self.taken.iter().filter(|(reading, pattern)| wanted(reading, *pattern)).map(|(r, _)| in_words(r)).collect()
    }
}

/// A dwelling with its evidence.
#[derive(Debug)]
pub(crate) struct Case<'a> {
    pub(crate) dwelling: &'a Dwelling,
    pub(crate) trees: Vec<CircuitTree>,
    pub(crate) groups: BondedGroups,
    /// The evidence at every box, in box order.
    pub(crate) at: Vec<Evidence<'a>>,
}

impl<'a> Case<'a> {
    /// Gathers the evidence of a dwelling.
    pub(crate) fn of(dwelling: &'a Dwelling) -> Self {
        let at = dwelling
            .boxes
            .iter()
            .map(|device_box| Evidence {
                taken: device_box.found.iter().map(|reading| (reading, pattern(reading))).collect(),
                seen: device_box
                    .found
                    .iter()
                    .rev()
                    .filter_map(|reading| reading.ground)
                    .find(|seen| *seen != GroundSeen::NotOpened),
                ground: ground_reading(&device_box.found),
            })
            .collect();
        Self { dwelling, trees: circuit_trees(dwelling), groups: BondedGroups::of(dwelling), at }
    }

    /// The evidence at a box.
    pub(crate) fn evidence(&self, index: BoxIndex) -> &Evidence<'a> {
        &self.at[index.0]
    }

    /// Every box with its evidence, in survey order.
    pub(crate) fn boxes(&self) -> impl Iterator<Item = (BoxIndex, &Evidence<'a>)> {
        self.at.iter().enumerate().map(|(index, evidence)| (BoxIndex(index), evidence))
    }

    /// How a box's bonded group stands to the panel.
    pub(crate) fn reach(&self, index: BoxIndex) -> Reach {
        self.groups.group_of(index).reach
    }

    /// The box that feeds this one.
    pub(crate) fn previous(&self, index: BoxIndex) -> Option<BoxIndex> {
        match self.dwelling.device_box(index).fed_by {
            Some(Feed::Box(parent)) if parent != index => Some(parent),
            _ => None,
        }
    }

    /// The boxes between this one and the panel, nearest first.
    pub(crate) fn upstream(&self, index: BoxIndex) -> Vec<BoxIndex> {
        let mut found = Vec::new();
        let mut at = index;
        while let Some(parent) = self.previous(at)
            && !found.contains(&parent)
        {
            found.push(parent);
            at = parent;
        }
        found
    }

    /// The boxes fed from this one, however far, in the order of the feeding.
    pub(crate) fn downstream(&self, index: BoxIndex) -> Vec<BoxIndex> {
        let tree = self.trees.iter().find(|tree| tree.members.contains(&index) || tree.unplaced.contains(&index));
        tree.map(|tree| tree.downstream(index)).unwrap_or_default()
    }

    /// This box and, where known, the one before it: the two to open first.
    pub(crate) fn here_and_before(&self, index: BoxIndex) -> Vec<BoxIndex> {
        std::iter::once(index).chain(self.previous(index)).collect()
    }

    /// The name of a box as the user wrote it.
    pub(crate) fn id(&self, index: BoxIndex) -> &str {
        &self.dwelling.device_box(index).id
    }

    /// The names of boxes, as a list in a sentence.
    pub(crate) fn ids(&self, boxes: &[BoxIndex]) -> String {
        let named: Vec<String> = boxes.iter().map(|index| format!("`{}`", self.id(*index))).collect();
        named.join(", ")
    }
}

/// Whether a load of its own was on while this was read.
pub(crate) fn is_loaded(reading: &Reading) -> bool {
    matches!(reading.load, Some(LoadState::Lamp | LoadState::Heavy)) || reading.meter == Some(MeterKind::LoadTester)
}

/// Whether phantom volts collapse under the instrument that took this.
pub(crate) fn sinks_phantoms(reading: &Reading) -> bool {
    matches!(reading.meter, Some(MeterKind::LowImpedance | MeterKind::TestLamp | MeterKind::LoadTester))
}

/// A set of readings in words.
pub(crate) fn in_words(reading: &Reading) -> String {
    let pairs = [
        ("hot–neutral", reading.hot_neutral),
        ("hot–ground", reading.hot_ground),
        ("neutral–ground", reading.neutral_ground),
        ("hot–earth", reading.hot_earth),
        ("neutral–earth", reading.neutral_earth),
        ("ground–earth", reading.ground_earth),
        ("hot–box", reading.hot_box),
    ];
    let mut words: Vec<String> =
        pairs.iter().filter_map(|(name, volts)| volts.map(|volts| format!("{name} {volts}"))).collect();
    words.extend(reading.ground_impedance.map(|ohms| format!("ground impedance {ohms}")));
    words.extend(reading.tester.map(|verdict| format!("plug-in tester: {verdict}")));
    let measured = pairs.iter().any(|(_, volts)| volts.is_some()) || reading.ground_impedance.is_some();
    let unrecorded = |what: &str| measured.then(|| format!("{what} not recorded"));
    words.extend(match reading.meter {
        Some(MeterKind::HighImpedance) => Some("high-impedance meter".into()),
        Some(MeterKind::LowImpedance) => Some("low-impedance meter".into()),
        Some(MeterKind::TestLamp) => Some("test lamp".into()),
        Some(MeterKind::LoadTester) => Some("load tester".into()),
        Some(MeterKind::PlugInTester) if !measured => None,
        Some(MeterKind::PlugInTester) => Some("plug-in tester".into()),
        None => unrecorded("kind of meter"),
    });
    words.extend(match reading.load {
        Some(LoadState::None) => Some("no load".into()),
        Some(LoadState::Lamp) => Some("a small load on".into()),
        Some(LoadState::Heavy) => Some("a heavy load on".into()),
        None => unrecorded("load"),
    });
    format!("read {}", words.join(", "))
}
