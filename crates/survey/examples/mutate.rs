//! Reads a million changed surveys and counts the panics: `cargo run --release -p survey --example mutate -- 1000000`.
#![allow(clippy::disallowed_methods, clippy::print_stdout, missing_docs)]

use dwelling::{BondedGroups, circuit_trees};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::Instant;
use survey::{Format, Severity, read, render, text_of};

const TOML: &str = include_str!("../tests/surveys/rich.toml");
const JSON: &str = include_str!("../tests/surveys/rich.json");
const SEED: u64 = 0x9e37_79b9_7f4a_7c15;
/// What is put into a file: what means something there, and what means trouble.
const PIECES: &[&str] = &[
    "\"",
    "'",
    "[",
    "]",
    "{",
    "}",
    "=",
    ",",
    "\n",
    "\\",
    "#",
    "unknown",
    "panel",
    "-1",
    "0",
    "1e308",
    "99999999999999999999",
    "\u{feff}",
    "é",
    "½",
    "Ω",
    "\u{0}",
    "[[box]]\n",
    "id = \"B2-1\"\n",
    "fed_by = \"K-1\"\n",
    "circuit = \"5\"\n",
    "null",
    "true",
    " ft",
    " in3",
    " A",
    "5 ft 6 in",
    "1/0",
    "nan",
    "inf",
    "\r\n",
];

/// The xorshift generator of 64 bits, so that every run reads the same files.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % most.max(1) as u64) as usize
    }
}

fn changed(text: &str, chance: &mut Chance) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..=chance.below(4) {
        let at = chance.below(bytes.len() + 1);
        let end = (at + 1 + chance.below(40)).min(bytes.len());
        match chance.below(7) {
            0 => {
                if let Some(byte) = bytes.get_mut(at) {
                    *byte ^= 1 << chance.below(8);
                }
            }
            1 => drop(bytes.drain(at..end)),
            2 => {
                let piece = bytes[at..end].to_vec();
                bytes.splice(at..at, piece);
            }
            3 => drop(bytes.splice(at..at, PIECES[chance.below(PIECES.len())].bytes())),
            4 => {
                let mut lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
                let (one, other) = (chance.below(lines.len()), chance.below(lines.len()));
                lines.swap(one, other);
                bytes = lines.join(&b'\n');
            }
            5 => {
                // A whole line again, or away: whole keys and headers come and go.
                let mut lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
                let line = chance.below(lines.len());
                if chance.below(2) == 0 {
                    lines.remove(line);
                } else {
                    lines.insert(line, lines[line])
                }
                bytes = lines.join(&b'\n');
            }
            _ => {
                let number = (at..bytes.len()).find(|at| bytes[*at].is_ascii_digit());
                if let Some(digit) = number {
                    bytes[digit] = b'0' + chance.below(10) as u8;
                }
            }
        }
    }
    bytes
}

/// Reads a file to the end of what follows from it; whether a dwelling came of it.
fn read_and_use(bytes: &[u8], format: Format) -> bool {
    let found = read(bytes, format);
    let text = text_of(bytes);
    for diagnostic in &found.diagnostics {
        for label in &diagnostic.labels {
            assert!(
                text.get(label.span.start..label.span.end).is_some(),
                "a place outside the text: {}",
                diagnostic.code
            );
        }
        let _ = render(diagnostic, "survey", &text);
    }
    let sound = found.diagnostics.iter().all(|diagnostic| diagnostic.severity == Severity::Warning);
    assert_eq!(sound, found.dwelling.is_some(), "a dwelling in spite of an error, or none without one");
    if let Some(dwelling) = &found.dwelling {
        let _ = BondedGroups::of(dwelling);
        let trees = circuit_trees(dwelling);
        for index in dwelling.box_indices() {
            let tree = trees.iter().find(|tree| tree.members.contains(&index));
            let _ = dwelling::cables_in_box(dwelling, tree, index);
        }
    }
    found.dwelling.is_some()
}

fn main() {
    let count: usize = std::env::args().nth(1).and_then(|count| count.parse().ok()).unwrap_or(10_000);
    let (mut chance, mut panics, mut dwellings) = (Chance(SEED), 0usize, 0usize);
    let start = Instant::now();
    for number in 0..count {
        let (text, format) = if number % 3 == 2 { (JSON, Format::Json) } else { (TOML, Format::Toml) };
        let bytes = changed(text, &mut chance);
        match catch_unwind(AssertUnwindSafe(|| read_and_use(&bytes, format))) {
            Ok(true) => dwellings += 1,
            Ok(false) => {}
            Err(_) => {
                panics += 1;
                println!("panic on change {number}:\n{}", String::from_utf8_lossy(&bytes));
            }
        }
    }
    let seconds = start.elapsed().as_secs_f64();
    println!("{count} changed surveys read in {seconds:.1} s: {panics} panics, {dwellings} still gave a dwelling");
}
