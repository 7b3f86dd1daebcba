//! Quantities as people write them.

use dwelling::DeviceBox;
use electrical::{Gauge, Length, Ohms, Volts, Volume};
use survey::{Format, SOUND, read};

fn box_with(lines: &str) -> DeviceBox {
    let found = read(format!("{SOUND}{lines}\n").as_bytes(), Format::Toml);
    let codes: Vec<&str> = found.diagnostics.iter().map(|diagnostic| diagnostic.code).collect();
    let Some(mut dwelling) = found.dwelling else { panic!("{lines}: {codes:?}") };
    dwelling.boxes.remove(0)
}

fn codes(lines: &str) -> Vec<&'static str> {
    let found = read(format!("{SOUND}{lines}\n").as_bytes(), Format::Toml);
    found.diagnostics.iter().map(|diagnostic| diagnostic.code).collect()
}

/// By hand: 1 in is 25.4 mm, 1 ft is 12 in.
#[test]
fn lengths_are_read_in_feet_inches_and_metres() {
    for (written, micrometres) in [
        ("14 ft", 4_267_200),
        ("14'", 4_267_200),
        ("14 feet", 4_267_200),
        ("14FT", 4_267_200),
        ("5 ft 6 in", 1_676_400),
        ("5' 6\\\"", 1_676_400),
        ("5'6''", 1_676_400),
        ("5 ft. 6 in.", 1_676_400),
        ("5 1/2 ft", 1_676_400),
        ("5-1/2 ft", 1_676_400),
        ("5.5 ft", 1_676_400),
        ("1/2 in", 12_700),
        (".5 in", 12_700),
        ("350 mm", 350_000),
        ("4.2 m", 4_200_000),
        ("4m 20cm", 4_200_000),
        ("1 yd", 914_400),
    ] {
        let device_box = box_with(&format!("run = {{ length = \"{written}\" }}"));
        assert_eq!(device_box.run.length, Some(Length::micrometres(micrometres)), "{written}");
    }
}

/// Published: NEC Table 314.16(A), whose printed cm³ stand for its in³.
/// By hand: 1 in³ is 16.387064 cm³, so that 200 cm³ are 12.20474… in³ and 327.74128 cm³ are 20 in³.
#[test]
fn volumes_are_read_in_cubic_inches_and_centimetres() {
    for (written, parts) in [
        ("12.5 in3", 125_000),
        ("12.5 cu in", 125_000),
        ("12.5 cu. in.", 125_000),
        ("12.5 in³", 125_000),
        ("12.5in^3", 125_000),
        ("12.5 cubic inches", 125_000),
        ("12 1/2 in3", 125_000),
        ("205 cm3", 125_000),
        ("205 cm³", 125_000),
        ("205 cc", 125_000),
        ("254 cm3", 155_000),
        ("353 cm3", 215_000),
        ("295 cm3", 180_000),
        ("344 cm3", 210_000),
        ("497 cm3", 303_000),
        ("418 cm3", 255_000),
        ("484 cm3", 295_000),
        ("689 cm3", 420_000),
        ("123 cm3", 75_000),
        ("164 cm3", 100_000),
        ("172 cm3", 105_000),
        ("230 cm3", 140_000),
        ("169 cm3", 103_000),
        ("213 cm3", 130_000),
        ("238 cm3", 145_000),
        ("221 cm3", 135_000),
        ("395 cm3", 240_000),
        ("200 cm3", 122_047),
        ("327.74128 cm3", 200_000),
    ] {
        let device_box = box_with(&format!("body = {{ volume = \"{written}\" }}"));
        assert_eq!(device_box.body.volume, Some(Volume::ten_thousandths(parts)), "{written}");
    }
}

#[test]
fn volts_and_ohms_are_read_with_and_without_units() {
    for (written, millivolts) in [
        ("120", 120_000),
        ("118.5", 118_500),
        ("\"118.5 V\"", 118_500),
        ("\"25 mV\"", 25),
        ("\"0.12 kV\"", 120_000),
        ("1.2e2", 120_000),
    ] {
        let device_box = box_with(&format!("found = {{ hn = {written} }}"));
        assert_eq!(device_box.found[0].hot_neutral, Some(Volts::millivolts(millivolts)), "{written}");
    }
    for (written, milliohms) in
        [("0.8", 800), ("\"0.8 ohm\"", 800), ("\"0.8 Ω\"", 800), ("\"800 mΩ\"", 800), ("\"1 kΩ\"", 1_000_000)]
    {
        let device_box = box_with(&format!("found = {{ ground_ohms = {written} }}"));
        assert_eq!(device_box.found[0].ground_impedance, Some(Ohms::milliohms(milliohms)), "{written}");
    }
}

#[test]
fn wire_sizes_are_read_as_numbers_and_texts() {
    for (written, number) in [
        ("14", 14),
        ("\"14\"", 14),
        ("\"14 AWG\"", 14),
        ("\"14awg\"", 14),
        ("\"#14\"", 14),
        ("\"1/0\"", 0),
        ("\"4/0 AWG\"", -3),
    ] {
        assert_eq!(
            box_with(&format!("run = {{ gauge = {written} }}")).run.gauge,
            Gauge::from_number(number),
            "{written}"
        );
    }
    for wrong in ["13", "0", "-2", "\"5/0\"", "\"0/0\"", "\"14/2\"", "14.5", "999999999999"] {
        assert_eq!(codes(&format!("run = {{ gauge = {wrong} }}")), ["gauge-unknown"], "{wrong}");
    }
    assert_eq!(codes("run = { gauge = \"2.5 mm2\" }"), ["wrong-unit"]);
    assert_eq!(codes("run = { gauge = \"thick\" }"), ["not-a-quantity"]);
}

#[test]
fn negative_zero_and_absurd_values_are_refused_for_every_quantity() {
    for (lines, code) in [
        ("run = { length = \"0 ft\" }", "length-not-positive"),
        ("run = { length = \"-5 ft 6 in\" }", "length-not-positive"),
        ("run = { length = \"1e30 ft\" }", "unknown-unit"),
        ("run = { length = \"99999999999999999999999999999999999999999999999 m\" }", "length-too-long"),
        ("body = { volume = \"0 in3\" }", "volume-not-positive"),
        ("body = { added_volume = \"-4 in3\" }", "volume-not-positive"),
        ("body = { volume = \"99999999999999999999999999999999999999999 cm3\" }", "volume-too-large"),
        ("height = \"-1 in\"", "height-not-possible"),
        ("height = \"41 ft\"", "height-not-possible"),
        ("sink = \"501 ft\"", "distance-not-possible"),
        ("tub = { distance = \"-1 mm\" }", "distance-not-possible"),
        ("found = { hn = 300.001 }", "volts-beyond-meter"),
        ("found = { ng = \"-1 mV\" }", "volts-negative"),
        ("found = { hn = inf }", "volts-beyond-meter"),
        ("found = { hn = nan }", "not-a-quantity"),
        ("found = { ground_ohms = 99999 }", "ohms-not-possible"),
        ("body = { gangs = 0 }", "count-out-of-range"),
        ("cables_in_box = 9223372036854775807", "count-out-of-range"),
        ("body = { volume = \"12.5 ft\" }", "wrong-unit"),
        ("body = { volume = \"12,5 in3\" }", "unknown-unit"),
        ("body = { volume = 18 }", "number-without-unit"),
        ("body = { volume = \"18\" }", "number-without-unit"),
        ("height = \"16 in3\"", "wrong-unit"),
        ("height = \"1/0 in\"", "not-a-quantity"),
        ("height = []", "wrong-type"),
    ] {
        assert_eq!(codes(lines), [code], "{lines}");
    }
}

#[test]
fn the_limits_themselves_are_taken() {
    for lines in [
        "run = { length = \"1000 ft\" }",
        "height = \"40 ft\"",
        "height = \"0 in\"",
        "sink = \"500 ft\"",
        "found = { hn = 300 }",
    ] {
        assert_eq!(codes(lines), [""; 0], "{lines}");
    }
}
