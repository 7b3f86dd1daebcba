//! What acting would still be expected to cost after one more finding at one box.
//!
//! The same sums as the way up and the way down, but only what the cost needs of them, and only where the finding changes
//! them: from the box up to the panel, and from there down again. What lies outside a box's part of the tree does not change
//! for the box itself.

use super::down::of_both;
use super::likely::{ALONE, CLOSED_ABSENT, CLOSED_BROKEN, LOOSE_BEFORE, Likely, NEVER, Sum, meets};
use super::stakes::Stakes;
use super::stations::{ARRIVALS, PATHS, STATES, Station, Stations, WIRINGS, at_box};
use super::sums_up::{
    ABSENT, BEFORE_ABSENT, BEFORE_BROKEN, NUMBERS, Part, Step, Through, loose_cases, seen, step_of, sum_of,
};
use super::up::{at_root, either};

/// Slopes are divided by how likely all is where that has become smaller: only their ratios count.
const SMALL: f64 = 1e-60;

/// A circuit as it is believed, ready for one more finding.
pub(crate) struct Outlook<'s> {
    stations: &'s Stations,
    stakes: &'s Stakes,
    parts: Vec<Part<'s>>,
    steps: Vec<Step>,
    kinds: Kinds,
    /// By station, the slopes of the whole along what goes up from it.
    slopes: Vec<[Likely; 2]>,
    /// By station, how likely each state of what arrives before its run is: apart or alike, as its slopes are.
    arrives: Vec<Arrives>,
    /// By station, what acting there and beyond it is expected to cost.
    beyond: Vec<f64>,
    /// Where what arrives changes by less than this in all, what lies beyond is taken to cost what it did.
    least_change: f64,
    /// What acting is expected to cost.
    pub(crate) now: f64,
}

impl<'s> Outlook<'s> {
    /// The outlook of a circuit that can be as it was found. Where a finding changes the odds of what arrives at a station by less
    /// than so much in all, it is taken to change nothing from there on; with 0 everything is weighed again.
    pub(crate) fn of(stations: &'s Stations, stakes: &'s Stakes, least_change: f64) -> Self {
        let parts: Vec<Part> = stations.all.iter().map(Part::of).collect();
        let mut steps: Vec<Option<Step>> = stations.all.iter().map(|_| None).collect();
        for number in (0..parts.len()).rev() {
            let of_it = step_of(&parts[number], true, true, |child| steps[child].as_ref());
            steps[number] = Some(of_it);
        }
        let steps = steps.into_iter().flatten().collect();
        let count = parts.len();
        let mut outlook = Self {
            stations,
            stakes,
            parts,
            steps,
            kinds: kinds(),
            slopes: Vec::new(),
            arrives: Vec::new(),
            beyond: Vec::new(),
            least_change,
            now: 0.0,
        };
        let mut slopes = vec![[NEVER; 2]; count];
        let mut beyond = vec![0.0; count];
        for root in &stations.roots {
            let from = [outlook.root_slopes(*root, None), NEVER];
            outlook.now += outlook.down_from(*root, from, false, |number, of_it, cost| {
                slopes[number] = *of_it;
                beyond[number] = cost;
            });
        }
        for number in (0..count).rev() {
            let of_children: f64 = stations.all[number].children.iter().map(|child| beyond[*child]).sum();
            beyond[number] += of_children;
        }
        let arrives = slopes.iter().enumerate();
        let arrives = arrives
            .map(|(number, slopes)| Self::arrives(&outlook.steps[number], slopes, outlook.is_seen_before(number)));
        outlook.arrives = arrives.collect();
        outlook.slopes = slopes;
        outlook.beyond = beyond;
        outlook
    }

    /// How likely each state of what arrives before a station's run is, by the slopes along it.
    fn arrives(step: &Step, slopes: &[Likely; 2], is_apart: bool) -> Arrives {
        let through = if is_apart { &step.through[1..] } else { &step.through[..1] };
        let mut odds = [NEVER; 2];
        let mut whole = 0.0;
        for ((odds, slopes), through) in odds.iter_mut().zip(slopes).zip(through) {
            let of_both = slopes.iter().flatten().zip(through.through.iter().flatten());
            for (odds, (slope, through)) in odds.iter_mut().flatten().zip(of_both) {
                *odds = slope * through;
                whole += *odds;
            }
        }
        let scale = if whole > 0.0 { 1.0 / whole } else { 0.0 };
        odds.iter_mut().take(through.len()).flatten().flatten().for_each(|odds| *odds *= scale);
        Arrives { odds, is_apart }
    }

    /// Whether nearly the same arrives before a station's run as without the finding.
    fn is_alike(&self, number: usize, step: &Step, slopes: &[Likely; 2], is_apart: bool) -> bool {
        if self.least_change <= 0.0 {
            return false;
        }
        let Some(before) = self.arrives.get(number).filter(|before| before.is_apart == is_apart) else { return false };
        let after = Self::arrives(step, slopes, is_apart);
        let parts = if is_apart { 2 } else { 1 };
        let odds = before.odds.iter().zip(&after.odds).take(parts);
        let changed = odds.flat_map(|(before, after)| before.iter().flatten().zip(after.iter().flatten()));
        changed.map(|(before, after)| (before - after).abs()).sum::<f64>() < self.least_change
    }

    /// How much more likely everything is with this station in the place of the one there, and what acting is expected to
    /// cost then; nothing where it is less likely than the least.
    pub(crate) fn with(&self, number: usize, changed: &Station, least: f64) -> Option<(f64, f64)> {
        let part = Part::of(changed);
        let seen_before = self.is_seen_before(number);
        let mut step = step_of(&part, !seen_before, seen_before, |child| self.steps.get(child));
        let odds = self.whole(number, &step) / self.whole(number, &self.steps[number]);
        if odds.is_nan() || odds <= 0.0 || odds < least {
            return None;
        }
        let (mut cost, beyond) = self.at_station(&part, &step, &self.slopes[number], seen_before);
        cost += self.down_from_children(&part, &step, beyond, None);
        let mut at = number;
        while let Some(parent) = self.stations.all[at].parent {
            if self.is_alike(at, &step, &self.slopes[at], self.is_seen_before(at)) {
                return Some((odds, cost + self.now - self.beyond[at]));
            }
            let part = &self.parts[parent];
            let seen_before = self.is_seen_before(parent);
            let of_child = |child| if child == at { Some(&step) } else { self.steps.get(child) };
            let next = step_of(part, !seen_before, seen_before, of_child);
            let (of_parent, beyond) = self.at_station(part, &next, &self.slopes[parent], seen_before);
            cost += of_parent + self.down_from_children(part, &next, beyond, Some((at, &step)));
            (at, step) = (parent, next);
        }
        for other in self.stations.roots.iter().filter(|other| **other != at) {
            let slopes = self.root_slopes(*other, Some((at, &step)));
            cost += self.down_from(*other, [slopes, NEVER], false, |_, _, _| {});
        }
        Some((odds, cost))
    }

    fn is_seen_before(&self, number: usize) -> bool {
        self.stations.all[number].parent.is_some_and(|parent| self.stations.all[parent].sight.is_some())
    }

    /// How likely everything is, by what goes up from one station.
    fn whole(&self, number: usize, step: &Step) -> f64 {
        let slopes = &self.slopes[number];
        let sum = if self.is_seen_before(number) {
            dot(&slopes[0], &step.through[1].through) + dot(&slopes[1], &step.through[2].through)
        } else {
            dot(&slopes[0], &step.through[0].through)
        };
        sum * step.scale
    }

    /// The slopes of the whole along what comes up from one root, where what comes up from one other may have changed.
    fn root_slopes(&self, root: usize, changed: Option<(usize, &Step)>) -> Likely {
        let mut slopes = NEVER;
        for (has_ground, odds) in
            [(true, self.stations.panel_has_ground), (false, 1.0 - self.stations.panel_has_ground)]
        {
            let others = self.stations.roots.iter().filter(|other| **other != root).map(|other| {
                let step = changed.filter(|(number, _)| number == other).map_or(&self.steps[*other], |(_, step)| step);
                at_root(has_ground).iter().map(|ground| step.through[0].through[*ground][0]).sum::<f64>()
            });
            let slope = odds * others.product::<f64>();
            at_root(has_ground).iter().for_each(|ground| slopes[*ground][0] += slope);
        }
        slopes
    }

    /// What everything from a station down costs, by the slopes along it: apart where its run is not, and is, loose in the
    /// box before, or alike.
    fn down_from(
        &self,
        number: usize,
        slopes: [Likely; 2],
        is_apart: bool,
        mut call: impl FnMut(usize, &[Likely; 2], f64),
    ) -> f64 {
        let mut cost = 0.0;
        let mut left = vec![(number, slopes, is_apart)];
        while let Some((number, slopes, is_apart)) = left.pop() {
            if self.is_alike(number, &self.steps[number], &slopes, is_apart) {
                cost += self.beyond[number];
                continue;
            }
            let (part, step) = (&self.parts[number], &self.steps[number]);
            let (of_it, beyond) = self.at_station(part, step, &slopes, is_apart);
            call(number, &slopes, of_it);
            cost += of_it;
            let through = |child: usize| &self.steps[child].through;
            let is_seen = part.station.sight.is_some();
            hand_on(part.station, step, beyond, through, |child, slopes| left.push((child, slopes, is_seen)));
        }
        cost
    }

    /// What everything beyond a station costs but for one of its runs.
    fn down_from_children(&self, part: &Part, step: &Step, beyond: [Likely; 2], but: Option<(usize, &Step)>) -> f64 {
        let mut cost = 0.0;
        let through = |child: usize| match but {
            Some((other, step)) if other == child => &step.through,
            _ => &self.steps[child].through,
        };
        hand_on(part.station, step, beyond, through, |child, slopes| {
            if but.is_none_or(|(other, _)| other != child) {
                cost += self.down_from(child, slopes, part.station.sight.is_some(), |_, _, _| {});
            }
        });
        cost
    }

    /// What acting at a station costs, and the slopes along what comes from beyond it.
    fn at_station(&self, part: &Part, step: &Step, slopes: &[Likely; 2], is_apart: bool) -> (f64, [Likely; 2]) {
        let station = part.station;
        let through = if is_apart { &step.through[1..] } else { &step.through[..1] };
        let (mut whole, mut hot_sound, mut neutral_sound) = (0.0, 0.0, 0.0);
        let mut of_ground = [NEVER; 2];
        for (through, (slopes, of_ground)) in through.iter().zip(slopes.iter().zip(&mut of_ground)) {
            let of_hot = back_through_wire::<1>(slopes, &station.neutral);
            whole += dot(&of_hot, &through.after_hot);
            neutral_sound += station.neutral[0] * dot(slopes, &through.after_hot);
            hot_sound += station.hot[0] * dot(&of_hot, &through.after_ground);
            *of_ground = back_through_wire::<STATES>(&of_hot, &station.hot);
        }
        let mut of_here = vec![NEVER; part.runs()];
        let [here, before] = ground_slopes(station, &step.here, &of_ground[..through.len()], &mut of_here);
        let all = step.beyond.last().unwrap_or(&[NEVER; 2]);
        let mut cost = self.stakes.of_broken(here / whole, before / whole);
        cost += Stakes::of_fault(self.stakes.wire, 1.0 - hot_sound / whole);
        cost += Stakes::of_fault(self.stakes.wire, 1.0 - neutral_sound / whole);
        if station.is_receptacle {
            let (ground, reversed) = of_device(station, &self.kinds, all, &of_here);
            cost += self.stakes.of_ground(&ground.map(|odds| odds / whole)).1;
            cost += Stakes::of_fault(self.stakes.polarity, reversed / whole);
        }
        let mut beyond = beyond_slopes(part, &of_here);
        if whole < SMALL {
            beyond.iter_mut().flatten().flatten().for_each(|slope| *slope /= whole);
        }
        (cost, beyond)
    }
}

/// What arrives before a station's run, where the run is loose in the box before apart from where it is not, or alike.
struct Arrives {
    odds: [Likely; 2],
    is_apart: bool,
}

/// The slopes along what lies beyond a wire, by those along what lies before it.
fn back_through_wire<const STEP: usize>(slopes: &Likely, [sound, weak, open]: &[f64; 3]) -> Likely {
    let mut result = NEVER;
    for (result, slopes) in result.iter_mut().zip(slopes) {
        for first in if STEP == STATES { [0, 1, 2, 3] } else { [0, STATES, 2 * STATES, 3 * STATES] } {
            let [of_sound, of_weak, of_open] = [slopes[first], slopes[first + STEP], slopes[first + 2 * STEP]];
            let any = sound + weak + open;
            result[first] = sound * of_sound;
            result[first + STEP] = weak * of_sound + (sound + weak) * of_weak;
            result[first + 2 * STEP] = open * (of_sound + of_weak) + any * of_open;
            result[first + 3 * STEP] = any * slopes[first + 3 * STEP];
        }
    }
    result
}

/// How likely all is, by what lies on both sides.
fn dot(slopes: &Likely, odds: &Likely) -> f64 {
    let mut sums = [0.0; PATHS];
    for (slopes, odds) in slopes.iter().zip(odds) {
        sums.iter_mut().zip(slopes.iter().zip(odds)).for_each(|(sum, (slope, odds))| *sum += slope * odds);
    }
    sums.iter().sum()
}

fn dot_of_paths(slopes: &[f64; PATHS], odds: &[f64; PATHS]) -> f64 {
    slopes.iter().zip(odds).map(|(slope, odds)| slope * odds).sum()
}

/// The slopes along what a station makes, by the state of its run's ground where that matters; answers how likely it is that
/// the run is not connected here, and in the box before.
fn ground_slopes(station: &Station, here: &[Likely], slopes: &[Likely], of_here: &mut [Likely]) -> [f64; 2] {
    let mut broken = [0.0; 2];
    let closed = |slopes: &Likely| [sum_of(slopes, &BEFORE_BROKEN), sum_of(slopes, &BEFORE_ABSENT)];
    let (first, last) = (&slopes[0], &slopes[slopes.len() - 1]);
    let (of_first, of_last) = (closed(first), closed(last));
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let variant = if of_here.len() > 1 { run } else { 0 };
        let (here, of_here) = (&here[variant], &mut of_here[variant]);
        if run < 2 {
            for (ground, slopes) in first.iter().enumerate() {
                let beyond = if run == 1 && ground == 0 { 1 } else { ground };
                of_here[beyond].iter_mut().zip(slopes).for_each(|(to, slope)| *to += of_run * slope);
            }
            continue;
        }
        let [of_broken, of_absent] = if run == LOOSE_BEFORE { &of_last } else { &of_first };
        let mut likely = 0.0;
        let mut add = |grounds: [usize; 3], before: &[f64; PATHS]| {
            let mut slopes = [0.0; PATHS];
            ALONE.iter().zip(before).for_each(|(path, slope)| slopes[*path] += slope);
            for ground in grounds {
                of_here[ground].iter_mut().zip(&slopes).for_each(|(to, slope)| *to += of_run * slope);
            }
            likely += of_run * dot_of_paths(&slopes, &sum_of(here, &grounds));
        };
        add(if run == ABSENT { CLOSED_ABSENT } else { CLOSED_BROKEN }, of_broken);
        add(CLOSED_ABSENT, of_absent);
        if run != ABSENT {
            broken[usize::from(run == LOOSE_BEFORE)] += likely;
        }
    }
    broken
}

/// How likely each state of a receptacle's ground is, in the order of [`super::Ground`], and hot and neutral reversed.
fn of_device(station: &Station, kinds: &Kinds, all: &[Likely; 2], of_here: &[Likely]) -> ([f64; 6], f64) {
    let mut sums = [[0.0; PATHS]; 7];
    let loose_cases = loose_cases(station);
    for case in 0..of_here.len() * loose_cases {
        let (all, slopes) = (&all[case % loose_cases], &of_here[case / loose_cases]);
        if of_here.len() > 1 && station.ground[case / loose_cases] <= 0.0 {
            continue;
        }
        let seen: [f64; WIRINGS] = std::array::from_fn(|wiring| seen(station, case, wiring));
        for (arrival, (unmet, met)) in NUMBERS.into_iter().enumerate() {
            let (mut plain, mut meeting) = ([0.0; PATHS], [0.0; PATHS]);
            for path in 0..PATHS {
                plain[path] = all[unmet][path] * slopes[unmet][path];
                if let Some(met) = met {
                    plain[path] += all[met][path] * slopes[met][path];
                    meeting[path] = (all[unmet][path] + all[met][path]) * slopes[met][path];
                }
            }
            for wiring in 0..WIRINGS {
                let rest = if meets(wiring, arrival) { &meeting } else { &plain };
                let odds = &station.local[wiring][arrival];
                let [ground, reversed] = kinds[wiring][arrival];
                for path in 0..PATHS {
                    sums[ground][path] += seen[wiring] * odds[path] * rest[path];
                }
                if reversed > 0 {
                    for path in 0..PATHS {
                        sums[6][path] += seen[wiring] * odds[path] * rest[path];
                    }
                }
            }
        }
    }
    let [.., reversed] = sums;
    (std::array::from_fn(|ground| sums[ground].iter().sum()), reversed.iter().sum())
}

/// By wiring and arrival: the place of what a ground terminal is, and 1 where hot and neutral are reversed.
type Kinds = [[[usize; 2]; ARRIVALS]; WIRINGS];

fn kinds() -> Kinds {
    std::array::from_fn(|wiring| {
        std::array::from_fn(|arrival| {
            let at = at_box(wiring, arrival, 0);
            [at.ground() as usize, usize::from(at.is_reversed())]
        })
    })
}

/// The slopes along what comes from beyond a station.
fn beyond_slopes(part: &Part, of_here: &[Likely]) -> [Likely; 2] {
    let mut result = [NEVER; 2];
    if part.station.children.is_empty() {
        return result;
    }
    let loose_cases = loose_cases(part.station);
    for (case, [plain, meeting]) in part.devices.iter().enumerate() {
        let (result, slopes) = (&mut result[case % loose_cases], &of_here[case / loose_cases]);
        for (arrival, (unmet, met)) in NUMBERS.into_iter().enumerate() {
            for path in 0..PATHS {
                result[unmet][path] += plain[arrival][path] * slopes[unmet][path];
            }
            let Some(met) = met else { continue };
            for path in 0..PATHS {
                let (plain, meeting) = (plain[arrival][path], meeting[arrival][path]);
                result[unmet][path] += meeting * slopes[met][path];
                result[met][path] += (plain + meeting) * slopes[met][path];
            }
        }
    }
    result
}

/// Hands the slopes along what comes from beyond on to each run beyond, last first.
fn hand_on<'a>(
    station: &Station,
    step: &Step,
    beyond: [Likely; 2],
    through: impl Fn(usize) -> &'a [Through; 3],
    mut call: impl FnMut(usize, [Likely; 2]),
) {
    let mut of_all = beyond;
    for (at, child) in station.children.iter().enumerate().rev() {
        let so_far = &step.beyond[at];
        let [all, not_loose, loose] = through(*child).each_ref().map(|through| &through.through);
        if station.sight.is_some() {
            let more_either = either::<Sum>(not_loose, loose);
            let so_far_either = either::<Sum>(&so_far[0], &so_far[1]);
            let sound = either::<Sum>(&of_both(&of_all[0], not_loose), &of_both(&of_all[1], loose));
            let more_sound = either::<Sum>(&of_both(&of_all[0], &so_far[0]), &of_both(&of_all[1], &so_far[1]));
            call(*child, [more_sound, of_both(&of_all[1], &so_far_either)]);
            of_all = [sound, of_both(&of_all[1], &more_either)];
        } else {
            // The first has nothing before it.
            let of_child = if at == 0 { of_all[0] } else { of_both(&of_all[0], &so_far[0]) };
            call(*child, [of_child, NEVER]);
            if at > 0 {
                of_all[0] = of_both(&of_all[0], all);
            }
        }
    }
}
