//! Advice on how many receptacles a room would have if it were new. A replacement triggers none of it.

use electrical::{Amperes, Length};

/// Wall space narrower than this does not count. Published: ecmweb.com, code Q&A 93, on 210.52(A)(2).
pub const LEAST_WALL: Length = Length::feet(2);
/// No point of a wall is farther than half of this from a receptacle. Published: trade forum, thread 32172, on 210.52(A).
pub const APART: Length = Length::feet(12);
/// What a receptacle counts outside of dwellings, in volt-amperes. In dwellings there is no such count.
/// Published: trade forum copy of the handbook's exhibit 220.3.
pub const VOLT_AMPERES_EACH: u32 = 180;

/// How many receptacles an unbroken wall space of this length would have in new work.
#[must_use]
pub fn receptacles_for_wall(length: Length) -> u64 {
    if length < LEAST_WALL {
        return 0;
    }
    let (length, apart) = (length.as_micrometres().unsigned_abs(), APART.as_micrometres().unsigned_abs());
    length.div_ceil(apart)
}

/// How many receptacles a circuit may have outside of dwellings.
#[must_use]
pub fn receptacles_for_circuit(volts: u32, rating: Amperes) -> u32 {
    volts.saturating_mul(rating.get()) / VOLT_AMPERES_EACH
}

/// What one device counts outside of dwellings: one strap of up to three contacts as one, four or more at half each.
#[must_use]
pub fn device_volt_amperes(contacts: u32) -> u32 {
    if contacts >= 4 { contacts.saturating_mul(VOLT_AMPERES_EACH / 2) } else { VOLT_AMPERES_EACH }
}
