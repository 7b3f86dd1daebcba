//! Prices on openings and on worth that bound a corner best, as far as the points known tell: a linear program of three
//! rows, by the simplex method.

use crate::frontier::corners::Corner;
use crate::frontier::value::Value;

/// A price on openings and one on worth, in 1/16 cents; neither below zero.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Prices {
    pub opening: i64,
    pub worth: i64,
}

/// Parts of a cent in a price.
pub(super) const PARTS: i64 = 16;

/// The most steps of the simplex method: prices that are not the best bound less, and no worse than that.
const MOST_STEPS: usize = 200;
const NEARLY_NOTHING: f64 = 1e-9;

/// What the linear program says of a corner.
#[derive(Debug)]
pub(super) struct Mixture {
    pub prices: Prices,
    /// The points that a mixture within the corner is cheapest of, and how much of each.
    pub of: Vec<(usize, f64)>,
    /// What the corner costs at least at these prices, as far as the points known tell.
    pub cents: f64,
}

/// A column: how much of a point, or of what is spare.
type Column = [f64; 3];

/// Returns the prices at which the points known, mixed, are dearest in a corner, and their cheapest mixture there.
///
/// Rounding makes prices a little worse and never wrong: any prices bound.
pub(super) fn best_prices(corner: &Corner, points: &[Value]) -> Mixture {
    let base = corner.below_cents;
    // What the corner must be better than stands for a first mixture; then what is spare of openings and of worth.
    let relative = |value: &Value| -> (Column, f64) {
        let column = [1.0, (value.openings - corner.openings) as f64, (value.worth - corner.worth) as f64];
        (column, (value.cents.saturating_sub(base)) as f64)
    };
    let mut columns: Vec<(Column, f64)> = vec![([1.0, 0.0, 0.0], 0.0), ([0.0, 1.0, 0.0], 0.0), ([0.0, 0.0, -1.0], 0.0)];
    columns.extend(points.iter().map(relative));
    let mut basis = [0, 1, 2];
    let mut inverse = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, -1.0]];
    let mut amounts = [1.0, 0.0, 0.0];
    let mut dual = [0.0; 3];
    for step in 0..MOST_STEPS {
        for (row, dual) in dual.iter_mut().enumerate() {
            *dual = (0..3).map(|at| columns[basis[at]].1 * inverse[at][row]).sum();
        }
        let reduced = |(column, cost): &(Column, f64)| cost - (0..3).map(|row| dual[row] * column[row]).sum::<f64>();
        let worthwhile = columns.iter().enumerate().map(|(at, column)| (at, reduced(column)));
        let mut worthwhile =
            worthwhile.filter(|(at, reduced)| *reduced < -NEARLY_NOTHING * (1.0 + columns[*at].1.abs()));
        // The first of all in the later steps keeps it from going round in circles.
        let entering = if step < MOST_STEPS / 2 {
            worthwhile.min_by(|one, other| one.1.total_cmp(&other.1))
        } else {
            worthwhile.next()
        };
        let Some((entering, _)) = entering else { break };
        let change: Column =
            std::array::from_fn(|at| (0..3).map(|row| inverse[at][row] * columns[entering].0[row]).sum());
        let rows = (0..3).filter(|row| change[*row] > NEARLY_NOTHING);
        let Some(leaving) = rows.min_by(|one, other| {
            let ratio = |row: usize| amounts[row] / change[row];
            ratio(*one).total_cmp(&ratio(*other)).then(basis[*one].cmp(&basis[*other]))
        }) else {
            break;
        };
        let pivot = change[leaving];
        let of_pivot = inverse[leaving].map(|entry| entry / pivot);
        let amount = amounts[leaving] / pivot;
        for row in (0..3).filter(|row| *row != leaving) {
            for at in 0..3 {
                inverse[row][at] -= change[row] * of_pivot[at];
            }
            amounts[row] = (amounts[row] - change[row] * amount).max(0.0);
        }
        inverse[leaving] = of_pivot;
        amounts[leaving] = amount;
        basis[leaving] = entering;
    }
    let of = basis.iter().zip(amounts).filter(|(column, amount)| **column >= 3 && *amount > NEARLY_NOTHING);
    let rounded = |price: f64| (price * PARTS as f64).round().max(0.0) as i64;
    Mixture {
        prices: Prices { opening: rounded(-dual[1]), worth: rounded(dual[2]) },
        of: of.map(|(column, amount)| (column - 3, amount)).collect(),
        cents: base as f64 + dual[0],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: from (10 cents, worth 0) to (50, 4) worth costs 10 a piece; at worth 2 half of each is mixed.
    #[test]
    fn between_two_points_worth_has_their_slope_for_its_price() {
        let point = |cents, worth| Value { cents, openings: 0, worth };
        let corner = Corner { below_cents: 50, openings: 0, worth: 2 };
        let mixture = best_prices(&corner, &[point(10, 0), point(50, 4)]);
        assert_eq!(mixture.prices.worth, 10 * PARTS);
        assert_eq!((mixture.of.len(), mixture.cents), (2, 30.0));
        assert!(mixture.of.iter().all(|(_, amount)| *amount == 0.5));
    }

    /// By hand: an opening less costs 30 − 10 = 20.
    #[test]
    fn between_two_points_an_opening_has_their_slope_for_its_price() {
        let point = |cents, openings| Value { cents, openings, worth: 0 };
        let corner = Corner { below_cents: 30, openings: 0, worth: 0 };
        let mixture = best_prices(&corner, &[point(10, 1), point(30, 0)]);
        assert_eq!(mixture.prices.opening, 20 * PARTS);
    }
}
