//! `file-not-utf8`: the file is not written in UTF-8, the one encoding that is read.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "file-not-utf8",
    "The file is not written in UTF-8, the one encoding that is read.",
    Example::Bytes(b"format = 1\n[job]\nname = \"Caf\xe9\"\n"),
);

pub(crate) fn mistake(byte: usize) -> Diagnostic {
    let message = format!("byte {} of the file is not UTF-8", byte + 1);
    KIND.at(Span::new(byte, byte + 1), "no character of UTF-8 begins here", message).help("save the file as UTF-8")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_the_file_is_not_written_in_utf_8_the_one_encoding_that_is_read() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[file-not-utf8]: byte 29 of the file is not UTF-8
 --> survey.toml:3:12
3 | name = "Caf�"
  |            ^ no character of UTF-8 begins here
  = help: save the file as UTF-8
"#
        );
    }
}
