//! What could change a plan: things the survey leaves open, and prices, each tried and planned anew.

use crate::assemble::assemble;
use crate::obstacles::shortfalls_added;
use crate::outline::Outline;
use crate::planned::{PlanFault, Planned};
use crate::standing::Standing;
use crate::unknowns::{Unknown, unknowns};
use dwelling::Dwelling;
use estimate::PriceBook;

pub use crate::price_line::PriceLine;

/// What comes of one value of something unknown, or of one price.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tried {
    /// What was tried, in words.
    pub value: String,
    /// What the plan costs more then, in cents. Nothing where something then stays unlawful, or equipment without the
    /// ground it needs, that the plan counts on: no price is put on that.
    pub costs_more_cents: Option<i64>,
    /// What the owner then pays more, in cents, with all that is charged besides; nothing where there is no price.
    pub owner_costs_more_cents: Option<i64>,
    /// What it then falls short of.
    pub falls_short: Vec<String>,
    /// What the plan then does differently.
    pub changes: Vec<String>,
}

/// Something unknown with what comes of each of its values.
pub struct Sensitive {
    /// What it is.
    pub unknown: Unknown,
    /// What comes of each value, in the order of the values.
    pub tried: Vec<Tried>,
}

impl Sensitive {
    /// The most that a value adds to the cost; nothing where one has no price.
    #[must_use]
    pub fn worst_cents(&self) -> Option<i64> {
        let all: Option<Vec<i64>> = self.tried.iter().map(|tried| tried.costs_more_cents).collect();
        all.and_then(|all| all.into_iter().max())
    }

    /// The least that a value adds to the cost.
    #[must_use]
    pub fn best_cents(&self) -> Option<i64> {
        self.tried.iter().filter_map(|tried| tried.costs_more_cents).min()
    }

    /// Whether any value changes what is done, what it costs or what it falls short of.
    #[must_use]
    pub fn changes_anything(&self) -> bool {
        let changes = |tried: &Tried| tried.costs_more_cents != Some(0) || !tried.changes.is_empty();
        self.tried.iter().any(changes)
    }
}

impl SensitivePrice {
    /// The furthest down and up, in percent, that were tried with every step to there leaving the plan's choices as they are.
    #[must_use]
    pub fn holds_within(&self) -> (i64, i64) {
        let stays = |(_, tried): &(&i64, &Tried)| tried.changes.is_empty();
        let moves = || MOVES.iter().zip(&self.tried);
        let down = moves().rev().skip_while(|(percent, _)| **percent > 0).take_while(stays).last();
        let up = moves().skip_while(|(percent, _)| **percent < 0).take_while(stays).last();
        (down.map_or(0, |(percent, _)| *percent), up.map_or(0, |(percent, _)| *percent))
    }
}

/// A line of the price book that the plan uses or could use, with what comes of moving it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SensitivePrice {
    /// The line.
    pub line: PriceLine,
    /// By each of [`MOVES`]: what comes of it.
    pub tried: Vec<Tried>,
}

/// By how many percent prices are moved.
pub const MOVES: [i64; 4] = [-50, -25, 25, 50];

/// How many values of unknown things are tried at most; each takes a plan.
const MOST_TRIED: usize = 1_000;

/// What could change a plan.
pub struct Sensitivity {
    /// The unknown things that were tried, those that could change most first.
    pub unknowns: Vec<Sensitive>,
    /// Those that were not, since there are too many.
    pub not_tried: Vec<Unknown>,
    /// The lines of the price book that the plan uses or could use, in the order of the book.
    pub prices: Vec<SensitivePrice>,
}

impl Planned<'_> {
    /// What could change this plan, made with this book and without wishes.
    ///
    /// # Errors
    /// [`PlanFault`], as [`Planned::of`].
    pub fn sensitivity(&self, book: &PriceBook) -> Result<Sensitivity, PlanFault> {
        let outline = Outline::of(self);
        let before = self.standing();
        let (mut tried, mut not_tried, mut left) = (Vec::new(), Vec::new(), MOST_TRIED);
        for unknown in unknowns(self) {
            if unknown.values.len() > left {
                not_tried.push(unknown);
                continue;
            }
            left -= unknown.values.len();
            let values = unknown.values.iter().map(|possible| {
                let mut other = self.facts.dwelling.clone();
                (possible.set)(&mut other);
                self.tried(&before, &outline, possible.value.clone(), &other, book)
            });
            let values = values.collect::<Result<Vec<Tried>, PlanFault>>()?;
            tried.push(Sensitive { unknown, tried: values });
        }
        tried.sort_by_key(|one| {
            let unpriced = one.worst_cents().is_none();
            let most = one.tried.iter().filter_map(|tried| tried.costs_more_cents).map(i64::abs).max().unwrap_or(0);
            (!unpriced, std::cmp::Reverse(one.worst_cents().unwrap_or(0)), std::cmp::Reverse(most))
        });
        let prices = self.sensitive_prices(&before, &outline, book)?;
        Ok(Sensitivity { unknowns: tried, not_tried, prices })
    }

    fn tried(
        &self,
        before: &Standing,
        outline: &Outline,
        value: String,
        other: &Dwelling,
        book: &PriceBook,
    ) -> Result<Tried, PlanFault> {
        let plan = Planned::of(other, self.facts.code.clone(), book)?;
        let after = plan.standing();
        let more = after.price.total().0 - before.price.total().0;
        let owner_more = book.owner_price(after.price).total.0 - self.book.owner_price(before.price).total.0;
        let has_price = after.is_as_lawful_as(before);
        Ok(Tried {
            value,
            costs_more_cents: has_price.then_some(more),
            owner_costs_more_cents: has_price.then_some(owner_more),
            falls_short: shortfalls_added(&plan, before, &after).into_iter().map(|(_, told)| told).collect(),
            changes: outline.changes_to(&Outline::of(&plan)),
        })
    }

    fn sensitive_prices(
        &self,
        before: &Standing,
        outline: &Outline,
        book: &PriceBook,
    ) -> Result<Vec<SensitivePrice>, PlanFault> {
        let mut list = Vec::new();
        let as_it_is = assemble(&self.facts, book);
        for line in PriceLine::all() {
            // What nothing to choose from costs by, nor the owner pays by, is neither used nor could be.
            let other = line.moved(book, 100);
            let assembled = assemble(&self.facts, &other);
            let is_weighed = assembled.problem != as_it_is.problem || assembled.dangers != as_it_is.dangers;
            let is_paid =
                |percent: &i64| line.moved(book, *percent).owner_price(before.price) != book.owner_price(before.price);
            if !is_weighed && !MOVES.iter().any(is_paid) {
                continue;
            }
            let tried = MOVES.iter().map(|percent| {
                let other = line.moved(book, *percent);
                self.tried(before, outline, format!("{percent:+} %"), self.facts.dwelling, &other)
            });
            list.push(SensitivePrice { line, tried: tried.collect::<Result<_, _>>()? });
        }
        Ok(list)
    }
}
