//! Complex numbers, for phasors and impedances.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// A complex number without a unit of its own: a phasor in root-mean-square volts or amperes, or ohms or siemens.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Complex {
    /// The part in phase with the reference.
    pub re: f64,
    /// The part a quarter turn ahead of it.
    pub im: f64,
}

impl Complex {
    /// Nought.
    pub const ZERO: Self = Self { re: 0.0, im: 0.0 };
    /// One.
    pub const ONE: Self = Self { re: 1.0, im: 0.0 };

    /// A number from its two parts.
    #[must_use]
    pub const fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }

    /// A number without an imaginary part.
    #[must_use]
    pub const fn real(re: f64) -> Self {
        Self { re, im: 0.0 }
    }

    /// A phasor of a magnitude, turned ahead by an angle in degrees.
    #[must_use]
    pub fn polar(magnitude: f64, degrees: f64) -> Self {
        let (sine, cosine) = degrees.to_radians().sin_cos();
        Self::new(magnitude * cosine, magnitude * sine)
    }

    /// The magnitude.
    #[must_use]
    pub fn magnitude(self) -> f64 {
        self.re.hypot(self.im)
    }

    /// The angle in degrees, from -180 to 180.
    #[must_use]
    pub fn degrees(self) -> f64 {
        self.im.atan2(self.re).to_degrees()
    }

    /// One over the number; nought gives numbers that are not finite.
    #[must_use]
    pub fn reciprocal(self) -> Self {
        Self::ONE / self
    }

    /// Whether both parts are finite numbers.
    #[must_use]
    pub fn is_finite(self) -> bool {
        self.re.is_finite() && self.im.is_finite()
    }
}

impl Add for Complex {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.re + other.re, self.im + other.im)
    }
}

impl Sub for Complex {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.re - other.re, self.im - other.im)
    }
}

impl Mul for Complex {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::new(self.re * other.re - self.im * other.im, self.re * other.im + self.im * other.re)
    }
}

impl Mul<f64> for Complex {
    type Output = Self;
    fn mul(self, times: f64) -> Self {
        Self::new(self.re * times, self.im * times)
    }
}

impl Div for Complex {
    type Output = Self;
    /// Smith's division, which neither overflows nor loses small parts.
    fn div(self, other: Self) -> Self {
        if other.re.abs() >= other.im.abs() {
            let ratio = other.im / other.re;
            let scale = other.re + other.im * ratio;
            Self::new((self.re + self.im * ratio) / scale, (self.im - self.re * ratio) / scale)
        } else {
            let ratio = other.re / other.im;
            let scale = other.re * ratio + other.im;
            Self::new((self.re * ratio + self.im) / scale, (self.im * ratio - self.re) / scale)
        }
    }
}

impl Neg for Complex {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.re, -self.im)
    }
}

impl AddAssign for Complex {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Complex {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl std::iter::Sum for Complex {
    fn sum<I: Iterator<Item = Self>>(numbers: I) -> Self {
        numbers.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: (1 + 2i)(3 - 4i) = 3 - 4i + 6i + 8 = 11 + 2i.
    #[test]
    fn a_product_divided_by_a_factor_is_the_other_factor() {
        let (a, b) = (Complex::new(1.0, 2.0), Complex::new(3.0, -4.0));
        assert_eq!(a * b, Complex::new(11.0, 2.0));
        assert!(((a * b) / b - a).magnitude() < 1e-15);
        assert!(((a * b) / a - b).magnitude() < 1e-15);
    }

    #[test]
    fn dividing_by_nought_is_not_finite() {
        assert!(!Complex::ZERO.reciprocal().is_finite());
    }

    /// By hand: 3 and 4 make 5; a quarter turn is 90 degrees.
    #[test]
    fn a_phasor_has_a_magnitude_and_an_angle() {
        assert_eq!(Complex::new(3.0, 4.0).magnitude(), 5.0);
        assert!((Complex::polar(2.0, 90.0) - Complex::new(0.0, 2.0)).magnitude() < 1e-15);
        assert!((Complex::polar(2.0, 150.0).degrees() - 150.0).abs() < 1e-12);
    }
}
