//! `wrong-type`: a value is of another kind than its key takes.

use crate::diagnostic::Diagnostic;
use crate::mistakes::{Example, Kind};
use crate::value::{Value, ValueKind};

pub(crate) const KIND: Kind = Kind::error(
    "wrong-type",
    "A value is of another kind than its key takes.",
    Example::Added("do_not_disturb = \"yes\"\n"),
);

pub(crate) fn mistake(what: &str, expected: &str, value: &Value) -> Diagnostic {
    let mistake = KIND.at(value.span, format!("this is {}", value.described()), format!("{what} must be {expected}"));
    match &value.kind {
        ValueKind::Number(number) if expected.contains("in quotes") => mistake.help(format!("write `\"{number}\"`")),
        ValueKind::Null => mistake.help("leave the key out, or write `\"unknown\"`"),
        _ => mistake,
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_value_is_of_another_kind_than_its_key_takes() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[wrong-type]: `do_not_disturb` must be `true` or `false`
  --> survey.toml:20:18
20 | do_not_disturb = "yes"
   |                  ^^^^^ this is a text
"#
        );
    }
}
