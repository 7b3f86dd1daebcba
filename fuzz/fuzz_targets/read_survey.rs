//! Reads any bytes as a survey: `cargo +nightly fuzz run read_survey`. The first byte chooses the notation.
#![no_main]

use libfuzzer_sys::fuzz_target;
use survey::{Format, Severity, read, render, text_of};

fuzz_target!(|bytes: &[u8]| {
    let Some((first, bytes)) = bytes.split_first() else { return };
    let format = if first % 2 == 0 { Format::Toml } else { Format::Json };
    let found = read(bytes, format);
    let text = text_of(bytes);
    for diagnostic in &found.diagnostics {
        for label in &diagnostic.labels {
            assert!(text.get(label.span.start..label.span.end).is_some(), "a place outside the text");
        }
        let _ = render(diagnostic, "survey", &text);
    }
    let errors = found.diagnostics.iter().any(|diagnostic| diagnostic.severity == Severity::Error);
    assert_eq!(found.dwelling.is_none(), errors);
    if let Some(dwelling) = &found.dwelling {
        let _ = dwelling::BondedGroups::of(dwelling);
        let trees = dwelling::circuit_trees(dwelling);
        for index in dwelling.box_indices() {
            let tree = trees.iter().find(|tree| tree.members.contains(&index));
            let _ = dwelling::cables_in_box(dwelling, tree, index);
        }
    }
});
