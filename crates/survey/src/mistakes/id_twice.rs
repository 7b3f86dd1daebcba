//! `id-twice`: two things of one kind have the same id.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "id-twice",
    "Two things of one kind have the same id.",
    Example::Added(r#"
[[box]]
id = "K-1"
room = "kitchen"
"#),
);

pub(crate) fn mistake(what: &str, id: &str, span: Span, first: Span) -> Diagnostic {
    KIND.at(span, "again here", format!("two {} have the id `{id}`", plural(what)))
        .and(first, "first here")
        .help("give one of them another id")
}

fn plural(what: &str) -> String {
    if what.ends_with('x') { format!("{what}es") } else { format!("{what}s") }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_two_things_of_one_kind_have_the_same_id() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[id-twice]: two boxes have the id `K-1`
  --> survey.toml:22:6
17 | id = "K-1"
   |      ----- first here
   ...
22 | id = "K-1"
   |      ^^^^^ again here
   = help: give one of them another id
"#
        );
    }
}
