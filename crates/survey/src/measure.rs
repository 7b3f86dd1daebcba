//! Measures as people write them: `14 ft`, `5 ft 6 in`, `2-1/8 in`, `12.5 cu in`.

use crate::decimal::Decimal;
use crate::unit::{Unit, unit_written};

/// One number with what stands behind it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Part {
    pub(crate) number: Decimal,
    pub(crate) unit: Option<&'static Unit>,
}

/// Why a text is no measure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Unmeasured {
    /// There is no number where one must be.
    NoNumber,
    /// There is a number, and a unit that is none.
    UnknownUnit(String),
}

/// The parts of a measure, in the order written.
pub(crate) fn measure(written: &str) -> Result<Vec<Part>, Unmeasured> {
    let mut rest = written.trim();
    let mut parts = Vec::new();
    while !rest.is_empty() {
        let (number, after) = number(rest).ok_or(Unmeasured::NoNumber)?;
        let (name, after) = unit_name(after.trim_start());
        let unit = match name.is_empty() {
            true => None,
            false => Some(unit_written(&name).ok_or(Unmeasured::UnknownUnit(name))?),
        };
        parts.push(Part { number, unit });
        rest = after.trim_start();
    }
    if parts.is_empty() { Err(Unmeasured::NoNumber) } else { Ok(parts) }
}

/// A number at the front, with a fraction behind it where there is one: `5`, `12.5`, `5 1/2`, `2-1/8`, `1/2`.
fn number(text: &str) -> Option<(Decimal, &str)> {
    let (negative, unsigned) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let (first, after) = digits(unsigned)?;
    let (size, after) = match after.strip_prefix('/').and_then(digits) {
        Some((below, after)) => (Decimal::fraction(first, below)?, after),
        None => match mixed_fraction(after) {
            Some((fraction, after)) => (first.plus(fraction), after),
            None => (first, after),
        },
    };
    Some((if negative { size.negated() } else { size }, after))
}

/// The fraction of a mixed number, joined by a space or a hyphen.
fn mixed_fraction(text: &str) -> Option<(Decimal, &str)> {
    let (above, after) = digits(text.strip_prefix([' ', '-'])?)?;
    let (below, after) = digits(after.strip_prefix('/')?)?;
    Some((Decimal::fraction(above, below)?, after))
}

fn digits(text: &str) -> Option<(Decimal, &str)> {
    let end = text.find(|character: char| !character.is_ascii_digit() && character != '.').unwrap_or(text.len());
    let number = Decimal::parse(&text[..end])?;
    Some((number, &text[end..]))
}

/// The name of a unit at the front, and what follows it.
fn unit_name(text: &str) -> (String, &str) {
    let Some(first) = text.chars().next() else {
        return (String::new(), text);
    };
    if matches!(first, '\'' | '"' | '′' | '″') {
        let length = if text.starts_with("''") { 2 } else { first.len_utf8() };
        return (text[..length].to_string(), &text[length..]);
    }
    let (word, rest) = word(text);
    let two_words = matches!(word.to_lowercase().trim_end_matches('.'), "cu" | "cubic" | "sq" | "square");
    if two_words {
        let (second, rest) = self::word(rest.trim_start());
        return (format!("{} {second}", word.to_lowercase().trim_end_matches('.')), rest);
    }
    (word.to_string(), rest)
}

/// What stands up to the next space or number; a power such as the 3 of `in3` belongs to it.
fn word(text: &str) -> (&str, &str) {
    let ends = |character: char| {
        character.is_whitespace() || character.is_ascii_digit() || matches!(character, '\'' | '"' | '-' | '+')
    };
    let mut end = text.find(ends).unwrap_or(text.len());
    let after = &text[end..];
    let power = matches!(after.bytes().next(), Some(b'2' | b'3'));
    let ended = !after.as_bytes().get(1).is_some_and(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'/'));
    if end > 0
        && power
        && ended
        && matches!(text[..end].to_lowercase().as_str(), "in" | "cm" | "mm" | "m" | "ft" | "in^" | "cm^")
    {
        end += 1;
    }
    if end == 0 {
        end = text.chars().next().map_or(0, char::len_utf8);
    }
    (&text[..end], &text[end..])
}
