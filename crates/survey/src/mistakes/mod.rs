//! The kinds of mistake, one file each: its code, what it means, an example, and how it is told.

use crate::diagnostic::{Diagnostic, Label, Severity, Span};
use crate::format::Format;
use crate::local_code::read_local_code;
use crate::practice::read_practice;
use crate::read::{read, text_of};
use crate::render::render;
use std::borrow::Cow;

macro_rules! kinds {
    ($($module:ident,)+) => {
        $(pub(crate) mod $module;)+

        /// Every kind of mistake, in the order of the page for users.
        pub const KINDS: &[&Kind] = &[$(&$module::KIND,)+];

        #[cfg(test)]
        const FILES: &[&str] = &[$(stringify!($module),)+];
    };
}

kinds! {
    file_empty,
    file_not_utf8,
    file_too_large,
    toml_syntax,
    json_syntax,
    nested_too_deep,
    too_many_mistakes,
    format_missing,
    format_unknown,
    no_rooms,
    no_boxes,
    unknown_key,
    key_twice,
    key_missing,
    wrong_type,
    unknown_name,
    empty_text,
    name_twice,
    list_too_long,
    text_too_long,
    control_character,
    number_without_unit,
    unknown_unit,
    wrong_unit,
    not_a_quantity,
    number_not_whole,
    count_out_of_range,
    length_not_positive,
    length_too_long,
    height_not_possible,
    distance_not_possible,
    fault_current_not_possible,
    load_current_not_possible,
    coordinate_not_possible,
    volume_not_positive,
    volume_too_large,
    volume_and_size_contradict,
    unknown_trade_size,
    size_of_nonmetallic_box,
    breaker_not_positive,
    breaker_too_large,
    breaker_not_standard,
    breaker_and_fuse,
    breaker_fitted_on_fuse,
    fuse_among_breakers,
    fitted_not_made_for_panel,
    gauge_unknown,
    gauge_unusual,
    aluminium_too_thin,
    volts_negative,
    volts_beyond_meter,
    ohms_not_possible,
    readings_contradict,
    reading_empty,
    time_not_possible,
    floor_not_possible,
    built_not_plausible,
    edition_not_plausible,
    day_not_real,
    local_code_names_nothing,
    share_not_possible,
    shares_not_one,
    minutes_not_possible,
    id_odd_character,
    id_reserved,
    id_twice,
    id_clash,
    no_such_panel,
    no_such_circuit,
    no_such_room,
    no_such_feed,
    no_such_place,
    no_such_box,
    box_feeds_itself,
    boxes_in_a_ring,
    fed_from_other_circuit,
    fed_by_other_panel,
    panel_without_circuit,
    circuit_without_panel,
    neutral_shared_with_itself,
    neutral_across_panels,
    neutral_shared_one_sidedly,
    shared_neutral_without_partner,
    outline_too_few_corners,
    outline_corner_twice,
    outline_crosses_itself,
    box_outside_room,
    want_without_receptacle,
    cables_fewer_than_fed,
    route_to_itself,
    route_without_length,
    route_end_not_a_box,
    from_entry_without_pipe,
    dead_when_not_one_cut,
    dead_when_sees_nothing,
    dead_and_alive,
    dead_when_names_itself,
    circuit_contradicted,
    load_not_on,
    load_on_other_circuit,
    button_without_device,
}

/// A kind of mistake.
#[derive(Debug)]
pub struct Kind {
    /// Its code, the same in every release.
    pub code: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// What it means, in a sentence.
    pub means: &'static str,
    /// Whether a broken piece of the file alone may bring it about.
    tells_absence: bool,
    example: Example,
}

/// A file with one mistake.
#[derive(Debug)]
enum Example {
    /// Lines added to a sound survey, see [`SOUND`].
    Added(&'static str),
    Toml(&'static str),
    Json(&'static str),
    Bytes(&'static [u8]),
    MadeToml(fn() -> Vec<u8>),
    MadeJson(fn() -> Vec<u8>),
    /// A file of local changes to the code.
    LocalCode(&'static str),
    /// A practice file.
    Practice(&'static str),
}

/// A small survey without a mistake; what is added to it belongs to its one box, or begins another table.
pub const SOUND: &str = r#"format = 1

[job]
name = "Larch Street"

[[panel]]
id = "main"

[[circuit]]
id = "3"
panel = "main"

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
circuit = "3"
"#;

impl Kind {
    const fn error(code: &'static str, means: &'static str, example: Example) -> Self {
        Self { code, severity: Severity::Error, means, tells_absence: false, example }
    }

    const fn warning(code: &'static str, means: &'static str, example: Example) -> Self {
        Self { code, severity: Severity::Warning, means, tells_absence: false, example }
    }

    const fn telling_absence(self) -> Self {
        Self { tells_absence: true, ..self }
    }

    fn at(&self, span: Span, label: impl Into<String>, message: impl Into<String>) -> Diagnostic {
        Diagnostic {
            severity: self.severity,
            code: self.code,
            message: message.into(),
            labels: vec![Label { span, text: label.into() }],
            help: None,
        }
    }

    /// A file that has this mistake and no other.
    #[must_use]
    pub fn example(&self) -> (Format, Cow<'static, [u8]>) {
        match &self.example {
            Example::Added(lines) => (Format::Toml, format!("{SOUND}{lines}").into_bytes().into()),
            Example::Toml(text) | Example::LocalCode(text) | Example::Practice(text) => {
                (Format::Toml, text.as_bytes().into())
            }
            Example::Json(text) => (Format::Json, text.as_bytes().into()),
            Example::Bytes(bytes) => (Format::Toml, (*bytes).into()),
            Example::MadeToml(make) => (Format::Toml, make().into()),
            Example::MadeJson(make) => (Format::Json, make().into()),
        }
    }

    /// Every mistake that reading the example gives.
    #[must_use]
    pub fn found_in_example(&self) -> Vec<Diagnostic> {
        let (format, bytes) = self.example();
        match &self.example {
            Example::LocalCode(_) => read_local_code(&bytes).1,
            Example::Practice(_) => read_practice(&bytes).1,
            _ => read(&bytes, format).diagnostics,
        }
    }

    /// The mistake of the example as a person reads it.
    #[must_use]
    pub fn rendered_example(&self) -> String {
        let (format, bytes) = self.example();
        let file_name = match (&self.example, format) {
            (Example::LocalCode(_), _) => "local.toml",
            (Example::Practice(_), _) => "practice.toml",
            (_, Format::Json) => "survey.json",
            (_, Format::Toml) => "survey.toml",
        };
        let own = self.found_in_example().into_iter().filter(|diagnostic| diagnostic.code == self.code);
        own.map(|diagnostic| render(&diagnostic, file_name, &text_of(&bytes))).collect()
    }
}

/// Whether a broken piece of the file alone may bring about a mistake of this code.
pub(crate) fn tells_absence(code: &str) -> bool {
    KINDS.iter().any(|kind| kind.code == code && kind.tells_absence)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_small_survey_is_sound() {
        let found = read(SOUND.as_bytes(), Format::Toml);
        assert_eq!(found.diagnostics, []);
        assert!(found.dwelling.is_some());
    }

    #[test]
    fn every_example_has_its_own_mistake_and_no_other() {
        for kind in KINDS {
            let codes: Vec<&str> = kind.found_in_example().iter().map(|diagnostic| diagnostic.code).collect();
            if kind.code == too_many_mistakes::KIND.code {
                assert_eq!(codes.last(), Some(&kind.code), "it comes behind those that are told");
            } else {
                assert_eq!(codes, [kind.code]);
            }
            if let Example::LocalCode(_) | Example::Practice(_) = kind.example {
                continue;
            }
            let (format, bytes) = kind.example();
            let found = read(&bytes, format);
            assert_eq!(found.dwelling.is_none(), kind.severity == Severity::Error, "{}", kind.code);
        }
    }

    #[test]
    fn every_kind_lives_in_the_file_of_its_code() {
        let codes: Vec<String> = KINDS.iter().map(|kind| kind.code.replace('-', "_")).collect();
        assert_eq!(codes, FILES);
    }

    #[test]
    fn messages_are_in_small_letters_without_a_full_stop() {
        for kind in KINDS {
            for diagnostic in kind.found_in_example() {
                let texts = diagnostic.labels.iter().map(|label| &label.text).chain(&diagnostic.help);
                for text in texts.chain([&diagnostic.message]) {
                    let mut letters = text.chars();
                    let first_is_capital = letters.next().is_some_and(char::is_uppercase);
                    let is_a_word = first_is_capital && letters.next().is_some_and(char::is_lowercase);
                    assert!(!is_a_word, "{}: {text}", kind.code);
                    assert!(!text.ends_with('.'), "{}: {text}", kind.code);
                }
            }
        }
    }
}
