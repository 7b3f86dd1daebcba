//! The fault currents of a circuit against the length of their way, and where its breaker must open.

use super::drawing::{Anchor, Drawing, Ink};
use crate::checks::{ADVISED_MULTIPLE, FaultLoop, LoopSource, fault_loop, loop_with};
use crate::conductors::resistance;
use crate::state::State;
use dwelling::{BoxIndex, CircuitIndex};
use electrical::formulas::breaker_limits::longest_time;
use electrical::formulas::ground_fault_loop::Part;
use electrical::{Amperes, ConductorMetal, Gauge, Length};
use rulebook::tables::egc_size::egc_size;

const WIDTH: f64 = 660.0;
const HEIGHT: f64 = 360.0;
const LEFT: f64 = 64.0;
const RIGHT: f64 = 486.0;
const TOP: f64 = 62.0;
const BOTTOM: f64 = 312.0;
/// Two words closer than this are drawn as one.
const WORD: f64 = 13.0;

/// The chart of a circuit; none where no opening of it has a loop that is known.
#[must_use]
pub fn fault_current_chart(state: &State, circuit: CircuitIndex) -> Option<String> {
    let on_it = |at: &BoxIndex| state.dwelling.device_box(*at).circuit == Some(circuit);
    let loops: Vec<(BoxIndex, FaultLoop)> = state
        .dwelling
        .box_indices()
        .filter(on_it)
        .filter(|at| state.grounded[at.0] == Some(true))
        .filter_map(|at| fault_loop(state, at).ok().map(|found| (at, found)))
        .collect();
    let rating = state.dwelling.circuit(circuit).breaker?;
    let (_, first) = loops.first()?;
    let (id, source) = (&state.dwelling.circuit(circuit).id, first.source);
    let scale = Scale::of(&loops, rating);
    let ends = |pick: fn(&FaultLoop) -> f64| loops.iter().map(move |(_, found)| pick(found));
    let least = ends(|found| found.band.least_current.as_amperes()).fold(f64::INFINITY, f64::min);
    let description = format!(
        "{} openings with a ground, the weakest with {least:.0} A. A breaker of {rating} must open from {:.0} A, 135 % of its \
         rating; {:.0} A, {ADVISED_MULTIPLE} times, are advised.",
        loops.len(),
        f64::from(rating.get()) * 1.35,
        f64::from(rating.get()) * ADVISED_MULTIPLE
    );
    let title = format!("Circuit {id}, {rating}: fault current against length");
    let mut drawing = Drawing::new((WIDTH, HEIGHT), title.clone(), description);
    drawing.headline((20.0, 28.0), &title);
    let under = match source {
        LoopSource::Stated(amperes) => {
            format!("from hot to ground, source of {amperes} at its least; bars: from weakest to strongest")
        }
        LoopSource::Unknown => "from hot to ground, source unknown: no more than this, however strong it is".to_owned(),
    };
    drawing.words((20.0, 46.0), &under, Ink::Quiet, Anchor::Start);
    axes(&mut drawing, &scale);
    limits(&mut drawing, &scale, rating);
    if let Some(points) = along_the_circuit(state, circuit, &scale, source) {
        drawing.path(&points, Ink::PaleBlue);
        // The words stand below the curve: at their end it is at its lowest above them.
        let words = "if the ground lay beside the run";
        if let Some(end) = points.iter().find(|point| point.0 > LEFT + 185.0) {
            drawing.words((LEFT + 8.0, end.1 + 14.0), words, Ink::Quiet, Anchor::Start);
        }
    }
    openings(&mut drawing, &scale, state, &loops);
    Some(drawing.finished())
}

/// From feet and amperes to places on the drawing: feet evenly, amperes by their logarithm.
struct Scale {
    feet: f64,
    least: f64,
    most: f64,
}

impl Scale {
    fn of(loops: &[(BoxIndex, FaultLoop)], rating: Amperes) -> Self {
        let feet = loops.iter().map(|(_, found)| found.out.as_feet()).fold(10.0, f64::max);
        let most = loops.iter().map(|(_, found)| found.band.most_current.as_amperes()).fold(100.0, f64::max);
        let weakest = loops.iter().map(|(_, found)| found.band.least_current.as_amperes());
        let least = weakest.fold(f64::from(rating.get()), f64::min);
        let decade = |amperes: f64, up: bool| {
            let log = amperes.max(1.0).log10();
            10_f64.powf(if up { log.ceil() } else { log.floor() })
        };
        Self { feet: (feet * 1.08 / 10.0).ceil() * 10.0, least: decade(least, false), most: decade(most, true) }
    }

    fn x(&self, feet: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * feet / self.feet
    }

    fn y(&self, amperes: f64) -> f64 {
        let share = (amperes / self.least).log10() / (self.most / self.least).log10();
        BOTTOM - (BOTTOM - TOP) * share.clamp(0.0, 1.0)
    }
}

fn axes(drawing: &mut Drawing, scale: &Scale) {
    drawing.line((LEFT, BOTTOM), (RIGHT, BOTTOM), Ink::Black, false);
    drawing.line((LEFT, TOP), (LEFT, BOTTOM), Ink::Black, false);
    let step = [5.0, 10.0, 20.0, 50.0, 100.0, 200.0].into_iter().find(|step| scale.feet / step <= 9.0).unwrap_or(500.0);
    let mut feet = 0.0;
    while feet <= scale.feet {
        let x = scale.x(feet);
        drawing.line((x, BOTTOM), (x, BOTTOM + 4.0), Ink::Black, false);
        drawing.words((x, BOTTOM + 17.0), &format!("{feet:.0}"), Ink::Black, Anchor::Middle);
        feet += step;
    }
    drawing.words(
        ((LEFT + RIGHT) / 2.0, BOTTOM + 34.0),
        "hot conductor from the panel, ft",
        Ink::Quiet,
        Anchor::Middle,
    );
    let mut decade = scale.least;
    while decade <= scale.most * 1.001 {
        for step in [1.0, 2.0, 5.0].into_iter().map(|times| decade * times).filter(|step| *step <= scale.most * 1.001) {
            let y = scale.y(step);
            drawing.line((LEFT - 4.0, y), (LEFT, y), Ink::Black, false);
            drawing.words((LEFT - 8.0, y + 4.0), &format!("{step:.0} A"), Ink::Black, Anchor::End);
        }
        decade *= 10.0;
    }
}

/// The lines at which the breaker must open, and the advised one.
fn limits(drawing: &mut Drawing, scale: &Scale, rating: Amperes) {
    let amperes = f64::from(rating.get());
    let must = |percent: u32| match longest_time(percent, rating) {
        Some(time) if time.as_seconds() < 60.0 => format!("{percent} %: in {:.0} s at the latest", time.as_seconds()),
        Some(time) => format!("{percent} %: in {:.0} min at the latest", time.as_minutes()),
        None => format!("{percent} %"),
    };
    let lines = [
        (1.35, must(135), Ink::Red),
        (2.0, must(200), Ink::Quiet),
        (3.0, must(300), Ink::Quiet),
        (ADVISED_MULTIPLE, "500 %: advised".to_owned(), Ink::Amber),
    ];
    for (times, words, ink) in lines {
        let y = scale.y(amperes * times);
        drawing.line((LEFT, y), (RIGHT, y), ink, true);
        drawing.words((RIGHT + 6.0, y + 4.0), &words, ink, Anchor::Start);
    }
}

/// The weakest current along the circuit if its ground lay beside the run all the way.
fn along_the_circuit(
    state: &State,
    circuit: CircuitIndex,
    scale: &Scale,
    source: LoopSource,
) -> Option<Vec<(f64, f64)>> {
    let of = state.dwelling.circuit(circuit);
    let (rating, gauge): (Amperes, Gauge) = (of.breaker?, of.gauge?);
    let ground = egc_size(rating, ConductorMetal::Copper, Some(gauge), &state.code).ok()?.value;
    let hot = resistance(state, gauge, of.metal, false).ok()?;
    let back = resistance(state, ground, ConductorMetal::Copper, true).ok()?;
    let points = (1..=40).map(|step| {
        let feet = scale.feet * f64::from(step) / 40.0;
        let length = Length::nearest_to_metres(feet * 0.3048);
        let part = |both: (_, _)| vec![Part::Metal(both.0, both.1, length)];
        let band = loop_with(source, part(hot), part(back)).ok()?;
        Some((scale.x(feet), scale.y(band.least_current.as_amperes())))
    });
    points.collect()
}

fn openings(drawing: &mut Drawing, scale: &Scale, state: &State, loops: &[(BoxIndex, FaultLoop)]) {
    let mut sorted: Vec<&(BoxIndex, FaultLoop)> = loops.iter().collect();
    sorted.sort_by_key(|(at, found)| (found.out, *at));
    let mut taken: Vec<(f64, f64)> = Vec::new();
    for (at, found) in sorted {
        let x = scale.x(found.out.as_feet());
        let (least, most) = (found.band.least_current.as_amperes(), found.band.most_current.as_amperes());
        drawing.line((x, scale.y(most)), (x, scale.y(least)), Ink::Blue, false);
        drawing.dot((x, scale.y(least)), Ink::Blue);
        // A word that would lie on another moves up.
        let mut y = scale.y(most) - 6.0;
        while taken.iter().any(|(other, height)| (x - other).abs() < 30.0 && (y - height).abs() < WORD) {
            y -= WORD;
        }
        taken.push((x, y));
        drawing.words((x, y), &state.dwelling.device_box(*at).id, Ink::Blue, Anchor::Middle);
    }
}
