//! A set of readings in words.

use dwelling::Reading;

/// What was read and seen, in one line.
pub(super) fn in_words(reading: &Reading) -> String {
    let volts = [
        ("hot to neutral", reading.hot_neutral),
        ("hot to ground", reading.hot_ground),
        ("neutral to ground", reading.neutral_ground),
        ("hot to earth", reading.hot_earth),
        ("neutral to earth", reading.neutral_earth),
        ("ground to earth", reading.ground_earth),
        ("hot to box", reading.hot_box),
    ];
    let mut parts: Vec<String> =
        volts.iter().filter_map(|(what, volts)| volts.map(|volts| format!("{what} {volts}"))).collect();
    parts.extend(reading.ground_impedance.map(|ohms| format!("grounding path {ohms}")));
    parts.extend(reading.tester.map(|verdict| format!("plug-in tester: {verdict}")));
    parts.extend(reading.ground.map(|seen| format!("ground seen: {seen}")));
    let trips = |trips: bool| if trips { "opens" } else { "does not open" };
    parts.extend(reading.tester_trips_gfci.map(|it| format!("on the tester's button the GFCI {}", trips(it))));
    parts.extend(reading.own_test_trips.map(|it| format!("on its own button the device {}", trips(it))));
    parts.extend(reading.meter.map(|meter| format!("by {meter}")));
    parts.extend(reading.load.map(|load| format!("load: {load}")));
    if parts.is_empty() { "nothing was read".to_owned() } else { parts.join(", ") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dwelling::{GroundSeen, LoadState, MeterKind};
    use electrical::Volts;

    #[test]
    fn a_set_of_readings_is_told_in_one_line() {
        let reading = Reading {
            hot_neutral: Some(Volts::new(121)),
            hot_ground: Some(Volts::new(38)),
            ground: Some(GroundSeen::NoneSeen),
            meter: Some(MeterKind::HighImpedance),
            load: Some(LoadState::None),
            ..Reading::default()
        };
        assert_eq!(
            in_words(&reading),
            "hot to neutral 121 V, hot to ground 38 V, ground seen: none seen, by high-impedance, load: none"
        );
        assert_eq!(in_words(&Reading::default()), "nothing was read");
    }
}
