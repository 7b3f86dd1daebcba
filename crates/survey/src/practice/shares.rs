//! The shares and chances of a practice file: every key with what it says, and the shipped figure as its example.

use crate::shape::{FieldKind, Shape, field};

pub(super) static RUN_HOT: Shape = Shape {
    title: "[run-hot]",
    name: "run-hot",
    meaning: "A run's hot conductor, from its feeding box up to this one.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.99"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.006"),
        field!(may "open", FieldKind::Share, "not connected", "0.004"),
    ],
};

pub(super) static RUN_NEUTRAL: Shape = Shape {
    title: "[run-neutral]",
    name: "run-neutral",
    meaning: "A run's neutral, from its feeding box up to this one.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.982"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.012"),
        field!(may "open", FieldKind::Share, "not connected", "0.006"),
    ],
};

pub(super) static RUN_GROUND: Shape = Shape {
    title: "[run-ground]",
    name: "run-ground",
    meaning: "A run's ground, from its feeding box up to this one, by what carries it.",
    fields: &[
        field!(may "cable-with-ground", FieldKind::Table(&CABLE_WITH_GROUND), "a cable with a full grounding conductor", "{ sound = 0.925 }"),
        field!(may "cable-with-thin-ground", FieldKind::Table(&CABLE_WITH_THIN_GROUND), "a cable with a thinner one", "{ sound = 0.78 }"),
        field!(may "continuous-metal", FieldKind::Table(&CONTINUOUS_METAL), "conduit, or armor with a bonding strip", "{ sound = 0.9 }"),
        field!(may "armor-without-strip", FieldKind::Table(&ARMOR_WITHOUT_STRIP), "armor without a bonding strip", "{ sound = 0.05 }"),
    ],
};

static CABLE_WITH_GROUND: Shape = Shape {
    title: "[run-ground.cable-with-ground]",
    name: "run-ground-cable-with-ground",
    meaning: "In a cable with a full grounding conductor.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.925"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.015"),
        field!(may "loose-here", FieldKind::Share, "there, and connected to nothing in this box", "0.025"),
        field!(may "cut-off-here", FieldKind::Share, "there, and cut off at the sheath in this box", "0.01"),
        field!(may "loose-before", FieldKind::Share, "there, and connected to nothing in the box that feeds this one", "0.025"),
    ],
};

static CABLE_WITH_THIN_GROUND: Shape = Shape {
    title: "[run-ground.cable-with-thin-ground]",
    name: "run-ground-cable-with-thin-ground",
    meaning: "In a cable with a thinner grounding conductor.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.78"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.05"),
        field!(may "loose-here", FieldKind::Share, "there, and connected to nothing in this box", "0.06"),
        field!(may "cut-off-here", FieldKind::Share, "there, and cut off at the sheath in this box", "0.06"),
        field!(may "loose-before", FieldKind::Share, "there, and connected to nothing in the box that feeds this one", "0.05"),
    ],
};

static CONTINUOUS_METAL: Shape = Shape {
    title: "[run-ground.continuous-metal]",
    name: "run-ground-continuous-metal",
    meaning: "In metal conduit, or armor with a bonding strip.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.9"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.05"),
        field!(may "loose-here", FieldKind::Share, "there, and connected to nothing in this box", "0.025"),
        field!(may "loose-before", FieldKind::Share, "there, and connected to nothing in the box that feeds this one", "0.025"),
    ],
};

static ARMOR_WITHOUT_STRIP: Shape = Shape {
    title: "[run-ground.armor-without-strip]",
    name: "run-ground-armor-without-strip",
    meaning: "In armor without a bonding strip.",
    fields: &[
        field!(may "sound", FieldKind::Share, "whole, with sound joints", "0.05"),
        field!(may "high-resistance", FieldKind::Share, "whole, but with a joint of high resistance", "0.55"),
        field!(may "loose-here", FieldKind::Share, "there, and connected to nothing in this box", "0.12"),
        field!(may "loose-before", FieldKind::Share, "there, and connected to nothing in the box that feeds this one", "0.08"),
        field!(may "absent", FieldKind::Share, "no grounding path at all", "0.2"),
    ],
};

pub(super) static HOW_OFTEN: Shape = Shape {
    title: "[how-often]",
    name: "how-often",
    meaning: "How often something is so; each figure stands alone.",
    fields: &[
        field!(may "unknown-metal-is-sound", FieldKind::Chance, "armor or flexible metal that nobody has looked into is as good as continuous metal", "0.4"),
        field!(may "wiring-method-recorded-wrongly", FieldKind::Chance, "a wiring method is recorded wrongly", "0.01"),
        field!(may "unseen-panel-has-ground", FieldKind::Chance, "a panel that nobody has looked into has a ground for its circuits", "0.9"),
        field!(may "panel-without-bar-has-ground", FieldKind::Chance, "a panel without a ground bar has one all the same, at the neutral bar of service equipment", "0.3"),
    ],
};

pub(super) static UNSEEN: Shape = Shape {
    title: "[unseen-run-brings-ground]",
    name: "unseen-run-brings-ground",
    meaning: "How often a run that nobody has seen brings a ground, by the year of building; each figure stands alone.",
    fields: &[
        field!(may "built-until-1945", FieldKind::Chance, "built in 1945 or before", "0.05"),
        field!(may "built-until-1961", FieldKind::Chance, "built from 1946 to 1961", "0.15"),
        field!(may "built-until-1969", FieldKind::Chance, "built from 1962 to 1969", "0.65"),
        field!(may "built-later", FieldKind::Chance, "built in 1970 or later", "0.95"),
        field!(may "year-not-known", FieldKind::Chance, "the year of building is not known", "0.4"),
    ],
};

pub(super) static DEVICE: Shape = Shape {
    title: "[device]",
    name: "device",
    meaning: "A device, by what ground arrives in its box. Where a hot conductor on a ground would open the breaker, it has no key.",
    fields: &[
        field!(may "where-ground-arrives", FieldKind::Table(&WHERE_GROUND_ARRIVES), "where one reaches the panel", "{ right = 0.936 }"),
        field!(may "where-none-arrives", FieldKind::Table(&WHERE_NONE_ARRIVES), "where none does", "{ right = 0.898 }"),
    ],
};

static WHERE_GROUND_ARRIVES: Shape = Shape {
    title: "[device.where-ground-arrives]",
    name: "device-where-ground-arrives",
    meaning: "The device where a ground arrives that reaches the panel.",
    fields: &[
        field!(may "right", FieldKind::Share, "as it should be; the ground is landed where one arrives", "0.936"),
        field!(may "hot-neutral-reversed", FieldKind::Share, "hot and neutral have changed places", "0.04"),
        field!(may "hot-ground-reversed", FieldKind::Share, "hot and ground have changed places", "0.002"),
        field!(may "ground-not-landed", FieldKind::Share, "the ground that arrives is not landed on it", "0.018"),
        field!(may "neutral-jumper", FieldKind::Share, "a jumper joins its neutral and its ground terminal", "0.004"),
    ],
};

static WHERE_NONE_ARRIVES: Shape = Shape {
    title: "[device.where-none-arrives]",
    name: "device-where-none-arrives",
    meaning: "The device where no ground arrives that reaches the panel.",
    fields: &[
        field!(may "right", FieldKind::Share, "as it should be; the ground is landed where one arrives", "0.898"),
        field!(may "hot-neutral-reversed", FieldKind::Share, "hot and neutral have changed places", "0.05"),
        field!(may "hot-ground-reversed", FieldKind::Share, "hot and ground have changed places", "0.001"),
        field!(may "ground-not-landed", FieldKind::Share, "the ground that arrives is not landed on it", "0.001"),
        field!(may "neutral-jumper", FieldKind::Share, "a jumper joins its neutral and its ground terminal", "0.045"),
        field!(may "reversed-jumper", FieldKind::Share, "hot and neutral are reversed, and a jumper joins the terminal that should be neutral to the ground", "0.005"),
    ],
};
