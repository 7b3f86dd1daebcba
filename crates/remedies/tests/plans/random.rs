//! A source of chance that gives the same numbers for the same seed on every machine.

/// A xorshift generator.
pub struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        // Neighbouring seeds are spread apart; the state must not be nought.
        Self((seed.wrapping_add(1)).wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 16
    }

    /// A number below the given one.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end.max(1) as u64) as usize
    }

    /// A number of the closed range.
    pub fn within(&mut self, (least, most): (usize, usize)) -> usize {
        least + self.below(most - least + 1)
    }

    /// True so many times in a hundred.
    pub fn percent(&mut self, chance: usize) -> bool {
        self.below(100) < chance
    }

    /// One of these.
    pub fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())].clone()
    }

    /// One of these, each as often as its weight says.
    pub fn weighted<T: Clone>(&mut self, from: &[(usize, T)]) -> T {
        let mut left = self.below(from.iter().map(|(weight, _)| weight).sum());
        for (weight, value) in from {
            if left < *weight {
                return value.clone();
            }
            left -= weight;
        }
        from[0].1.clone()
    }
}
