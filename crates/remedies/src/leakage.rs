//! Standing leakage of what is plugged in, and what one GFCI can bear.

use dwelling::DeviceBox;

/// The most that cord-connected equipment may leak, in microamperes.
/// Published: the 0.5 mA limit of UL 101 for two-wire and portable three-wire equipment, as trade texts state it.
const LIMIT_PER_APPLIANCE: i64 = 500;

/// The most standing leakage that is planned behind one GFCI, in microamperes: below the 4 mA at which a Class A
/// device may begin to trip. Published: UL 943 Class A, no trip below 4 mA, as trade texts state it.
pub const MOST_BEHIND_ONE_GFCI: i64 = 3_999;

/// The leakage that what an opening serves may have by its standards, in microamperes.
#[must_use]
pub fn leakage_allowed_for(device_box: &DeviceBox) -> i64 {
    LIMIT_PER_APPLIANCE * i64::try_from(device_box.serves.len()).unwrap_or(i64::MAX / LIMIT_PER_APPLIANCE)
}

/// Microamperes as the milliamperes that pages tell.
#[must_use]
pub fn milliamperes(microamperes: i64) -> String {
    format!("{}.{} mA", microamperes / 1000, microamperes % 1000 / 100)
}
