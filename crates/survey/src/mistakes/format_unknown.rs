//! `format-unknown`: the file is written in a format that this program does not know.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "format-unknown",
    "The file is written in a format that this program does not know.",
    Example::Toml(r#"format = 2

[job]
name = "Larch Street"

[[room]]
id = "kitchen"

[[box]]
id = "K-1"
room = "kitchen"
"#),
);

pub(crate) fn mistake(file: &str, written: i128, format: i128, span: Span) -> Diagnostic {
    KIND.at(span, "not known here", format!("{file} format `{written}` is not known"))
        .help(format!("this program reads format {format}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_is_written_in_a_format_that_this_program_does_not_know() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[format-unknown]: survey format `2` is not known
 --> survey.toml:1:10
1 | format = 2
  |          ^ not known here
  = help: this program reads format 1
"
        );
    }
}
