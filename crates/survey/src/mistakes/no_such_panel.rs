//! `no-such-panel`: a key names a panel that is not in the survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-panel",
    "A key names a panel that is not in the survey.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "mian"
"#),
).telling_absence();

pub(crate) fn mistake(id: &str, nearest: Option<&str>, names: &[&str], span: Span) -> Diagnostic {
    KIND.at(span, "named here only", format!("no panel `{id}`")).help_with_names(nearest, names)
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_key_names_a_panel_that_is_not_in_the_survey() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-panel]: no panel `mian`
  --> survey.toml:23:9
23 | panel = "mian"
   |         ^^^^^^ named here only
   = help: did you mean `main`?
"#
        );
    }
}
