//! The bungalow as a surveyor leaves it who states every way himself: no place for its panel, so that no way is built.

use crate::running::{Said, document, file, thirdwire};

/// The ways that the tool would build, stated.
const ROWS: &str = r#"
[[route]]
id = "R-bed-den"
from = "main"
to = "B2-3"
kind = "egc"
length = "44 ft"

[[route]]
id = "R-laundry"
from = "main"
to = "LA-1"
kind = "egc"
length = "16 ft"
"#;

/// The survey.
pub fn survey() -> String {
    let drawn = document("examples/bungalow.toml");
    let bare = drawn.replacen("room        = \"laundry\"\nat          = [-4, 0]\n", "", 1);
    assert_ne!(drawn, bare, "the panel of the bungalow has a place");
    bare + ROWS
}

/// Runs a command on it with these flags.
pub fn of(command: &str, flags: &[&str]) -> Said {
    let path = file("bungalow-by-its-rows.toml", &survey());
    thirdwire(&[&[command, path.as_str()], flags].concat())
}
