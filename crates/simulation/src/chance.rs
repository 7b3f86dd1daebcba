//! Numbers that look random and are the same for the same seed on every machine.

/// A small generator: a counter whose bits are mixed.
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    /// The numbers of a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0xD1B5_4A32_D192_ED03)
    }

    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 up to, not including, 1.
    #[must_use]
    pub fn share(&mut self) -> f64 {
        let bits = u32::try_from(self.next() >> 32).unwrap_or(0);
        f64::from(bits) / 4_294_967_296.0
    }

    /// A number from 0 up to, not including, the end; 0 where the end is 0.
    pub fn below(&mut self, end: usize) -> usize {
        let end = u64::try_from(end.max(1)).unwrap_or(1);
        usize::try_from(self.next() % end).unwrap_or(0)
    }

    /// True as often as the share says.
    pub fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// A number between two.
    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        from + self.share() * (to - from)
    }

    /// A number between two, each order of magnitude as likely as another.
    pub fn by_magnitude(&mut self, from: f64, to: f64) -> f64 {
        self.between(from.ln(), to.ln()).exp()
    }

    /// A place in a list of odds, each as often as its odds say; the last one above nought where they add up to too little.
    pub fn place_of(&mut self, odds: &[f64]) -> usize {
        let mut left = self.share() * odds.iter().sum::<f64>();
        let mut place = 0;
        for (at, odds) in odds.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
            place = at;
            if left < *odds {
                break;
            }
            left -= odds;
        }
        place
    }

    /// One of these, each as often as its odds say; the first where there is nothing to choose from.
    pub fn one_of<T: Copy>(&mut self, choices: &[(f64, T)]) -> T {
        let odds: Vec<f64> = choices.iter().map(|(odds, _)| *odds).collect();
        choices[self.place_of(&odds)].1
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
    fn a_choice_comes_up_as_often_as_its_odds_say() {
        let mut chance = Chance::new(5);
        let taken = (0..10_000).filter(|_| chance.place_of(&[0.0, 0.25, 0.75]) == 1).count();
        assert!((2_300..2_700).contains(&taken), "{taken} of 10,000");
        assert_eq!(chance.place_of(&[0.0, 1.0, 0.0]), 1);
    }
}
