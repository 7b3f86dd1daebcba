//! Chance for made-up dwellings: whole numbers, percents and weights over the generator of simulated houses.

/// Numbers that look random and are the same for the same seed on every machine.
pub struct Chance(simulation::Chance);

impl Chance {
    /// The numbers of a seed.
    pub fn new(seed: u64) -> Self {
        Self(simulation::Chance::new(seed))
    }

    /// A number from 0 up to, not including, the end; 0 where the end is 0.
    pub fn below(&mut self, end: usize) -> usize {
        self.0.below(end)
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
    fn every_number_of_a_range_comes_up() {
        let mut chance = Chance::new(3);
        let seen: std::collections::BTreeSet<usize> = (0..200).map(|_| chance.within(4, 7)).collect();
        assert_eq!(seen.into_iter().collect::<Vec<_>>(), [4, 5, 6, 7]);
    }
}
