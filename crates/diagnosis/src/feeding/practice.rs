//! How likely a run is before anything is seen: what electricians commonly do. All of it is common practice, no source.
//!
//! These weights rank orders that nothing else tells apart. They are no evidence, and no plan may rest on them alone.

use super::question::Onward;
use dwelling::{BoxIndex, DeviceBox, Dwelling, Holding, PanelIndex, Point, RoomIndex};
use electrical::Length;

/// The practice in words, each with its weight, for those who ask why an order is called likely.
pub const PRACTICE: [&str; 6] = [
    "a cable runs to an opening nearby: each further 8 ft, square to the walls, makes a run a third as likely; a home run, \
     which goes where it must, falls so over 24 ft (common practice, no source)",
    "a cable stays in its room where it can: into another room 0.7, to another floor 0.3 besides the way there \
     (common practice, no source)",
    "a circuit has one home run: each further one 0.1 (common practice, no source)",
    "a receptacle or a switch feeds on in a chain: two onward runs 0.35, each further one 0.2 of that; splices and \
     luminaires branch more (common practice, no source)",
    "a counted cable that leads to no box of the survey: 0.1 each; more boxes fed than cables counted: never (common \
     practice, no source)",
    "a run longer straight than it was measured: 0.05; from one circuit of a multiwire set to the other: 0.2 (common \
     practice, no source)",
];

/// Over how many feet a run to a box falls to 1/e.
const REACH_OF_A_RUN: f64 = 8.0;
/// Over how many feet a home run falls to 1/e.
const REACH_OF_A_HOME_RUN: f64 = 24.0;
const INTO_ANOTHER_ROOM: f64 = 0.7;
const TO_ANOTHER_FLOOR: f64 = 0.3;
const FURTHER_HOME_RUN: f64 = 0.1;
const UNRECORDED_CABLE: f64 = 0.1;
const LONGER_THAN_MEASURED: f64 = 0.05;
const TO_THE_OTHER_OF_A_SET: f64 = 0.2;
/// How many feet lie between one floor and the next.
const STOREY: f64 = 9.0;
/// The feet counted where a place is not known: within a room, and from one room to another.
const WITHIN_A_ROOM: f64 = 8.0;
const BETWEEN_ROOMS: f64 = 16.0;

/// Minutes to take a device out, part its conductors safely and put all back.
pub(super) const MINUTES_TO_PART: u32 = 20;
/// Minutes for a luminaire or a blank cover, which take a ladder.
pub(super) const MINUTES_TO_PART_OVERHEAD: u32 = 35;
/// Minutes to see whether one opening is dead.
pub(super) const MINUTES_TO_LOOK: u32 = 1;

/// A place in the dwelling, as far as it is known.
#[derive(Clone, Copy)]
struct Spot {
    room: Option<RoomIndex>,
    at: Option<Point>,
    height: Option<Length>,
}

impl Spot {
    fn of_box(device_box: &DeviceBox) -> Self {
        Self { room: Some(device_box.room), at: device_box.at, height: device_box.height }
    }

    fn floor(self, dwelling: &Dwelling) -> Option<i8> {
        self.room.and_then(|room| dwelling.room(room).floor)
    }
}

/// How likely it is that one box feeds another, beside other boxes.
pub(super) fn run_weight(dwelling: &Dwelling, feed: BoxIndex, fed: BoxIndex) -> f64 {
    let (from, to) = (dwelling.device_box(feed), dwelling.device_box(fed));
    let feet = feet_between(dwelling, Spot::of_box(from), Spot::of_box(to));
    let mut weight = (-feet / REACH_OF_A_RUN).exp();
    if from.room != to.room {
        weight *= INTO_ANOTHER_ROOM;
    }
    if is_on_another_floor(dwelling, Spot::of_box(from), Spot::of_box(to)) {
        weight *= TO_ANOTHER_FLOOR;
    }
    if matches!((from.circuit, to.circuit), (Some(one), Some(other)) if one != other) {
        weight *= TO_THE_OTHER_OF_A_SET;
    }
    weight * measured_weight(to, feet)
}

/// How likely it is that the panel feeds a box, beside other boxes that it may feed.
pub(super) fn home_run_weight(dwelling: &Dwelling, panel: PanelIndex, fed: BoxIndex) -> f64 {
    let (from, to) = (dwelling.panel(panel), dwelling.device_box(fed));
    let feet = feet_between(dwelling, Spot { room: from.room, at: from.at, height: None }, Spot::of_box(to));
    (-feet / REACH_OF_A_HOME_RUN).exp() * measured_weight(to, feet)
}

/// How likely each number of onward runs from a box is.
pub(super) fn onward_runs(device_box: &DeviceBox) -> Onward {
    if let Some(counted) = device_box.cables_in_box.filter(|counted| *counted > 0) {
        let most = (counted - 1).min(u32::from(u8::MAX));
        let share = |runs: u32| UNRECORDED_CABLE.powi(i32::try_from(most - runs).unwrap_or(i32::MAX));
        return Onward { shares: (0..=most).map(share).collect(), beyond: 0.0 };
    }
    let (shares, beyond): (&[f64], f64) = match device_box.holds {
        // A splice is there to feed on.
        Holding::Splice => (&[0.05, 0.5, 1.0, 1.0, 0.5], 0.5),
        Holding::Luminaire => (&[1.0, 1.0, 0.7, 0.5, 0.3], 0.4),
        _ => (&[1.0, 1.0, 0.35], 0.2),
    };
    Onward { shares: shares.to_vec(), beyond }
}

/// How likely each number of home runs is.
pub(super) fn home_runs() -> Onward {
    Onward { shares: vec![0.0, 1.0], beyond: FURTHER_HOME_RUN }
}

/// How long it takes to part the conductors in a box and put them back.
pub(super) fn minutes_to_part(device_box: &DeviceBox) -> u32 {
    let overhead = matches!(device_box.holds, Holding::Luminaire | Holding::Splice);
    if overhead { MINUTES_TO_PART_OVERHEAD } else { MINUTES_TO_PART }
}

fn measured_weight(fed: &DeviceBox, feet: f64) -> f64 {
    if fed.run.length.is_some_and(|length| length.as_feet() < feet / std::f64::consts::SQRT_2) {
        LONGER_THAN_MEASURED
    } else {
        1.0
    }
}

fn is_on_another_floor(dwelling: &Dwelling, from: Spot, to: Spot) -> bool {
    matches!((from.floor(dwelling), to.floor(dwelling)), (Some(from), Some(to)) if from != to)
}

/// How far it is from one place to another, square to the walls and up or down.
fn feet_between(dwelling: &Dwelling, from: Spot, to: Spot) -> f64 {
    let flat = match (from.at, to.at) {
        (Some(from), Some(to)) => (from.x.as_feet() - to.x.as_feet()).abs() + (from.y.as_feet() - to.y.as_feet()).abs(),
        _ if from.room.is_some() && from.room == to.room => WITHIN_A_ROOM,
        _ => BETWEEN_ROOMS,
    };
    let storeys = match (from.floor(dwelling), to.floor(dwelling)) {
        (Some(from), Some(to)) => f64::from((i32::from(from) - i32::from(to)).abs()),
        _ => 0.0,
    };
    let up = match (from.height, to.height) {
        (Some(from), Some(to)) => (from.as_feet() - to.as_feet()).abs(),
        _ => 0.0,
    };
    flat + storeys * STOREY + if storeys > 0.0 { 0.0 } else { up }
}
