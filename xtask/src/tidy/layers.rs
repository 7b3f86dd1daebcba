//! Which crates are pure, and what each may depend on.

/// A crate that touches nothing outside itself.
pub struct PureCrate {
    /// Its name, which is also its folder's.
    pub name: &'static str,
    /// The crates of the project that it may use.
    pub ours: &'static [&'static str],
    /// The crates of others that it may use.
    pub others: &'static [&'static str],
}

/// Crates of others that reach for nothing: no files, no clock, no network, no chance.
const READING_AND_WRITING_VALUES: &[&str] = &["jsonc-parser", "schemars", "serde", "serde_json", "strsim", "toml"];
/// Besides: bytes of fonts and drawings in, bytes of PDF out.
const SETTING_TYPE: &[&str] = &["krilla", "roxmltree", "rustybuzz", "schemars", "serde"];
const NONE: &[&str] = &[];

/// Every pure crate. The direction of use is one: a crate stands below those that may use it.
pub const PURE_CRATES: &[PureCrate] = &[
    PureCrate { name: "electrical", ours: NONE, others: NONE },
    PureCrate { name: "optimizer", ours: NONE, others: NONE },
    PureCrate { name: "dwelling", ours: &["electrical"], others: READING_AND_WRITING_VALUES },
    PureCrate { name: "routes", ours: &["dwelling", "electrical"], others: READING_AND_WRITING_VALUES },
    PureCrate {
        name: "survey",
        ours: &["diagnosis", "dwelling", "electrical", "estimate", "rulebook"],
        others: READING_AND_WRITING_VALUES,
    },
    PureCrate { name: "rulebook", ours: &["dwelling", "electrical"], others: READING_AND_WRITING_VALUES },
    PureCrate { name: "diagnosis", ours: &["dwelling", "electrical"], others: READING_AND_WRITING_VALUES },
    PureCrate { name: "simulation", ours: &["diagnosis", "dwelling", "electrical"], others: NONE },
    PureCrate { name: "estimate", ours: &["dwelling", "electrical"], others: READING_AND_WRITING_VALUES },
    PureCrate {
        name: "remedies",
        ours: &["diagnosis", "dwelling", "electrical", "estimate", "optimizer", "routes", "rulebook"],
        others: READING_AND_WRITING_VALUES,
    },
    PureCrate {
        name: "calculations",
        ours: &["diagnosis", "dwelling", "electrical", "estimate", "optimizer", "remedies", "routes", "rulebook"],
        others: READING_AND_WRITING_VALUES,
    },
    PureCrate {
        name: "closeout",
        ours: &[
            "calculations",
            "diagnosis",
            "dwelling",
            "electrical",
            "estimate",
            "optimizer",
            "remedies",
            "routes",
            "rulebook",
        ],
        others: READING_AND_WRITING_VALUES,
    },
    PureCrate {
        name: "drawings",
        ours: &["diagnosis", "dwelling", "electrical", "estimate", "optimizer", "remedies", "routes", "rulebook"],
        others: READING_AND_WRITING_VALUES,
    },
    PureCrate {
        name: "papers",
        ours: &[
            "calculations",
            "closeout",
            "diagnosis",
            "drawings",
            "dwelling",
            "electrical",
            "estimate",
            "optimizer",
            "remedies",
            "routes",
            "rulebook",
        ],
        others: SETTING_TYPE,
    },
];

/// The crates below `crates/` that may touch the world.
pub const CRATES_THAT_TOUCH_THE_WORLD: &[&str] = &["app"];

/// The pure crate whose working source this file is, if it is any's.
pub fn pure_source(path: &str) -> Option<&'static PureCrate> {
    let (folder, inside) = path.strip_prefix("crates/")?.split_once('/')?;
    PURE_CRATES.iter().find(|pure| pure.name == folder && (inside.starts_with("src/") || inside == "build.rs"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_crate_may_use_one_that_may_use_it() {
        for pure in PURE_CRATES {
            for used in pure.ours {
                let used = PURE_CRATES.iter().find(|other| other.name == *used).unwrap();
                assert!(!used.ours.contains(&pure.name), "{} and {}", pure.name, used.name);
                let reach = used.ours.iter().all(|below| pure.ours.contains(below));
                assert!(reach, "{} may use {} but not all that it rests on", pure.name, used.name);
            }
        }
    }

    #[test]
    fn only_the_working_source_of_a_pure_crate_is_pure_source() {
        assert!(pure_source("crates/dwelling/src/tree.rs").is_some());
        assert!(pure_source("crates/dwelling/tests/trees.rs").is_none());
        assert!(pure_source("crates/app/src/main.rs").is_none());
    }
}
