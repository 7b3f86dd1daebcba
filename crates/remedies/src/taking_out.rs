//! What the room of a receptacle has left once it is taken out.

use dwelling::{BoxIndex, DeviceBox, Dwelling, Holding, RoomUse, Want};
use rulebook::{Staying, TakingOut};

/// The room of a box as it will be without its receptacle, where the owner does not need it; `gone` are the boxes whose
/// receptacles go before.
#[must_use]
pub fn taking_out(dwelling: &Dwelling, index: BoxIndex, gone: &[BoxIndex]) -> Option<TakingOut> {
    let device_box = dwelling.device_box(index);
    if device_box.want != Want::Remove {
        return None;
    }
    let room = dwelling.room(device_box.room);
    let outdoors = room.room_use == RoomUse::Outdoors;
    let in_the_room = |other: &DeviceBox| {
        other.room == device_box.room || (outdoors && dwelling.room(other.room).room_use == RoomUse::Outdoors)
    };
    let staying = dwelling.box_indices().filter(|other| *other != index && !gone.contains(other));
    let staying = staying.map(|other| dwelling.device_box(other)).filter(|other| in_the_room(other));
    Some(TakingOut {
        outline: room.outline.clone(),
        wall_breaks: room.wall_breaks.clone(),
        staying: Some(staying.filter_map(staying_as).collect()),
        dwelling_use: dwelling.job.dwelling_use,
    })
}

fn staying_as(other: &DeviceBox) -> Option<Staying> {
    let may_be = other.holds.is_receptacle() || other.holds == Holding::Unknown;
    may_be.then(|| Staying {
        id: other.id.clone(),
        is_receptacle: other.holds.is_receptacle(),
        at: other.at,
        height: other.height,
        sink: other.sink.as_ref().map(|sink| sink.distance),
        countertop: other.countertop,
    })
}
