//! What is found at each box of a generated dwelling: enclosure, device, readings, what is plugged in, wishes.

use super::chance::Chance;
use super::house::{Kind, Room, Spot};
use super::wiring::Feeding;
use serde_json::{Map, Value, json};

/// The row of one box; its `fed_by` is written by the caller, who knows the names.
pub fn contents(chance: &mut Chance, kind: Kind, room: &Room, spot: Spot, feeding: &Feeding) -> Map<String, Value> {
    let mut row = Map::new();
    let holds = held(chance, feeding.grounded);
    let receptacle = matches!(holds, "three-slot" | "two-slot" | "gfci" | "afci" | "dual" | "switch-and-receptacle");
    row.insert("at".into(), json!([quarters(spot.at.0), quarters(spot.at.1)]));
    if let Some(body) = body(chance, kind) {
        row.insert("body".into(), body);
    }
    row.insert("holds".into(), json!(holds));
    if chance.percent(20) {
        row.insert("cables_in_box".into(), json!(feeding.feeds + 1 + chance.weighted(&[(5, 0), (1, 1)])));
    }
    if let Some(found) = found(chance, receptacle, feeding.grounded) {
        row.insert("found".into(), found);
    }
    if receptacle {
        let serves = serves(chance, room.room_use);
        if !serves.is_empty() {
            row.insert("serves".into(), json!(serves));
        }
        let want = chance.weighted(&[(14, None), (4, Some("three-slot")), (2, Some("ground")), (1, Some("remove"))]);
        if let Some(want) = want {
            row.insert("want".into(), json!(want));
        }
        around(chance, room.room_use, &mut row);
    }
    if chance.percent(if kind == Kind::KnobAndTube { 6 } else { 2 }) {
        row.insert("do_not_disturb".into(), json!(true));
    }
    row
}

/// Quarters of a foot as feet.
pub fn quarters(count: i64) -> f64 {
    count as f64 / 4.0
}

fn held(chance: &mut Chance, grounded: bool) -> &'static str {
    let two_slot = if grounded { 2 } else { 16 };
    chance.weighted(&[
        (48, "three-slot"),
        (two_slot, "two-slot"),
        (4, "gfci"),
        (1, "afci"),
        (1, "dual"),
        (12, "switch"),
        (2, "switch-and-receptacle"),
        (9, "luminaire"),
        (3, "splice"),
        (1, "unknown"),
    ])
}

fn body(chance: &mut Chance, kind: Kind) -> Option<Value> {
    if chance.percent(5) {
        return None;
    }
    let small_metal =
        || ["3x2x2", "3x2x2-1/2", "3x2x2-1/2", "3x2x2-3/4", "3x2x3-1/2", "4x1-1/2 octagon", "4x1-1/2 square"];
    let metal = kind != Kind::TwoStorey || chance.percent(40);
    let mut body = if metal {
        json!({ "metal": true, "size": chance.pick(&small_metal()), "clamps": chance.pick(&["inside", "inside", "outside"]) })
    } else {
        let volume = chance.pick(&["14 in3", "16 in3", "18 in3", "20.3 in3", "22.5 in3"]);
        json!({ "metal": false, "volume": volume, "clamps": "none" })
    };
    if let (Some(row), true) = (body.as_object_mut(), chance.percent(8)) {
        row.insert("gangs".into(), json!(2));
    }
    Some(body)
}

/// Readings as a meter of high impedance shows them, and what was seen where the box was opened.
fn found(chance: &mut Chance, receptacle: bool, grounded: bool) -> Option<Value> {
    if chance.percent(15) {
        return None;
    }
    let seen = if grounded {
        chance.weighted(&[
            (14, "connected"),
            (1, "loose"),
            (1, "not connected"),
            (1, "jumper to neutral"),
            (2, "not opened"),
        ])
    } else {
        chance.weighted(&[(16, "none seen"), (5, "not opened"), (1, "cut off"), (1, "jumper to neutral"), (1, "loose")])
    };
    if !receptacle {
        return Some(json!({ "ground": seen }));
    }
    let reads_right = matches!(seen, "connected" | "jumper to neutral") || (grounded && seen != "not connected");
    Some(if reads_right {
        json!({ "hn": 120, "hg": 119 + chance.below(2), "ng": 0, "ground": seen })
    } else {
        json!({ "hn": 118 + chance.below(5), "hg": 20 + chance.below(50), "ng": 5 + chance.below(30), "ground": seen })
    })
}

fn serves(chance: &mut Chance, room_use: &str) -> Vec<&'static str> {
    let usual: &[&'static str] = match room_use {
        "kitchen" => &["refrigerator", "microwave", "dishwasher", "waste-disposer", "two-pin"],
        "laundry" => &["clothes-washer", "two-pin", "freezer"],
        "office" | "den" => &["computer", "computer", "surge-protector", "two-pin"],
        "garage" | "unfinished-basement" | "utility" => &["motor-tools", "sump-pump", "freezer", "garden-tools"],
        "bedroom" | "living-room" => {
            &["two-pin", "two-pin", "television", "computer", "air-conditioner", "aquarium", "surge-protector"]
        }
        _ => &["two-pin", "television"],
    };
    let count = chance.weighted(&[(8, 0), (6, 1), (2, 2), (1, 4)]);
    let mut serves: Vec<&'static str> = (0..count).map(|_| chance.pick(usual)).collect();
    serves.sort_unstable();
    serves.dedup();
    serves
}

/// What the duties of places with water ask: some of it is not known.
fn around(chance: &mut Chance, room_use: &str, row: &mut Map<String, Value>) {
    match room_use {
        "kitchen" => {
            if chance.percent(85) {
                row.insert("countertop".into(), json!(chance.percent(60)));
            }
            row.insert("sink".into(), json!(chance.pick(&["2 ft", "5 ft", "9 ft"])));
        }
        "bathroom" | "laundry" => {
            row.insert("sink".into(), json!(chance.pick(&["2 ft", "4 ft", "8 ft"])));
            if room_use == "bathroom" {
                row.insert("tub".into(), json!(chance.pick(&["3 ft", "6 ft"])));
            }
        }
        _ => {}
    }
    if chance.percent(10) {
        row.insert("dedicated_space".into(), json!(true));
    }
    if let Some(reached) = chance.weighted(&[(6, Some(true)), (2, None), (1, Some(false))]) {
        row.insert("readily_accessible".into(), json!(reached));
    }
}
