//! Medians and percentiles of what was measured.

use std::fmt;

/// Times of many runs, in seconds, sorted.
#[derive(Clone, Debug, Default)]
pub struct Times(Vec<f64>);

impl Times {
    /// The times, in whatever order they were measured.
    pub fn of(mut seconds: Vec<f64>) -> Self {
        seconds.sort_by(f64::total_cmp);
        Self(seconds)
    }

    /// The time that so many of a hundred runs do not exceed: the nearest rank, 0 where nothing ran.
    pub fn percentile(&self, of_hundred: usize) -> f64 {
        let rank = (self.0.len() * of_hundred).div_ceil(100).max(1);
        self.0.get(rank - 1).copied().unwrap_or(0.0)
    }

    /// The middle time.
    pub fn median(&self) -> f64 {
        self.percentile(50)
    }

    /// How many runs there were.
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// The longest time.
    pub fn most(&self) -> f64 {
        self.percentile(100)
    }
}

/// A time as people read it.
pub struct Shown(pub f64);

impl fmt::Display for Shown {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            seconds if seconds < 0.001 => write!(out, "{:.0} µs", seconds * 1e6),
            seconds if seconds < 0.01 => write!(out, "{:.2} ms", seconds * 1e3),
            seconds if seconds < 0.1 => write!(out, "{:.1} ms", seconds * 1e3),
            seconds if seconds < 1.0 => write!(out, "{:.0} ms", seconds * 1e3),
            seconds => write!(out, "{seconds:.1} s"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: of 1 to 20, ten do not exceed 10 and nineteen do not exceed 19.
    #[test]
    fn percentiles_are_of_the_nearest_rank() {
        let times = Times::of((1..=20).rev().map(f64::from).collect());
        assert_eq!((times.median(), times.percentile(95), times.most()), (10.0, 19.0, 20.0));
        assert_eq!(Times::of(vec![3.0]).percentile(95), 3.0);
        assert_eq!(Times::default().median(), 0.0);
    }

    #[test]
    fn times_are_shown_with_three_digits_at_most() {
        let shown = [0.000_123_4, 0.001_234, 0.012_34, 0.1234, 12.34].map(|seconds| Shown(seconds).to_string());
        assert_eq!(shown, ["123 µs", "1.23 ms", "12.3 ms", "123 ms", "12.3 s"]);
    }
}
