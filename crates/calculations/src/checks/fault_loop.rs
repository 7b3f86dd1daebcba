//! The ground-fault loop of a box: out by the hot conductor, back by the grounding path, and what may be said of clearing.

use super::the_box;
use crate::conductors::{COLDEST, HOTTEST, ground_parts, length_of, parts_of, runs_to};
use crate::ground_path::{Segment, SegmentOf, ground_path};
use crate::row::{Amount, Asked, Check, CheckRow, SourceAnswer, SourceKind, Verdict};
use crate::state::{Moment, State};
use dwelling::BoxIndex;
use electrical::formulas::breaker_limits::Clearing;
use electrical::formulas::ground_fault_loop::{GroundFaultLoop, LoopBand, Part, Source, Span};
use electrical::{Amperes, Current, Length, Ohms, Resistance, Voltage};
use std::fmt;

/// How many times the breaker's rating should flow. Sources take 4 to 10 times: no standard decides. Published: 5 times,
/// EC&M 2000, Ground rod does not assist in clearing a fault.
pub const ADVISED_MULTIPLE: f64 = 5.0;
/// Below this percentage of its rating no breaker has to trip at all.
const MUST_TRIP_PERCENT: f64 = 135.0;
/// The lowest and the highest voltage at a service of 120 V. From memory: ANSI C84.1, range A, 5 % to either side.
const VOLTS: (Voltage, Voltage) = (Voltage::volts(114.0), Voltage::volts(126.0));
/// A source so strong that it adds nothing to the loop.
const ENDLESS: Current = Current::amperes(200_000.0);

/// What is known of the source behind a loop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoopSource {
    /// The survey states the fault current at the panel, at its least.
    Stated(Amperes),
    /// Nobody has: only an upper bound can be given.
    Unknown,
}

/// The loop of a box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaultLoop {
    /// The length of the hot conductor, one way.
    pub out: Length,
    /// The grounding path back.
    pub back: WayBack,
    /// What is known of the source.
    pub source: LoopSource,
    /// The currents. With an unknown source the least is that of an endless one: an upper bound of the least.
    pub band: LoopBand,
}

/// How a fault current comes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayBack {
    /// Over grounding conductors and metal of this length.
    Reckoned(Length),
    /// Over a path of which a loaded test read this impedance.
    Measured(Ohms),
}

impl fmt::Display for WayBack {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Reckoned(length) => write!(f, "{length} back"),
            Self::Measured(ohms) => write!(f, "back over a ground that was measured at {ohms}"),
        }
    }
}

/// The part of its reading by which an instrument that loads a ground path may be off, to either side. Assumed, no source.
const INSTRUMENT: f64 = 0.1;
/// How much more a copper path resists at 75 °C than at the 20 °C at which it was measured. By hand: (234.5 + 75) / (234.5 + 20);
/// 234.5 °C is copper's, published in NEC chapter 9, table 8, note 2, as 0.00323 a degree from 75 °C.
const HOTTER: f64 = 1.216;

/// The loop of a box that has a ground. A ground that was measured and stays as it was is taken as measured where
/// that is worse than what its length says: a loaded test sees a bad joint.
///
/// # Errors
/// What must be found out.
pub fn fault_loop(state: &State, at: BoxIndex) -> Result<FaultLoop, String> {
    let runs = runs_to(state, at)?;
    let path = ground_path(state, at);
    let measured = measured(state, at, path.as_deref().ok());
    let reckoned = path.and_then(|path| {
        let length = path.iter().filter_map(|segment| segment.length).fold(Length::ZERO, |sum, length| sum + length);
        Ok((WayBack::Reckoned(length), ground_parts(state, &path)?))
    });
    let (back, grounding) = worse_of(reckoned, measured)?;
    let source = source_of(state, at);
    let band = loop_with(source, parts_of(&runs), grounding)?;
    Ok(FaultLoop { out: length_of(&runs), back, source, band })
}

type Back = (WayBack, Vec<Part>);

/// Of what is reckoned from lengths and what was measured, the way back that lets less through.
fn worse_of(reckoned: Result<Back, String>, measured: Option<Ohms>) -> Result<Back, String> {
    let Some(ohms) = measured else { return reckoned };
    let measured = (WayBack::Measured(ohms), vec![measured_part(ohms)]);
    let Ok(reckoned) = reckoned else { return Ok(measured) };
    let least =
        |(_, parts): &Back| loop_with(LoopSource::Unknown, Vec::new(), parts.clone()).map(|band| band.least_current);
    Ok(if least(&reckoned)? < least(&measured)? { reckoned } else { measured })
}

/// The highest impedance that a loaded test read of a box's ground, where that ground is still the one there.
fn measured(state: &State, at: BoxIndex, path: Option<&[Segment]>) -> Option<Ohms> {
    let is_new = |segment: &Segment| matches!(segment.of, SegmentOf::Brought(_));
    let is_as_found = match state.moment {
        Moment::Before => true,
        Moment::After => path.is_none_or(|path| !path.iter().any(is_new)),
    };
    let readings = state.dwelling.device_box(at).found.iter();
    readings.filter_map(|reading| reading.ground_impedance).max().filter(|_| is_as_found)
}

fn measured_part(ohms: Ohms) -> Part {
    let ohms = Resistance::from(ohms).as_ohms();
    Part::Stated(Span {
        least: Resistance::ohms(ohms * (1.0 - INSTRUMENT)),
        most: Resistance::ohms(ohms * (1.0 + INSTRUMENT) * HOTTER),
    })
}

/// What is known of the source of a box's panel.
fn source_of(state: &State, at: BoxIndex) -> LoopSource {
    let panel = state.panel_of(at).map(|panel| state.dwelling.panel(panel));
    panel.and_then(|panel| panel.fault_current).map_or(LoopSource::Unknown, LoopSource::Stated)
}

/// The currents of a loop of these parts: at the strongest behind an endless source.
///
/// # Errors
/// What is out of the formula's range, in words.
pub fn loop_with(source: LoopSource, outgoing: Vec<Part>, grounding: Vec<Part>) -> Result<LoopBand, String> {
    let least = match source {
        LoopSource::Stated(amperes) => Current::amperes(f64::from(amperes.get())),
        LoopSource::Unknown => ENDLESS,
    };
    let source = Source::AvailableCurrent { least, most: ENDLESS };
    let (least_voltage, most_voltage) = VOLTS;
    let found = GroundFaultLoop {
        least_voltage,
        most_voltage,
        source,
        outgoing,
        grounding,
        neutral: Vec::new(),
        coldest: COLDEST,
        hottest: HOTTEST,
    };
    found.band().map_err(|error| error.to_string())
}

/// The check of a box; none where it has no ground for a fault to return by.
pub(super) fn row(state: &State, at: BoxIndex) -> Option<CheckRow> {
    let asked = Asked {
        check: Check::FaultLoop,
        subject: the_box(state, at),
        circuits: state.circuits_of_box(at),
        source: SourceAnswer::other(
            SourceKind::Advice,
            "5 times the rating (EC&M 2000); 250.4(A)(5) asks for clearing and states no number; UL 489 and NEMA AB 4 for times",
            false,
        ),
    };
    match state.grounded[at.0] {
        Some(false) => return None,
        Some(true) => {}
        None => return Some(asked.not_checked("find out whether there is a ground")),
    }
    let rating = state.dwelling.circuit_of(at).and_then(|circuit| circuit.breaker);
    Some(match (fault_loop(state, at), rating) {
        (Err(missing), _) => asked.not_checked(missing),
        (_, None) => asked.not_checked("find out the rating of its breaker or fuse"),
        (Ok(found), Some(rating)) => judged(asked, &found, rating),
    })
}

fn judged(mut asked: Asked, found: &FaultLoop, rating: Amperes) -> CheckRow {
    let (least, most) = (found.band.least_current.as_amperes(), found.band.most_current.as_amperes());
    let must_trip = f64::from(rating.get()) * MUST_TRIP_PERCENT / 100.0;
    let advised = f64::from(rating.get()) * ADVISED_MULTIPLE;
    let way = format!("{} out and {}", found.out, found.back);
    let required = Amount::at_least(advised, "A", format!("at least {advised} A advised"));
    if least < must_trip {
        asked.source = SourceAnswer::other(SourceKind::Rule, "250.4(A)(5); UL 489 for 135 %", true);
        let even = if found.source == LoopSource::Unknown { "even with an endless source " } else { "" };
        let says =
            format!("{even}as little as {least:.0} A flow over {way}: {rating} may hold, and the metal stays live");
        let amounts = (Amount::between(least, most, "A", format!("{least:.0} to {most:.0} A")), required);
        return asked.checked(Verdict::NotOk, amounts, Some(least - must_trip), says);
    }
    if found.source == LoopSource::Unknown {
        return asked.not_checked(format!(
            "find out the fault current at the panel: measured, or stated by the supplier (the wiring alone, {way}, lets \
             through at most {most:.0} A cold and {least:.0} A hot)"
        ));
    }
    let clearing = found.band.clearing(rating);
    let clears = clearing.as_ref().map_or_else(ToString::to_string, Clearing::to_string);
    let verdict = if least >= advised { Verdict::Ok } else { Verdict::Advice };
    let touch = found.band.most_touch.as_volts();
    let says = format!(
        "{least:.0} to {most:.0} A over {way}, with up to {touch:.0} V on the metal meanwhile; {rating} {clears}"
    );
    let amounts = (Amount::between(least, most, "A", format!("{least:.0} to {most:.0} A")), required);
    asked.checked(verdict, amounts, Some(least - advised), says)
}
