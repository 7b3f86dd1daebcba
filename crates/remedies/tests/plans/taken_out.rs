//! What the plan takes out leaves every room the receptacles that it must have, all removals together.

use crate::generated::{Size, generated};
use dwelling::{BoxIndex, Dwelling, Holding, Point, RoomUse, Want};
use electrical::Length;
use estimate::PriceBook;
use remedies::{Device, Planned, Step};

const HOUSES: Size = Size { boxes: (5, 25), circuits: (1, 4), routes: (0, 4) };

fn feet(point: Point) -> (f64, f64) {
    (point.x.as_feet(), point.y.as_feet())
}

/// By hand: the generated rooms are rectangles of 7 by 6 ft, so that a wall point is told by its way around: 26 ft in all.
fn around(point: Point) -> f64 {
    let (x, y) = feet(point);
    if y == 0.0 {
        x
    } else if x == 7.0 {
        7.0 + y
    } else if y == 6.0 {
        13.0 + 7.0 - x
    } else {
        20.0 + 6.0 - y
    }
}

/// Whether every inch of wall outside the doorway (3 to 6 ft around) is within 6 ft of a receptacle that counts, not across it.
fn keeps_spacing(dwelling: &Dwelling, gone: &[BoxIndex], room: dwelling::RoomIndex) -> bool {
    let door = !dwelling.room(room).wall_breaks.as_ref().is_some_and(Vec::is_empty);
    let counted: Vec<f64> = dwelling
        .box_indices()
        .filter(|at| !gone.contains(at))
        .map(|at| dwelling.device_box(at))
        .filter(|one| one.room == room && one.holds.is_receptacle())
        .filter(|one| one.height.is_some_and(|height| height <= Length::feet_and_inches(5, 6)))
        .filter_map(|one| one.at.map(around))
        .collect();
    (0..26 * 12).map(|inch| f64::from(inch) / 12.0).filter(|along| !door || *along <= 3.0 || *along >= 6.0).all(
        |along| {
            counted.iter().any(|at| {
                let (way, around) = ((at - along).abs(), 26.0 - (at - along).abs());
                // Whichever way leads past 4.5 ft crosses the doorway.
                let past_door = (at.min(along) < 4.5) != (at.max(along) < 4.5);
                let direct = if door && past_door { f64::INFINITY } else { way };
                let back = if door && !past_door { f64::INFINITY } else { around };
                direct.min(back) <= 6.0
            })
        },
    )
}

#[test]
fn all_that_is_taken_out_of_habitable_rooms_leaves_every_inch_of_wall_near_a_receptacle() {
    let book = PriceBook::demo();
    let (mut taken, mut wanted) = (0, 0);
    for seed in 0..400 {
        let (dwelling, code) = generated(3_000_000 + seed, HOUSES);
        let plan = Planned::of(&dwelling, code, &book).unwrap_or_else(|fault| panic!("seed {seed}: {fault:?}"));
        let gone: Vec<BoxIndex> = dwelling.box_indices().filter(|at| plan.chosen(*at).step == Step::TakeOut).collect();
        wanted += dwelling.boxes.iter().filter(|one| one.want == Want::Remove && one.holds.is_receptacle()).count();
        taken += gone.len();
        for at in &gone {
            let one = dwelling.device_box(*at);
            assert_eq!(one.want, Want::Remove, "seed {seed}: {} is taken out, and nobody asked", one.id);
            assert!(one.holds.is_receptacle() && one.holds != Holding::SwitchAndReceptacle, "seed {seed}: {}", one.id);
            assert_eq!(plan.chosen(*at).device, Device::Blank);
            let walls = matches!(
                dwelling.room(one.room).room_use,
                RoomUse::Bedroom | RoomUse::LivingRoom | RoomUse::Den | RoomUse::Kitchen | RoomUse::Office
            );
            assert!(!walls || keeps_spacing(&dwelling, &gone, one.room), "seed {seed}: without {}", one.id);
        }
    }
    // The dwellings are such that the question is worth asking.
    assert!(taken > 50 && taken < wanted, "{taken} of {wanted} are taken out");
}
