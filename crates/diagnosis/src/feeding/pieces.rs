//! A question falls in pieces where all that lies below a box is known: what stands above it and what stands below it are
//! told apart.

use super::question::{Fact, Node, Onward, Question};
use super::shape::Shape;

/// A part of a question that can be asked alone.
#[derive(Clone, Debug)]
pub(crate) struct Piece {
    /// The part, with positions of its own.
    pub(crate) question: Question,
    /// By position in the part: the box of the whole.
    pub(crate) names: Vec<usize>,
    /// Its root: that of the whole, or the box at which it was cut off.
    pub(crate) root: Node,
}

impl Piece {
    /// The node of the whole.
    pub(crate) fn named(&self, node: Node) -> Node {
        self.names.get(node).copied().unwrap_or(self.root)
    }
}

/// The pieces of a question, the part at its root first; nothing where facts contradict one another on their face.
pub(crate) fn pieces(question: &Question) -> Option<Vec<Piece>> {
    let whole = Piece { question: question.clone(), names: (0..question.boxes()).collect(), root: question.root() };
    let mut open = vec![whole];
    let mut done = Vec::new();
    while let Some(piece) = open.pop() {
        match cut(&piece)? {
            Some((above, below)) => open.extend([below, above]),
            None => done.push(piece),
        }
    }
    Some(done)
}

/// Cuts a piece in two at a box below which everything is known; `Some(None)` where there is no such box.
fn cut(piece: &Piece) -> Option<Option<(Piece, Piece)>> {
    let question = &piece.question;
    if question.unknown().len() >= u32::BITS as usize {
        return Some(None);
    }
    let shape = Shape::of(question)?;
    let settled = |at: &usize| shape.must[*at] == shape.may[*at] && ![0, shape.all()].contains(&shape.must[*at]);
    let Some(at) = (0..question.boxes()).find(settled) else { return Some(None) };
    let is_below = |of: usize| of != at && (shape.known_above(at, of) || shape.own[of] & shape.must[at] != 0);
    let (below, above): (Vec<usize>, Vec<usize>) = (0..question.boxes()).partition(|of| is_below(*of));
    let inner = part(piece, &below, at, |fact| (is_below(fact.above) && is_below(fact.below)).then_some(*fact));
    let mut outer = part(piece, &above, question.root(), |fact| {
        let below = if is_below(fact.below) { at } else { fact.below };
        (!is_below(fact.above) && fact.above != below && fact.above != at).then_some(Fact { below, ..*fact })
    });
    if let Some(end) = above.iter().position(|of| *of == at) {
        outer.question.onward[end] = Onward { shares: vec![1.0], beyond: 0.0 };
        outer.question.weight[end].fill(0.0);
    }
    Some(Some((outer, inner)))
}

/// The part of a piece that holds these boxes below this root.
fn part(piece: &Piece, boxes: &[usize], root: Node, fact: impl Fn(&Fact) -> Option<Fact>) -> Piece {
    let question = &piece.question;
    let local = |node: Node| boxes.iter().position(|of| *of == node);
    let local_or_root = |node: Node| local(node).unwrap_or(boxes.len());
    let nodes: Vec<Node> = boxes.iter().copied().chain([root]).collect();
    let facts = question
        .facts
        .iter()
        .filter_map(fact)
        .filter_map(|fact| Some(Fact { above: local(fact.above)?, below: local(fact.below)?, ..fact }));
    Piece {
        question: Question {
            known: boxes.iter().map(|of| question.known[*of].map(local_or_root)).collect(),
            weight: nodes.iter().map(|of| boxes.iter().map(|fed| question.weight[*of][*fed]).collect()).collect(),
            onward: nodes.iter().map(|of| question.onward[*of].clone()).collect(),
            facts: facts.collect(),
        },
        names: boxes.iter().map(|of| piece.names[*of]).collect(),
        root: piece.named(root),
    }
}
