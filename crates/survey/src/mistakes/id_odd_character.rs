//! `id-odd-character`: an id holds a character that ids do not take.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "id-odd-character",
    "An id holds a character that ids do not take.",
    Example::Added(r#"
[[room]]
id = "bed room"
"#),
);

pub(crate) fn mistake(id: &str, odd: char, span: Span) -> Diagnostic {
    let shown = if odd == ' ' { "a space".to_string() } else { format!("`{odd}`") };
    KIND.at(span, format!("{shown} is in this id"), format!("the id `{id}` holds an odd character"))
        .help("ids are letters, digits and `-`, `_`, `.`, `/`, `#`, `+`; a `title` may hold anything")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_an_id_holds_a_character_that_ids_do_not_take() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[id-odd-character]: the id `bed room` holds an odd character
  --> survey.toml:22:6
22 | id = "bed room"
   |      ^^^^^^^^^^ a space is in this id
   = help: ids are letters, digits and `-`, `_`, `.`, `/`, `#`, `+`; a `title` may hold anything
"#
        );
    }
}
