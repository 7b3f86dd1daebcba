//! The way up once more, with sums over each device's wirings made beforehand: for findings weighed one after the other.

use super::likely::{ALONE, CLOSED_ABSENT, CLOSED_BROKEN, LOOSE_BEFORE, Likely, MET, NEVER, Sum, meets, through_wire};
use super::stations::{ARRIVALS, PATHS, RUNS, STATES, Station};
use super::up::{both, either, together};

/// Odds by what arrives, and by path.
type ByArrival = [[f64; PATHS]; ARRIVALS];

/// A station with sums over its device's wirings.
pub(crate) struct Part<'s> {
    pub(crate) station: &'s Station,
    /// By the state of the run's ground where that matters, then by whether a run beyond is loose here: devices that do not
    /// join what arrives to something, and that do.
    pub(crate) devices: Vec<[ByArrival; 2]>,
}

impl<'s> Part<'s> {
    /// The sums of a station.
    pub(crate) fn of(station: &'s Station) -> Self {
        let loose_cases = loose_cases(station);
        let runs = if station.sight.is_some() { RUNS } else { 1 };
        let mut devices = vec![[[[0.0; PATHS]; ARRIVALS]; 2]; runs * loose_cases];
        for (number, devices) in devices.iter_mut().enumerate() {
            for (wiring, of_wiring) in station.local.iter().enumerate() {
                let seen = seen(station, number, wiring);
                for (arrival, odds) in of_wiring.iter().enumerate() {
                    let to = &mut devices[usize::from(meets(wiring, arrival))][arrival];
                    to.iter_mut().zip(odds).for_each(|(to, odds)| *to += seen * odds);
                }
            }
        }
        Self { station, devices }
    }

    pub(crate) const fn runs(&self) -> usize {
        if self.station.sight.is_some() { RUNS } else { 1 }
    }
}

/// How many cases of a run beyond that is or is not loose in this box there are.
pub(crate) fn loose_cases(station: &Station) -> usize {
    if station.children.is_empty() { 1 } else { station.loose_matters() }
}

/// How likely what was seen is with a device so wired, in a case of the run's ground and of a run beyond.
pub(crate) fn seen(station: &Station, case: usize, wiring: usize) -> f64 {
    let loose_cases = loose_cases(station);
    station.sight.as_ref().map_or(1.0, |sight| sight[case % loose_cases][case / loose_cases][wiring])
}

/// What goes up through a run's ground, its hot conductor and its neutral.
#[derive(Clone)]
pub(crate) struct Through {
    pub(crate) after_ground: Likely,
    pub(crate) after_hot: Likely,
    pub(crate) through: Likely,
}

/// What goes up from one station.
pub(crate) struct Step {
    /// What comes from the runs beyond, one after the other.
    pub(crate) beyond: Vec<[Likely; 2]>,
    pub(crate) here: Vec<Likely>,
    /// With all states of the run's ground; without, and with only, the one that is loose in the box before.
    pub(crate) through: [Through; 3],
    /// What they were divided by.
    pub(crate) scale: f64,
}

/// What goes up from a station: with all states of its run's ground together, and apart, as far as is asked for.
pub(crate) fn step_of<'a>(part: &Part, whole: bool, apart: bool, child: impl Fn(usize) -> Option<&'a Step>) -> Step {
    let station = part.station;
    let mut none = NEVER;
    for (ground, odds) in none.iter_mut().enumerate() {
        *odds = if MET[ground] { [0.0; PATHS] } else { [1.0; PATHS] };
    }
    let mut beyond = Vec::with_capacity(1 + station.children.len());
    let mut last = [none, NEVER];
    for step in station.children.iter().filter_map(|number| child(*number)) {
        let [all, not_loose, loose] = step.through.each_ref().map(|through| &through.through);
        let next = match station.sight {
            Some(_) => together::<Sum>(&last, &[*not_loose, *loose], true),
            None => [both::<Sum>(&last[0], all), NEVER],
        };
        beyond.push(std::mem::replace(&mut last, next));
    }
    beyond.push(last);
    let here = here(part, &last);
    let [not_loose, loose] = after_ground(station, &here);
    let on = |is_wanted: bool, after_ground: &dyn Fn() -> Likely| {
        if !is_wanted {
            return Through { after_ground: NEVER, after_hot: NEVER, through: NEVER };
        }
        let after_ground = after_ground();
        let after_hot = through_wire::<Sum, STATES>(&after_ground, &station.hot);
        let through = through_wire::<Sum, 1>(&after_hot, &station.neutral);
        Through { after_ground, after_hot, through }
    };
    let mut through =
        [on(whole, &|| either::<Sum>(&not_loose, &loose)), on(apart, &|| not_loose), on(apart, &|| loose)];
    let of_all = through.iter().flat_map(|through| through.through.iter().flatten());
    let greatest = of_all.fold(0.0, |greatest: f64, odds| greatest.max(*odds));
    let scale = if greatest > 0.0 { greatest } else { 1.0 };
    let factor = 1.0 / scale;
    for through in &mut through {
        through.through.iter_mut().flatten().for_each(|odds| *odds *= factor);
    }
    Step { beyond, here, through, scale }
}

/// What a device with what was seen makes of what comes from beyond.
fn here(part: &Part, beyond: &[Likely; 2]) -> Vec<Likely> {
    let loose_cases = loose_cases(part.station);
    let mut result = vec![NEVER; part.runs()];
    for (case, [plain, meeting]) in part.devices.iter().enumerate() {
        if part.runs() > 1 && part.station.ground[case / loose_cases] <= 0.0 {
            continue;
        }
        let (result, beyond) = (&mut result[case / loose_cases], &beyond[case % loose_cases]);
        for (arrival, (unmet, met)) in NUMBERS.into_iter().enumerate() {
            for path in 0..PATHS {
                result[unmet][path] += plain[arrival][path] * beyond[unmet][path];
            }
            let Some(met) = met else { continue };
            for path in 0..PATHS {
                let either = beyond[unmet][path] + beyond[met][path];
                result[met][path] += plain[arrival][path] * beyond[met][path] + meeting[arrival][path] * either;
            }
        }
    }
    result
}

/// The numbers of the grounds of each arrival, its jumper not met and, where it is joined to something, met.
pub(crate) const NUMBERS: [(usize, Option<usize>); ARRIVALS] =
    [(0, None), (1, None), (2, None), (3, Some(4)), (5, Some(6)), (7, None), (8, Some(9)), (10, Some(11))];

/// What goes up through a run's ground: where it is not, and is, loose in the box before.
fn after_ground(station: &Station, here: &[Likely]) -> [Likely; 2] {
    let mut result = [NEVER; 2];
    for (run, of_run) in station.ground.iter().enumerate().filter(|(_, odds)| **odds > 0.0) {
        let here = if here.len() > 1 { &here[run] } else { &here[0] };
        let result = &mut result[usize::from(run == LOOSE_BEFORE)];
        if run < 2 {
            for (ground, result) in result.iter_mut().enumerate() {
                let beyond = if run == 1 && ground == 0 { 1 } else { ground };
                result.iter_mut().zip(&here[beyond]).for_each(|(to, odds)| *to += of_run * odds);
            }
            continue;
        }
        let sums = [CLOSED_BROKEN, CLOSED_ABSENT].map(|closed| {
            let sum = sum_of(here, &closed);
            ALONE.map(|path| of_run * sum[path])
        });
        for (grounds, absent) in [(&BEFORE_BROKEN[..], run == ABSENT), (&BEFORE_ABSENT[..], true)] {
            for ground in grounds {
                let sum = &sums[usize::from(absent)];
                result[*ground].iter_mut().zip(sum).for_each(|(to, odds)| *to += odds);
            }
        }
    }
    result
}

/// The number of the state of a run that has no grounding path.
pub(crate) const ABSENT: usize = 5;
/// Grounds before a run that does not conduct, which have met no jumper: those that lie all the way, and those that do not.
pub(crate) const BEFORE_BROKEN: [usize; 5] = [0, 1, 2, 3, 5];
pub(crate) const BEFORE_ABSENT: [usize; 3] = [7, 8, 10];

pub(crate) fn sum_of(likely: &Likely, grounds: &[usize]) -> [f64; PATHS] {
    let mut sum = [0.0; PATHS];
    for ground in grounds {
        sum.iter_mut().zip(&likely[*ground]).for_each(|(to, odds)| *to += odds);
    }
    sum
}
