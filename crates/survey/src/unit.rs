//! Units, the ways people write them, and what each measures.

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Dimension {
    Length,
    Area,
    Volume,
    Current,
    Voltage,
    Resistance,
    Power,
    Time,
    WireSize,
}

impl Dimension {
    pub(crate) const fn in_words(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Volume => "a volume",
            Self::Current => "a current",
            Self::Voltage => "a voltage",
            Self::Resistance => "a resistance",
            Self::Power => "a power",
            Self::Time => "a time",
            Self::WireSize => "a wire size",
        }
    }
}

/// A unit.
#[derive(Debug)]
pub(crate) struct Unit {
    /// Every way to write it, in small letters unless the letter's size matters; the first is the one shown.
    pub(crate) written: &'static [&'static str],
    pub(crate) dimension: Dimension,
    /// How many base units it is: micrometres, milliamperes, millivolts, milliohms, seconds.
    /// Volumes in cubic inches have ten-thousandths as their base; metric ones are converted by ratio.
    pub(crate) factor: i128,
}

const fn unit(written: &'static [&'static str], dimension: Dimension, factor: i128) -> Unit {
    Unit { written, dimension, factor }
}

/// The factor that marks cubic centimetres.
pub(crate) const BY_RATIO: i128 = 0;

/// Published: the international inch is exactly 25.4 mm (NIST SP 811, appendix B).
pub(crate) const UNITS: &[Unit] = &[
    unit(&["in", "inch", "inches", "\"", "″", "''"], Dimension::Length, 25_400),
    unit(&["ft", "foot", "feet", "'", "′"], Dimension::Length, 304_800),
    unit(&["yd", "yard", "yards"], Dimension::Length, 914_400),
    unit(&["mm", "millimetres", "millimeters"], Dimension::Length, 1_000),
    unit(&["cm", "centimetres", "centimeters"], Dimension::Length, 10_000),
    unit(&["m", "metre", "metres", "meter", "meters"], Dimension::Length, 1_000_000),
    unit(&["ft2", "ft²", "sq ft", "in2", "in²", "sq in", "m2", "m²", "mm2", "mm²"], Dimension::Area, 1),
    unit(&["in3", "in³", "in^3", "cu in", "cubic in", "cubic inch", "cubic inches", "cuin"], Dimension::Volume, 10_000),
    unit(&["cm3", "cm³", "cm^3", "cc", "cu cm", "cubic cm", "cubic centimetres", "ml"], Dimension::Volume, BY_RATIO),
    unit(&["A", "a", "amp", "amps", "ampere", "amperes"], Dimension::Current, 1_000),
    unit(&["mA", "ma", "milliamps"], Dimension::Current, 1),
    unit(&["V", "v", "volt", "volts"], Dimension::Voltage, 1_000),
    unit(&["mV", "mv", "millivolts"], Dimension::Voltage, 1),
    unit(&["kV", "kv"], Dimension::Voltage, 1_000_000),
    unit(&["ohm", "ohms", "ω", "Ω", "Ω"], Dimension::Resistance, 1_000),
    unit(&["mohm", "milliohm", "milliohms", "mω", "mΩ", "mΩ"], Dimension::Resistance, 1),
    unit(&["kohm", "kilohm", "kilohms", "kω", "kΩ", "kΩ"], Dimension::Resistance, 1_000_000),
    unit(&["W", "w", "watt", "watts", "kw", "va", "kva"], Dimension::Power, 1),
    unit(&["s", "sec", "second", "seconds"], Dimension::Time, 1),
    unit(&["min", "mins", "minute", "minutes"], Dimension::Time, 60),
    unit(&["h", "hr", "hrs", "hour", "hours"], Dimension::Time, 3_600),
    unit(&["AWG", "awg", "ga", "gauge"], Dimension::WireSize, 1),
];

/// The unit that is written so; letters of the other size do where no other unit is meant by them.
pub(crate) fn unit_written(written: &str) -> Option<&'static Unit> {
    let written = written.trim_end_matches('.');
    let exact = UNITS.iter().find(|unit| unit.written.contains(&written));
    exact.or_else(|| {
        // `M` in front is mega, never milli: what is not found as written is not guessed from it.
        let large_m = written.starts_with('M') && written.to_lowercase() != "min";
        let small = written.to_lowercase();
        UNITS.iter().find(|unit| !(large_m && small.len() == 2) && unit.written.contains(&small.as_str()))
    })
}

/// The ways to write the units of a dimension, for the nearest name.
pub(crate) fn names_of(dimension: Dimension) -> impl Iterator<Item = &'static str> {
    UNITS
        .iter()
        .filter(move |unit| unit.dimension == dimension)
        .flat_map(|unit| unit.written.iter().copied())
        .filter(|name| name.is_ascii() && name.len() > 1)
}
