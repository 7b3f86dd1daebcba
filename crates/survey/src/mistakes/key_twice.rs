//! `key-twice`: a key is written twice in one table.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "key-twice",
    "A key is written twice in one table.",
    Example::Added(r#"height = "16 in"
height = "18 in"
"#),
);

pub(crate) fn mistake(key: &str, span: Span, first: Option<Span>) -> Diagnostic {
    let mistake = KIND.at(span, "again here", format!("the key `{key}` is given twice"));
    let mistake = match first {
        Some(first) => mistake.and(first, "first here"),
        None => mistake,
    };
    mistake.help("keep one of the two")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_key_is_written_twice_in_one_table() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[key-twice]: the key `height` is given twice
  --> survey.toml:21:1
20 | height = "16 in"
   | ------ first here
21 | height = "18 in"
   | ^^^^^^ again here
   = help: keep one of the two
"#
        );
    }
}
