//! The problem: what can be chosen, what each choice costs, and what a choice needs.

use std::iter::Sum;
use std::ops::{Add, BitOr};

/// What a choice costs. Compared in this order: money first, then the tie-breakers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cost {
    /// Cents.
    pub cents: i64,
    /// Openings made in finished surfaces.
    pub openings: i64,
    /// Devices fitted.
    pub devices: i64,
}

impl Add for Cost {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            cents: self.cents + other.cents,
            openings: self.openings + other.openings,
            devices: self.devices + other.devices,
        }
    }
}

impl Sum for Cost {
    fn sum<I: Iterator<Item = Self>>(costs: I) -> Self {
        costs.fold(Self::default(), Add::add)
    }
}

/// A set of marks that flow down a tree, one bit each; there are at most four kinds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Marks(pub u8);

impl Marks {
    /// No mark.
    pub const NONE: Self = Self(0);

    /// Whether every mark of `other` is in this set.
    #[must_use]
    pub const fn covers(self, other: Self) -> bool {
        self.0 & other.0 == other.0
    }
}

impl BitOr for Marks {
    type Output = Self;
    fn bitor(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }
}

/// The whole problem: choose one option per tree root and per node and a set of links, at the least cost, such that
/// every option's needs hold.
///
/// A link may be chosen only if it brings supply: the chosen links must form a forest in which every component holds
/// exactly one source, and flow runs from the source outwards. A group is supplied iff it is a source or a chosen
/// link reaches it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// The trees.
    pub trees: Vec<Tree>,
    /// The groups that links join. Every node belongs to one.
    pub groups: Vec<Group>,
    /// The links that can be chosen.
    pub links: Vec<Link>,
}

/// A tree of nodes below one root.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tree {
    /// What can be chosen at the root. Exactly one is.
    pub root_options: Vec<RootOption>,
    /// The nodes; a parent stands before its children.
    pub nodes: Vec<Node>,
}

/// A choice at the root of a tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RootOption {
    /// Its cost.
    pub cost: Cost,
    /// The marks it gives to everything below.
    pub gives: Marks,
    /// The most burden that may lie below it, where it is limited.
    pub burden_limit: Option<i64>,
}

/// A node of a tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Node {
    /// Its parent in the tree; `None` hangs it on the root.
    pub parent: Option<usize>,
    /// Whether its parent's option can pass marks to it through its load side. Where not, it sees what its parent sees.
    pub behind_load: bool,
    /// The group it belongs to.
    pub group: usize,
    /// What it adds to the burden of whatever protects it.
    pub burden: i64,
    /// What it adds to the count behind a load side: 1 for an outlet, 0 for a splice.
    pub count: u32,
    /// What can be chosen here. Exactly one is.
    pub options: Vec<NodeOption>,
}

/// A choice at a node.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NodeOption {
    /// Its cost.
    pub cost: Cost,
    /// Marks that must hold here: given from above, or by this option itself.
    pub needs: Marks,
    /// Marks it has of itself at the node.
    pub own: Marks,
    /// Marks it gives to those children, chosen one by one, that are put behind its load side.
    pub gives: Marks,
    /// What it needs of its group's supply.
    pub supply: SupplyNeed,
    /// By the highest grade that lands: the most chosen links that may land at this node. Indexed by grade.
    pub most_landings: Vec<u32>,
    /// The most outlets that may be behind its load side, its children's whole subtrees counted, itself not.
    pub count_limit: Option<u32>,
    /// The most burden that may be behind it: its own and that of the subtrees of the children behind its load side.
    /// It binds only an option that has marks of its own or gives some.
    pub burden_limit: Option<i64>,
}

/// What an option needs of its group's supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SupplyNeed {
    /// The group must be supplied.
    Supplied,
    /// The group must not be supplied.
    Unsupplied,
    /// Either.
    Any,
}

/// A group of nodes that are supplied together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Group {
    /// Whether it is supplied from the start: a source.
    pub source: bool,
    /// The grade of supply that it needs once it is supplied by a link.
    pub grade: usize,
    /// The highest grade that can be led on through it.
    pub carries: usize,
}

/// A link that can be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// One end.
    pub from: LinkEnd,
    /// The other end.
    pub to: LinkEnd,
    /// Whether flow may also run from `to` to `from`.
    pub both_ways: bool,
    /// Its cost by the grade it must carry: the highest grade of all groups that it supplies, directly or further on.
    pub cost_by_grade: Vec<Cost>,
    /// Whether, when chosen, the node at `to` hangs below the node at `from` instead of its old parent – on the root
    /// of its own tree where `from` has no node – and is not behind any load side.
    pub reparents: bool,
}

/// One end of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LinkEnd {
    /// The group it joins.
    pub group: usize,
    /// The tree and the node in it at which it lands, unless it ends at a place that is no node.
    pub lands_at: Option<(usize, usize)>,
}
