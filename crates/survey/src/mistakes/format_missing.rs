//! `format-missing`: the file does not say which format it is written in.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "format-missing",
    "The file does not say which format it is written in.",
    Example::Toml(r#"[job]
name = "Larch Street"

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
"#),
).telling_absence();

pub(crate) fn mistake(file: &str, format: i128, span: Span) -> Diagnostic {
    KIND.at(span, "before this", format!("the {file} does not say its format")).help(format!("begin the file with `format = {format}`"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_does_not_say_which_format_it_is_written() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[format-missing]: the survey does not say its format
 --> survey.toml:1:1
1 | [job]
  | ^ before this
  = help: begin the file with `format = 1`
"
        );
    }
}
