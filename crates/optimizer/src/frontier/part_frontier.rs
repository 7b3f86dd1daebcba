//! The frontier of one part: prices on openings and on worth find points and bound the corners between them; what they
//! leave open is searched corner by corner.

use crate::ascent::Preference;
use crate::bound::Bounder;
use crate::frontier::corner_search::CornerSearch;
use crate::frontier::corners::{Corner, Corners};
use crate::frontier::points::{Point, PointMaker};
use crate::frontier::priced_part::{Chain, PricedPart, at_prices, within_reach};
use crate::frontier::prices::{Mixture, Prices, best_prices};
use crate::frontier::value::Value;
use crate::link_state::{LinkState, Status};
use crate::part::Part;
use crate::primal::{bettered, lengths, priced as fed, rounded};
use crate::problem::{Cost, Problem};
use crate::weight::{IMPOSSIBLE, Weight};

/// Prices that come so near to the best, in cents, are not bettered.
const NEAR_ENOUGH: f64 = 0.75;

/// To bound a part at new prices takes about as long as so many nodes of a search.
const SOWN_AS_NODES: u64 = 8;

/// The frontier of a part.
pub(super) struct PartFrontier {
    pub points: Vec<(Value, Point)>,
    /// Whether all are there.
    pub complete: bool,
}

/// What a part can cost, open and be worth.
pub(super) struct Ranges {
    pub least_openings: i64,
    pub most_openings: i64,
    pub most_cents: i64,
    pub most_worth: i128,
}

/// Returns within what a part's openings, cents and worth lie, whatever is chosen.
pub(super) fn ranges(problem: &Problem, part: &Part<'_>, worth: &[i128]) -> Ranges {
    let mut links: Vec<usize> = part.arcs.iter().map(|arc| arc.link).collect();
    links.sort_unstable();
    links.dedup();
    let (mut least, mut most, mut most_cents) = (0, 0, 0);
    let mut add = |costs: &mut dyn Iterator<Item = Cost>, or_none: bool| {
        let costs: Vec<Cost> = costs.chain(or_none.then(Cost::default)).collect();
        least += costs.iter().map(|cost| cost.openings).min().unwrap_or(0);
        most += costs.iter().map(|cost| cost.openings).max().unwrap_or(0);
        most_cents += costs.iter().map(|cost| cost.cents).max().unwrap_or(0);
    };
    for link in links {
        add(&mut problem.links[link].cost_by_grade.iter().copied(), true);
    }
    for tree in &part.trees {
        add(&mut tree.compiled.given.root_options.iter().map(|option| option.cost), false);
        for node in &tree.compiled.given.nodes {
            add(&mut node.options.iter().map(|option| option.cost), false);
        }
    }
    Ranges { least_openings: least, most_openings: most, most_cents, most_worth: worth.iter().sum() }
}

/// Returns the frontier of a part below so many cents; `least` is a state that weighs least, as far as it was found, and
/// `left` is how many nodes may still be searched.
pub(super) fn part_frontier(
    problem: &Problem,
    part: &Part<'_>,
    worth: &[i128],
    below_cents: i64,
    least: Option<(Weight, LinkState)>,
    left: &mut Option<u64>,
) -> PartFrontier {
    let ranges = ranges(problem, part, worth);
    let maker = PointMaker::new(problem, part, worth);
    let below_cents = below_cents.min(ranges.most_cents + 1);
    let all = Corner { below_cents, openings: ranges.most_openings, worth: 0 };
    let mut corners: Corners<Point> = Corners::new(all);
    if let Some((weight, state)) = least {
        maker.add(Prices::default(), weight, &state, &mut corners);
    }
    let span = ranges.most_openings.abs().max(ranges.least_openings.abs());
    let chain = Chain::default();
    let mut pool: Vec<PricedPart<'_>> = Vec::new();
    loop {
        let is_closed = |corner: &Corner| {
            corner.worth > ranges.most_worth
                || corner.openings < ranges.least_openings
                || pool.iter().any(|priced| priced.closes(corner, priced.least))
        };
        for corner in corners.open.clone().iter().filter(|corner| is_closed(corner)) {
            corners.close(corner);
        }
        if corners.open.is_empty() || *left == Some(0) {
            return PartFrontier { complete: corners.open.is_empty(), points: corners.points };
        }
        // New prices bring points soonest; a corner is searched where no corner has any.
        let values: Vec<Value> = corners.points.iter().map(|(value, _)| *value).collect();
        let mut to_search = None;
        let mut to_sow = None;
        for &corner in corners.open.iter().rev() {
            let mixture = best_prices(&corner, &values);
            let prices = within_reach(mixture.prices, span, ranges.most_worth);
            match known(&pool, &corner, prices, &mixture) {
                None => {
                    to_sow = Some(prices);
                    break;
                }
                Some(at) if to_search.is_none() => to_search = Some((at, corner, mixture)),
                Some(_) => {}
            }
        }
        if let Some(prices) = to_sow {
            let priced = chain.add(at_prices(problem, part, worth, prices));
            pool.push(sown(&maker, priced, prices, &mut corners));
            *left = left.map(|left| left.saturating_sub(SOWN_AS_NODES));
        } else if let Some((at, corner, mixture)) = to_search {
            let fractions = fractions(part, &mixture, &corners.points);
            CornerSearch::new(&maker, &mut pool[at], &mut corners, corner).run(&fractions, left);
        }
    }
}

/// Bounds a part at prices with nothing decided, and adds the points that come of it.
fn sown<'c>(
    maker: &PointMaker<'_>,
    part: &'c Part<'c>,
    prices: Prices,
    corners: &mut Corners<Point>,
) -> PricedPart<'c> {
    let mut priced = PricedPart {
        prices,
        bounder: Bounder::careful(part),
        least: -IMPOSSIBLE,
        guide: Vec::new(),
        preference: Preference::Last,
    };
    let mut state = LinkState::undecided(part);
    if !state.settle(part) {
        priced.least = IMPOSSIBLE;
        return priced;
    }
    for preference in Preference::ALL.into_iter().chain([Preference::Last]) {
        let guide = maker.lightest(prices, corners).map(|state| priced.bounder.used(state));
        priced.guide = guide.unwrap_or_default();
        let bound = priced.bounder.bound(&state, IMPOSSIBLE, &priced.guide, preference);
        if bound.value > priced.least {
            priced.least = bound.value;
            priced.preference = preference;
        }
        for length in [&bound.left, &lengths(part, &state)] {
            let feeding = rounded(part, &state, &bound.wishes, length);
            let Some((weight, _)) = fed(&mut priced.bounder, &feeding) else { continue };
            let (_, feeding) = bettered(&mut priced.bounder, &state, feeding, weight);
            if let Some((weight, found)) = fed(&mut priced.bounder, &feeding) {
                maker.add(prices, weight, &found, corners);
            }
        }
    }
    priced
}

/// A part at prices that bound the corner about as well as any can, if one is known.
fn known(pool: &[PricedPart<'_>], corner: &Corner, prices: Prices, mixture: &Mixture) -> Option<usize> {
    if let Some(same) = pool.iter().position(|priced| priced.prices == prices) {
        return Some(same);
    }
    let cents = |at: &usize| pool[*at].cents_in(corner);
    let best = (0..pool.len()).max_by(|one, other| cents(one).total_cmp(&cents(other)))?;
    (cents(&best) >= mixture.cents - NEAR_ENOUGH).then_some(best)
}

/// By group: how much of it the mixture supplies.
fn fractions(part: &Part<'_>, mixture: &Mixture, points: &[(Value, Point)]) -> Vec<f64> {
    let mut fractions = vec![0.0; part.groups.len()];
    for (point, amount) in &mixture.of {
        for (group, status) in points[*point].1.state.status.iter().enumerate() {
            if matches!(status, Status::Fed(_)) {
                fractions[group] += amount;
            }
        }
    }
    fractions
}
