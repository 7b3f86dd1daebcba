//! What a choice is judged by on the frontier: money, openings and worth.

/// Money, openings and worth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Value {
    pub cents: i64,
    pub openings: i64,
    pub worth: i128,
}

impl Value {
    /// Whether it is no worse in anything.
    pub const fn is_as_good_as(&self, other: &Self) -> bool {
        self.cents <= other.cents && self.openings <= other.openings && self.worth >= other.worth
    }

    /// Both together.
    pub const fn with(&self, other: &Self) -> Self {
        Self {
            cents: self.cents + other.cents,
            openings: self.openings + other.openings,
            worth: self.worth + other.worth,
        }
    }
}

/// Returns the places of those that no other is as good as, of equal ones the first, by rising cents.
pub(super) fn unbeaten(values: &[Value]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by_key(|at| (values[*at].cents, values[*at].openings, std::cmp::Reverse(values[*at].worth)));
    // Of what is no dearer: by rising openings, the most worth within them, rising too.
    let mut best: Vec<(i64, i128)> = Vec::new();
    let mut kept = Vec::new();
    for at in order {
        let Value { openings, worth, .. } = values[at];
        let place = best.partition_point(|(most, _)| *most <= openings);
        if place > 0 && best[place - 1].1 >= worth {
            continue;
        }
        let from = best.partition_point(|(most, _)| *most < openings);
        let to = from + best[from..].partition_point(|(_, other)| *other <= worth);
        best.splice(from..to, std::iter::once((openings, worth)));
        kept.push(at);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_what_a_look_at_all_pairs_keeps() {
        let mut seed = 1_u64;
        let mut below = |end: u64| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) % end
        };
        for _ in 0..200 {
            let values: Vec<Value> = (0..30)
                .map(|_| Value { cents: below(9) as i64, openings: below(5) as i64, worth: i128::from(below(7)) })
                .collect();
            let mut kept: Vec<Value> = unbeaten(&values).into_iter().map(|at| values[at]).collect();
            kept.sort_unstable();
            let mut expected: Vec<Value> = values
                .iter()
                .filter(|this| !values.iter().any(|other| other != *this && other.is_as_good_as(this)))
                .copied()
                .collect();
            expected.sort_unstable();
            expected.dedup();
            assert_eq!(kept, expected);
        }
    }
}
