//! Finding room for labels: each stands as near as it can to what it names, on nothing else, with a leader where it is far.

use crate::geometry::{Area, Spot, is_inside, lines_cross, spot};

/// How far from what it names a label is looked for, in points from its edge.
const DISTANCES: [f64; 18] =
    [1.0, 3.0, 6.0, 9.0, 13.0, 18.0, 24.0, 31.0, 39.0, 48.0, 58.0, 70.0, 84.0, 100.0, 120.0, 145.0, 175.0, 210.0];
const DIRECTIONS: usize = 24;
/// A label farther than this from what it names gets a leader.
const LEADER_FROM: f64 = 4.0;
/// What it costs, in points of distance, to stand across a line.
const ACROSS_A_LINE: f64 = 7.0;
const ACROSS_A_WALL: f64 = 16.0;
const ACROSS_AN_OUTSIDE_WALL: f64 = 34.0;
/// What it costs for a leader to cross a line.
const LEADER_ACROSS: f64 = 4.0;
/// What it costs for a leader to pass under a label or across a symbol or another leader: more than standing far off.
const LEADER_LOST: f64 = 70.0;
/// What it costs to stand in another room than what it names.
const OTHER_ROOM: f64 = 18.0;
/// What is left free around a label.
const AIR: f64 = 1.4;

/// What wants a place.
#[derive(Clone, Debug)]
pub(crate) struct Wish {
    /// Spots that it may name, each with the half sizes of what is there.
    pub(crate) anchors: Vec<(Spot, f64)>,
    pub(crate) size: (f64, f64),
    /// The nearest that it may stand.
    pub(crate) least: f64,
    /// The outline of the room in which it would best stand.
    pub(crate) room: Option<usize>,
}

/// A label with its place.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placed {
    pub(crate) area: Area,
    pub(crate) anchor: Spot,
    pub(crate) leader: Option<(Spot, Spot)>,
}

/// A sheet on which things take places.
#[derive(Clone, Debug)]
pub(crate) struct Field {
    pub(crate) frame: Area,
    pub(crate) rooms: Vec<Vec<Spot>>,
    symbols: Vec<Area>,
    lines: Vec<((Spot, Spot), f64)>,
    labels: Vec<Option<Placed>>,
}

impl Field {
    pub(crate) fn new(frame: Area, rooms: Vec<Vec<Spot>>) -> Self {
        Self { frame, rooms, symbols: Vec::new(), lines: Vec::new(), labels: Vec::new() }
    }

    /// Adds a symbol, on which nothing else may stand.
    pub(crate) fn add_symbol(&mut self, area: Area) {
        self.symbols.push(area);
    }

    /// Adds lines, on which things would better not stand.
    pub(crate) fn add_lines(&mut self, points: &[Spot]) {
        self.lines.extend(points.windows(2).map(|pair| ((pair[0], pair[1]), ACROSS_A_LINE)));
    }

    /// Adds a wall, on which things should stand even less.
    pub(crate) fn add_wall(&mut self, from: Spot, to: Spot, outside: bool) {
        self.lines.push(((from, to), if outside { ACROSS_AN_OUTSIDE_WALL } else { ACROSS_A_WALL }));
    }

    pub(crate) fn is_free_of_symbols(&self, area: &Area) -> bool {
        self.frame.holds(area) && !self.symbols.iter().any(|symbol| symbol.overlaps(area))
    }

    /// Whether a spot lies in no room.
    pub(crate) fn is_outdoors(&self, at: Spot) -> bool {
        !self.rooms.iter().any(|room| is_inside(at, room))
    }

    /// How many symbols a line of points comes across, but for those at its ends.
    pub(crate) fn symbols_on(&self, points: &[Spot]) -> usize {
        let (Some(first), Some(last)) = (points.first(), points.last()) else { return 0 };
        let at_an_end = |area: &Area| [first, last].iter().any(|end| area.grown(1.0).nearest_to(**end) == **end);
        let between = self.symbols.iter().filter(|area| !at_an_end(area));
        between.filter(|area| points.windows(2).any(|pair| area.is_crossed(pair[0], pair[1]))).count()
    }

    /// How many lines a line of points crosses.
    pub(crate) fn lines_crossed(&self, points: &[Spot]) -> usize {
        points
            .windows(2)
            .map(|pair| self.lines.iter().filter(|(line, _)| lines_cross((pair[0], pair[1]), *line)).count())
            .sum()
    }

    /// Places what is wished for, those with least room around them first, and then looks for better places once more.
    pub(crate) fn place_all(&mut self, wishes: &[Wish]) -> Vec<Option<Placed>> {
        let start = self.labels.len();
        self.labels.extend(wishes.iter().map(|_| None));
        let mut order: Vec<usize> = (0..wishes.len()).collect();
        let crowd = |wish: &Wish| {
            let near = wish.anchors.first().map(|(at, _)| Area::around(*at, (90.0, 60.0)));
            near.map_or(0, |near| self.symbols.iter().filter(|symbol| symbol.overlaps(&near)).count())
        };
        let crowds: Vec<usize> = wishes.iter().map(crowd).collect();
        order.sort_by_key(|index| std::cmp::Reverse(crowds[*index]));
        for _round in 0..3 {
            for index in &order {
                self.labels[start + index] = None;
                self.labels[start + index] = self.best(&wishes[*index]);
            }
        }
        self.labels[start..].to_vec()
    }

    /// Takes a place that was found otherwise.
    pub(crate) fn take(&mut self, area: Area) {
        self.labels.push(Some(Placed { area, anchor: area.centre(), leader: None }));
    }

    /// Whether a label could stand here.
    pub(crate) fn is_free(&self, area: &Area) -> bool {
        self.stands_free(area) && self.leaders_under(area) == 0
    }

    /// Whether a label would stand on no symbol and on no other label.
    fn stands_free(&self, area: &Area) -> bool {
        let wide = area.grown(AIR);
        self.is_free_of_symbols(&wide) && !self.placed().any(|other| other.area.overlaps(&wide))
    }

    /// How many leaders would pass under a label.
    fn leaders_under(&self, area: &Area) -> usize {
        let wide = area.grown(AIR);
        let leaders = self.placed().filter_map(|other| other.leader);
        leaders.filter(|(from, to)| wide.is_crossed(*from, *to)).count()
    }

    /// How many lines pass under an area.
    pub(crate) fn lines_under(&self, area: &Area) -> usize {
        self.lines.iter().filter(|((from, to), _)| area.is_crossed(*from, *to)).count()
    }

    fn cost_of_lines_under(&self, area: &Area) -> f64 {
        let wide = area.grown(AIR);
        let under = self.lines.iter().filter(|((from, to), _)| wide.is_crossed(*from, *to));
        under.map(|(_, cost)| cost).sum()
    }

    fn placed(&self) -> impl Iterator<Item = &Placed> {
        self.labels.iter().flatten()
    }

    fn best(&self, wish: &Wish) -> Option<Placed> {
        let mut best: Option<(f64, Placed)> = None;
        for distance in DISTANCES.into_iter().filter(|distance| *distance >= wish.least) {
            // Nothing farther off can be better than what was found.
            if best.as_ref().is_some_and(|(cost, _)| *cost <= distance) {
                break;
            }
            for (anchor, reach) in &wish.anchors {
                for direction in 0..DIRECTIONS {
                    let Some((cost, placed)) = self.candidate(wish, (*anchor, *reach), distance, direction) else {
                        continue;
                    };
                    if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                        best = Some((cost, placed));
                    }
                }
            }
        }
        best.map(|(_, placed)| placed)
    }

    fn candidate(
        &self,
        wish: &Wish,
        (anchor, reach): (Spot, f64),
        distance: f64,
        direction: usize,
    ) -> Option<(f64, Placed)> {
        let turn = std::f64::consts::TAU * direction as f64 / DIRECTIONS as f64;
        let (x, y) = (turn.cos(), turn.sin());
        let away = reach + distance;
        // The label's edge, not its middle, is so far away.
        let centre =
            anchor.plus(spot(x * away + x.clamp(-0.5, 0.5) * wish.size.0, y * away + y.clamp(-0.5, 0.5) * wish.size.1));
        let area = Area::around(centre, wish.size);
        if !self.stands_free(&area) {
            return None;
        }
        let end = area.nearest_to(anchor);
        let gap = end.minus(anchor).length() - reach;
        let mut cost = distance + self.cost_of_lines_under(&area) + self.leaders_under(&area) as f64 * LEADER_LOST;
        if let Some(room) = wish.room.and_then(|room| self.rooms.get(room)).filter(|room| !room.is_empty()) {
            cost += if is_inside(area.centre(), room) { 0.0 } else { OTHER_ROOM };
        }
        // Beside is read more easily than above or below, and slanting least.
        cost += if direction.is_multiple_of(DIRECTIONS / 2) { 0.0 } else { 0.6 };
        let mut leader = None;
        if gap > LEADER_FROM.min(wish.least.max(LEADER_FROM)) {
            let from = anchor.plus(end.minus(anchor).unit()?.times(reach));
            let in_the_way = |other: &Area| other.is_crossed(from, end) && other.nearest_to(anchor) != anchor;
            let crossed = |other: &&Placed| {
                in_the_way(&other.area) || other.leader.is_some_and(|leader| lines_cross(leader, (from, end)))
            };
            let lost =
                self.symbols.iter().filter(|symbol| in_the_way(symbol)).count() + self.placed().filter(crossed).count();
            let across = self.lines.iter().filter(|(line, _)| lines_cross((from, end), *line)).count();
            cost += lost as f64 * LEADER_LOST + across as f64 * LEADER_ACROSS;
            leader = Some((from, end));
        }
        Some((cost, Placed { area, anchor, leader }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wish(at: Spot) -> Wish {
        Wish { anchors: vec![(at, 5.0)], size: (20.0, 8.0), least: 1.0, room: None }
    }

    #[test]
    fn forty_labels_around_one_spot_all_find_room_and_none_stands_on_another() {
        let mut field = Field::new(Area::new(0.0, 0.0, 300.0, 300.0), Vec::new());
        let wishes: Vec<Wish> = (0..40).map(|at| wish(spot(130.0 + f64::from(at % 8) * 6.0, 150.0))).collect();
        let placed: Vec<Placed> = field.place_all(&wishes).into_iter().flatten().collect();
        assert_eq!(placed.len(), 40);
        for (index, one) in placed.iter().enumerate() {
            assert!(field.frame.holds(&one.area));
            assert!(placed[..index].iter().all(|other| !other.area.overlaps(&one.area)));
        }
        assert!(placed.iter().any(|one| one.leader.is_some()));
    }

    #[test]
    fn a_label_without_any_room_is_not_placed() {
        let mut field = Field::new(Area::new(0.0, 0.0, 30.0, 30.0), Vec::new());
        field.add_symbol(Area::new(0.0, 0.0, 30.0, 30.0));
        assert_eq!(field.place_all(&[wish(spot(15.0, 15.0))]), [None]);
    }
}
