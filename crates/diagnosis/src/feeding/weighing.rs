//! Every order that fits, taken together: how many there are, the share of each run, the most probable, what each test
//! would tell.

use super::inside::{Inside, subsets};
use super::likely::Order;
use super::outside::Outside;
use super::pieces::{Piece, pieces};
use super::question::{Node, Question};
use super::reckoned::MOST_COUNTED;
use super::shape::Shape;
use std::collections::BTreeSet;

/// The most boxes of unknown feed in one piece for which every order is looked at.
pub const MOST_UNKNOWN: usize = 14;

/// What is known of a question once every order that fits has been looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighing {
    /// How many orders fit; [`MOST_COUNTED`] stands for itself and more.
    pub orders: u64,
    /// By node that feeds, the root last, then by box: the share of the orders in which it feeds it.
    pub share: Vec<Vec<f64>>,
    /// The most probable orders, the best first.
    pub likeliest: Vec<Likely>,
    /// What parting the conductors at each box would tell, in the order of the boxes.
    pub partings: Vec<Parting>,
}

/// One whole order.
#[derive(Clone, Debug, PartialEq)]
pub struct Likely {
    /// Its share among all that fit.
    pub share: f64,
    /// By box: what feeds it.
    pub feeds: Vec<Node>,
}

/// What parting the conductors at one box would tell.
#[derive(Clone, Debug, PartialEq)]
pub struct Parting {
    /// The box.
    pub at: usize,
    /// What may be seen, the likeliest first.
    pub outcomes: Vec<Seen>,
    /// How likely it is that the order then most probable is the true one.
    pub right_after: f64,
    /// What share of the orders is left afterwards, as expected.
    pub left_after: f64,
}

/// One thing that may be seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// The boxes that are dead, in their order.
    pub dead: Vec<usize>,
    /// How likely it is.
    pub share: f64,
    /// How many orders are left then.
    pub orders: u64,
}

/// Why a question was not weighed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotWeighed {
    /// No order fits: what is said of it contradicts itself.
    NothingFits,
    /// A piece of it has so many boxes of unknown feed that not every order can be looked at.
    TooMany(usize),
}

/// Looks at every order that fits, and gives so many of the most probable.
///
/// # Errors
/// [`NotWeighed`].
pub fn weigh(question: &Question, likeliest: usize) -> Result<Weighing, NotWeighed> {
    let pieces = pieces(question).ok_or(NotWeighed::NothingFits)?;
    let largest = pieces.iter().map(|piece| piece.question.unknown().len()).max().unwrap_or(0);
    if largest > MOST_UNKNOWN {
        return Err(NotWeighed::TooMany(largest));
    }
    let weighed: Option<Vec<Weighed>> = pieces.iter().map(|piece| Weighed::of(piece, likeliest)).collect();
    weighed.map(|weighed| together(question, &pieces, weighed, likeliest)).ok_or(NotWeighed::NothingFits)
}

/// Whether any order fits; nothing where a piece is too large to tell.
pub(crate) fn any_fits(question: &Question) -> Option<bool> {
    let Some(pieces) = pieces(question) else { return Some(false) };
    if pieces.iter().any(|piece| piece.question.unknown().len() > MOST_UNKNOWN) {
        return None;
    }
    Some(
        pieces
            .iter()
            .all(|piece| Shape::of(&piece.question).is_some_and(|shape| !Inside::of(&shape).total().is_none())),
    )
}

/// The most probable order alone; nothing where none fits or there are too many.
pub(crate) fn likeliest_order(question: &Question) -> Option<Vec<Node>> {
    let mut feeds = vec![question.root(); question.boxes()];
    for piece in pieces(question)? {
        if piece.question.unknown().len() > MOST_UNKNOWN {
            return None;
        }
        let best = Inside::of(&Shape::of(&piece.question)?).likeliest(1).into_iter().next()?;
        for (at, feed) in best.feeds.iter().enumerate() {
            feeds[piece.names[at]] = piece.named(*feed);
        }
    }
    Some(feeds)
}

/// What one piece gives, in the boxes of the whole.
struct Weighed {
    orders: u64,
    /// Node that feeds, box, share.
    runs: Vec<(Node, usize, f64)>,
    likeliest: Vec<Vec<(usize, Node)>>,
    shares: Vec<f64>,
    partings: Vec<Parting>,
}

impl Weighed {
    fn of(piece: &Piece, likeliest: usize) -> Option<Self> {
        let question = &piece.question;
        let shape = Shape::of(question)?;
        let inside = Inside::of(&shape);
        let all = inside.total();
        let (total, orders) = (all.whole, all.counted());
        // Weights can be too small to be told from none where each of them is not.
        if orders == 0 || total <= 0.0 {
            return None;
        }
        let best: Vec<Order> = inside.likeliest(likeliest.max(1));
        let outside = Outside::of(&inside);
        let mut runs = Vec::new();
        for node in 0..=question.root() {
            for (bit, head) in shape.heads.iter().enumerate() {
                let share = outside.with_run(node, bit).whole / total;
                if share > 0.0 {
                    runs.push((piece.named(node), piece.names[*head], share));
                }
            }
            for fed in &shape.feeds[node] {
                runs.push((piece.named(node), piece.names[*fed], 1.0));
            }
        }
        let parting = |at: usize| {
            let mut outcomes = Vec::new();
            let (mut right_after, mut left_after) = (0.0, 0.0);
            for set in subsets(shape.may[at]) {
                let with = outside.with_below(at, set);
                if with.is_none() {
                    continue;
                }
                let share = with.whole / total;
                right_after += with.weightiest / total;
                left_after += share * share;
                let dead = (0..question.boxes()).filter(|of| shape.known_above(at, *of) || shape.own[*of] & set != 0);
                let dead = dead.map(|of| piece.names[of]).collect();
                outcomes.push(Seen { dead, share, orders: with.counted() });
            }
            Parting { at: piece.names[at], outcomes, right_after, left_after }
        };
        Some(Self {
            orders,
            runs,
            likeliest: best
                .iter()
                .map(|order| {
                    let feeds = order.feeds.iter().enumerate();
                    feeds.map(|(at, feed)| (piece.names[at], piece.named(*feed))).collect()
                })
                .collect(),
            shares: best.iter().map(|order| order.weight / total).collect(),
            partings: (0..question.boxes()).map(parting).collect(),
        })
    }
}

fn together(question: &Question, pieces: &[Piece], weighed: Vec<Weighed>, likeliest: usize) -> Weighing {
    let orders = weighed.iter().fold(1_u64, |orders, piece| orders.saturating_mul(piece.orders).min(MOST_COUNTED));
    let mut share = vec![vec![0.0; question.boxes()]; question.boxes() + 1];
    for (feed, at, of) in weighed.iter().flat_map(|piece| &piece.runs) {
        share[*feed][*at] = *of;
    }
    let mut best = vec![Likely { share: 1.0, feeds: vec![question.root(); question.boxes()] }];
    for piece in &weighed {
        let mut longer: Vec<Likely> = Vec::new();
        for (runs, share) in piece.likeliest.iter().zip(&piece.shares) {
            for order in &best {
                let mut feeds = order.feeds.clone();
                for (at, feed) in runs {
                    feeds[*at] = *feed;
                }
                longer.push(Likely { share: order.share * share, feeds });
            }
        }
        longer.sort_by(|one, other| other.share.total_cmp(&one.share));
        longer.truncate(likeliest.max(1));
        best = longer;
    }
    let mut partings: Vec<Parting> = Vec::new();
    for (position, piece) in weighed.iter().enumerate() {
        let others_best: f64 =
            weighed.iter().enumerate().filter(|(other, _)| *other != position).map(|(_, of)| of.shares[0]).product();
        let others_orders = weighed
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != position)
            .fold(1_u64, |orders, (_, of)| orders.saturating_mul(of.orders));
        for parting in &piece.partings {
            let mut parting = parting.clone();
            parting.right_after *= others_best;
            for seen in &mut parting.outcomes {
                seen.dead = with_all_below(pieces, parting.at, &seen.dead);
                seen.orders = seen.orders.saturating_mul(others_orders).min(MOST_COUNTED);
            }
            parting.outcomes.sort_by(|one, other| other.share.total_cmp(&one.share).then(one.dead.cmp(&other.dead)));
            partings.push(parting);
        }
    }
    partings.sort_by_key(|parting| parting.at);
    Weighing { orders, share, likeliest: best, partings }
}

/// Boxes with all that hangs on them, or on the box itself, in pieces of their own.
fn with_all_below(pieces: &[Piece], at: usize, boxes: &[usize]) -> Vec<usize> {
    let mut all: BTreeSet<usize> = boxes.iter().copied().collect();
    let mut next: Vec<usize> = boxes.iter().copied().chain([at]).collect();
    while let Some(root) = next.pop() {
        for piece in pieces.iter().filter(|piece| piece.root == root) {
            for of in &piece.names {
                if all.insert(*of) {
                    next.push(*of);
                }
            }
        }
    }
    all.into_iter().collect()
}
