//! `file-too-large`: the file is larger than any survey of a dwelling.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "file-too-large",
    "The file is larger than any survey of a dwelling.",
    Example::MadeToml(|| vec![b'#'; 10_000_001]),
);

pub(crate) fn mistake(bytes: usize, most: usize) -> Diagnostic {
    let message = format!("the file has {bytes} bytes; at most {most} are read");
    KIND.at(Span::new(0, 0), "nothing of it was read", message)
        .help("a survey of forty boxes has about 20000 bytes; is this the right file?")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_is_larger_than_any_survey_of_a_dwelling() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[file-too-large]: the file has 10000001 bytes; at most 10000000 are read
 --> survey.toml:1:1
1 |
  | ^ nothing of it was read
  = help: a survey of forty boxes has about 20000 bytes; is this the right file?
"
        );
    }
}
