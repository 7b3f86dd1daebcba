//! The costs of a practice file and the minutes of tests: every key with what it says, and the shipped figure as its example.

use crate::shape::{FieldKind, Shape, field};

/// Acting wrongly that costs more is a slip of the pen, in minutes. Common practice, no source.
const DEAREST: f64 = 1_000_000.0;
/// A test takes at least this many minutes, and at most so many. Common practice, no source.
const QUICKEST_TEST: f64 = 0.1;
const LONGEST_TEST: f64 = 1_000.0;

pub(super) static COST: Shape = Shape {
    title: "[cost-of-being-wrong]",
    name: "cost-of-being-wrong",
    meaning: "What acting wrongly costs, in minutes of work or what is worth as much: by what the ground of an opening is in truth, and by what is done about it.",
    fields: &[
        field!(may "grounded", FieldKind::Table(&GROUNDED), "a sound path to the panel", "{ mend = 30 }"),
        field!(may "poor", FieldKind::Table(&POOR), "a path to the panel of high resistance", "{ rely = 600 }"),
        field!(may "interrupted", FieldKind::Table(&INTERRUPTED), "a conductor lies all the way from the panel, and is not connected somewhere", "{ rely = 1500 }"),
        field!(may "missing", FieldKind::Table(&MISSING), "somewhere on the way to the panel there is no conductor", "{ rely = 1500 }"),
        field!(may "false", FieldKind::Table(&FALSE), "on the neutral, and on no path of its own", "{ rely = 3000 }"),
        field!(may "live", FieldKind::Table(&LIVE), "on the hot conductor", "{ rely = 10000 }"),
        field!(may "polarity", FieldKind::Table(&POLARITY), "hot and neutral that have changed places", "{ left = 600 }"),
        field!(may "hot-or-neutral", FieldKind::Table(&HOT_OR_NEUTRAL), "a run whose hot conductor or neutral is open or bad", "{ left = 600 }"),
        field!(may "broken-ground", FieldKind::Table(&BROKEN_GROUND), "a run whose ground is not connected at one end", "{ left = 60 }"),
    ],
};

/// What each way of acting costs where the ground of an opening is in truth such: the shipped figures as examples, in the order
/// of `diagnosis::belief::GroundWork`.
macro_rules! by_truth {
    ($name:ident, $key:literal, $meaning:literal, [$rely:literal, $mend:literal, $do_without:literal, $disarm:literal]) => {
        static $name: Shape = Shape {
            title: concat!("[cost-of-being-wrong.", $key, "]"),
            name: concat!("cost-of-being-wrong-", $key),
            meaning: $meaning,
            fields: &[
                field!(may "rely", FieldKind::Minutes(0.0, DEAREST), "to rely on it", $rely),
                field!(may "mend", FieldKind::Minutes(0.0, DEAREST), "to look for where its conductor is not sound, and mend that", $mend),
                field!(may "do-without", FieldKind::Minutes(0.0, DEAREST), "to take it that there is none: protect and mark, or bring one", $do_without),
                field!(may "disarm", FieldKind::Minutes(0.0, DEAREST), "to take out what joins it to a circuit conductor", $disarm),
            ],
        };
    };
}

by_truth!(
    GROUNDED,
    "grounded",
    "The ground of the opening is in truth grounded: a sound path to the panel.",
    ["0", "30", "90", "30"]
);
by_truth!(
    POOR,
    "poor",
    "The ground of the opening is in truth poor: a path to the panel of high resistance.",
    ["600", "0", "120", "30"]
);
by_truth!(
    INTERRUPTED,
    "interrupted",
    "The ground of the opening is in truth interrupted: a conductor lies all the way from the panel, and is not connected somewhere.",
    ["1500", "0", "120", "30"]
);
by_truth!(
    MISSING,
    "missing",
    "The ground of the opening is in truth missing: somewhere on the way to the panel there is no conductor.",
    ["1500", "45", "0", "30"]
);
by_truth!(
    FALSE,
    "false",
    "The ground of the opening is in truth false: it is on the neutral, and on no path of its own.",
    ["3000", "3000", "3000", "0"]
);
by_truth!(
    LIVE,
    "live",
    "The ground of the opening is in truth live: it is on the hot conductor.",
    ["10000", "10000", "10000", "0"]
);

static POLARITY: Shape = Shape {
    title: "[cost-of-being-wrong.polarity]",
    name: "cost-of-being-wrong-polarity",
    meaning: "Hot and neutral of a device that have changed places.",
    fields: &[
        field!(may "left", FieldKind::Minutes(0.0, DEAREST), "they have, and stay so", "600"),
        field!(may "needless", FieldKind::Minutes(0.0, DEAREST), "the device is taken out for nothing", "15"),
    ],
};

static HOT_OR_NEUTRAL: Shape = Shape {
    title: "[cost-of-being-wrong.hot-or-neutral]",
    name: "cost-of-being-wrong-hot-or-neutral",
    meaning: "A run's hot conductor or neutral that is open or of high resistance.",
    fields: &[
        field!(may "left", FieldKind::Minutes(0.0, DEAREST), "it is, and stays so", "600"),
        field!(may "needless", FieldKind::Minutes(0.0, DEAREST), "its two boxes are opened for nothing", "30"),
    ],
};

static BROKEN_GROUND: Shape = Shape {
    title: "[cost-of-being-wrong.broken-ground]",
    name: "cost-of-being-wrong-broken-ground",
    meaning: "A run's ground that is not connected at one of its ends.",
    fields: &[
        field!(may "left", FieldKind::Minutes(0.0, DEAREST), "it stays so though its circuit is worked on", "60"),
        field!(may "other-box", FieldKind::Minutes(0.0, DEAREST), "the wrong one of its two boxes is opened", "20"),
        field!(may "needless", FieldKind::Minutes(0.0, DEAREST), "a box is opened for nothing", "20"),
    ],
};

pub(super) static MINUTES: Shape = Shape {
    title: "[minutes]",
    name: "minutes",
    meaning: "How long each test takes, in minutes, covers and switching off included.",
    fields: &[
        field!(may "read-pairs", FieldKind::Minutes(QUICKEST_TEST, LONGEST_TEST), "all three pairs with a meter of low impedance, nothing plugged in", "2"),
        field!(may "read-under-load", FieldKind::Minutes(QUICKEST_TEST, LONGEST_TEST), "all three pairs with a heavy load plugged in at this opening", "4"),
        field!(may "read-to-earth", FieldKind::Minutes(QUICKEST_TEST, LONGEST_TEST), "hot, neutral and ground each to an independent earth", "4"),
        field!(may "read-ground-impedance", FieldKind::Minutes(QUICKEST_TEST, LONGEST_TEST), "the impedance of the ground by a loaded test", "3"),
        field!(may "open-the-box", FieldKind::Minutes(QUICKEST_TEST, LONGEST_TEST), "the circuit off and proved dead, the device drawn out, and a look at what is in the box", "12"),
    ],
};
