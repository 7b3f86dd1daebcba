//! `unknown-unit`: a unit is none that surveys know.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "unknown-unit",
    "A unit is none that surveys know.",
    Example::Added("run = { length = \"14 feat\" }\n"),
);

pub(crate) fn mistake(key: &str, unit: &str, nearest: Option<&str>, expected: &str, span: Span) -> Diagnostic {
    let mistake = KIND.at(span, format!("`{unit}` is no unit"), format!("`{key}` has a unit that is not known"));
    match nearest {
        Some(name) => mistake.help(format!("did you mean `{name}`?")),
        None => mistake.help(format!("write {expected}")),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_unit_is_none_that_surveys_know() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[unknown-unit]: `length` has a unit that is not known
  --> survey.toml:20:18
20 | run = { length = "14 feat" }
   |                  ^^^^^^^^^ `feat` is no unit
   = help: did you mean `feet`?
"#
        );
    }
}
