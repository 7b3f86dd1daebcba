//! Spots and areas on a sheet, in points of 1/72 in, rightwards and downwards.

/// A spot on a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Spot {
    pub(crate) x: f64,
    pub(crate) y: f64,
}

/// A spot.
pub(crate) const fn spot(x: f64, y: f64) -> Spot {
    Spot { x, y }
}

impl Spot {
    pub(crate) fn plus(self, other: Self) -> Self {
        spot(self.x + other.x, self.y + other.y)
    }

    pub(crate) fn minus(self, other: Self) -> Self {
        spot(self.x - other.x, self.y - other.y)
    }

    pub(crate) fn times(self, factor: f64) -> Self {
        spot(self.x * factor, self.y * factor)
    }

    pub(crate) fn length(self) -> f64 {
        self.x.hypot(self.y)
    }

    pub(crate) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub(crate) fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// The same direction at length one; nothing of no length has one.
    pub(crate) fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 1e-9).then(|| self.times(1.0 / length))
    }

    /// A quarter turn.
    pub(crate) fn turned(self) -> Self {
        spot(-self.y, self.x)
    }

    /// A part of the way to another spot.
    pub(crate) fn towards(self, other: Self, part: f64) -> Self {
        self.plus(other.minus(self).times(part))
    }
}

/// An upright rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Area {
    pub(crate) left: f64,
    pub(crate) top: f64,
    pub(crate) right: f64,
    pub(crate) bottom: f64,
}

impl Area {
    pub(crate) const fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self { left, top, right, bottom }
    }

    pub(crate) fn around(centre: Spot, (width, height): (f64, f64)) -> Self {
        let (across, down) = (width / 2.0, height / 2.0);
        Self::new(centre.x - across, centre.y - down, centre.x + across, centre.y + down)
    }

    pub(crate) fn width(&self) -> f64 {
        self.right - self.left
    }

    pub(crate) fn height(&self) -> f64 {
        self.bottom - self.top
    }

    pub(crate) fn centre(&self) -> Spot {
        spot((self.left + self.right) / 2.0, (self.top + self.bottom) / 2.0)
    }

    pub(crate) fn corners(&self) -> [Spot; 4] {
        [
            spot(self.left, self.top),
            spot(self.right, self.top),
            spot(self.right, self.bottom),
            spot(self.left, self.bottom),
        ]
    }

    pub(crate) fn grown(&self, by: f64) -> Self {
        Self::new(self.left - by, self.top - by, self.right + by, self.bottom + by)
    }

    pub(crate) fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    pub(crate) fn holds(&self, inner: &Self) -> bool {
        self.left <= inner.left && inner.right <= self.right && self.top <= inner.top && inner.bottom <= self.bottom
    }

    /// The spot of this area that is nearest to another spot.
    pub(crate) fn nearest_to(&self, to: Spot) -> Spot {
        spot(to.x.clamp(self.left, self.right), to.y.clamp(self.top, self.bottom))
    }

    /// Whether a straight line passes through it.
    pub(crate) fn is_crossed(&self, from: Spot, to: Spot) -> bool {
        let along = to.minus(from);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (start, step, low, high) in
            [(from.x, along.x, self.left, self.right), (from.y, along.y, self.top, self.bottom)]
        {
            if step.abs() < 1e-12 {
                if start < low || start > high {
                    return false;
                }
                continue;
            }
            let (one, other) = ((low - start) / step, (high - start) / step);
            enters = enters.max(one.min(other));
            leaves = leaves.min(one.max(other));
        }
        enters < leaves
    }
}

/// Whether two straight lines cross or touch.
pub(crate) fn lines_cross(one: (Spot, Spot), other: (Spot, Spot)) -> bool {
    let side = |line: (Spot, Spot), at: Spot| line.1.minus(line.0).cross(at.minus(line.0));
    let (a, b) = (side(one, other.0), side(one, other.1));
    let (c, d) = (side(other, one.0), side(other, one.1));
    a * b < 0.0 && c * d < 0.0
}

/// How far a spot is from a straight line between two others.
pub(crate) fn distance_to_line(at: Spot, from: Spot, to: Spot) -> f64 {
    let along = to.minus(from);
    let square = along.dot(along);
    let part = if square > 0.0 { (at.minus(from).dot(along) / square).clamp(0.0, 1.0) } else { 0.0 };
    at.minus(from.plus(along.times(part))).length()
}

/// Whether a spot is inside an outline, its last corner joined to its first.
pub(crate) fn is_inside(at: Spot, outline: &[Spot]) -> bool {
    let mut inside = false;
    for (index, corner) in outline.iter().enumerate() {
        let next = outline[(index + 1) % outline.len()];
        if (corner.y > at.y) != (next.y > at.y) {
            let crossing = corner.x + (at.y - corner.y) / (next.y - corner.y) * (next.x - corner.x);
            if at.x < crossing {
                inside = !inside;
            }
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_beside_an_area_does_not_cross_it() {
        let area = Area::new(0.0, 0.0, 10.0, 10.0);
        assert!(area.is_crossed(spot(-5.0, 5.0), spot(15.0, 6.0)));
        assert!(!area.is_crossed(spot(-5.0, 5.0), spot(5.0, 20.0)));
        assert!(!area.is_crossed(spot(-5.0, 11.0), spot(15.0, 11.0)));
    }

    #[test]
    fn lines_that_share_an_end_do_not_cross() {
        let (a, b, c) = (spot(0.0, 0.0), spot(10.0, 0.0), spot(5.0, 5.0));
        assert!(!lines_cross((a, b), (b, c)));
        assert!(lines_cross((a, b), (spot(5.0, -5.0), c)));
    }

    #[test]
    fn the_notch_of_an_outline_is_outside_it() {
        let outline = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 10.0), (5.0, 5.0), (0.0, 5.0)];
        let outline = outline.map(|(x, y)| spot(x, y));
        assert!(is_inside(spot(7.0, 7.0), &outline));
        assert!(!is_inside(spot(2.0, 7.0), &outline));
    }
}
