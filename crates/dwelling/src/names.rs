//! Closed lists of names: one table gives the enum, its text, its meaning and its JSON.

/// Defines an enum whose variants each have one name in survey files and in JSON.
#[macro_export]
macro_rules! names {
    ($(#[$doc:meta])* $kind:ident { $($(#[doc = $meaning:literal])+ $variant:ident = $name:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $kind {
            $($(#[doc = $meaning])+ $variant,)+
        }

        impl $kind {
            /// Every variant, in the order of its definition.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];
            /// Every name, in the order of its definition.
            pub const NAMES: &'static [&'static str] = &[$($name,)+];

            /// The name of this variant in survey files and in JSON.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }

            /// What this variant means, in one or two sentences.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self { $(Self::$variant => concat!($($meaning),+),)+ }
            }

            /// The variant with this name.
            #[must_use]
            pub fn from_name(name: &str) -> Option<Self> {
                match name { $($name => Some(Self::$variant),)+ _ => None }
            }
        }

        impl std::fmt::Display for $kind {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.name())
            }
        }

        impl ::serde::Serialize for $kind {
            fn serialize<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }

        impl ::schemars::JsonSchema for $kind {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($kind).into()
            }
            fn json_schema(_: &mut ::schemars::SchemaGenerator) -> ::schemars::Schema {
                ::schemars::json_schema!({ "type": "string", "enum": Self::NAMES })
            }
        }
    };
}
pub(crate) use names;

/// The name nearest to what was written, where one is near enough to be meant.
///
/// Near enough is an edit distance of at most a third of the written text, and at least one edit is always allowed. What says
/// “no” or “without” is never near to what does not: taken for it, a cable without a ground would become one with it.
#[must_use]
pub fn nearest<'a>(written: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let longest = 64;
    if written.chars().count() > longest {
        return None;
    }
    let folded = written.to_lowercase().replace(['_', ' '], "-");
    let allowed = (written.chars().count() / 3).max(1);
    names
        .into_iter()
        .map(|name| (name.to_lowercase().replace(['_', ' '], "-"), name))
        .filter(|(likened, _)| denies(likened) == denies(&folded))
        .map(|(likened, name)| (edits(&folded, &likened), name))
        .filter(|(edits, _)| *edits <= allowed)
        .min_by_key(|(edits, _)| *edits)
        .map(|(_, name)| name)
}

/// Whether a name says that something is not there.
fn denies(name: &str) -> bool {
    name.split('-').any(|word| matches!(word, "no" | "not" | "none" | "without"))
}

/// The number of single-letter edits, swaps of neighbours included, between two texts.
fn edits(left: &str, right: &str) -> usize {
    strsim::osa_distance(left, right)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_there_is_never_taken_for_what_is() {
        assert_eq!(nearest("nm-without-ground", ["nm-with-ground", "nm-two-wire"]), None);
        assert_eq!(nearest("armored-strip", ["armored-no-strip", "armored-with-strip"]), None);
        assert_eq!(nearest("armored-no-stripe", ["armored-no-strip"]), Some("armored-no-strip"));
    }

    #[test]
    fn a_slip_of_the_pen_finds_its_name() {
        assert_eq!(nearest("bedrom", ["bedroom", "bathroom"]), Some("bedroom"));
        assert_eq!(nearest("three_slot", ["two-slot", "three-slot"]), Some("three-slot"));
        assert_eq!(nearest("33", ["3", "5"]), Some("3"));
    }

    #[test]
    fn a_word_of_another_kind_finds_nothing() {
        assert_eq!(nearest("carpet", ["bedroom", "bathroom"]), None);
    }
}
