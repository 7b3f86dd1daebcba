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
/// # Links and supply
/// A link may be chosen only if it brings supply: the chosen links must form a forest in which every component holds
/// exactly one source, and flow runs from the source outwards. A group is supplied iff it is a source or a chosen
/// link reaches it. So every group has at most one chosen link that flows into it, a source has none, and a link whose
/// ends are one group, or two sources, is never chosen.
///
/// The grade of a chosen link is the highest [`Group::grade`] of all groups that it supplies, directly or further on.
/// No group may be left by a link of a higher grade than it [carries](Group::carries), be it a source or not.
///
/// # Marks
/// A node *sees* a set of marks. One that hangs on the root sees what the root option gives. A child behind its
/// parent's load side sees what the parent sees and what the parent's option gives; any other child sees what its
/// parent sees. What an option has of its own counts at its node alone.
///
/// # Subtrees
/// Counts and burdens are those of the tree as the chosen [reparenting](Link::reparents) links leave it.
///
/// # Sizes
/// The largest costs of every place together, taken as positive, stay within 2⁶⁰ cents, 2¹⁴ openings and 2¹⁴ devices,
/// and there are at most 16,384 links; burdens are not negative. [`Problem::faults`] tells what breaks this.
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
    /// The most burden that the whole tree may have. It binds only an option that gives marks.
    pub burden_limit: Option<i64>,
}

/// A node of a tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Node {
    /// Its parent in the tree, of a lower index than its own; `None` hangs it on the root.
    pub parent: Option<usize>,
    /// Whether it can be put behind its parent's load side. Where not, it sees what its parent sees. Without effect on
    /// a node that hangs on the root.
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
    /// The most chosen links that may land at this node, indexed by the highest grade of those that do. None may
    /// where that grade is beyond the end. Where no link lands, nothing is asked. A link with both ends at this node
    /// lands twice.
    pub most_landings: Vec<u32>,
    /// The most outlets that may be behind its load side: the whole subtrees of the children put there, itself not.
    pub count_limit: Option<u32>,
    /// The most burden that may be behind it: its node's and that of the subtrees of the children behind its load side.
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
    /// The grade of supply that it needs once it is supplied by a link. Without effect on a source.
    pub grade: usize,
    /// The highest grade of a chosen link that may lead on from it, from a source as well.
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
    /// It cannot carry a grade beyond the end.
    pub cost_by_grade: Vec<Cost>,
    /// Whether, when chosen, the node at `to` hangs below the node at `from` instead of its old parent – on the root
    /// of its own tree where `from` has no node – and is not behind its new parent's load side. The way of the flow
    /// does not matter. `to` must have a node.
    ///
    /// It is not chosen where `from` has a node of another tree, where another chosen link hangs the same node, or
    /// where the chosen ones together would hang a node below itself.
    pub reparents: bool,
}

/// One end of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LinkEnd {
    /// The group it joins.
    pub group: usize,
    /// The tree and the node in it at which it lands when chosen, whichever way it flows, unless it ends at a place
    /// that is no node. The node need not belong to the group.
    pub lands_at: Option<(usize, usize)>,
}
