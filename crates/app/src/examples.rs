//! The surveys that come with the program.

use crate::command_error::CommandError;
use dwelling::nearest;

/// A survey that comes with the program.
pub struct Example {
    /// Its name.
    pub name: &'static str,
    /// What it shows.
    pub shows: &'static str,
    /// The survey.
    pub text: &'static str,
}

/// Every example, all of invented dwellings.
pub const EXAMPLES: &[Example] = &[
    Example {
        name: "bungalow",
        shows: "a 1956 bungalow: two-wire cable, small metal boxes, a multiwire circuit, a newer grounded tail",
        text: include_str!("../../../examples/bungalow.toml"),
    },
    Example {
        name: "knob-and-tube",
        shows: "a 1928 house: knob-and-tube and armored stubs, four fused circuits, no protective breakers",
        text: include_str!("../../../examples/knob-and-tube.toml"),
    },
    Example {
        name: "flat",
        shows: "a 1967 flat: reduced-size grounds cut off in the boxes, an aluminium tail",
        text: include_str!("../../../examples/flat.toml"),
    },
    Example {
        name: "cottage-done",
        shows: "a 1958 cottage whose work is done, with every reading afterwards (see `thirdwire prove`)",
        text: include_str!("../../../examples/cottage-done.toml"),
    },
    Example {
        name: "cottage-half-done",
        shows: "the same cottage half done: rooms not read, a ground that is a jumper, an opening on the wrong side",
        text: include_str!("../../../examples/cottage-half-done.toml"),
    },
];

/// The example of this name.
///
/// # Errors
/// [`CommandError::Usage`] with the nearest name.
pub fn named(name: &str) -> Result<&'static Example, CommandError> {
    EXAMPLES.iter().find(|example| example.name == name).ok_or_else(|| {
        let names: Vec<&str> = EXAMPLES.iter().map(|example| example.name).collect();
        CommandError::Usage(match nearest(name, names.iter().copied()) {
            Some(near) => format!("there is no example `{name}`; did you mean `{near}`?"),
            None => format!("there is no example `{name}`; there are {}", names.join(", ")),
        })
    })
}
