//! What a practice file holds, table by table.

use super::costs::{COST, MINUTES};
use super::shares::{DEVICE, HOW_OFTEN, RUN_GROUND, RUN_HOT, RUN_NEUTRAL, UNSEEN};
use crate::shape::{FieldKind, Shape, field};

pub(crate) static SHAPE: Shape = Shape {
    title: "the file",
    name: "practice",
    meaning: "What is common in old wiring, and what it costs to act wrongly and to test. Shipped figures are common practice, no source.",
    fields: &[
        field!(own "format", FieldKind::Format, "the number of this format", "1"),
        field!(may "run-hot", FieldKind::Table(&RUN_HOT), "a run's hot conductor", "{ sound = 0.99 }"),
        field!(may "run-neutral", FieldKind::Table(&RUN_NEUTRAL), "a run's neutral", "{ sound = 0.982 }"),
        field!(may "run-ground", FieldKind::Table(&RUN_GROUND), "a run's ground, by what carries it", "{ continuous-metal = { sound = 0.9 } }"),
        field!(may "how-often", FieldKind::Table(&HOW_OFTEN), "how often something is so", "{ unknown-metal-is-sound = 0.4 }"),
        field!(may "unseen-run-brings-ground", FieldKind::Table(&UNSEEN), "how often a run that nobody has seen brings a ground", "{ built-later = 0.95 }"),
        field!(may "device", FieldKind::Table(&DEVICE), "a device, by what arrives in its box", "{ where-none-arrives = { right = 0.898 } }"),
        field!(may "cost-of-being-wrong", FieldKind::Table(&COST), "what acting wrongly costs", "{ missing = { rely = 1500 } }"),
        field!(may "minutes", FieldKind::Table(&MINUTES), "how long each test takes", "{ open-the-box = 12 }"),
    ],
};
