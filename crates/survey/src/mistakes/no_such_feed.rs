//! `no-such-feed`: a box is fed by something that is neither a box nor a panel of the survey.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "no-such-feed",
    "A box is fed by something that is neither a box nor a panel of the survey.",
    Example::Added("fed_by = \"K-7\"\n"),
).telling_absence();

pub(crate) fn mistake(id: &str, nearest: Option<&str>, span: Span) -> Diagnostic {
    let mistake = KIND.at(span, "named here only", format!("no box or panel `{id}` to be fed by"));
    match nearest {
        Some(name) => mistake.help(format!("did you mean `{name}`?")),
        None => mistake.help("write the id of a box, or `\"panel\"` for the home run, or leave it out"),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_is_fed_by_something_that_is_neither_a_box_nor_a_panel() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[no-such-feed]: no box or panel `K-7` to be fed by
  --> survey.toml:20:10
20 | fed_by = "K-7"
   |          ^^^^^ named here only
   = help: did you mean `K-1`?
"#
        );
    }
}
