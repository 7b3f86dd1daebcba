//! `file-empty`: the file holds nothing but blanks.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "file-empty",
    "The file holds nothing but blanks.",
    Example::Toml("\n"),
);

pub(crate) fn mistake(length: usize) -> Diagnostic {
    KIND.at(Span::new(0, length), "nothing is written here", "the file is empty")
        .help("a survey begins with `format = 1` and a `[job]`, any other file with `format = 1`")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_holds_nothing_but_blanks() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[file-empty]: the file is empty
 --> survey.toml:1:1
1 |
  | ^ nothing is written here
  = help: a survey begins with `format = 1` and a `[job]`, any other file with `format = 1`
"
        );
    }
}
