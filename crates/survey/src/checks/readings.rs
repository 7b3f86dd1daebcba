//! Readings that cannot all be true at once.

use crate::diagnostic::Span;
use crate::mistakes::readings_contradict;
use crate::notes::Notes;
use crate::row::Row;
use crate::value::{Value, ValueKind};
use dwelling::{Dwelling, MeterKind, Reading};

/// How far the largest of three voltages may exceed the other two together, for meters that do not agree with themselves:
/// five volts and a twentieth of the largest. Common practice, no source.
const SLACK_MILLIVOLTS: i64 = 5_000;
const SLACK_SHARE: i64 = 20;

pub(crate) fn check(notes: &mut Notes, draft: &Dwelling, rows: &[Row<'_>]) {
    for (device_box, row) in draft.boxes.iter().zip(rows) {
        let after = device_box.after.iter().map(|after| &after.reading);
        let found = device_box.found.iter().zip(tables_under(row, "found"));
        for (reading, item) in found.chain(after.zip(tables_under(row, "after"))) {
            contradiction(notes, reading, item);
        }
    }
}

/// The tables under a key of a row, one or several.
pub(crate) fn tables_under<'a>(row: &Row<'a>, key: &str) -> Vec<&'a Value> {
    let Some(value) = row.table.entry(key).map(|entry| &entry.value) else { return Vec::new() };
    match &value.kind {
        ValueKind::List(items) => items.iter().filter(|item| matches!(item.kind, ValueKind::Table(_))).collect(),
        _ => vec![value],
    }
}

/// The voltages between three points: none can be larger than the other two together.
///
/// A meter of high impedance lifts an open conductor to anything, so its readings are let be; under one of low impedance
/// an open conductor reads nothing to either of the others, which is no contradiction.
fn contradiction(notes: &mut Notes, reading: &Reading, item: &Value) {
    if !matches!(reading.meter, Some(MeterKind::LowImpedance | MeterKind::LoadTester)) {
        return;
    }
    let (Some(hn), Some(hg), Some(ng)) = (reading.hot_neutral, reading.hot_ground, reading.neutral_ground) else {
        return;
    };
    let mut volts = [("hn", hn), ("hg", hg), ("ng", ng)];
    volts.sort_by_key(|(_, volts)| volts.as_millivolts());
    let [low, middle, high] = volts.map(|(_, volts)| volts.as_millivolts());
    let open_conductor = middle <= SLACK_MILLIVOLTS;
    if open_conductor || high <= low + middle + SLACK_MILLIVOLTS + high / SLACK_SHARE {
        return;
    }
    let ValueKind::Table(table) = &item.kind else { return };
    let place = |key: &str| -> Span { table.entry(key).map_or(item.span, |entry| entry.value.span) };
    let told = volts.map(|(key, volts)| (key, volts, place(key)));
    notes.push(readings_contradict::mistake(&told));
}
