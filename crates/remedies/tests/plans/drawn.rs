//! Random dwellings with drawn rooms, so that the tool builds ways of its own: few of everything, to be tried whole.

use crate::generated::{Size, generated};
use crate::random::Random;
use dwelling::*;
use electrical::Length;
use rulebook::CodeInForce;

const FEW: Size = Size { boxes: (2, 4), circuits: (1, 2), routes: (0, 1) };

fn place(x: i64, y: i64) -> Point {
    Point { x: Length::feet(x), y: Length::feet(y) }
}

/// A random dwelling of rooms in one row, seven feet wide and six deep, boxes and panels in their walls.
pub fn drawn(seed: u64) -> (Dwelling, CodeInForce) {
    let (mut dwelling, code) = generated(seed, FEW);
    let mut random = Random::new(seed ^ 0x0DD5_EED5);
    let dwellings_above = random.pick(&[Space::Attic, Space::Attic, Space::AnotherDwelling]);
    let below = random.pick(&[Space::CrawlSpace, Space::Basement, Space::Slab, Space::Slab]);
    for (at, room) in dwelling.rooms.iter_mut().enumerate() {
        let left = 7 * at as i64;
        room.outline = vec![place(left, 0), place(left + 7, 0), place(left + 7, 6), place(left, 6)];
        room.wall_breaks = Some(Vec::new());
        (room.floor, room.above, room.below) = (Some(1), Some(dwellings_above), Some(below));
        room.walls = random.pick(&[None, Some(WallFinish::Plaster), Some(WallFinish::Open)]);
        room.insulated = random.pick(&[None, Some(true), Some(false)]);
        room.fire_blocks = random.pick(&[None, Some(true), Some(false)]);
    }
    let rooms = dwelling.rooms.len();
    let in_a_wall = |random: &mut Random, room: usize| {
        let left = 7 * room as i64;
        let (along, up) = (random.within((0, 7)) as i64, random.within((0, 6)) as i64);
        random.pick(&[place(left + along, 0), place(left + along, 6), place(left, up), place(left + 7, up)])
    };
    for at in 0..dwelling.boxes.len() {
        let at_wall = in_a_wall(&mut random, dwelling.boxes[at].room.0);
        dwelling.boxes[at].at = random.weighted(&[(9, Some(at_wall)), (1, None)]);
        // Grounds are asked for often, so that ways are bought.
        if random.percent(60) {
            dwelling.boxes[at].want = Want::Ground;
        }
    }
    for at in 0..dwelling.panels.len() {
        let room = random.below(rooms);
        (dwelling.panels[at].room, dwelling.panels[at].at) =
            (Some(RoomIndex(room)), Some(in_a_wall(&mut random, room)));
    }
    for at in 0..dwelling.sources.len() {
        let room = random.below(rooms);
        (dwelling.sources[at].room, dwelling.sources[at].at) =
            (Some(RoomIndex(room)), Some(in_a_wall(&mut random, room)));
    }
    (dwelling, code)
}
