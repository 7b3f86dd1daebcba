//! Numbers that look random and are the same for the same seed on every machine.

/// A small generator: a counter whose bits are mixed.
pub struct Chance(u64);

impl Chance {
    /// The numbers of a seed.
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0xD1B5_4A32_D192_ED03)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 up to, not including, the end; 0 where the end is 0.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % (end.max(1) as u64)) as usize
    }

    /// A number of a closed range.
    pub fn within(&mut self, from: usize, to: usize) -> usize {
        from + self.below(to - from + 1)
    }

    /// True so many times of a hundred.
    pub fn percent(&mut self, of_hundred: usize) -> bool {
        self.below(100) < of_hundred
    }

    /// One of these, each as often as its number says.
    pub fn weighted<T: Copy>(&mut self, choices: &[(usize, T)]) -> T {
        let mut left = self.below(choices.iter().map(|(weight, _)| weight).sum());
        for (weight, choice) in choices {
            if left < *weight {
                return *choice;
            }
            left -= weight;
        }
        choices[0].1
    }

    /// One of these.
    pub fn pick<T: Copy>(&mut self, choices: &[T]) -> T {
        choices[self.below(choices.len())]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_seed_gives_the_same_numbers_and_another_gives_others() {
        let numbers = |seed| {
            let mut chance = Chance::new(seed);
            (0..20).map(|_| chance.below(1_000)).collect::<Vec<_>>()
        };
        assert_eq!(numbers(1), numbers(1));
        assert_ne!(numbers(1), numbers(2));
    }

    #[test]
    fn every_number_of_a_range_comes_up() {
        let mut chance = Chance::new(3);
        let seen: std::collections::BTreeSet<usize> = (0..200).map(|_| chance.within(4, 7)).collect();
        assert_eq!(seen.into_iter().collect::<Vec<_>>(), [4, 5, 6, 7]);
    }
}
