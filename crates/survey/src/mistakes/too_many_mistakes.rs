//! `too-many-mistakes`: the file has more mistakes than are told at once.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "too-many-mistakes",
    "The file has more mistakes than are told at once; a survey written by hand never does.",
    Example::MadeToml(|| (0..1_200).map(|number| format!("key-{number} = 1\n")).collect::<String>().into_bytes()),
);

pub(crate) fn mistake(untold: usize, span: Span) -> Diagnostic {
    KIND.at(span, "from here on nothing more is told", format!("{untold} further mistakes are not told"))
        .help("is this the right file? if so, mend the first mistakes and read it again")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_has_more_mistakes_than_are_told_at_once() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[too-many-mistakes]: 204 further mistakes are not told
   --> survey.toml:997:1
997 | key-996 = 1
    | ^^^^^^^ from here on nothing more is told
    = help: is this the right file? if so, mend the first mistakes and read it again
"
        );
    }
}
