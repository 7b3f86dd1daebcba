//! Buying in packs: coils, boxes of ten. What is charged goes by the piece or the foot; packs are about what is carried home.

/// What is bought of one thing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bought {
    /// Packs, the largest first: pieces or feet in one, and how many of it.
    pub packs: Vec<(u32, u32)>,
    /// Pieces or feet in all of them.
    pub quantity: u64,
}

/// More than this is not packed exactly: as many of the largest pack as leave this are taken first.
const PACKED_EXACTLY: u64 = 200_000;

/// The packs of these sizes to buy for a need: those that leave the least over, and of these the fewest packs.
///
/// Where no size is given, everything is bought by the piece or the foot.
#[must_use]
pub fn packs_for(need: u64, sizes: &[u32]) -> Bought {
    let mut sizes: Vec<u32> = sizes.iter().copied().filter(|size| *size > 0).collect();
    sizes.sort_unstable_by(|one, other| other.cmp(one));
    sizes.dedup();
    let Some(largest) = sizes.first().copied().map(u64::from) else {
        return Bought { packs: Vec::new(), quantity: need };
    };
    let whole = need.saturating_sub(PACKED_EXACTLY) / largest;
    let rest = need - whole * largest;
    // For each quantity that packs can make: the fewest packs, and the largest that may be the last of them.
    let reach = usize::try_from(rest + largest).unwrap_or(usize::MAX);
    let mut fewest: Vec<Option<(u32, usize)>> = vec![None; reach];
    for made in 0..reach {
        let before = |at: usize| made.checked_sub(sizes[at] as usize);
        let count = |at: usize| match before(at)? {
            0 => Some((1, at)),
            made => fewest[made].map(|(packs, _)| (packs + 1, at)),
        };
        fewest[made] = (0..sizes.len()).filter_map(count).min();
    }
    let start = usize::try_from(rest).unwrap_or(usize::MAX);
    let best = (start..reach).find(|made| *made == 0 || fewest[*made].is_some()).unwrap_or(0);
    let mut counts = vec![0_u32; sizes.len()];
    counts[0] = u32::try_from(whole).unwrap_or(u32::MAX);
    let mut left = best;
    while let Some((_, at)) = fewest.get(left).copied().flatten() {
        counts[at] += 1;
        left -= sizes[at] as usize;
    }
    let packs = sizes.iter().copied().zip(counts).filter(|(_, count)| *count > 0).collect();
    Bought { packs, quantity: whole * largest + best as u64 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 237 ft leave 13 ft of 250 whichever coils make it, one coil is the fewest; 61 ft take 50 and 25; 226 ft
    /// take 250 again, since 225 is too short.
    #[test]
    fn coils_leave_the_least_over_and_are_as_few_as_can_be() {
        let coils = [25, 50, 250];
        assert_eq!(packs_for(237, &coils).packs, [(250, 1)]);
        assert_eq!(packs_for(61, &coils).packs, [(50, 1), (25, 1)]);
        assert_eq!(packs_for(226, &coils).packs, [(250, 1)]);
        assert_eq!(packs_for(0, &coils), Bought::default());
        assert_eq!(packs_for(7, &[]), Bought { packs: Vec::new(), quantity: 7 });
        assert_eq!(packs_for(12, &[10, 0]), Bought { packs: vec![(10, 2)], quantity: 20 });
    }

    /// By hand: 1,000,000 pieces in boxes of 1,000 are 1,000 boxes.
    #[test]
    fn a_great_need_is_packed_too() {
        assert_eq!(packs_for(1_000_000, &[1_000, 7]), Bought { packs: vec![(1_000, 1_000)], quantity: 1_000_000 });
    }

    /// Every way to buy up to six packs of three sizes: none leaves less over, or as little with fewer packs.
    #[test]
    fn no_other_packs_leave_less_over() {
        let sizes = [3_u32, 5, 11];
        for need in 1..33_u64 {
            let found = packs_for(need, &sizes);
            let count: u32 = found.packs.iter().map(|(_, count)| count).sum();
            let made: u64 = found.packs.iter().map(|(size, count)| u64::from(*size) * u64::from(*count)).sum();
            assert_eq!(made, found.quantity);
            assert!(made >= need);
            for (a, b, c) in (0..12).flat_map(|a| (0..8).flat_map(move |b| (0..4).map(move |c| (a, b, c)))) {
                let other = u64::from(3 * a + 5 * b + 11 * c);
                assert!(other < need || (made, count) <= (other, a + b + c), "{need}: {found:?}, {a} {b} {c}");
            }
        }
    }
}
