//! Standing leakage of what is plugged in.

use dwelling::DeviceBox;

/// The most that cord-connected equipment may leak, in microamperes.
/// Published: the 0.5 mA limit of UL 101 for two-wire and portable three-wire equipment, as trade texts state it.
const LIMIT_PER_APPLIANCE: i64 = 500;

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
